// Package learned reads and writes what a house has learned of its plant from its runs: the
// block that `newmake learn --write` writes. It is read from its tree here, and
// written as its text.
package learned

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// FileName is the file that the blocks of a house stand in.
const FileName = "learned.batch"

// Of reads what was learned of a plant; nil if nothing was. What is wrong with the text
// is in the list, and then nothing is read.
func Of(h *house.House, plant string) (*recipe.Learned, diag.List) {
	d := h.Learned(plant)
	if d == nil {
		return nil, nil
	}
	n := d.Node()
	list := append(diag.List{}, d.Said()...)
	tree.Missing(&list, n, fmt.Sprintf("what was learned of %q", d.Name))
	if list.HasErrors() || n.Bad {
		return nil, list
	}
	l := &recipe.Learned{Plant: d.Name, On: n.Text("date"), Model: int(n.SI("model")), At: n.At()}
	for _, line := range n.All("from") {
		for _, c := range line.Match.All("run") {
			l.From = append(l.From, c.Text())
		}
	}
	for _, line := range n.All("without") {
		l.Without = append(l.Without, recipe.Left{Run: line.Text("run"), Why: line.Text("why")})
	}
	for _, line := range n.All("together") {
		l.Together = append(l.Together, recipe.Pair{
			One: [2]string{line.Text("one"), line.Text("oneof")}, Two: [2]string{line.Text("two"), line.Text("twoof")}, Correlation: line.Num("by"),
		})
	}
	for _, line := range n.All("") {
		c := recipe.LearnedConstant{ID: line.Text("name"), Of: line.Text("whose"), At: line.At()}
		c.SI, c.BaseSI = line.Num("quantity"), line.Num("base")
		if b := line.Get("between"); b != nil {
			c.LowSI, c.HighSI = b.SI, b.HighSI()
		}
		l.Constants = append(l.Constants, c)
	}
	return l, list
}

// Text is the block of a plant as it is written, not laid out yet.
func Text(l *recipe.Learned) string {
	var b strings.Builder
	fmt.Fprintf(&b, "learned %s on %s {\n", strconv.Quote(l.Plant), l.On)
	fmt.Fprintf(&b, "  model %d\n", l.Model)
	fmt.Fprintf(&b, "  from %s\n", strings.Join(quoted(l.From), ", "))
	for _, w := range l.Without {
		fmt.Fprintf(&b, "  without %q", w.Run)
		if w.Why != "" {
			fmt.Fprintf(&b, " because %q", w.Why)
		}
		b.WriteByte('\n')
	}
	for _, c := range l.Constants {
		fmt.Fprintf(&b, "  %s %s\n", written(c.ID, c.Of), c.Text)
	}
	for _, p := range l.Together {
		fmt.Fprintf(&b, "  together %s, %s, %s\n", written(p.One[0], p.One[1]), written(p.Two[0], p.Two[1]), strconv.FormatFloat(p.Correlation, 'f', 2, 64))
	}
	b.WriteString("}\n")
	return b.String()
}

// written is a constant's name as it is written.
func written(id, of string) string {
	switch {
	case of == "":
		return id
	case bare(of):
		return id + " of " + of
	}
	return id + " of " + strconv.Quote(of)
}

// bare reports whether a name may stand without quotes.
func bare(name string) bool {
	for i, r := range name {
		if !(r >= 'a' && r <= 'z' || i > 0 && (r == '-' || r >= '0' && r <= '9')) {
			return false
		}
	}
	return name != ""
}

func quoted(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = strconv.Quote(n)
	}
	return out
}

// Only reports whether a text holds nothing but what was learned of a plant: it may be written
// anew as a whole.
func Only(text []byte, plant string) bool {
	file, list := lang.Parse(diag.NewSource(FileName, text))
	if list.HasErrors() {
		return false
	}
	for _, s := range file.Stmts {
		if len(s.Items) < 2 || s.Items[0].Text != "learned" || tree.Key(s.Items[1].Text) != tree.Key(plant) {
			return false
		}
	}
	return true
}
