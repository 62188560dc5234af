package chart

import (
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/internal/plantest"
	"newmake/lang/check"
	"newmake/lang/testflag"
)

func plans(t *testing.T) []*plan.Plan {
	t.Helper()
	h, err := check.Load(filepath.Join("../../..", "examples/lantern-hollow"), check.Options{})
	require.NoError(t, err)
	var out []*plan.Plan
	for i, name := range h.Batches() {
		if i%testflag.Every(3) != 0 {
			continue
		}
		out = append(out, plantest.Plan(t, plantest.Lantern, name))
	}
	return out
}

var all = map[string]func(*plan.Plan, measure.Units) Chart{
	"days": Days, "mash": bare(Mash), "ferment": bare(Ferment), "strip": bare(Strip), "spirit": bare(Spirit), "cask": Cask,
}

// bare is a picture without readings.
func bare(draw func(*plan.Plan, measure.Units, ...Taken) Chart) func(*plan.Plan, measure.Units) Chart {
	return func(p *plan.Plan, u measure.Units) Chart { return draw(p, u) }
}

// Spirit that fills no cask is not in wood.
func TestDaysSayWhatIsInWood(t *testing.T) {
	p := plans(t)[0]
	require.Positive(t, p.Cask.Casks)
	assert.Contains(t, Days(p, measure.US).Desc, "The spirit is in wood by ")
	p.Cask.Casks = 0
	assert.Contains(t, Days(p, measure.US).Desc, "All is done by ")
	assert.NotContains(t, Days(p, measure.US).Desc, "in wood")
}

// Whatever is drawn lies on the paper, has a name and says in words what it
// shows.
func TestInsideThePaper(t *testing.T) {
	for _, p := range plans(t) {
		for name, draw := range all {
			for _, u := range []measure.Units{measure.US, measure.SI} {
				for _, c := range sizes(t, draw(p, u)) {
					require.NotEmpty(t, c.ID, name)
					assert.NotEmpty(t, c.Title)
					assert.Greater(t, len(c.Desc), 40, name)
					for _, m := range c.Marks {
						inside(t, p.Batch.Name+" "+c.ID, c, m)
					}
				}
			}
		}
	}
}

// Readings are marked, on the paper, wherever they lie; and make no difference to what else
// a picture says.
func TestTakenIsInsideThePaper(t *testing.T) {
	draws := map[string]func(*plan.Plan, measure.Units, ...Taken) Chart{"mash": Mash, "ferment": Ferment, "strip": Strip, "spirit": Spirit}
	for _, p := range plans(t) {
		first, _ := find(p, p.Mash.Steps[0].ID)
		start := plan.Moment(first.Start)
		var taken []Taken
		for _, h := range []float64{-2, 0, 3, 400} {
			for _, of := range []string{"gravity", "temperature", "spout", "vapour", "flow"} {
				for _, v := range []float64{0.9, 1.2, 60, 120} {
					taken = append(taken, Taken{Of: of, Clock: start.Add(time.Duration(h * float64(time.Hour))), Hours: max(h, 0), OverL: max(h, 0), Value: v, Off: v > 100})
				}
			}
		}
		for name, draw := range draws {
			for _, u := range []measure.Units{measure.US, measure.SI} {
				for _, c := range sizes(t, draw(p, u, taken...)) {
					crosses := 0
					for _, m := range c.Marks {
						inside(t, p.Batch.Name+" "+c.ID, c, m)
						if m.Class == "taken" {
							crosses++
						}
					}
					of := map[string]int{"mash": 1, "ferment": 2, "strip": 3, "spirit": 3}[name]
					assert.Equal(t, of*(16+4), crosses, name)
					assert.Contains(t, c.Desc, "not what it should be")
				}
			}
		}
	}
}

// sizes are a picture as it is on paper and on a narrow screen.
func sizes(t *testing.T, c Chart) []Chart {
	t.Helper()
	require.NotNil(t, c.Narrow, c.ID)
	assert.Equal(t, []int{width, narrowWidth}, []int{c.W, c.Narrow.W})
	assert.Equal(t, []string{" wide", " narrow"}, []string{c.Kind(), c.Narrow.Kind()})
	return []Chart{c, *c.Narrow}
}

