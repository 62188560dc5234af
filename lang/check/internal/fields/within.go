package fields

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Within reads the ranges that hold the figures of a block 9 times in 10, by the words
// of their lines; nil if it states none.
func Within(n *tree.Node, diags *diag.List) map[string]recipe.Within {
	var out map[string]recipe.Within
	for _, l := range n.Lines {
		c := l.Get(schema.Between)
		if c == nil {
			continue
		}
		figure := figureOf(l)
		if figure == nil {
			continue
		}
		low, okLow := tree.ToSI(c.Item.Value, c.Item.Unit, figure.Kind)
		high, okHigh := tree.ToSI(c.Item.High, c.Item.Unit, figure.Kind)
		if !okLow || !okHigh {
			diags.Add(diag.Diagnostic{
				Code: diag.CodeWrongKind, At: c.At(), Summary: fmt.Sprintf("the range %s is not in the unit of %s", wording.Item(c.Item), wording.Item(figure.Item)),
				Help: "write it in the same unit, as in `starch 71.8 %, 69..74.5 %`",
			})
			continue
		}
		if figure.SI < low || figure.HighSI() > high || low == high {
			diags.Add(diag.Diagnostic{
				Code: diag.CodeOutOfRange, At: c.At(), Summary: fmt.Sprintf("%s does not lie within %s", wording.Item(figure.Item), wording.Item(c.Item)),
				Help:   "write the range that holds the figure 9 times in 10, the lower end first",
				Reason: "the second range says how sure the figure is, and the figure lies in it",
			})
			continue
		}
		if out == nil {
			out = map[string]recipe.Within{}
		}
		word := l.Field.Name
		if word == "" {
			word = l.Text("name")
		}
		out[word] = recipe.Within{Low: low, High: high}
	}
	return out
}

// figureOf is the figure of a line: the first number on it.
func figureOf(l *tree.Node) *tree.Capture {
	for i := range l.Match.Caps {
		if c := &l.Match.Caps[i]; c.Kind != quantity.None && c.Slot != schema.Between {
			return c
		}
	}
	return nil
}
