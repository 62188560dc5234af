package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Widths of Adobe's Helvetica.afm, in thousandths: H 722, e 556, l 222, o 556, % 889.
func TestWideMM(t *testing.T) {
	assert.InDelta(t, (722+556+222+222+556)/1000.0*10*25.4/72, wideMM("Hello", 10), 1e-9)
	assert.InDelta(t, 2*wideMM("%", 9), wideMM("%", 18), 1e-9)
}

// A line is full at its width, and not a hair before.
func TestLinesOf(t *testing.T) {
	two := wideMM("corn oats", 10)
	for _, c := range []struct {
		text string
		mm   float64
		want float64
	}{
		{"", 50, 1}, {"corn oats", two + 0.01, 1}, {"corn oats", two - 0.01, 2},
		{"corn-oats", wideMM("corn-oats", 10) - 0.01, 2}, {"corn oats rye", two + 0.01, 2},
	} {
		assert.Equal(t, c.want, linesOf(c.text, 10, c.mm), "%q in %.2f mm", c.text, c.mm)
	}
}

// A list in two columns is as high as its fuller column, none of its items split.
func TestColumnsMM(t *testing.T) {
	one := blockLine + 0.5
	assert.InDelta(t, one, columnsMM([]string{"a"}), 1e-9)
	assert.InDelta(t, one, columnsMM([]string{"a", "b"}), 1e-9)
	assert.InDelta(t, 2*one, columnsMM([]string{"a", "b", "c"}), 1e-9)
}
