package schema

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/diag"
)

// TestEveryNumberIsLimited: each number of the language has a least and a greatest
// value, with the reason.
func TestEveryNumberIsLimited(t *testing.T) {
	seen, numbers := map[*Field]bool{}, 0
	var walk func(b *Block, in string)
	walk = func(b *Block, in string) {
		for _, f := range b.Lines() {
			if seen[f] {
				continue
			}
			seen[f] = true
			f.Pattern().visit(func(s *Shape) {
				if s.Op != Slot || !s.Kind.IsQuantity() {
					return
				}
				numbers++
				limited := false
				for _, l := range f.Limits {
					if l.Severity == diag.Error && l.Holds(s.Slot, s.Kind.Kind) {
						limited = limited || !math.IsInf(l.High, 0) && !math.IsInf(l.Low, 0) && l.Low < l.High && l.Reason != ""
					}
				}
				assert.True(t, limited, "%s %s: %s", in, f.Name, s.Slot)
			})
			if f.Block != nil {
				walk(f.Block, in+" "+f.Name)
			}
		}
	}
	walk(Language, "")
	assert.Greater(t, numbers, 100)
}
