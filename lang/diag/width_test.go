package diag

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What Width counts by itself is as wide as runewidth has it, alone and beside another.
func TestOneColumn(t *testing.T) {
	counted := 0
	for r := rune(0); r <= 0x10ffff; r++ {
		if !oneColumn(r) {
			continue
		}
		counted++
		s := string(r)
		if width.StringWidth(s) != 1 || width.StringWidth("a"+s+"é"+s) != 4 {
			t.Errorf("%U takes %d, and twice between letters %d", r, width.StringWidth(s), width.StringWidth("a"+s+"é"+s))
		}
	}
	assert.Greater(t, counted, 500)
	for _, of := range []struct {
		text  string
		width int
	}{{"", 0}, {"150 °F", 6}, {"a → b", 5}, {"e\u0301", 1}, {"漢字", 4}, {"a\u00adb", 2}, {"\u203c", 1}, {"a\tb", 2}, {"≥\ufe0e", 1}, {"\r\n", 0}} {
		assert.Equal(t, width.StringWidth(of.text), Width(of.text), "%q", of.text)
		assert.Equal(t, of.width, Width(of.text), "%q", of.text)
	}
}
