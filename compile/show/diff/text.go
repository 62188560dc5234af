package diff

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// Text writes the document for a terminal of 80 columns.
func Text(w io.Writer, d *compare.Document, o Options) error {
	p := &page{Bold: o.Bold}
	shown, loose := parts(d)
	for _, s := range loose {
		p.Para(0, 2, s)
	}
	for i, c := range shown {
		if i > 0 || len(loose) > 0 {
			p.Line("")
			p.Line(strings.Repeat("-", pageWidth))
		}
		text{p, c, o}.write()
	}
	_, err := io.WriteString(w, p.String())
	return err
}

// text is one comparison on its page.
type text struct {
	*page
	c *compare.Comparison
	o Options
}

func (t text) write() {
	t.Strong(title(t.c))
	t.Para(2, 4, "old: "+diag.Safe(t.c.Old.Label))
	t.Para(2, 4, "new: "+diag.Safe(t.c.New.Label))
	t.Gap()
	for _, l := range columns.Wrap(headline(t.c), pageWidth-2) {
		t.Strong("  " + l)
	}
	t.bill()
	t.edits()
	t.schedule()
	t.words()
	t.why()
	t.outcome()
	t.Line("")
	t.Strong(headline(t.c))
}

func (t text) bill() {
	if len(t.c.Bill) == 0 {
		return
	}
	t.Heading("GRAIN BILL")
	tab := columns.Table{}
	tab.Row("", "old", "", "new", "", "points")
	var old, new float64
	for _, r := range t.c.Bill {
		change := ""
		if measure.Number(r.Points, 2) != "0.00" {
			change = signed(r.Points, 2)
		}
		tab.Row(diag.Safe(r.Grain), grain(t.c.Units, r.OldKg), share(r.OldPct), grain(t.c.Units, r.NewKg), share(r.NewPct), change)
		old, new = old+r.OldKg, new+r.NewKg
	}
	tab.Row("in all", grain(t.c.Units, old), "", grain(t.c.Units, new))
	tab.Write(t.page)
}

func grain(units string, kg float64) string {
	if kg == 0 {
		return "-"
	}
	return mass(units, kg)
}

func share(pct float64) string {
	if pct == 0 {
		return "-"
	}
	return measure.Number(pct, 2) + " %"
}

// edits lists what changed, part by part.
func (t text) edits() {
	if len(t.c.Edits) == 0 && len(t.c.Notes) == 0 {
		return
	}
	t.Heading("CHANGES")
	part := compare.Part("")
	for _, e := range t.c.Edits {
		head := fill("", 9)
		if e.Part != part {
			head = fill(string(e.Part), 9)
		}
		part = e.Part
		what, values := words(e)
		t.hang("  "+head, marks[e.Kind]+" "+what)
		for _, v := range values {
			t.hang(fill("", 15), v)
		}
	}
	for _, n := range t.c.Notes {
		t.hang("  "+fill("", 9), "= "+diag.Safe(n))
	}
}

// hang writes a head and the text beside it, which wraps in its own column.
func (t text) hang(head, words string) {
	at := width(head)
	for i, l := range wrap(words, pageWidth-at-2) {
		if i == 0 {
			t.Line(head + l)
		} else {
			t.Line(strings.Repeat(" ", at+2) + l)
		}
	}
}

func (t text) schedule() {
	all := moved(t.c)
	if len(all) == 0 {
		return
	}
	t.Heading("SCHEDULE")
	tab := columns.Table{Left: map[int]bool{1: true, 2: true, 3: true}}
	for _, m := range all {
		tab.Row(m.Name, clock(m.Old), clock(m.New), hours(m))
	}
	tab.Write(t.page)
}

func (t text) words() {
	if len(t.c.Gained)+len(t.c.Lost) == 0 {
		return
	}
	t.Heading("LAW AND WARNINGS")
	say := func(mark string, all []compare.Word) {
		for _, w := range all {
			head := w.Severity
			if w.Code != "" {
				head += " " + w.Code
			}
			t.hang("  "+mark+" ", head+": "+diag.Safe(w.Text))
		}
	}
	say("+", t.c.Gained)
	say("-", t.c.Lost)
}

func (t text) why() {
	w := t.c.Why
	if w == nil || len(w.Each) == 0 {
		return
	}
	if len(w.Edits) == 1 {
		t.Heading("WHY")
		t.Para(2, 4, fmt.Sprintf("All of it comes of one edit: %s.", diag.Safe(w.Edits[0])))
		return
	}
	t.Heading("WHY")
	each := mainWhy(t.c, t.o.AllWhy)
	for i := 0; i < len(each); i += mainMost {
		if i > 0 {
			t.Line("")
		}
		t.matrix(each[i:min(i+mainMost, len(each))])
	}
	t.Para(2, 2, howFar(w))
}

// headWidth is how wide an outcome's name is at the head of a column: as wide as its numbers
// with their tolerances, so that four columns fit a page.
const headWidth = 12

// matrix shows the parts of a few outcomes side by side.
func (t text) matrix(each []compare.WhyOutcome) {
	tab := columns.Table{}
	cells := func(head string, of func(o compare.WhyOutcome) string) {
		row := []string{head}
		for _, o := range each {
			row = append(row, of(o))
		}
		tab.Row(row...)
	}
	heads := make([][]string, len(each))
	most := 0
	for i, o := range each {
		heads[i] = columns.Wrap(o.Name, headWidth)
		most = max(most, len(heads[i]))
	}
	for line := range most {
		row := []string{""}
		for _, h := range heads {
			if i := line - (most - len(h)); i >= 0 { // on the last lines
				row = append(row, h[i])
			} else {
				row = append(row, "")
			}
		}
		tab.Row(row...)
	}
	cells("", func(o compare.WhyOutcome) string { return o.Unit })
	longest := each[0]
	for _, o := range each {
		if len(o.Parts) > len(longest.Parts) {
			longest = o
		}
	}
	for i, p := range longest.Parts {
		cells(diag.Safe(p.Edit), func(o compare.WhyOutcome) string {
			if i >= len(o.Parts) {
				return ""
			}
			s := signed(o.Parts[i].Part, o.Places)
			if o.Parts[i].Error > 0 {
				s += " +/- " + measure.Number(o.Parts[i].Error, o.Places)
			}
			return s
		})
	}
	cells("all together", func(o compare.WhyOutcome) string { return signed(o.Change, o.Places) })
	cells("of this, interaction", func(o compare.WhyOutcome) string { return signed(o.Interaction, o.Places) })
	tab.Write(t.page)
}

func (t text) outcome() {
	all := changed(t.c)
	if len(all) == 0 {
		return
	}
	t.Heading("OUTCOME")
	tab := columns.Table{Left: map[int]bool{3: true}}
	for _, o := range told(t.c) {
		tab.Row(o.Name, number(o, o.Old), number(o, o.New), o.Unit, signed(o.Change, o.Places))
	}
	tab.Write(t.page)
	if s := unpriced(t.c); s != "" {
		t.Para(2, 4, diag.Safe(s))
	}
	if s := folded(t.c); s != "" {
		t.Para(2, 4, s)
	}
	if s := unchanged(t.c); s != "" {
		t.Para(2, 4, "The same: "+diag.Safe(s)+".")
	}
}
