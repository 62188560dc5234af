package season_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/season"
	"newmake/lang/record"
)

const mixed = `season "Mixed" from 2026-04-07 to 2026-05-02 {
  casks  1 of "Low Bridge" by 2026-05-02
  casks  1 of "Ferry Landing" by 2026-05-02
  make   "Low Bridge" every 1 week on tue
}
`

// TestLeftOut: a batch that cannot be computed or read is named with its lines and its run
// that was begun, and the others are planned as if nothing were asked of it.
func TestLeftOut(t *testing.T) {
	alone := problem(t, "Mixed", `season "Mixed" from 2026-04-07 to 2026-05-02 {
  casks  1 of "Ferry Landing" by 2026-05-02
}
`)
	alone.Effort, alone.Quick, alone.Runs = 20, true, nil
	want := planned(t, alone)

	begun := func(stage record.StageName) *record.Run {
		return &record.Run{Number: "26-20", Batch: "Low Bridge", Date: record.Date{Year: 2026, Month: time.April, Day: 1}, Stages: []record.Stage{{Name: stage}}, Visits: []record.Visit{{Stage: 0}}}
	}
	for _, c := range []struct {
		name   string
		breaks func(p *season.Problem)
		why    string
		runs   []string
	}{
		{"not computed", func(p *season.Problem) {
			b := *p.Batches["Low Bridge"]
			b.Ferm.DurationS = 0
			p.Batches["Low Bridge"] = &b
			p.Runs = append(p.Runs, begun(record.Mash))
		}, "ferment", []string{"26-20"}},
		{"not read", func(p *season.Problem) {
			delete(p.Batches, "Low Bridge")
			p.Unread = map[string]string{"Low Bridge": "its text has 2 errors"}
			p.Runs = append(p.Runs, begun(record.Fill)) // its casks are full: it stands in nothing
		}, "its text has 2 errors", []string{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := problem(t, "Mixed", mixed)
			p.Effort, p.Quick, p.Runs = 20, true, nil
			p.Draws = 4
			c.breaks(p)
			s, err := season.Plan(p)
			require.NoError(t, err)
			require.Len(t, s.LeftOut, 1)
			assert.Equal(t, "Low Bridge", s.LeftOut[0].Batch)
			assert.Contains(t, s.LeftOut[0].Why, c.why)
			assert.Equal(t, c.runs, s.LeftOut[0].Runs)
			assert.Equal(t, want.Runs, s.Runs)
			require.Len(t, s.Demands, 3)
			assert.Equal(t, want.Demands, s.Demands[:1])
			assert.Equal(t, season.Demanded{Batch: "Low Bridge", Wanted: season.WantedCasks, Amount: 1, By: "2026-05-02", Runs: []string{}, Limit: season.ByBatch}, s.Demands[1])
			assert.Equal(t, season.Demanded{Batch: "Low Bridge", Wanted: season.WantedMashes, Amount: 4, Runs: []string{}, Limit: season.ByBatch}, s.Demands[2])
			assert.Equal(t, want.Summary.DemandsMissed+2, s.Summary.DemandsMissed)
			assert.Zero(t, s.Odds.AllMet)
			assert.Len(t, s.Odds.Demands, 3)
			assert.Len(t, p.Asks.Casks, 2, "what is asked for is the asker's")
		})
	}

	p := problem(t, "Mixed", mixed)
	p.Batches = nil
	_, err := season.Plan(p)
	var b *season.BatchError
	assert.ErrorAs(t, err, &b, "nothing is left to be planned")
}