func inside(t *testing.T, where string, c Chart, m Mark) {
	t.Helper()
	if m.Shape == "path" {
		numbers := strings.FieldsFunc(m.D, func(r rune) bool { return strings.ContainsRune("MLZ ", r) })
		for i, s := range numbers {
			v, err := strconv.ParseFloat(s, 64)
			require.NoError(t, err)
			most := float64([2]int{c.W, c.H}[i%2])
			assert.True(t, v >= -0.1 && v <= most+0.1, "%s: %s is off the paper of %d x %d: %s", where, m.Class, c.W, c.H, s)
		}
		return
	}
	x, err := strconv.ParseFloat(m.X, 64)
	require.NoError(t, err)
	y, err := strconv.ParseFloat(m.Y, 64)
	require.NoError(t, err)
	w, left := wide(m.Text), x
	switch {
	case m.Turn:
		y, left, w = y+w/2, x, 0
		assert.GreaterOrEqual(t, y-wide(m.Text), -2.0, "%s: %q", where, m.Text)
	case m.Anchor == "middle":
		left = x - w/2
	case m.Anchor == "end":
		left = x - w
	}
	assert.True(t, left >= -4 && left+w <= float64(c.W)+4 && y >= 0 && y <= float64(c.H), "%s: %q runs off the paper", where, m.Text)
}

// Nothing to draw is no chart, and no panic.
func TestEmpty(t *testing.T) {
	for name, draw := range all {
		assert.Empty(t, draw(&plan.Plan{}, measure.US).ID, name)
	}
}

func TestTicks(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     int
		step     float64
	}{{0, 100, 10, 10}, {0, 93, 10, 10}, {58, 192, 7, 20}, {0.9995, 1.067, 4, 0.02}, {0, 9.4, 4, 5}, {1, 1, 5, 1}} {
		assert.InDelta(t, c.step, step(c.from, c.to, c.want), 1e-9)
	}
	a, b := round(58, 192, 20)
	assert.Equal(t, []float64{40, 200}, []float64{a, b})
	assert.Len(t, ticks(40, 200, 20), 9)
	assert.Equal(t, 2, places(0.02))
	assert.Equal(t, 0, places(20))
}

// Flags never lie on one another, and an earlier one goes above a later one.
func TestRows(t *testing.T) {
	flags := []flag{{60, "water"}, {88, "backset"}, {90, "alpha-amylase"}, {90, "corn"}, {300, "oats, rye"}, {690, "distillers-malt"}}
	row, start, n := rows(flags, 60, 700)
	assert.Equal(t, []int{3, 2, 1, 0, 0, 0}, row)
	assert.Equal(t, 4, n)
	for i := range flags {
		for j := range flags[:i] {
			if row[i] == row[j] {
				assert.LessOrEqual(t, start[j]+wide(flags[j].text), start[i])
			}
		}
		assert.LessOrEqual(t, start[i]+wide(flags[i].text), 700.0)
	}
}

// What stands beside the dots of a run keeps off the curve, the axes and the
// other values.
func TestRunNotesClear(t *testing.T) {
	for _, p := range plans(t) {
		for _, u := range []measure.Units{measure.US, measure.SI} {
			for name, draw := range map[string]func(*plan.Plan, measure.Units) Chart{"strip": bare(Strip), "spirit": bare(Spirit)} {
				for _, c := range sizes(t, draw(p, u)) {
					var boxes []box
					for _, m := range c.Marks {
						if m.Class != "label" {
							continue
						}
						x, err := strconv.ParseFloat(m.X, 64)
						require.NoError(t, err)
						y, err := strconv.ParseFloat(m.Y, 64)
						require.NoError(t, err)
						b := box{x, y - noteRise, x + wide(m.Text), y}
						where := p.Batch.Name + " " + name + " " + m.Text
						assert.Greater(t, b.left, float64(plotLeft)+3, where)
						assert.Less(t, b.right, c.right(), where)
						for _, o := range boxes {
							assert.False(t, b.meets(o), where)
						}
						boxes = append(boxes, b)
					}
					require.NotEmpty(t, boxes)
					for _, m := range c.Marks {
						if m.Class != "line" {
							continue
						}
						at := strings.FieldsFunc(m.D, func(r rune) bool { return strings.ContainsRune("MLZ ", r) })
						for i := 0; i+1 < len(at); i += 2 {
							x, _ := strconv.ParseFloat(at[i], 64)
							y, _ := strconv.ParseFloat(at[i+1], 64)
							for _, b := range boxes {
								assert.False(t, b.meets(box{x - 1, y - 1, x + 1, y + 1}), "%s %s: the curve strikes %v", p.Batch.Name, name, b)
							}
						}
					}
				}
			}
		}
	}
}
