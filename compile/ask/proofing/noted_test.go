package proofing_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/proofing"
	"newmake/lang/quantity"
)

// An answer says whether a strength that stands with a temperature was taken for true or for read;
// of one without, nothing is to be said.
func TestTrueOrRead(t *testing.T) {
	for words, want := range map[string]string{
		"144 L at 67 % vol at 19 C":          "67 % vol is taken for the true strength: the 19 C are those of the volume. What a hydrometer shows at 19 C is written `reading 67 % vol at 19 C`.",
		"144 L reading 68 % vol at 19 C":     "68 % vol at 19 C is taken for what the hydrometer shows: the true strength is worked out from it.",
		"53 gal at 120 proof at 75 F":        "120 proof is taken for the true strength: the 75 F are those of the volume. What a hydrometer shows at 75 F is written `reading 120 proof at 75 F`.",
		"53 gal reading 123.4 proof at 75 F": "123.4 proof at 75 F is taken for what the hydrometer shows: the true strength is worked out from it.",
		"144 L at 67 % vol":                  "",
	} {
		q, list := proofing.Read(words, quantity.US)
		require.Empty(t, list, words)
		for _, u := range []proofing.Units{q.OwnUnits(), 1 - q.OwnUnits()} {
			a, list := proofing.Solve(q, u)
			require.Empty(t, list, words)
			if want == "" {
				assert.NotContains(t, strings.Join(a.Notes, " "), "is taken for", words)
			} else {
				assert.Contains(t, a.Notes, want, words)
			}
		}
	}
}
