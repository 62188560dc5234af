package tree

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// TestLimits holds a value at each end of every limit of the language, and one just
// beyond it: the first is let pass, and of the second it is said what is allowed, or
// what is usual, and why. A range is held so by each of its ends.
func TestLimits(t *testing.T) {
	number := &items(t, "1")[0]
	tried := 0
	try := func(what string, f *schema.Field, l schema.Limit, slot string, k quantity.Kind) {
		said := func(low, high float64) (own, any bool) {
			var list diag.List
			n := &Node{Field: f, Match: Match{Caps: []Capture{{Slot: slot, Item: number, Kind: k, SI: low, high: high}}}}
			shaper{diags: &list}.limits(n)
			require.LessOrEqual(t, len(list), 1, what)
			for _, d := range list {
				any = true
				if d.Reason != l.Reason || d.Severity != l.Severity {
					continue
				}
				own = true
				code, verb := diag.CodeOutOfRange, "allowed: "
				if d.Severity != diag.Error {
					code, verb = diag.CodeUnusual, "usual: "
				}
				assert.Equal(t, code, d.Code, what)
				assert.Contains(t, d.Help, verb, what)
			}
			assert.Equal(t, list.HasErrors(), n.Bad, what)
			return own, any
		}
		below, above := math.Nextafter(l.Low, math.Inf(-1)), math.Nextafter(l.High, math.Inf(1))
		for _, within := range [][2]float64{{l.Low, l.Low}, {l.High, l.High}, {l.Low, l.High}} {
			own, _ := said(within[0], within[1])
			assert.False(t, own, "%s: %g to %g", what, within[0], within[1])
		}
		// Beyond a limit a narrower one may speak first, which stands before it.
		for _, beyond := range [][2]float64{{below, below}, {above, above}, {below, l.High}, {l.Low, above}} {
			own, any := said(beyond[0], beyond[1])
			assert.True(t, any, "%s: %g to %g", what, beyond[0], beyond[1])
			assert.True(t, own || narrower(f, l, slot, k, beyond), "%s: %g to %g", what, beyond[0], beyond[1])
		}
		tried++
	}
	seen := map[*schema.Field]bool{}
	var walk func(b *schema.Block, in string)
	walk = func(b *schema.Block, in string) {
		fields := b.Fields
		if b.Any != nil {
			fields = append(fields[:len(fields):len(fields)], b.Any)
		}
		for _, f := range fields {
			if seen[f] {
				continue
			}
			seen[f] = true
			for i, l := range f.Limits {
				used := false
				for _, s := range f.Slots() {
					kinds := []quantity.Kind{s.Kind}
					if s.Type == "QUANTITY" { // one of any kind
						kinds = kinds[:0]
						for k := quantity.Number; k.String() != "an unknown kind"; k++ {
							kinds = append(kinds, k)
						}
					}
					for _, k := range kinds {
						if k != quantity.None && l.Holds(s.Name, k) {
							used = true
							try(fmt.Sprintf("%s %s, %s as %s, limit %d", in, f.Name, s.Name, k, i), f, l, s.Name, k)
						}
					}
				}
				assert.True(t, used, "%s %s: limit %d holds nothing", in, f.Name, i)
			}
			if f.Block != nil {
				walk(f.Block, in+" "+f.Name)
			}
		}
	}
	walk(schema.Language, "")
	assert.Greater(t, tried, 200)
}

// narrower reports whether a limit before l is broken too.
func narrower(f *schema.Field, l schema.Limit, slot string, k quantity.Kind, v [2]float64) bool {
	for _, x := range f.Limits {
		if x == l {
			return false
		}
		if x.Holds(slot, k) && !(v[0] >= x.Low && v[1] <= x.High) {
			return true
		}
	}
	return false
}

// A range that begins above its end is that and nothing else.
func TestRangeTurned(t *testing.T) {
	line := items(t, "5..4 C")
	require.Equal(t, lang.Range, line[0].Kind)
	var list diag.List
	n := &Node{Field: schema.Language.Fields[0], Match: Match{Caps: []Capture{{Item: &line[0], Kind: quantity.Temperature, SI: 5, high: 4}}}}
	shaper{diags: &list}.limits(n)
	require.Len(t, list, 1)
	assert.Equal(t, diag.CodeRangeTurned, list[0].Code)
	assert.True(t, n.Bad)
	list, n.Match.Caps[0].high = nil, 5
	shaper{diags: &list}.limits(n)
	assert.Empty(t, list)
}
