//go:build !js

package tastings

import (
	"strings"

	"newmake/lang/diag"
	"newmake/lang/tree"
	"newmake/lang/vocabulary"
)

// nearly notes the words of a tasting that are nearly one of the vocabulary. A word that is
// none of it is as good as any.
func nearly(n *tree.Node, words *vocabulary.Words, diags *diag.List) {
	for _, l := range n.Lines {
		c := l.Get("remark")
		if l.Bad || c == nil {
			continue
		}
		at := c.At()
		inside := strings.Index(at.Text(), c.Text()) // it stands in quotes
		if inside < 0 {
			continue
		}
		for _, s := range words.Slips(c.Text()) {
			where := diag.Span{Src: at.Src, Start: at.Start + inside + s.Start, End: at.Start + inside + s.End}
			diags.Add(diag.Diagnostic{
				Code: diag.CodeAroma, Severity: diag.Note, At: where,
				Summary: "`" + where.Text() + "` is nearly `" + s.Word + "`, a word of `aroma " + s.Group + "`",
				Help:    "if it is meant as it stands, nothing is to be done: a note is in free words. `tastings " + s.Word + "` does not find it",
				Fix:     &diag.Fix{At: where, Text: s.Word, Label: "write `" + s.Word + "`", Guess: true},
			})
		}
	}
}
