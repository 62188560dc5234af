// Package ledgered shows the books of a month. It computes nothing.
package ledgered

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/book/ledger"
	"newmake/compile/show/columns"
	"newmake/compile/show/identified"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/words"
)

// Options of a rendering.
type Options struct {
	Bold bool
	Full bool // every line, gauge and use
}

// shown is how many of what is missing, or does not balance, stand on the first screen.
const shown = 4

// Text writes a ledger as text: what is wrong, the accounts, what was used. Full is every
// line of it.
func Text(w io.Writer, l *ledger.Ledger, o Options) error {
	t := page{Writer: columns.Writer{Bold: o.Bold}, l: l}
	t.Strong(diag.Safe(fmt.Sprintf("%s, books of %s, in %s", l.House, l.Month, t.unitLong())))
	t.attention(o.Full)
	t.accounts()
	if l.Cost == nil || o.Full {
		t.materials()
	}
	t.cost()
	t.blends()
	if o.Full {
		t.flows()
		t.onHand()
		t.lines()
		t.gauges()
		t.uses()
		t.reports()
		t.checks()
	}
	t.Gap()
	t.Para(0, 0, fmt.Sprintf("Not an official form, not legal advice. %s: %s (%s). Records are kept %s.", l.Law.Country, l.Law.Text, l.Law.Read, l.Law.Keep))
	if !o.Full {
		t.Para(0, 0, fmt.Sprintf("--full: %s, %s, each line and its section.", words.Count(len(l.Lines), "line"), words.Count(len(l.Gauges), "gauge record")))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type page struct {
	columns.Writer
	l *ledger.Ledger
}

func (t *page) us() bool { return t.l.Law.ProofGallons }

func (t *page) unitLong() string {
	return t.l.Law.Long
}

// alcohol is an amount in the unit of the law.
func (t *page) alcohol(a ledger.Amount) string {
	v := a.PureL
	if t.us() {
		v = a.ProofGallons
	}
	if t.l.Law.Each == 100 {
		return tidy(fmt.Sprintf("%.4f", v/100))
	}
	return tidy(fmt.Sprintf("%.2f", v))
}

// tidy makes no minus of nothing.
func tidy(s string) string {
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

func (t *page) attention(full bool) {
	failed := 0
	for _, c := range t.l.Checks {
		if !c.OK {
			failed++
		}
	}
	switch {
	case failed == 0 && len(t.l.Missing) > 0:
		t.Para(2, 2, fmt.Sprintf("All %d checks hold, but not all is written.", len(t.l.Checks)))
	case failed == 0:
		t.Para(2, 2, fmt.Sprintf("It balances: all %d checks hold.", len(t.l.Checks)))
	default:
		t.Para(2, 2, fmt.Sprintf("! %s.", words.CountOf(failed, "check does not hold", "checks do not hold")))
		t.some(full, failed, func(say func(string)) {
			for _, c := range t.l.Checks {
				if !c.OK {
					say(checked(c) + where(c.File, c.Line))
				}
			}
		})
	}
	if n := len(t.l.Missing); n > 0 {
		t.Para(2, 2, fmt.Sprintf("? %s.", words.CountOf(n, "field is missing", "fields are missing")))
		t.some(full, n, func(say func(string)) {
			for _, m := range t.l.Missing {
				say(fmt.Sprintf("%s%s%s. Write: %s", m.What, where(m.File, m.Line), wants(m.Section), toWrite(m)))
			}
		})
	}
}

// some shows the first of many.
func (t *page) some(full bool, of int, all func(say func(string))) {
	n := 0
	all(func(s string) {
		if n++; full || n <= shown {
			t.Para(4, 6, diag.Safe(s))
		}
	})
	if !full && of > shown {
		t.Para(4, 6, fmt.Sprintf("and %d more: --full", of-shown))
	}
}

// checked is a check that does not hold, as a reader is told of it.
func checked(c ledger.Check) string {
	if c.Of == "" {
		return fmt.Sprintf("%s: it does not hold (%s)", c.What, c.Says)
	}
	return fmt.Sprintf("%s: %s (%s)", c.Of, c.Says, c.What)
}

// toWrite is a line to write, and where.
func toWrite(m ledger.Missing) string {
	if m.In == "" {
		return m.Mend
	}
	return m.Mend + ", " + m.In
}

func wants(section string) string {
	if section == "" {
		return ""
	}
	return ", " + section
}

func where(file string, line int) string {
	if file == "" {
		return ""
	}
	return fmt.Sprintf(" (%s:%d)", file, line)
}

// blends are the vats and bottlings of the month.
func (t *page) blends() {
	for n, i := range t.l.Blends {
		if n == 0 {
			t.Heading("WHAT WAS BLENDED AND BOTTLED")
		}
		t.Para(2, 4, diag.Safe(fmt.Sprintf("%s %s, %s", i.Kind, i.Name, i.On)))
		identified.Write(&t.Writer, i, 4)
	}
}

func (t *page) accounts() {
	t.Heading("ACCOUNTS")
	var table columns.Table
	table.Row("", "opening", "in", "out", "lost", "closing")
	for _, a := range t.l.Accounts {
		table.Row(a.Title, t.alcohol(a.Opening), t.alcohol(a.In), t.alcohol(a.Out), t.alcohol(a.Lost), t.alcohol(a.Closing))
	}
	table.Write(&t.Writer)
	var out []string
	for _, f := range t.l.Outside {
		out = append(out, fmt.Sprintf("%s %s", f.Kind, t.alcohol(f.Amount)))
	}
	if len(out) > 0 {
		t.Para(2, 4, "In all: "+strings.Join(out, ", ")+".")
	}
}

func (t *page) materials() {
	if len(t.l.Materials) == 0 {
		return
	}
	t.Heading("MATERIALS")
	table := columns.Table{Left: map[int]bool{1: true}}
	table.Row("", "lot", "opening", "received", "used", "off", "closing", "")
	for _, m := range t.l.Materials {
		n := func(x float64) string { s, _ := t.mass(x, m.Unit); return s }
		_, unit := t.mass(0, m.Unit)
		table.Row(diag.Safe(m.What), diag.Safe(m.Lot), n(m.Opening), n(m.Received), n(m.Used), n(m.Discarded-m.Counted), n(m.Closing), unit)
	}
	table.Write(&t.Writer)
}

// mass is an amount of a material in the reader's units.
func (t *page) mass(x float64, unit string) (number, in string) {
	switch {
	case unit == "g" && t.l.Units == "us":
		return tidy(fmt.Sprintf("%.1f", x/1000/quantity.PoundKg)), "lb"
	case unit == "g":
		return tidy(fmt.Sprintf("%.1f", x/1000)), "kg"
	case unit == "mL" && t.l.Units == "us":
		return tidy(fmt.Sprintf("%.2f", x/1e6/quantity.USGallonM3)), "gal"
	case unit == "mL":
		return tidy(fmt.Sprintf("%.2f", x/1000)), "L"
	}
	return tidy(fmt.Sprintf("%.0f", x)), "pieces"
}

func (t *page) cost() {
	c := t.l.Cost
	if c == nil {
		return
	}
	n := func(x float64) string { return tidy(fmt.Sprintf("%.2f", x)) }
	t.Heading("WHAT IT COST, " + diag.Safe(c.Currency))
	unit := t.l.Law.Alcohol
	if len(c.Runs) > 0 {
		var table columns.Table
		table.Row("run", "materials", "heat, work", "in all", "hearts", "each")
		anew := false
		for _, r := range c.Runs {
			star := ""
			if !r.Kept {
				star, anew = "*", true
			}
			name := r.Run + star + ", " + r.Batch
			if r.ByPlan {
				name += " (materials by the plan)"
			}
			table.Row(diag.Safe(name), n(r.Materials), n(r.Work), n(r.Total), t.alcohol(r.Produced), n(r.Each))
		}
		table.Write(&t.Writer)
		t.Para(2, 2, "The hearts bear all of it: in all / "+unit+" of hearts. Feints count as nothing, since a later run charges them again. A plan counts so too, and casks with it.")
		if anew {
			t.Para(2, 2, "* Heat, water and work by the batch as it stands now, for no plan with its cost is kept beside the record: they change with the batch, its prices and what is learned.")
		}
	}
	if len(c.Casks) > 0 {
		t.Gap()
		var table columns.Table
		table.Row("cask", "years", "spirit", "wood", "carry", "in all", unit+" in", "each", "left", "each")
		for _, k := range c.Casks {
			table.Row(diag.Safe(k.Serial), n(k.Years), n(k.Spirit), n(k.Wood), n(k.Carrying), n(k.Total), t.alcohol(k.In), n(k.EachIn), t.alcohol(k.Left), n(k.EachLeft))
		}
		table.Write(&t.Writer)
		t.Para(2, 2, "spirit / "+unit+" in: as it went in, without wood. in all / "+unit+" left: what is in it, or came out, with all. What was lost or found between the hearts and the cask, and what is drawn later from the same hearts, moves it by a little. Wood, and what its money costs while it lies (carry), are by the house's prices as they stand now.")
	}
	for _, b := range c.Bottlings {
		t.Gap()
		said := fmt.Sprintf("Bottling %s: %s / %s = %s each", b.Lot, n(b.Total), words.Count(b.Bottles, "bottle"), n(b.Each))
		if b.Glass > 0 {
			said += fmt.Sprintf(", %s of it all for bottles, closures and labels", n(b.Glass))
		}
		if b.ExciseFull > 0 {
			said += fmt.Sprintf("; excise %s", n(b.ExciseReduced))
			if b.ExciseReduced != b.ExciseFull {
				said += fmt.Sprintf(" with the reduced rates, %s without", n(b.ExciseFull))
			}
		}
		if b.Price > 0 {
			said += fmt.Sprintf(". A price of %s leaves %g %%", n(b.Price), b.Margin)
			if b.Price != b.PriceFull {
				said += fmt.Sprintf(" (%s without them)", n(b.PriceFull))
			}
		}
		t.Para(2, 4, diag.Safe(said+"."))
	}
	if e := c.Excise; e != nil {
		due := n(e.Full)
		if e.Reduced != e.Full {
			due = fmt.Sprintf("%s with the reduced rates, for whom the law lets have them; %s without", n(e.Reduced), n(e.Full))
		}
		t.Para(2, 4, diag.Safe(fmt.Sprintf("Excise on %s %s withdrawn: %s (%s). Ask who pays it, and when.", t.alcohol(e.Withdrawn), t.l.Law.Alcohol, due, strings.Join(e.Sources, "; "))))
	}
	t.Para(2, 4, diag.Safe("Left out: "+strings.Join(c.LeftOut, "; ")+"."))
}

func (t *page) flows() {
	t.Heading("WHAT MOVED, BY ACCOUNT")
	table := columns.Table{Left: map[int]bool{2: true}}
	for _, a := range t.l.Accounts {
		if len(a.Flows) == 0 {
			continue
		}
		table.Row(a.Title, "", "")
		for _, f := range a.Flows {
			table.Row("  "+string(f.Kind), t.alcohol(f.Amount), f.Section)
		}
	}
	table.Write(&t.Writer)
}

func (t *page) onHand() {
	if len(t.l.OnHand) == 0 {
		return
	}
	t.Heading("ON HAND AT THE END")
	table := columns.Table{Left: map[int]bool{2: true}}
	for _, h := range t.l.OnHand {
		table.Row(diag.Safe(h.Name), t.alcohol(h.Amount), "since "+h.Since)
	}
	table.Write(&t.Writer)
}

func (t *page) lines() {
	if len(t.l.Lines) == 0 {
		return
	}
	t.Heading("LINES")
	for _, x := range t.l.Lines {
		kind := string(x.Kind)
		if x.Corrects != "" {
			kind = "corrects " + x.Corrects + ": " + kind
		}
		by := ""
		if x.By != "" {
			by = ", by " + x.By
		}
		t.Para(2, 4, diag.Safe(fmt.Sprintf("%s  %s  %s: %s -> %s%s%s%s", x.On, t.alcohol(x.Amount), kind, x.From, x.To, wants(x.Section), by, where(x.File, x.Line))))
	}
}

// how is what was read of a gauge, in the reader's units.
func (t *page) how(g ledger.Gauge) string {
	switch {
	case g.By == "weight" && t.l.Units == "us":
		return fmt.Sprintf("gross %.1f lb, tare %.1f lb, net %.1f lb", g.GrossKg/quantity.PoundKg, g.TareKg/quantity.PoundKg, g.NetKg/quantity.PoundKg)
	case g.By == "weight":
		return fmt.Sprintf("gross %.1f kg, tare %.1f kg, net %.1f kg", g.GrossKg, g.TareKg, g.NetKg)
	case t.l.Units == "us":
		return fmt.Sprintf("%.2f gal at %.0f F", g.ReadL/litresPerGallon, 32+1.8*g.ReadC)
	}
	return fmt.Sprintf("%.1f L at %.1f C", g.ReadL, g.ReadC)
}

func (t *page) gauges() {
	if len(t.l.Gauges) == 0 {
		return
	}
	t.Heading("GAUGE RECORDS")
	for _, g := range t.l.Gauges {
		how := t.how(g)
		size := fmt.Sprintf("%.1f L at 20 C, %.2f %% vol", g.VolumeL, g.AbvPct)
		if t.l.Units == "us" {
			size = fmt.Sprintf("%.2f WG at 60 F, %.1f proof", g.WineGal, g.Proof)
		}
		by := ""
		if g.Initials != "" {
			by = ", by " + g.Initials
		}
		t.Para(2, 4, diag.Safe(fmt.Sprintf("%s  %s  %s of %s: %s; %s; %s %s%s%s%s", g.Serial, g.On, g.What, g.Of, how, size, t.alcohol(g.Amount), t.l.Law.Alcohol, wants(g.Section), by, where(g.File, g.Line))))
	}
}

const litresPerGallon = 1000 * quantity.USGallonM3

func (t *page) uses() {
	if len(t.l.Uses) == 0 {
		return
	}
	t.Heading("MATERIALS USED")
	table := columns.Table{Left: map[int]bool{1: true, 2: true, 5: true}}
	for _, u := range t.l.Uses {
		n, unit := t.mass(u.Used, u.Unit)
		guess := ""
		if u.Guess {
			guess = "first in, first out"
		}
		table.Row("run "+diag.Safe(u.Run), diag.Safe(u.What), diag.Safe(u.Lot), n, unit, guess)
	}
	table.Write(&t.Writer)
}

func (t *page) reports() {
	if len(t.l.Reports) == 0 {
		return
	}
	t.Heading("FOR THE MONTHLY REPORTS (27 CFR 19.632)")
	table := columns.Table{Left: map[int]bool{1: true}}
	form := ""
	for _, r := range t.l.Reports {
		if r.Form != form {
			form = r.Form
			table.Row(form)
		}
		table.Row("  "+r.What, r.Line, t.alcohol(r.Amount))
	}
	table.Write(&t.Writer)
}

func (t *page) checks() {
	t.Heading("CHECKS")
	for _, c := range t.l.Checks {
		mark := "holds"
		if !c.OK {
			mark = "DOES NOT HOLD"
		}
		of := ""
		if c.Of != "" {
			of = c.Of + ": "
		}
		t.Para(2, 4, diag.Safe(fmt.Sprintf("%s: %s (%s%s)%s", mark, c.What, of, c.Says, where(c.File, c.Line))))
	}
}
