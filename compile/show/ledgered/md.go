package ledgered

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/book/ledger"
	"newmake/lang/diag"
)

// Markdown writes a ledger as a document: what is wrong, the accounts, the materials, every
// line and every gauge.
func Markdown(w io.Writer, l *ledger.Ledger) error {
	t := page{l: l}
	var b strings.Builder
	fmt.Fprintf(&b, "# %s, books of %s\n\nIn %s. Not an official form, not legal advice. %s: %s (%s).\n", cell(l.House), l.Month, t.unitLong(), l.Law.Country, l.Law.Text, l.Law.Read)
	table := func(title string, head []string, rows [][]string) {
		if len(rows) == 0 {
			return
		}
		fmt.Fprintf(&b, "\n## %s\n\n| %s |\n|%s\n", title, strings.Join(head, " | "), strings.Repeat("---|", len(head)))
		for _, r := range rows {
			for i := range r {
				r[i] = cell(r[i])
			}
			fmt.Fprintf(&b, "| %s |\n", strings.Join(r, " | "))
		}
	}
	var rows [][]string
	for _, c := range l.Checks {
		mark := "holds"
		if !c.OK {
			mark = "**does not hold**"
		}
		rows = append(rows, []string{mark, c.What, c.Of, c.Says, strings.TrimSpace(where(c.File, c.Line))})
	}
	table("Checks", []string{"", "check", "of", "", "where"}, rows)
	rows = nil
	for _, m := range l.Missing {
		rows = append(rows, []string{m.What, toWrite(m), m.Section, strings.TrimSpace(where(m.File, m.Line))})
	}
	table("Missing", []string{"what", "write", "section", "where"}, rows)
	rows = nil
	for _, a := range l.Accounts {
		rows = append(rows, []string{a.Title, t.alcohol(a.Opening), t.alcohol(a.In), t.alcohol(a.Out), t.alcohol(a.Lost), t.alcohol(a.Closing)})
	}
	table("Accounts", []string{"account", "opening", "in", "out", "lost", "closing"}, rows)
	rows = nil
	for _, m := range l.Materials {
		n := func(x float64) string { s, u := t.mass(x, m.Unit); return strings.TrimSpace(s + " " + u) }
		rows = append(rows, []string{m.What, m.Lot, n(m.Opening), n(m.Received), n(m.Used), n(m.Discarded - m.Counted), n(m.Closing)})
	}
	table("Materials", []string{"material", "lot", "opening", "received", "used", "off", "closing"}, rows)
	rows = nil
	for _, x := range l.Lines {
		kind := string(x.Kind)
		if x.Corrects != "" {
			kind = "corrects " + x.Corrects + ": " + kind
		}
		rows = append(rows, []string{x.On, kind, x.From, x.To, t.alcohol(x.Amount), x.Section, x.By, strings.TrimSpace(where(x.File, x.Line))})
	}
	table("Lines", []string{"date", "kind", "from", "to", l.Law.Alcohol, "section", "by", "where"}, rows)
	rows = nil
	for _, g := range l.Gauges {
		how := t.how(g)
		rows = append(rows, []string{g.Serial, g.On, g.What, g.Of, how, fmt.Sprintf("%.2f", g.WineGal), fmt.Sprintf("%.1f", g.Proof), fmt.Sprintf("%.2f", g.VolumeL), fmt.Sprintf("%.2f", g.AbvPct), t.alcohol(g.Amount), g.Section})
	}
	table("Gauge records", []string{"serial", "date", "what", "of", "by", "WG at 60 F", "proof", "L at 20 C", "% vol", l.Law.Alcohol, "section"}, rows)
	rows = nil
	for _, r := range l.Reports {
		rows = append(rows, []string{r.Form, r.Line, r.What, t.alcohol(r.Amount)})
	}
	table("For the monthly reports", []string{"form", "line", "what", l.Law.Alcohol}, rows)
	_, err := io.WriteString(w, b.String())
	return err
}

// cell is text that stays in its cell.
func cell(s string) string {
	return strings.NewReplacer("|", `\|`, "\n", " ", "<", "&lt;").Replace(diag.Safe(s))
}
