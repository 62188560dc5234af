package chart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/measure"
)

// What a curve says can be touched: inside the paper, from left to right (of the
// years, panel by panel), in the reader's units.
func TestTouch(t *testing.T) {
	for _, p := range plans(t) {
		for name, draw := range all {
			for u, unit := range map[measure.Units]string{measure.US: " F", measure.SI: " C"} {
				for _, c := range sizes(t, draw(p, u)) {
					if name == "days" {
						assert.Empty(t, c.Touch, "there is no curve")
						continue
					}
					assert.Greater(t, len(c.Touch), 2, p.Batch.Name+" "+name)
					for i, at := range c.Touch {
						assert.True(t, at.X >= plotLeft && at.X <= c.right(), "%s: %v", c.ID, at)
						assert.NotEmpty(t, at.Says)
						if i > 0 && name != "cask" {
							assert.GreaterOrEqual(t, at.X, c.Touch[i-1].X, name)
						}
						if name != "cask" {
							assert.True(t, strings.HasSuffix(at.Says, unit), at.Says)
						}
					}
				}
			}
		}
	}
}
