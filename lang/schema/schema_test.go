package schema

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestTableHoldsTogether: each shape can be read, none of its slots is called what one
// of its words is, and limits and keys are of slots that the line has.
func TestTableHoldsTogether(t *testing.T) {
	seen := map[*Field]bool{}
	var walk func(b *Block, in string)
	walk = func(b *Block, in string) {
		for _, f := range b.Lines() {
			if seen[f] {
				continue
			}
			seen[f] = true
			name := in + " " + f.Name
			slots := f.Pattern().slots(nil)
			for _, slot := range slots {
				assert.False(t, f.Pattern().KnowsWord(slot), "%s has a word and a slot called %s", name, slot)
			}
			for _, l := range f.Limits {
				assert.True(t, l.Slot == "" || slices.Contains(slots, l.Slot), "%s limits an unknown slot %s", name, l.Slot)
			}
			for _, key := range []string{f.Key, f.KeyKind} {
				assert.True(t, key == "" || slices.Contains(slots, key), "%s has an unknown key %s", name, key)
			}
			if f.Block != nil {
				walk(f.Block, name)
			}
		}
	}
	walk(Language, "")
	assert.Greater(t, len(seen), 300)
}

// slots lists the names of the shape's slots.
func (s *Shape) slots(into []string) []string {
	if s.Op == Slot {
		into = append(into, s.Slot)
	}
	for _, sub := range s.Subs {
		into = sub.slots(into)
	}
	return into
}
