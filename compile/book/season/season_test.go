package season_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/season"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

const lantern = "../../../examples/lantern-hollow"

// problem is a season of the invented house, with a text more, and with others in what it
// has.
func problem(t testing.TB, name, text string, other ...string) *season.Problem {
	fsys := fstest.MapFS{"more.batch": {Data: []byte(text)}}
	files, err := filepath.Glob(filepath.Join(filepath.FromSlash(lantern), "*.batch"))
	require.NoError(t, err)
	seasons, err := filepath.Glob(filepath.Join(filepath.FromSlash(lantern), "seasons", "*.batch"))
	require.NoError(t, err)
	for _, f := range append(files, seasons...) {
		data, err := os.ReadFile(f)
		require.NoError(t, err)
		s := string(data)
		for i := 0; i+1 < len(other); i += 2 {
			s = strings.ReplaceAll(s, other[i], other[i+1])
		}
		fsys[filepath.Base(f)] = &fstest.MapFile{Data: []byte(s)}
	}
	h, err := check.LoadFS(fsys, "lantern", check.Options{})
	require.NoError(t, err)
	asks, list := h.Season(name)
	require.NotNil(t, asks, "%v", list)
	require.Empty(t, list)
	p := &season.Problem{Asks: asks, Batches: map[string]*recipe.Batch{}}
	for _, n := range h.RunNumbers() {
		r, list := h.Run(n)
		require.NotNil(t, r, list)
		p.Runs = append(p.Runs, r)
	}
	for _, b := range asks.Batches() {
		batch, list := h.Ready(b)
		require.NotNil(t, batch, list)
		p.Batches[b], p.Plant = batch, batch.Plant
	}
	return p
}

func planned(t *testing.T, p *season.Problem) *season.Season {
	s, err := season.Plan(p)
	require.NoError(t, err)
	keepsRules(t, p, s)
	return s
}

// TestKept: the last water of a malt mash goes into the mash after it, unless one of
// another batch comes between, or too many days; hot pot ale likewise into the preheater.
func TestKept(t *testing.T) {
	const kept = `season "Kept" from 2026-04-07 to 2026-05-16 {
  make  "Stone Ferry" on 2026-04-07, 2026-04-10, 2026-04-21
%s}
`
	p := problem(t, "Kept", fmt.Sprintf(kept, ""))
	p.Effort, p.Quick = 20, true
	none := func(s *season.Season) []bool {
		var out []bool
		for _, r := range s.Runs {
			if r.Batch == "Stone Ferry" {
				out = append(out, r.NoKept)
			}
		}
		return out
	}
	s := planned(t, p)
	assert.Equal(t, []bool{false, false, true}, none(s))
	assert.Less(t, s.Runs[2].Hearts.PureL, s.Runs[1].Hearts.PureL, "fresh water brings no extract")
	p.Asks.Today.NoKept = true
	assert.Equal(t, []bool{true, false, true}, none(planned(t, p)))
	p = problem(t, "Kept", fmt.Sprintf(kept, "  make  \"Low Bridge\" on 2026-04-09\n"))
	p.Effort, p.Quick = 200, true
	s = planned(t, p)
	require.Equal(t, 4, s.Summary.Batches)
	assert.Equal(t, []bool{false, true, true}, none(s))
}

// TestSpring: the invented house's six weeks are met, in any number of steps the same, and
// the same where nobody asks what one thing more would bring.
func TestSpring(t *testing.T) {
	p := problem(t, "Spring", "")
	p.Effort, p.Quick = 60, true
	s := planned(t, p)
	for _, d := range s.Demands {
		assert.True(t, d.Met, "%+v", d)
	}
	assert.True(t, s.Gap.Proved)
	assert.Empty(t, s.Conflicts)
	text := func(s *season.Season) string {
		out, err := json.Marshal(s)
		require.NoError(t, err)
		return string(out)
	}
	p.Effort = 60 / testflag.Every(6)
	quick := planned(t, p)
	p.Quick = false
	full := planned(t, p)
	require.NotEmpty(t, full.Bottlenecks)
	if testflag.Every(2) == 1 {
		assert.JSONEq(t, text(full), text(planned(t, p)))
	}
	full.Capacity, full.Bottlenecks, full.Effort = quick.Capacity, quick.Bottlenecks, quick.Effort
	for i := range full.Demands {
		full.Demands[i].Least = nil
	}
	assert.JSONEq(t, text(quick), text(full))
}

// TestSheets: what a run is worked from has the numbers and the hours of the season.
func TestSheets(t *testing.T) {
	p := problem(t, "Spring", "")
	p.Effort, p.Quick = 60, true
	s, sheets, err := season.Sheets(p)
	require.NoError(t, err)
	require.Len(t, sheets, len(s.Runs))
	mingled := 0
	for i, x := range sheets {
		r := s.Runs[i]
		assert.Equal(t, r.Number, x.Run)
		assert.InDelta(t, r.Hearts.ProofGallons, x.Plan.Summary.HeartsProofGal, 0.02, "run %s", r.Number)
		assert.True(t, slices.ContainsFunc(x.Plan.Plant.Vessels, func(v plan.Vessel) bool { return v.Use == "ferment" && v.Name == r.Fermenter }))
		n := 0
		for _, step := range x.Plan.Schedule.Steps {
			task, ok := key(r.Tasks, step.ID)
			if !ok {
				assert.True(t, step.ID == "fill.keep" || step.Attend == plan.Alone || strings.HasPrefix(step.ID, "ferment.round") || step.Stage == "cask", step.ID)
				continue
			}
			n++
			assert.Equal(t, task.Start, step.Start, "run %s, %s", r.Number, step.ID)
			assert.Equal(t, task.End, step.End, "run %s, %s", r.Number, step.ID)
		}
		assert.Equal(t, r.Filled, x.Plan.Schedule.End, "run %s", r.Number)
		assert.Equal(t, r.Casks, x.Plan.Cask.Casks, "run %s: the sheet fills what the season says", r.Number)
		assert.InDelta(t, r.Leftover.VolumeL, x.Plan.Cask.Leftover.VolumeL, 0.02, "run %s", r.Number)
		if assert.Equal(t, r.SpiritFrom != "", x.Plan.Cask.Before != nil, "run %s", r.Number); x.Plan.Cask.Before != nil {
			mingled++
			k := slices.IndexFunc(s.Runs, func(o season.Run) bool { return o.Number == r.SpiritFrom })
			assert.Equal(t, r.Batch, s.Runs[k].Batch)
			assert.InDelta(t, s.Runs[k].Leftover.VolumeL, x.Plan.Cask.Before.VolumeL, 0.02, "run %s takes what run %s left", r.Number, r.SpiritFrom)
			fill := x.Plan.Schedule.Steps[slices.IndexFunc(x.Plan.Schedule.Steps, func(s plan.Step) bool { return s.ID == "fill.cask" || s.ID == "fill.keep" })]
			assert.Contains(t, fill.Do.Text, "Mingle it with the {} that run "+r.SpiritFrom+" left. ", "run %s", r.Number)
		}
	}
	assert.Positive(t, mingled, "some cask takes what a run before left")
}
