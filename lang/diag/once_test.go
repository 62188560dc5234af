package diag

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Of two that point at one another the first is kept; what only looks like it stays.
func TestOnce(t *testing.T) {
	src := NewSource("a.batch", []byte("one two three"))
	at := func(start, end int) Span { return Span{Src: src, Start: start, End: end} }
	d := func(code Code, own, other Span) Diagnostic {
		return Diagnostic{Code: code, At: own, Summary: "taken", Related: []Related{{At: other}}}
	}
	a, b, c := at(0, 3), at(4, 7), at(8, 13)
	assert.Equal(t, List{d("NM0202", a, b)}, List{d("NM0202", a, b), d("NM0202", b, a)}.Once())
	third := List{d("NM0202", a, b), d("NM0202", b, a), d("NM0202", c, a)}
	assert.Equal(t, List{third[0], third[2]}, third.Once(), "a third of the name is another cause")
	other := List{d("NM0202", a, b), d("NM0203", b, a)}
	assert.Equal(t, other, other.Once())
	alone := List{{Code: "NM0202", At: a, Summary: "taken"}, {Code: "NM0202", At: b, Summary: "taken"}}
	assert.Equal(t, alone, alone.Once())
}
