// Package highlight writes the highlighting of the language for editors, a
// TextMate grammar and a Vim syntax file, with the words of the checker's tables
// and the units of lang/quantity. A test fails if the files are stale; `go test
// ./editors/highlight -update` writes them anew.
//
// A highlighter reads a line at a time and knows no names, so it goes by the
// place of a word: at the start of a line without indent it declares, at the
// start of any other line or block it opens one, is a step of work, or states a
// fact; inside a line it joins values or is one of a choice.
package highlight

import (
	"regexp"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// Words are the words of the language by what an editor shows them as. A word of
// several sorts stands in the first that fits; declarations apart, which are told
// by their place.
type Words struct {
	Declarations []string // begin a line with no indent
	Blocks       []string // begin any other line, and open a block
	Steps        []string // begin a line, and are work in order
	Fields       []string // begin a line, and state a fact
	Connectives  []string // join the values of a line
	Options      []string // one of a few that may stand in a line
	Units        []string // after a number, longer ones first
}

// Gather reads the words out of the tables.
func Gather() Words {
	var w Words
	for _, f := range schema.Language.Fields {
		w.Declarations = append(w.Declarations, f.Name)
	}
	var walk func(b *schema.Block, top bool)
	walk = func(b *schema.Block, top bool) {
		for _, f := range b.Lines() {
			switch {
			case top || f.Name == "":
			case f.Block != nil:
				w.Blocks = append(w.Blocks, f.Name)
			case f.Step:
				w.Steps = append(w.Steps, f.Name)
			default:
				w.Fields = append(w.Fields, f.Name)
			}
			for _, word := range f.Words() {
				if lang.IsConnective(word) && word != "new" && word != "used" {
					w.Connectives = append(w.Connectives, word)
				} else {
					w.Options = append(w.Options, word)
				}
			}
			if f.Block != nil {
				walk(f.Block, false)
			}
		}
	}
	walk(schema.Language, true)
	w.Blocks = unique(w.Blocks, nil)
	w.Steps = unique(w.Steps, w.Blocks)
	w.Fields = unique(w.Fields, slices.Concat(w.Blocks, w.Steps))
	w.Connectives = unique(w.Connectives, nil)
	w.Options = unique(w.Options, w.Connectives)
	for _, u := range quantity.All() {
		w.Units = append(append(w.Units, u.Name), u.Aliases...)
	}
	w.Units = unique(append(w.Units, "proof gallon", "proof gallons"), nil)
	slices.SortStableFunc(w.Units, func(a, b string) int { return len(b) - len(a) })
	return w
}

// unique sorts words, and leaves out those that stand elsewhere.
func unique(words, but []string) []string {
	words = slices.Clone(words)
	slices.Sort(words)
	return slices.DeleteFunc(slices.Compact(words), func(w string) bool { return slices.Contains(but, w) })
}

// oneOf is a regular expression for any of some words, in the syntax that
// TextMate grammars share with most others.
func oneOf(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strings.ReplaceAll(regexp.QuoteMeta(w), " ", `\s+`)
	}
	return strings.Join(quoted, "|")
}
