package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/plan"
)

// The fermenter is cleaned while the still is heated: it stands before the heat, whose reading
// is of its end, and behind what began before.
func TestRowsRunOn(t *testing.T) {
	step := func(id, start string, read int) plan.Step {
		return plan.Step{ID: id, Start: start, Read: make([]plan.Reading, read)}
	}
	ids := func(all ...plan.Step) (out []string) {
		for _, s := range byRows(all, func(s plan.Step) bool { return s.ID != "mash.clean" }) {
			out = append(out, s.ID)
		}
		return out
	}
	charge, heat, clean := step("strip.charge", "T08:42", 3), step("strip.heat", "T09:07", 2), step("ferment.clean", "T09:07", 0)
	assert.Equal(t, []string{"strip.charge", "ferment.clean", "strip.heat"}, ids(charge, heat, clean, step("mash.clean", "T09:07", 0)))
	assert.Equal(t, []string{"strip.charge", "strip.heat", "ferment.clean"}, ids(charge, heat, step("ferment.clean", "T09:08", 0)))
	assert.Equal(t, []string{"strip.heat", "ferment.clean"}, ids(step("strip.heat", "T09:07", 0), clean), "nothing is read between")
	assert.Equal(t, []string{"strip.heat", "strip.stop"}, ids(heat, step("strip.stop", "T09:07", 0)), "the line of work keeps its order")
}
