package lsp

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// Many changes in one message come to what one after the other comes to, each found in the
// text anew, whatever ends the lines.
func TestManyChangesAreMadeOneAfterTheOther(t *testing.T) {
	pieces := []string{"", "a", "°", "𝛼", "\n", "\r", "\r\n", "batch", "\n\n", "x\ry"}
	rng := rand.New(rand.NewPCG(1, 10))
	piece := func(n int) string {
		var b strings.Builder
		for range rng.IntN(n) {
			b.WriteString(pieces[rng.IntN(len(pieces))])
		}
		return b.String()
	}
	changed := 0
	for range 300 {
		u, mark := units{utf8: rng.IntN(2) == 0}, ""
		if rng.IntN(3) == 0 {
			mark = string(byteOrderMark)
		}
		text := mark + piece(20)
		e := newEditing(u, []byte(text))
		for range 30 {
			at := span{position{rng.IntN(8) - 1, rng.IntN(6)}, position{rng.IntN(8), rng.IntN(6)}}
			to := piece(4)
			src := diag.NewSource("a.batch", []byte(text))
			start := u.offset(src, mark != "", at.Start)
			end := max(start, u.offset(src, mark != "", at.End))
			was := text
			text = mark + string(src.Text[:start]) + to + string(src.Text[end:])
			e.change(&at, to)
			require.Equal(t, text, string(e.whole()), "%q, %v, %q", was, at, to)
			if text != was {
				changed++
			}
		}
	}
	assert.Greater(t, changed, 3000)
}

func BenchmarkManyChanges(b *testing.B) {
	text := []byte(strings.Repeat("  rest 30 min\n", 100_000))
	for b.Loop() {
		e := newEditing(units{}, text)
		for i := range 3000 {
			e.change(&span{position{i * 30, 7}, position{i * 30, 9}}, "45")
		}
	}
}
