package fluid

import (
	"encoding/csv"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// table reads a published table of testdata/fluid. The first line, a comment,
// names its source; the next, the columns.
func table(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "fluid", name))
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(records), 1, "%s has no rows", name)
	rows := make([]map[string]string, 0, len(records)-1)
	for _, rec := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = rec[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t testing.TB, row map[string]string, column string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[column], 64)
	require.NoError(t, err, "column %s", column)
	return v
}

// deviations gathers errors against a source, so that a test can bound and
// report the largest and the root mean square.
type deviations struct {
	n        int
	max, sum float64
}

func (d *deviations) add(got, want float64) {
	e := math.Abs(got - want)
	d.n, d.max, d.sum = d.n+1, math.Max(d.max, e), d.sum+e*e
}

func (d *deviations) report(t testing.TB, what string) {
	t.Helper()
	t.Logf("%s: %d points, largest %.3g, rms %.3g", what, d.n, d.max, math.Sqrt(d.sum/float64(d.n)))
}

// steps calls f at n+1 even steps from a to b, the ends exactly.
func steps(a, b float64, n int, f func(v float64)) {
	for i := range n + 1 {
		f(a + (b-a)*float64(i)/float64(n))
	}
}

func fixedSeed() *rand.Rand { return rand.New(rand.NewPCG(1975, 22)) }
