package reviewed_test

import (
	"bytes"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/compile/show/reviewed"
)

// All of a review tells its reader what a house of those units counts in, and nothing of what the
// other system's do.
func TestCountedInTheReadersUnits(t *testing.T) {
	why := &compare.Why{}
	for _, key := range []string{"heartsProofGallons", "pureAlcoholL", "costPerProofGallon", "costPerLPA", "heartsVolumeL"} {
		why.Each = append(why.Each, compare.WhyOutcome{Key: key, Name: "the " + key, Change: 1})
	}
	says := map[measure.Units][]string{
		measure.US: {"the heartsProofGallons", "the costPerProofGallon", "the heartsVolumeL"},
		measure.SI: {"the pureAlcoholL", "the costPerLPA", "the heartsVolumeL"},
	}
	for u, want := range says {
		for _, full := range []bool{false, true} {
			var out bytes.Buffer
			a := &review.Answer{Units: u, Done: &compare.Comparison{Why: why}}
			require.NoError(t, reviewed.Text(&out, a, reviewed.Options{Full: full}))
			shown := want
			if !full {
				shown = want[:1]
			}
			for _, o := range why.Each {
				if slices.Contains(shown, o.Name) {
					assert.Contains(t, out.String(), o.Name+",")
				} else {
					assert.NotContains(t, out.String(), o.Name+",")
				}
			}
		}
	}
}
