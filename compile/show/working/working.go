// Package working shows where a number of a plan comes from.
package working

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"newmake/compile/ask/why"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// Write writes an explained number as text: the working, what it came from, what
// is written about it and where, the model, and what moves it most. deeper is
// the command that tells more, or empty.
func Write(w io.Writer, a *why.Answer, bold bool, deeper string) error {
	t := answer{columns.Writer{Bold: bold}}
	t.node(a.Value, a.Batch, 0)
	if deeper != "" {
		t.Gap()
		t.Para(0, 2, "Deeper: "+deeper)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type answer struct{ columns.Writer }

// node writes one number and, below it, those that are told with it.
func (t *answer) node(n why.Node, batch string, generation int) {
	if generation > 0 {
		t.Gap()
		t.Line(strings.Repeat("-", columns.Page))
	}
	head := strings.ToUpper(n.Name) + ": " + n.Amount.Text()
	t.Strong(head + columns.Right(diag.Safe(columns.Cut(batch, 40)), max(columns.Page-columns.Width(head), 0)))
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
	t.off(n.Off)
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
func (t *answer) working(l why.Line) {
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
		parts = append(parts, strings.TrimSpace(term.Op+" "+term.Text()+" "+diag.Safe(term.What)))
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
	if line := "    " + strings.Join(parts, " ") + " " + result; columns.Width(line) <= columns.Page {
		t.Line(line)
		return
	}
	t.strip(l, result)
}

// readings writes numbers along the way, none of them parted from its moment.
func (t *answer) readings(all []why.Reading) {
	line := "   "
	for i, r := range all {
		s := " " + r.At + " " + r.Text()
		if i < len(all)-1 {
			s += ";"
		}
		if columns.Width(line)+columns.Width(s) > columns.Page {
			t.Line(line)
			line = "   "
		}
		line += s
	}
	t.Line(line)
}

// strip writes a line of working below one another, the numbers in a column.
func (t *answer) strip(l why.Line, result string) {
	numbers := 0
	for _, term := range l.Terms {
		numbers = max(numbers, columns.Width(term.Text()))
	}
	numbers = max(numbers, columns.Width(l.Result.Text()))
	for _, term := range l.Terms {
		t.Item("    "+columns.Fill(term.Op, 2)+columns.Right(term.Text(), numbers), 8+numbers, diag.Safe(term.What))
	}
	mark, value, _ := strings.Cut(result, " ")
	t.Line("    " + columns.Fill(mark, 2) + columns.Right(value, numbers))
}

func (t *answer) from(all []why.Ref) {
	if len(all) == 0 {
		return
	}
	t.Heading("FROM")
	for _, r := range all {
		note := r.Title
		if r.Note != "" {
			note += "; " + r.Note
		}
		t.Item(columns.Fill("  "+r.Name, 20)+r.Amount.Text(), 36, note)
	}
}

// inputs writes what stands in the texts, with the place at the right.
func (t *answer) inputs(all []why.Input) {
	if len(all) == 0 {
		return
	}
	t.Heading("WRITTEN")
	for _, in := range all {
		text := diag.Safe(in.Text)
		if in.Of != "" {
			text = diag.Safe(in.Of) + ": " + text
		}
		t.placed(text, at(in.File, in.Line))
		if in.Source != "" {
			t.Para(6, 6, diag.Safe(in.Source))
		}
	}
}

// at is a place in a text; the folder is known.
func at(file string, line int) string {
	if file == "" {
		return ""
	}
	return fmt.Sprintf("%s:%d", diag.Safe(filepath.Base(file)), line)
}

// placed writes a text with its place flush right.
func (t *answer) placed(text, place string) {
	text = columns.Cut("  "+text, columns.Page-2-columns.Width(place))
	t.Line(text + columns.Right(place, columns.Page-columns.Width(text)))
}

func (t *answer) moves(n why.Node) {
	t.Heading("WHAT MOVES IT MOST, each alone, all else as written")
	if len(n.Moves) == 0 {
		t.Line("  Nothing that is nudged here moves it by as much as shows.")
		return
	}
	tab := columns.Table{}
	for _, m := range n.Moves {
		change := m.Change.Text()
		if m.Change.Value > 0 {
			change = "+" + change
		}
		tab.Row(diag.Safe(m.Input)+" "+m.By+":", change, at(m.File, m.Line))
	}
	tab.Write(&t.Writer)
}

// off writes by what a reading may be off, one cause a line.
func (t *answer) off(all []why.Off) {
	if len(all) == 0 {
		return
	}
	t.Heading("A READING OF IT may be off besides, 9 times in 10 by no more than")
	for _, o := range all {
		t.Item("  "+o.By, 16, o.Why)
	}
}

// List writes what can be asked.
func List(w io.Writer, batch string, parts []why.Part, bold bool, example string) error {
	t := answer{columns.Writer{Bold: bold}}
	t.Para(0, 0, "What can be asked of "+diag.Safe(batch)+":")
	for _, p := range parts {
		t.Heading(strings.ToUpper(p.Title))
		for _, v := range p.Values {
			t.Item(columns.Fill("  "+v.Name, 24)+columns.Right(v.Amount.Text(), 16), 42, v.Title)
		}
	}
	t.Gap()
	t.Para(0, 2, "For example: "+example)
	_, err := io.WriteString(w, t.String())
	return err
}
