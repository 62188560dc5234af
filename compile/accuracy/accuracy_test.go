package accuracy

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/work"
	"newmake/lang/testflag"
)

// kept holds a generated page against the one in the repository.
func kept(t *testing.T, name, page string) {
	t.Helper()
	path := filepath.Join("..", name)
	if testflag.Update() {
		require.NoError(t, os.WriteFile(path, []byte(page), 0o644))
		return
	}
	old, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(old), page, "compile/%s is stale: go test ./compile/accuracy -update", name)
}

func TestAccuracyPage(t *testing.T) {
	sections, err := Measure()
	require.NoError(t, err)
	kept(t, "ACCURACY.md", Page(sections, work.ReadingErrors()))
	for _, s := range sections {
		for _, r := range s.Rows {
			assert.Positive(t, r.N, "%s: %s has no points", s.Title, r.Quantity)
			assert.NotEmpty(t, r.Source)
			assert.NotEmpty(t, r.Why, "%s: %s", s.Title, r.Quantity)
			assert.Equal(t, r.Claim == 0, strings.HasPrefix(r.Why, "none: "), "%s: %s claims %v, and says %q", s.Title, r.Quantity, r.Claim, r.Why)
			assert.False(t, math.IsNaN(r.Max) || math.IsInf(r.Max, 0) || math.IsNaN(r.RMS()), "%s: %s", s.Title, r.Quantity)
			assert.LessOrEqual(t, r.RMS(), r.Max*(1+1e-12))
			// A number that another processor might round otherwise does not
			// belong on a page that is compared byte by byte.
			for _, v := range []float64{r.Max, r.RMS()} {
				if math.Abs(v) > 1e-5 {
					assert.Equal(t, figures(v*(1-1e-9)), figures(v*(1+1e-9)), "%s: %s, %s: %v lies on a half", s.Title, r.Quantity, r.Source, v)
				}
			}
		}
	}
}

// Lines that give a table back to itself stand under Guards alone, and one
// published number is one point however many temperatures it is held at.
func TestGuardsStandApart(t *testing.T) {
	sections, err := Measure()
	require.NoError(t, err)
	before, after, found := strings.Cut(Page(sections, nil), "\n## Guards\n")
	require.True(t, found)
	for _, s := range sections {
		for _, r := range s.Rows {
			line := "| " + r.Quantity + " | " + r.Source + " | " + r.Range + " |"
			assert.Equal(t, !r.guard(), strings.Contains(before, line), "%s: %s", s.Title, r.Quantity)
			assert.Equal(t, r.guard(), strings.Contains(after, line), "%s: %s", s.Title, r.Quantity)
			if strings.Contains(r.Remark, "the table itself") || strings.Contains(r.Why, "gives itself back") {
				assert.True(t, r.guard(), "%s: %s gives a table back to itself", s.Title, r.Quantity)
			}
			if strings.Contains(r.Source, "Marsh and Richards") {
				assert.Equal(t, 1, r.N, r.Quantity)
			}
		}
	}
}

func TestFigures(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 1e-12: "0", 1.5e-6: "0.0000015", 0.00501: "0.0050", 0.0996: "0.10", 0.123: "0.12", 1.04: "1.0",
		9.96: "10", 12.4: "12", 125: "130", 1234: "1200", -0.0123: "-0.012",
	} {
		assert.Equal(t, want, figures(v))
	}
}

func TestSensitivityPage(t *testing.T) {
	subjects, err := Sensitivity()
	require.NoError(t, err)
	kept(t, "SENSITIVITY.md", SensitivityPage(subjects))
	named := map[string]effect{}
	for _, s := range subjects {
		for _, e := range s.all {
			named[s.house+" "+e.group+" "+e.name] = e
			assert.NotNil(t, e.down, "%s %s, down", e.group, e.name)
			assert.NotNil(t, e.up, "%s %s, up", e.group, e.name)
		}
	}
	// What must be so, whatever the constants: more ethanol from sugar is more
	// spirit, and starch that is reached is starch that ferments.
	yield := named["small yeast distillers-yeast ethanol-yield"]
	assert.Less(t, yield.down[byYield], -20.0)
	access := named["small model mash access-raw"]
	assert.Less(t, access.down[byYield], -20.0)
	// A drier malt is more malt; what leaks is lost; a still that returns more gives
	// stronger hearts.
	assert.Positive(t, named["malt-425 malt moisture"].down[byYield])
	assert.Negative(t, named["malt-425 stills lost in the wash still"].up[byYield])
	const heartsAbv = 4
	assert.Positive(t, named["malt-425 stills reflux of the spirit still, doubled or halved"].up[heartsAbv])
}
