package learntest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

const lantern = "../../../../examples/lantern-hollow"

func ferryLanding(t *testing.T) *recipe.Batch {
	h, err := check.Load(filepath.FromSlash(lantern), check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	return b
}

// The runs of the example are what History makes. What happened in a house does not change when
// a model does: so they stay as they are while the model of today gives each reading to within
// what it is read to, and -update writes them anew where it no longer does.
func TestHistoryIsTheExamples(t *testing.T) {
	_, text, err := History(ferryLanding(t))
	require.NoError(t, err)
	path := filepath.Join(filepath.FromSlash(lantern), "runs", "2026.batch")
	kept, err := os.ReadFile(path)
	require.NoError(t, err)
	err = apart(string(kept), string(text))
	if err != nil && testflag.Update() {
		require.NoError(t, os.WriteFile(path, text, 0o644))
		return
	}
	require.NoError(t, err, "go test ./compile/ask/learn/learntest -update writes the runs anew")
	assert.Equal(t, 6, strings.Count(string(kept), "mash in"))
}

// readTo is how well a figure is read, by its unit: about a standard deviation of what a small
// house's instruments are good for.
var readTo = map[string]func(x float64) float64{
	"gal": func(x float64) float64 { return max(.01*x, .1) },
	"%":   func(float64) float64 { return .3 },
	"SG":  func(float64) float64 { return .0006 },
	"F":   func(float64) float64 { return 1 },
}

const clockTo = 3 * time.Minute

// apart says where two histories tell of different things, or of figures that lie further apart
// than they are read to.
func apart(a, b string) error {
	was, is := strings.Split(a, "\n"), strings.Split(b, "\n")
	if len(was) != len(is) {
		return fmt.Errorf("%d lines, not %d", len(is), len(was))
	}
	for i := range was {
		v, w := strings.Fields(was[i]), strings.Fields(is[i])
		if len(v) != len(w) {
			return fmt.Errorf("line %d: %q, not %q", i+1, is[i], was[i])
		}
		for k := range v {
			if v[k] == w[k] {
				continue
			}
			unit := ""
			if k+1 < len(v) {
				unit = strings.Trim(v[k+1], ",")
			}
			if !alike(v[k], w[k], unit) {
				return fmt.Errorf("line %d: %q, not %q: %s is far from %s", i+1, is[i], was[i], w[k], v[k])
			}
		}
	}
	return nil
}

func alike(a, b, unit string) bool {
	if s, err := time.Parse("15:04", a); err == nil {
		u, err := time.Parse("15:04", b)
		return err == nil && s.Sub(u).Abs() <= clockTo
	}
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	to := readTo[unit]
	return errX == nil && errY == nil && to != nil && math.Abs(x-y) <= to(x)*(1+1e-9)
}

// What is told apart, on both sides of each limit.
func TestApart(t *testing.T) {
	line := "    07:15 to hearts 3.5 gal at 68 F, 60.2 % abv at 68 F, 1.0500 SG"
	for _, c := range []struct {
		from, to string
		same     bool
	}{
		{"07:15", "07:18", true},
		{"07:15", "07:19", false},
		{"3.5 gal", "3.6 gal", true},
		{"3.5 gal", "3.7 gal", false},
		{"60.2 %", "60.5 %", true},
		{"60.2 %", "60.6 %", false},
		{"1.0500", "1.0506", true},
		{"1.0500", "1.0507", false},
		{"at 68 F,", "at 69 F,", true},
		{"at 68 F,", "at 70 F,", false},
		{"hearts", "tails", false},
		{" SG", " SG, 5.3 pH", false},
		{" SG", " SG\n", false},
	} {
		other := strings.Replace(line, c.from, c.to, 1)
		require.NotEqual(t, line, other)
		assert.Equal(t, c.same, apart(line, other) == nil, "%s for %s", c.to, c.from)
	}
	assert.NoError(t, apart(line, line))
}

// The history can be read, and each run charges the feints that the run before it left.
func TestHistoryIsRead(t *testing.T) {
	h, err := check.Load(filepath.FromSlash(lantern), check.Options{})
	require.NoError(t, err)
	require.Subset(t, h.RunNumbers(), []string{"26-01", "26-02", "26-03", "26-04", "26-05", "26-06"})
	for _, n := range h.RunNumbers() {
		run, list := h.Run(n)
		require.NotNil(t, run)
		assert.False(t, list.HasErrors(), list.Error())
	}
}
