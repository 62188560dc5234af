package fluid

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile/accuracy/published"
)

// table reads a published table of testdata/fluid, or of another folder of
// testdata if the name has one.
func table(t testing.TB, name string) []published.Row {
	t.Helper()
	if !strings.Contains(name, "/") {
		name = "fluid/" + name
	}
	rows, err := published.Read(name)
	require.NoError(t, err)
	return rows
}

func number(t testing.TB, row published.Row, column string) float64 {
	t.Helper()
	v, err := row.Num(column)
	require.NoError(t, err)
	return v
}

// deviations gathers errors against a source, so that a test can bound and
// report the largest and the root mean square.
type deviations struct{ published.Deviations }

func (d *deviations) add(got, want float64) { d.Add(got, want) }

func (d *deviations) report(t testing.TB, what string) {
	t.Helper()
	t.Logf("%s: %d points, largest %.3g, rms %.3g", what, d.N, d.Max, d.RMS())
}

// steps calls f at n+1 even steps from a to b, the ends exactly.
func steps(a, b float64, n int, f func(v float64)) {
	for i := range n + 1 {
		f(a + (b-a)*float64(i)/float64(n))
	}
}

func fixedSeed() *rand.Rand { return rand.New(rand.NewPCG(1975, 22)) }
