package recording

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/quantity"
)

// What was typed a line too early is found where it fits; what is far from its own line and
// fits none, and what is near enough, stays.
func TestElsewhere(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	for i := range page.Planned.Blanks {
		if b := &page.Planned.Blanks[i]; b.Should.Unit == plan.Celsius {
			low, high := plan.Of(b.Should.Value-2, plan.Celsius), plan.Of(b.Should.Value+1, plan.Celsius)
			b.Low, b.High = &low, &high
		}
	}
	lines := page.Lines()
	line := func(id string) Line {
		for _, l := range lines {
			for _, r := range l.Blanks {
				if r.Blank != nil && r.Blank.ID == id {
					return l
				}
			}
		}
		require.Fail(t, "no line", id)
		return Line{}
	}
	var rest, cool Line // two lines after one another with a temperature alone, far apart
	for i := range lines[1:] {
		a, b := lines[i], lines[i+1]
		if len(a.Blanks) == 1 && len(b.Blanks) == 1 && a.Blanks[0].Blank.Should.Unit == plan.Celsius && b.Blanks[0].Blank.Should.Unit == plan.Celsius && a.Blanks[0].Blank.Should.Value-b.Blanks[0].Blank.Should.Value > 10 {
			rest, cool = a, b
			break
		}
	}
	require.NotEmpty(t, cool.What)
	warm, cold := rest.Blanks[0].Blank.Should.Value, cool.Blanks[0].Blank.Should.Value
	f := func(c float64) string { return fmt.Sprintf("10:11 %.2f C", c) }
	corn, oats := line("used.corn"), line("used.oats")
	pounds := func(l Line, times float64) string {
		return fmt.Sprintf("%.2f lb", times*l.Blanks[0].Blank.Should.Value/quantity.PoundKg)
	}
	for _, c := range []struct {
		l     Line
		typed string
		there *Line
	}{
		{rest, f(cold), &cool},
		{rest, f(cold + .99), &cool},
		{rest, f(cold - 1.99), &cool},
		{rest, f(cold + 1.01), nil}, // near no line
		{rest, f(warm - 3.99), nil}, // near enough to its own
		{rest, "none", nil},
		{rest, f(cold) + ", 5", nil}, // it cannot stand there, which is said
		{corn, pounds(oats, 1.09), &oats},
		{corn, pounds(oats, 1.11), nil},
		{corn, pounds(corn, .81), nil},
		{lines[len(lines)-1], "1", nil},
	} {
		there, ok := page.Elsewhere(c.l, c.typed)
		assert.Equal(t, c.there != nil, ok, "%s: %s", c.l.What, c.typed)
		if c.there != nil {
			assert.Equal(t, c.there.What, there.What, c.typed)
		}
	}

	// A line that is as far as twice the half of where it lies is asked about beyond that.
	low, high := plan.Of(warm-(warm-cold)/1.99, plan.Celsius), plan.Of(warm+1, plan.Celsius)
	rest.Blanks[0].Blank.Low, rest.Blanks[0].Blank.High = &low, &high
	for i := range page.Planned.Blanks {
		if page.Planned.Blanks[i].ID == rest.Blanks[0].Blank.ID {
			page.Planned.Blanks[i].Low = &low
		}
	}
	_, ok := page.Elsewhere(rest, f(cold))
	assert.False(t, ok, "1.99 times")
	wide := plan.Of(warm-(warm-cold)/2.01, plan.Celsius)
	low = wide
	_, ok = page.Elsewhere(rest, f(cold))
	assert.True(t, ok, "2.01 times")

	page.Planned = nil
	_, ok = page.Elsewhere(rest, f(cold))
	assert.False(t, ok, "without a plan")
}
