package work

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

// Casks are soaked before they are filled, while the spirit settles.
func TestCasksAreSoaked(t *testing.T) {
	jobs := soaked([]Job{{}, reduce(&plan.Reduction{}, recipe.PathEntry)[0], reduce(&plan.Reduction{}, recipe.PathEntry)[1]}, plan.Cask{Casks: 2, SizeL: 200})
	require.Len(t, jobs, 4)
	soak := jobs[3]
	assert.Equal(t, "fill.settle", jobs[2].Key)
	assert.Equal(t, "fill.soak", soak.Key)
	assert.True(t, soak.Meanwhile)
	assert.InDelta(t, 35*60, soak.DurationS, 0)
	assert.InDelta(t, 20, soak.Do.Values[0].Value, 1e-9)
	assert.InDelta(t, 40, soak.Measured[0].Amount.Value, 1e-9)
	assert.Contains(t, soak.Do.Text, "the 2 casks that are to be filled")
	assert.Equal(t, []string{"soak", "roll"}, soak.Cautions, "an empty cask crushes nobody, and hot water is no steam")
}

// What a run before left goes in with this one's, and the words say which run that was.
func TestMingledWithWhatWasLeft(t *testing.T) {
	k := plan.Cask{Casks: 1, SizeL: 200, Fill: &plan.Lot{}, Before: &plan.Lot{VolumeL: 54}, BeforeOf: "2"}
	fill, ok := job(t, fillJobs(small(), k, &plan.Reduction{}), "fill.cask")
	require.True(t, ok)
	assert.Contains(t, fill.Do.Text, "Mingle it with the {} that run 2 left. Gauge again, fill one cask of {}")
	assert.InDelta(t, 54, fill.Do.Values[0].Value, 1e-9)
	k.BeforeOf = ""
	fill, _ = job(t, fillJobs(small(), k, &plan.Reduction{}), "fill.cask")
	assert.Contains(t, fill.Do.Text, "that a run before it left.")
	k.Before = nil
	fill, _ = job(t, fillJobs(small(), k, &plan.Reduction{}), "fill.cask")
	assert.True(t, strings.HasPrefix(fill.Do.Text, "Gauge again, fill one cask of {}"), fill.Do.Text)
	keep := keepForNext(plan.Cask{SizeL: 200, Before: &plan.Lot{VolumeL: 20}, BeforeOf: "2", Leftover: plan.Lot{VolumeL: 90}})
	assert.Contains(t, keep.Do.Text, "Mingle it with the {} that run 2 left. Too little for a cask of {}: put {} into")
	assert.Len(t, keep.Do.Values, 3)
}

// A soaked cask that would stand for more than a day is soaked on the day of its
// filling instead.
func TestASoakedCaskIsFilledWithinADay(t *testing.T) {
	jobs := []Job{{Task: schedule.Task{Key: "fill.reduce"}}, {Task: schedule.Task{Key: "fill.settle"}}, {Task: schedule.Task{Key: soakKey, Meanwhile: true}}, {Task: schedule.Task{Key: "fill.cask"}}, {Task: schedule.Task{Key: restKey}}}
	soaked := time.Date(2026, 2, 7, 18, 28, 0, 0, time.UTC)
	line := func(gap time.Duration) []schedule.Slot {
		return []schedule.Slot{{Task: jobs[2].Task, End: soaked}, {Task: jobs[3].Task, Start: soaked.Add(gap)}}
	}
	assert.Nil(t, soakedLate(jobs, line(24*time.Hour)))
	late := soakedLate(jobs, line(24*time.Hour+time.Minute))
	require.Len(t, late, len(jobs))
	assert.False(t, late[2].Meanwhile, "it follows the settling")
	assert.True(t, jobs[2].Meanwhile, "the work that was given stays as it is")
	assert.Nil(t, soakedLate(jobs, nil), "nothing is filled")
	assert.Nil(t, soakedLate(jobs, line(48 * time.Hour)[:1]), "it is soaked and not filled")
	assert.Nil(t, soakedLate(jobs, line(48 * time.Hour)[1:]), "it is filled and was not soaked")
	assert.NotNil(t, soakedLate(jobs[2:], line(48*time.Hour)), "the soaking is the first of the work")
}

// A cask that was weighed empty is as sure as its scale; one of the cooper's is not.
func TestGrossIsAsSureAsItsTare(t *testing.T) {
	gross := func(said bool) float64 {
		fill, ok := job(t, fillJobs(small(), plan.Cask{Casks: 1, SizeL: 200, Fill: &plan.Lot{}, NetKg: 180, TareKg: 50, GrossKg: 230, TareSaid: said}, &plan.Reduction{}), "fill.cask")
		require.True(t, ok)
		at := slices.IndexFunc(fill.Read, func(r Reading) bool { return r.What == "gross" })
		require.GreaterOrEqual(t, at, 0)
		return fill.Read[at].Besides
	}
	assert.InDelta(t, math.Hypot(Net.At(180), Tare.At(50)), gross(false), 1e-9)
	assert.InDelta(t, math.Hypot(Net.At(180), Tare.Instrument(50)), gross(true), 1e-9)
	assert.Greater(t, gross(false), 2*gross(true))
}
