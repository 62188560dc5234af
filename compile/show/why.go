package show

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"newmake/compile/ask/why"
)

// Why writes an explained number as text: the working, what it came from, what
// is written about it and where, the model, and what moves it most. deeper is
// the command that tells more, or empty.
func Why(w io.Writer, a *why.Answer, bold bool, deeper string) error {
	t := whyText{page: page{Bold: bold}}
	t.node(a.Value, a.Batch, 0)
	if deeper != "" {
		t.Gap()
		t.Para(0, 2, "Deeper: "+deeper)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type whyText struct{ page }

// node writes one number and, below it, those that are told with it.
func (t *whyText) node(n why.Node, batch string, generation int) {
	if generation > 0 {
		t.Gap()
		t.Line(strings.Repeat("-", pageWidth))
	}
	head := strings.ToUpper(n.Name) + ": " + n.Amount.Text()
	t.Strong(head + right(safe(cut(batch, 40)), max(pageWidth-width(head), 0)))
	says := n.Title
	if n.Note != "" {
		says += "; " + n.Note
	}
	t.Para(0, 0, sentence(says))
	t.Gap()
	for _, l := range n.Work {
		t.working(l)
	}
	if n.Given {
		t.Para(2, 4, "The model gives this number whole: no sum leads to it.")
	}
	t.from(n.From)
	t.inputs(n.Inputs)
	t.Heading("MODEL")
	t.Item("  says", 11, n.Model.Says)
	t.Item("  source", 11, n.Model.Source)
	t.Item("  holds", 11, n.Model.Valid)
	t.moves(n)
	for _, c := range n.Nodes {
		t.node(c, batch, generation+1)
	}
}

func sentence(s string) string { return capital(s) + "." }

// capital begins with a capital letter, unless it begins with a sign of its own
// such as pH.
func capital(s string) string {
	if s == "" || strings.HasPrefix(s, "pH") {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// working writes one line of working, on one line of the page if it fits, else
// term by term as on a paper strip.
func (t *whyText) working(l why.Line) {
	if len(l.Terms) == 0 && len(l.Reads) == 0 {
		return
	}
	t.Para(2, 4, capital(l.Says))
	if l.Reads != nil {
		t.readings(l.Reads)
		return
	}
	var parts []string
	for _, term := range l.Terms {
		parts = append(parts, strings.TrimSpace(term.Op+" "+term.Text()+" "+safe(term.What)))
	}
	if l.Table != "" {
		t.Item("    "+strings.Join(parts, ", ")+" -> "+l.Result.Text(), 62, "("+l.Table+")")
		return
	}
	if n := l.Bracketed(); n > 0 {
		parts[0] = "(" + parts[0]
		parts[n-1] += ")"
	}
	result := "= " + l.Result.Text()
	if l.Whole {
		result = "-> " + l.Result.Text()
	}
	if line := "    " + strings.Join(parts, " ") + " " + result; width(line) <= pageWidth {
		t.Line(line)
		return
	}
	t.strip(l, result)
}

// readings writes numbers along the way, none of them parted from its moment.
func (t *whyText) readings(all []why.Reading) {
	line := "   "
	for i, r := range all {
		s := " " + r.At + " " + r.Text()
		if i < len(all)-1 {
			s += ";"
		}
		if width(line)+width(s) > pageWidth {
			t.Line(line)
			line = "   "
		}
		line += s
	}
	t.Line(line)
}

// strip writes a line of working below one another, the numbers in a column.
func (t *whyText) strip(l why.Line, result string) {
	numbers := 0
	for _, term := range l.Terms {
		numbers = max(numbers, width(term.Text()))
	}
	numbers = max(numbers, width(l.Result.Text()))
	for _, term := range l.Terms {
		t.Item("    "+fill(term.Op, 2)+right(term.Text(), numbers), 8+numbers, safe(term.What))
	}
	mark, value, _ := strings.Cut(result, " ")
	t.Line("    " + fill(mark, 2) + right(value, numbers))
}

func (t *whyText) from(all []why.Ref) {
	if len(all) == 0 {
		return
	}
	t.Heading("FROM")
	for _, r := range all {
		note := r.Title
		if r.Note != "" {
			note += "; " + r.Note
		}
		t.Item(fill("  "+r.Name, 20)+r.Amount.Text(), 36, note)
	}
}

// inputs writes what stands in the texts, with the place at the right.
func (t *whyText) inputs(all []why.Input) {
	if len(all) == 0 {
		return
	}
	t.Heading("WRITTEN")
	for _, in := range all {
		text := safe(in.Text)
		if in.Of != "" {
			text = safe(in.Of) + ": " + text
		}
		t.placed(text, at(in.File, in.Line))
		if in.Source != "" {
			t.Para(6, 6, safe(in.Source))
		}
	}
}

// at is a place in a text; the folder is known.
func at(file string, line int) string {
	if file == "" {
		return ""
	}
	return fmt.Sprintf("%s:%d", safe(filepath.Base(file)), line)
}

// placed writes a text with its place flush right.
func (t *whyText) placed(text, place string) {
	text = cut("  "+text, pageWidth-2-width(place))
	t.Line(text + right(place, pageWidth-width(text)))
}

func (t *whyText) moves(n why.Node) {
	t.Heading("WHAT MOVES IT MOST, each alone, all else as written")
	if len(n.Moves) == 0 {
		t.Line("  Nothing that is nudged here moves it by as much as shows.")
		return
	}
	tab := table{indent: 2}
	for _, m := range n.Moves {
		change := m.Change.Text()
		if m.Change.Value > 0 {
			change = "+" + change
		}
		tab.row(safe(m.Input)+" "+m.By+":", change, at(m.File, m.Line))
	}
	tab.write(&t.page)
}

// WhyList writes what can be asked.
func WhyList(w io.Writer, batch string, parts []why.Part, bold bool, example string) error {
	t := whyText{page: page{Bold: bold}}
	t.Para(0, 0, "What can be asked of "+safe(batch)+":")
	for _, p := range parts {
		t.Heading(strings.ToUpper(p.Title))
		for _, v := range p.Values {
			t.Item(fill("  "+v.Name, 24)+right(v.Amount.Text(), 16), 42, v.Title)
		}
	}
	t.Gap()
	t.Para(0, 2, "For example: "+example)
	_, err := io.WriteString(w, t.String())
	return err
}
