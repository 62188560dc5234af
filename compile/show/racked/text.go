// Package racked shows what lies in a house's casks. It computes nothing.
package racked

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"newmake/compile/book/cellar"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/words"
)

// Options of a rendering.
type Options struct {
	Bold bool
	Full bool // each cask with all that is known of it
}

// shown is the most casks that are listed one by one where all of it is not asked for.
const shown = 40

// Text writes a cellar as text: what wants attention, the casks, the totals.
func Text(w io.Writer, c *cellar.Cellar, o Options) error {
	t := page{Writer: columns.Writer{Bold: o.Bold}, us: c.Units == "us"}
	t.Strong("Casks on " + c.On)
	if len(c.Casks) == 0 {
		t.Para(0, 0, "There is none with anything in it.")
	}
	for _, a := range t.wanted(c) {
		t.Item(a.Head, 12, a.Says)
	}
	if len(c.Casks) > 0 {
		t.casks(c, o)
		t.lots(c)
		t.totals(c)
	}
	t.Gap()
	for _, s := range notesSay(c) {
		t.Para(0, 2, s)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

// notesSay say how sure it all is, what is not known, and what to be careful of.
func notesSay(c *cellar.Cellar) []string {
	var out []string
	if p := c.Pace; p != nil {
		out = append(out, fmt.Sprintf("The house evaporates at %.2f times what its climate says (+- %.2f, by the readings of %s). A cask goes its own way about that: the ranges hold 9 times in 10.", p.Ratio, p.SD, words.Count(p.Casks, "cask")))
	} else if len(c.Casks) > 0 {
		out = append(out, "No cask has been weighed late enough to tell how fast this house evaporates: the numbers are a forecast from published averages, and the ranges are wide.")
	}
	for _, s := range c.Said {
		out = append(out, diag.Safe(s))
	}
	if c.Gone > 0 {
		out = append(out, fmt.Sprintf("%s emptied by then.", words.CountOf(c.Gone, "cask was", "casks were")))
	}
	return append(out, "Full casks crush, and spirit vapour gathers where casks leak: chock them, air the house, and bring no flame. A gauge for the record is one that the law's officer would make: this is a forecast.")
}

type page struct {
	columns.Writer
	us bool
}

// wanted is one sort of what is to be done, and on which casks.
type wanted struct{ Head, Says string }

// wanted says what is to be done.
func (t *page) wanted(c *cellar.Cellar) []wanted {
	var leaks, weak, due, over, empty []string
	for _, r := range c.Casks {
		if r.Empty() {
			empty = append(empty, r.Serial)
			continue
		}
		if r.Leak != nil {
			leaks = append(leaks, fmt.Sprintf("%s (%s more than foretold since %s)", r.Serial, t.mass(r.Leak.Kg), r.Leak.Since))
		}
		if r.Target != nil && !r.Target.Kept {
			weak = append(weak, fmt.Sprintf("%s (%s when its rest is over, its bottle asks for %s)", r.Serial, t.strength(r.Target.Then), t.strength(cellar.Holds{Proof: r.Target.BottleProof, AbvPct: r.Target.BottleAbvPct})))
		}
		if r.Sample != "" && r.Sample <= c.On {
			due = append(due, r.Serial)
		}
		if r.Target != nil && r.Target.Over {
			over = append(over, r.Serial)
		}
	}
	var out []wanted
	for _, a := range []struct {
		head string
		all  []string
	}{{"! EMPTY?", empty}, {"! LEAKS?", leaks}, {"! WEAK", weak}, {"sample", due}, {"rest over", over}} {
		if len(a.all) > 0 {
			out = append(out, wanted{a.head, diag.Safe(list(a.all))})
		}
	}
	return out
}

// list names the first of many.
func list(all []string) string {
	const most = 12
	if len(all) <= most {
		return strings.Join(all, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(all[:most], ", "), len(all)-most)
}

func (t *page) casks(c *cellar.Cellar, o Options) {
	t.Heading("CASKS")
	table := columns.Table{Left: map[int]bool{5: true, 6: true}}
	unit := "% vol"
	if t.us {
		unit = "proof"
	}
	table.Row("cask", "years", "now", unit, t.alcoholName(), "by law from", "rest over", "then, "+t.alcoholName())
	rows := c.Casks
	if !o.Full && len(rows) > shown {
		rows = rows[:shown]
	}
	for _, r := range rows {
		over, then, lawful := "", "", ""
		strength, _, _ := strings.Cut(t.strength(r.Now), " ") // its unit is the column's
		if r.Standard != nil {
			lawful = r.Standard.From
		}
		if r.Target != nil {
			over, then = r.Target.On, fmt.Sprintf("%s..%s", t.alcohol(r.Target.Low), t.alcohol(r.Target.High))
		}
		table.Row(diag.Safe(r.Serial), fmt.Sprintf("%.1f", r.AgeYears), t.volume(r.Now), strength, t.alcohol(r.Now), lawful, over, then)
	}
	table.Write(&t.Writer)
	t.Para(2, 2, "In the order in which the runs name them.")
	if len(rows) < len(c.Casks) {
		t.Para(2, 2, fmt.Sprintf("and %d more: --full, or --format csv", len(c.Casks)-len(rows)))
	}
	if !o.Full {
		return
	}
	t.Heading("EACH")
	for _, r := range c.Casks {
		t.each(r)
	}
}

// each is one cask with all that is known of it.
func (t *page) each(r cellar.Row) {
	t.Gap()
	t.Strong(diag.Safe(fmt.Sprintf("%s  run %s of %s, filled %s", r.Serial, r.Run, r.Batch, r.Filled)))
	t.Para(2, 4, fmt.Sprintf("At the fill %s at %s, %s; now %s (%s to %s) at %s.", t.volume(r.AtFill), t.strength(r.AtFill), t.alcohol(r.AtFill)+" "+t.alcoholName(), t.volume(r.Now), t.volume(r.Low), t.volume(r.High), t.strength(r.Now)))
	if r.DrawnL > 0 {
		t.Para(2, 4, "Drawn of it: "+t.drawn(r)+".")
	}
	if told := t.told(r); told != "" {
		t.Para(2, 4, told)
	}
	if place := placeOf(r); place != "" {
		t.Para(2, 4, diag.Safe("It lies in "+place+"."))
	}
	if r.Assumed {
		t.Para(2, 4, "Its fill was not gauged: the strength is that of the batch.")
	}
	if l := r.Last; l != nil {
		t.Para(2, 4, fmt.Sprintf("Last read by %s on %s: %s beside the forecast of its fill; it evaporates at %.2f times what the climate says.", l.By, l.On, t.signed(l.OffL), r.PaceIs))
	}
	if r.Verdict != "" {
		t.Para(2, 4, diag.Safe("Last tasting: "+r.Verdict+"."))
	}
	if s := r.Standard; s != nil {
		t.Para(2, 4, diag.Safe(fmt.Sprintf("Old enough for %s from %s.", s.Of, s.From)))
	}
	if g := r.Target; g != nil {
		t.Para(2, 4, fmt.Sprintf("Its batch promises a rest till %s: then %s to %s %s at %s.", g.On, t.alcohol(g.Low), t.alcohol(g.High), t.alcoholName(), t.strength(g.Then)))
	}
	switch {
	case r.Empty():
		t.Para(2, 4, "By the forecast nothing is left in it: look, and write in its block what was found, or when it was emptied.")
	case r.Sample == "":
		t.Para(2, 4, "Others of its lot are sampled for it.")
	default:
		t.Para(2, 4, "Next sample by "+r.Sample+".")
	}
}

// told is when a cask was topped and when it leaked.
func (t *page) told(r cellar.Row) string {
	var out []string
	for _, e := range r.Told {
		much := ""
		if e.VolumeL > 0 {
			much = " " + t.volume(cellar.Holds{VolumeL: e.VolumeL, WineGallons: e.WineGallons})
		}
		word := "was topped with"
		if e.What == "leaked" {
			word = "leaked"
		}
		if much == "" {
			word, much = strings.TrimSuffix(word, " with"), ", how much is not written,"
		}
		out = append(out, word+much+" on "+e.On)
	}
	if len(out) == 0 {
		return ""
	}
	return "It " + words.And(out) + "."
}

// lots say which casks of many are sampled for all.
func (t *page) lots(c *cellar.Cellar) {
	if len(c.Lots) == 0 {
		return
	}
	t.Heading("SAMPLING")
	for _, l := range lotsSay(c) {
		t.Para(2, 4, l)
	}
}

// lotsSay is the plan of sampling in words, a lot each.
func lotsSay(c *cellar.Cellar) []string {
	var out []string
	for _, l := range c.Lots {
		out = append(out, diag.Safe(fmt.Sprintf("%s %d: by %s sample and weigh %d of %d casks: %s. It tells the mean alcohol of a cask to %.1f %%, 9 times in 10; a fault of one cask in ten is among them %.0f times in 100.",
			l.Batch, l.Year, l.On, l.Take, l.Casks, list(l.Serials), l.MeanPct, l.SeesPct)))
	}
	return out
}

func (t *page) totals(c *cellar.Cellar) {
	t.Heading("TOGETHER")
	var table columns.Table
	table.Row("batch", "year", "casks", t.alcoholName(), "gone since the fill")
	for _, x := range t.sums(c.Totals) {
		table.Row(x...)
	}
	table.Row("kind")
	for _, x := range t.sums(c.Kinds) {
		table.Row(x...)
	}
	table.Write(&t.Writer)
}

// sums are totals in words.
func (t *page) sums(all []cellar.Total) [][]string {
	var out [][]string
	for _, x := range all {
		name, year := diag.Safe(x.Batch), strconv.Itoa(x.Year)
		switch {
		case x.Kind != "":
			name = diag.Safe(x.Kind)
		case x.Batch == "" && x.Year != 0:
			name = "of no standard"
		case x.Batch == "":
			name, year = "all", ""
		}
		alcohol := x.PureL
		if t.us {
			alcohol = x.ProofGallons
		}
		out = append(out, []string{name, year, strconv.Itoa(x.Casks), fmt.Sprintf("%.1f", alcohol), fmt.Sprintf("%.1f %%", x.LostPct)})
	}
	return out
}

func (t *page) alcoholName() string {
	if t.us {
		return "PG"
	}
	return "LPA"
}

func (t *page) alcohol(h cellar.Holds) string {
	if t.us {
		return fmt.Sprintf("%.1f", h.ProofGallons)
	}
	return fmt.Sprintf("%.1f", h.PureL)
}

// drawn is what went into a vat, a tank or another cask.
func (t *page) drawn(r cellar.Row) string {
	return t.alcohol(cellar.Holds{ProofGallons: r.DrawnPG, PureL: r.DrawnL}) + " " + t.alcoholName()
}

func (t *page) volume(h cellar.Holds) string {
	if t.us {
		return fmt.Sprintf("%.1f gal", h.WineGallons)
	}
	return fmt.Sprintf("%.1f L", h.VolumeL)
}

func (t *page) signed(litres float64) string {
	if t.us {
		return fmt.Sprintf("%+.1f gal", litres/litresPerGallon)
	}
	return fmt.Sprintf("%+.1f L", litres)
}

func (t *page) strength(h cellar.Holds) string {
	if t.us {
		return fmt.Sprintf("%.1f proof", h.Proof)
	}
	return fmt.Sprintf("%.1f %% vol", h.AbvPct)
}

func (t *page) mass(kg float64) string {
	if t.us {
		return fmt.Sprintf("%.1f lb", kg/kgPerPound)
	}
	return fmt.Sprintf("%.1f kg", kg)
}

// What the units of a reader are in those of a cellar.
const (
	litresPerGallon = 1000 * quantity.USGallonM3
	kgPerPound      = quantity.PoundKg
)
