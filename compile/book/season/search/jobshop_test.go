package search

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Job shops with a published optimum: machine and duration of each operation, a job a
// line. ft06 is of Fisher and Thompson, Probabilistic learning combinations of local
// job-shop scheduling rules, in Muth and Thompson (eds.), Industrial Scheduling (1963);
// la01 of Lawrence, Resource constrained project scheduling (1984).
var jobShops = []struct {
	name    string
	rows    string
	optimum int
}{
	{"ft06", `2 1 0 3 1 6 3 7 5 3 4 6
		1 8 2 5 4 10 5 10 0 10 3 4
		2 5 3 4 5 8 0 9 1 1 4 7
		1 5 0 5 2 5 3 3 4 8 5 9
		2 9 1 3 4 5 5 4 0 3 3 1
		1 3 3 3 5 9 0 10 4 4 2 1`, 55},
	{"la01", `1 21 0 53 4 95 3 55 2 34
		0 21 3 52 4 16 2 26 1 71
		3 39 4 98 1 42 2 31 0 12
		1 77 0 55 4 79 2 66 3 77
		0 83 3 34 2 64 1 19 4 37
		1 54 2 43 4 79 0 92 3 62
		3 69 4 77 1 87 2 87 0 93
		2 38 0 60 1 41 3 24 4 83
		3 17 1 49 4 25 0 44 2 98
		4 77 3 79 2 43 1 75 0 96`, 666},
}

func jobShop(t testing.TB, rows string) *Problem {
	p := &Problem{}
	machines := 0
	for _, row := range strings.Split(rows, "\n") {
		var job Job
		f := strings.Fields(row)
		for i := 0; i < len(f); i += 2 {
			m, err := strconv.Atoi(f[i])
			require.NoError(t, err)
			d, err := strconv.Atoi(f[i+1])
			require.NoError(t, err)
			machines = max(machines, m+1)
			a := len(p.Activities)
			p.Activities = append(p.Activities, Activity{Duration: d, Uses: []Use{{Named(m), 0, d, 1}}})
			if i > 0 {
				p.Lags = append(p.Lags, Lag{a - 1, a, p.Activities[a-1].Duration, NoMost})
			}
			job.Activities = append(job.Activities, a)
			p.Horizon += d
		}
		p.Jobs = append(p.Jobs, job)
	}
	for range machines {
		p.Resources = append(p.Resources, Resource{[]Step{{0, 1}}})
	}
	p.Costs = []Cost{{Kind: Makespan, Weight: 1}}
	require.NoError(t, p.Valid())
	return p
}

// TestPublishedOptima: the published optimum is found and proved, and no less is.
func TestPublishedOptima(t *testing.T) {
	for _, c := range jobShops {
		t.Run(c.name, func(t *testing.T) {
			p := jobShop(t, c.rows)
			greedy, ok := Greedy(p)
			require.True(t, ok)
			require.NoError(t, Check(p, greedy))
			better, ok := Improve(p, greedy, 300)
			require.True(t, ok)
			require.NoError(t, Check(p, better))
			assert.LessOrEqual(t, better.Cost[0], greedy.Cost[0], "never worse than greedy")
			proof := Exact(p, better, 20000)
			require.NotNil(t, proof.Best)
			require.NoError(t, Check(p, proof.Best))
			assert.True(t, proof.Proved)
			assert.EqualValues(t, c.optimum, proof.Best.Cost[0])
			t.Logf("greedy %d, improved %d, %d nodes", greedy.Cost[0], better.Cost[0], proof.Nodes)
		})
	}
}
