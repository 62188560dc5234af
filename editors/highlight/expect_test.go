package highlight

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
)

// class is what an editor ought to show a piece of text as.
type class string

const (
	comment     class = "comment"
	text        class = "string"
	date        class = "date"
	clock       class = "time"
	numeral     class = "number"
	unit        class = "unit"
	dots        class = "range"
	punctuation class = "punctuation"
	declaration class = "declaration"
	block       class = "block"
	step        class = "step"
	field       class = "field"
	connective  class = "connective"
	option      class = "option"
	name        class = "name"
)

// expected is one piece of a text with its class.
type expected struct {
	start, end int
	class      class
}

// expect says what every token of a text ought to be shown as, by the lexer, the
// parser and the checker's table. It knows nothing of the highlighters.
func expect(t testing.TB, path string) (src *diag.Source, out []expected) {
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	src = diag.NewSource(path, data)
	file, list := lang.Parse(src)
	require.False(t, list.HasErrors(), path)
	words := map[int]class{}
	var units [][2]int
	var walk func(stmts []*lang.Stmt, b *schema.Block, top bool)
	walk = func(stmts []*lang.Stmt, b *schema.Block, top bool) {
		for _, s := range stmts {
			head := s.Items[0]
			f := b.Find(head.Text)
			rest := s.Items
			if head.Kind == lang.Word && f != nil {
				words[head.At.Start] = classOf(f.Name, top)
				rest = s.Items[1:]
			} else {
				f = b.Any
				if begins(head.Text) && !top {
					// A constant of a model may be called as a line of another block is;
					// what begins a line is shown by its word alone.
					words[head.At.Start] = classOf(head.Text, top)
					rest = s.Items[1:]
				}
			}
			for _, i := range rest {
				if i.Kind == lang.Word {
					words[i.At.Start] = inside(i.Text)
				}
				if !i.UnitAt().IsZero() {
					units = append(units, [2]int{i.UnitAt().Start, i.UnitAt().End})
				}
			}
			if s.Block != nil {
				require.NotNil(t, f, "%s: %s", path, head.Text)
				walk(s.Block.Stmts, f.Block, false)
			}
		}
	}
	walk(file.Stmts, schema.Language, true)
	for _, tok := range lang.Tokens(src.Text) {
		e := expected{start: int(tok.Start), end: int(tok.End)}
		inUnit := slices.ContainsFunc(units, func(u [2]int) bool { return u[0] <= e.start && e.end <= u[1] })
		switch {
		case tok.Kind == lang.TokNewline:
			continue
		case inUnit:
			e.class = unit
		case tok.Kind == lang.TokWord:
			e.class = words[e.start]
		default:
			e.class = tokenClass[tok.Kind]
		}
		require.NotEmpty(t, e.class, "%s: what is %q?", path, src.Text[e.start:e.end])
		out = append(out, e)
	}
	return src, out
}

var tokenClass = map[lang.TokenKind]class{
	lang.TokComment: comment, lang.TokString: text, lang.TokDate: date, lang.TokClock: clock, lang.TokNumber: numeral,
	lang.TokRange: dots, lang.TokComma: punctuation, lang.TokSlash: punctuation, lang.TokOpen: punctuation, lang.TokClose: punctuation,
}

// classOf is the class of a word that begins a line: one class a word, whatever
// block it stands in, for that is all that a highlighter can see.
func classOf(word string, top bool) class {
	w := Gather()
	switch {
	case top:
		return declaration
	case slices.Contains(w.Blocks, word):
		return block
	case slices.Contains(w.Steps, word):
		return step
	}
	return field
}

func begins(word string) bool {
	w := Gather()
	return slices.Contains(slices.Concat(w.Blocks, w.Steps, w.Fields), word)
}

func inside(word string) class {
	w := Gather()
	switch {
	case slices.Contains(w.Connectives, word):
		return connective
	case slices.Contains(w.Options, word):
		return option
	}
	return name
}

// examples are all files of the language that the repository shows.
func examples(t testing.TB) []string {
	var out []string
	for _, pattern := range []string{"../../examples/*/*.batch", "../../stdlib/*.batch", "../../testdata/houses/*/*.batch"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		out = append(out, found...)
	}
	require.Greater(t, len(out), 12)
	return out
}
