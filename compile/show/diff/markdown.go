package diff

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/compile/show/md"
)

// Markdown writes the document for a pull request. What comes from a recipe is
// escaped, so that it shows as it is written.
func Markdown(w io.Writer, d *compare.Document, o Options) error {
	m := &markdown{o: o}
	shown, loose := parts(d)
	for _, s := range loose {
		m.line("- " + escape(s))
	}
	for i, c := range shown {
		if i > 0 || len(loose) > 0 {
			m.line("\n---\n")
		}
		m.comparison(c)
	}
	_, err := io.WriteString(w, m.b.String())
	return err
}

type markdown struct {
	b strings.Builder
	o Options
}

func (m *markdown) line(s string) { m.b.WriteString(s + "\n") }

// escape keeps what it is given, on one line, from being read as markup.
func escape(s string) string { return md.Escape(strings.Join(strings.Fields(s), " ")) }

// arrowed escapes a text in which -> stands for a change.
func arrowed(s string) string { return strings.ReplaceAll(escape(s), "-&gt;", "→") }

// table writes rows, the first of which is the head; numbers stand behind the first
// column.
func (m *markdown) table(rows [][]string) { m.b.WriteString(md.Table(true, rows...)) }

// gap writes an empty line, unless there is one.
func (m *markdown) gap() {
	if !strings.HasSuffix(m.b.String(), "\n\n") {
		m.line("")
	}
}

func (m *markdown) heading(s string) {
	m.gap()
	m.line("### " + s + "\n")
}

func (m *markdown) comparison(c *compare.Comparison) {
	m.line("## " + arrowed(title(c)) + "\n")
	m.line("From " + escape(c.Old.Label) + " to " + escape(c.New.Label) + ".\n")
	m.line("**" + arrowed(headline(c)) + "**")
	if len(c.Bill) > 0 {
		m.heading("Grain bill")
		rows := [][]string{{"", "old", "share", "new", "share", "points"}}
		for _, r := range c.Bill {
			change := ""
			if measure.Number(r.Points, 2) != "0.00" {
				change = signed(r.Points, 2)
			}
			rows = append(rows, []string{escape(r.Grain), grain(c.Units, r.OldKg), share(r.OldPct), grain(c.Units, r.NewKg), share(r.NewPct), change})
		}
		m.table(rows)
	}
	if len(c.Edits)+len(c.Notes) > 0 {
		m.heading("Changes")
		for _, e := range c.Edits {
			what, values := words(e)
			s := "**" + string(e.Part) + "**: " + arrowed(what)
			if len(values) > 0 {
				s += ": " + arrowed(strings.Join(values, "; "))
			}
			m.line("- " + s)
		}
		for _, n := range c.Notes {
			m.line("- " + escape(n))
		}
	}
	m.after(c)
}

// after is what the edits lead to.
func (m *markdown) after(c *compare.Comparison) {
	if all := moved(c); len(all) > 0 {
		m.heading("Schedule")
		rows := [][]string{{"", "old", "new", ""}}
		for _, x := range all {
			rows = append(rows, []string{x.Name, clock(x.Old), clock(x.New), hours(x)})
		}
		m.table(rows)
	}
	if len(c.Gained)+len(c.Lost) > 0 {
		m.heading("Law and warnings")
		for _, w := range c.Gained {
			m.line(fmt.Sprintf("- new: %s %s: %s", w.Severity, w.Code, escape(w.Text)))
		}
		for _, w := range c.Lost {
			m.line(fmt.Sprintf("- gone: %s %s: %s", w.Severity, w.Code, escape(w.Text)))
		}
	}
	m.why(c)
	if all := changed(c); len(all) > 0 {
		m.heading("Outcome")
		rows := [][]string{{"", "old", "new", "", "change"}}
		for _, o := range told(c) {
			rows = append(rows, []string{o.Name, number(o, o.Old), number(o, o.New), escape(o.Unit), signed(o.Change, o.Places)})
		}
		if len(rows) > 1 {
			m.table(rows)
		}
		if s := unpriced(c); s != "" {
			m.line(escape(s) + "\n")
		}
		if s := folded(c); s != "" {
			m.line(escape(s) + "\n")
		}
		if s := unchanged(c); s != "" {
			m.line("The same: " + escape(s) + ".")
		}
	}
}

func (m *markdown) why(c *compare.Comparison) {
	w := c.Why
	if w == nil || len(w.Each) == 0 {
		return
	}
	m.heading("Why")
	if len(w.Edits) == 1 {
		m.line("All of it comes of one edit: " + arrowed(w.Edits[0]) + ".")
		return
	}
	each := mainWhy(c, m.o.AllWhy)
	head, names := []string{""}, []string{}
	for _, o := range each {
		head = append(head, strings.TrimSpace(o.Name+", "+escape(o.Unit)))
		if len(o.Parts) > len(names) {
			names = names[:0]
			for _, p := range o.Parts {
				names = append(names, p.Edit)
			}
		}
	}
	rows := [][]string{head}
	for i, name := range names {
		row := []string{arrowed(name)}
		for _, o := range each {
			cell := ""
			if i < len(o.Parts) {
				cell = signed(o.Parts[i].Part, o.Places)
				if o.Parts[i].Error > 0 {
					cell += " ± " + measure.Number(o.Parts[i].Error, o.Places)
				}
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	all, inter := []string{"**all together**"}, []string{"of this, interaction"}
	for _, o := range each {
		all = append(all, "**"+signed(o.Change, o.Places)+"**")
		inter = append(inter, signed(o.Interaction, o.Places))
	}
	m.table(append(rows, all, inter))
	m.line(escape(howFar(w)))
}
