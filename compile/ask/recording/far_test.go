package recording

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
)

// An amount that is far from the plan is asked about as it is typed, whatever its unit; what is near is not.
func TestFar(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	line := func(what string) Line {
		for _, l := range page.Lines() {
			if strings.HasPrefix(l.What, what) {
				return l
			}
		}
		require.Fail(t, "no line", what)
		return Line{}
	}
	should := func(l Line) float64 { return l.Blanks[0].Blank.Should.Value / quantity.PoundKg }
	corn, enzyme := line("used: corn"), line("used: alpha-amylase")
	for _, c := range []struct {
		l     Line
		typed string
		want  string
	}{
		{corn, fmt.Sprintf("%.1f", 2.49*should(corn)), ""},
		{corn, fmt.Sprintf("%.1f", 2.51*should(corn)), "is 2.5 times the 537.2 lb of the plan"},
		{corn, fmt.Sprintf("%.1f", should(corn)/2.49), ""},
		{corn, fmt.Sprintf("%.1f", should(corn)/2.51), "is little beside the 537.2 lb of the plan"},
		{corn, "none", ""},
		{enzyme, "12 lb", "`12 lb` of alpha-amylase is "},
		{enzyme, "5 oz", ""},
	} {
		then, err := page.Fill(c.l, c.typed)
		require.NoError(t, err, c.typed)
		said := then.Far(page)
		if c.want == "" {
			assert.Empty(t, said, c.typed)
			continue
		}
		require.Len(t, said, 1, c.typed)
		assert.Contains(t, said[0], c.want)
		assert.Empty(t, then.Far(then), "it is said once")
	}
	then, err := page.Fill(line("ferment: pump"), "13:30 3840 gal")
	require.NoError(t, err)
	assert.Contains(t, strings.Join(then.Far(page), ""), "of the volume is 10 times the")
	then.Planned = nil
	assert.Empty(t, then.Far(page), "without a plan nothing is far from it")
}
