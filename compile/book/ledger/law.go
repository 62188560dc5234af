package ledger

import (
	"slices"

	"newmake/lang/recipe"
)

// Law is what a country wants its books to be, as its entry of the library has it.
type Law struct {
	*recipe.Country
	US       bool    // alcohol is counted in proof gallons at 60 F; else in litres at 20 C
	Each     float64 // of those, in one unit of alcohol
	Sections bool    // the sections of account.go are its own
}

// lawOf is the law of a country. No country but the United States has a section named for
// each line: their texts ask for the same accounts and fix no form.
func lawOf(c *recipe.Country) Law {
	l := Law{Country: c, US: c.Counts == "proof", Each: 1, Sections: c.Name == recipe.CountryUS}
	if c.Counts == "hectolitres" {
		l.Each = 100
	}
	return l
}

// title is what a law calls an account.
func (l Law) title(a Account) string {
	if t := l.Calls[string(a)]; t != "" {
		return t
	}
	return titles[a]
}

// shown is a law as a ledger shows it.
func (l Law) shown() LawShown {
	read := l.Source["records"]
	if read == "" {
		read = "how far it was read is not said"
	}
	kept := l.Kept
	if kept == "" {
		kept = "as the law says"
	}
	return LawShown{l.Name, l.Title, l.Records, read, l.Unit, l.UnitLong, l.US, l.Each, kept}
}

// reportRow is a line of a monthly report that the books answer: the sum of some kinds of
// movements, or what is on hand. Those of one part of a form foot: what was on hand, and what
// came, less what went, is on hand.
type reportRow struct {
	form, line, what string
	part             string // of the form, "" of a line that is no part of a sum
	opening, closing []Account
	in, out          []Kind
}

const (
	inStorage = "storage"
	inBulk    = "bulk"
	inBottles = "bottles"
)

// allBottled is bottled out of vats; and out of wood and tanks, which pass through processing on
// that day.
var allBottled = []Kind{"bottled", "bottled from wood", "bottled from tanks"}

// reports are lines of the monthly reports of 27 CFR 19.632. The numbers of lines were
// read in copies of the forms (that of processing in one of 03/2016) and their help, not in the
// official print; a row without a number has one on the form that was not read.
var reports = []reportRow{
	{form: "TTB F 5110.40", line: "14", what: "produced, by the gauges", in: []Kind{"produced"}},
	{form: "TTB F 5110.40", line: "11", what: "entered in storage", in: []Kind{"produced"}},
	{form: "TTB F 5110.40", line: "17(b)", what: "unfinished spirits on hand (at the end of a quarter)", closing: []Account{Unfinished}},
	{form: "TTB F 5110.40", line: "III", what: "into wood", in: []Kind{"filled"}},
	{form: "TTB F 5110.11", part: inStorage, line: "1", what: "on hand, first of the month", opening: []Account{Wood, Tanks}},
	{form: "TTB F 5110.11", part: inStorage, line: "2", what: "deposited", in: []Kind{"produced", "to tanks from vats", "filled from a vat"}},
	{form: "TTB F 5110.11", part: inStorage, what: "gains", in: []Kind{"found in wood", "found in tanks"}},
	{form: "TTB F 5110.11", part: inStorage, what: "transferred to processing", out: []Kind{"dumped from wood", "dumped from tanks", "bottled from wood", "bottled from tanks"}},
	{form: "TTB F 5110.11", part: inStorage, what: "losses", out: []Kind{"lost from wood", "lost from tanks"}},
	{form: "TTB F 5110.11", part: inStorage, what: "samples", out: []Kind{"samples from wood", "samples from tanks"}},
	{form: "TTB F 5110.11", part: inStorage, what: "destroyed", out: []Kind{"destroyed"}},
	{form: "TTB F 5110.11", part: inStorage, line: "23", what: "on hand, end of the month", closing: []Account{Wood, Tanks}},
	{form: "TTB F 5110.28", part: inBulk, line: "1", what: "bulk on hand, first of the month", opening: []Account{Vats}},
	{form: "TTB F 5110.28", part: inBulk, what: "received and dumped", in: []Kind{"dumped from wood", "dumped from tanks", "bottled from wood", "bottled from tanks"}},
	{form: "TTB F 5110.28", part: inBulk, line: "7", what: "gains", in: []Kind{"found in vats"}},
	{form: "TTB F 5110.28", part: inBulk, line: "9", what: "bottled", out: allBottled},
	{form: "TTB F 5110.28", part: inBulk, what: "back to storage", out: []Kind{"to tanks from vats", "filled from a vat"}},
	{form: "TTB F 5110.28", part: inBulk, what: "samples of the bulk", out: []Kind{"samples from vats"}},
	{form: "TTB F 5110.28", part: inBulk, line: "24", what: "losses", out: []Kind{"lost before bottling"}},
	{form: "TTB F 5110.28", part: inBulk, line: "25", what: "bulk on hand, end of the month", closing: []Account{Vats}},
	{form: "TTB F 5110.28", part: inBottles, line: "27", what: "bottled on hand, first of the month", opening: []Account{Bottles}},
	{form: "TTB F 5110.28", part: inBottles, line: "28", what: "bottled", in: allBottled},
	{form: "TTB F 5110.28", part: inBottles, line: "30", what: "bottles found", in: []Kind{"found in bottles"}},
	{form: "TTB F 5110.28", part: inBottles, line: "33", what: "withdrawn", out: []Kind{"withdrawn"}},
	{form: "TTB F 5110.28", part: inBottles, what: "samples in bottles", out: []Kind{"samples in bottles"}},
	{form: "TTB F 5110.28", part: inBottles, what: "bottles broken", out: []Kind{"bottles broken"}},
	{form: "TTB F 5110.28", part: inBottles, line: "46", what: "bottled on hand, end of the month", closing: []Account{Bottles}},
}

// answer is what the books have for a line of a report.
func (m *monthly) answer(r *reportRow) cents {
	var s cents
	for _, a := range r.opening {
		s = s.plus(m.then.onHand(a))
	}
	for _, a := range r.closing {
		s = s.plus(m.now.onHand(a))
	}
	for _, x := range m.lines {
		if slices.Contains(r.in, x.Kind) || slices.Contains(r.out, x.Kind) {
			s = s.plus(x.sum)
		}
	}
	return s
}

// reports answers the lines of the monthly reports, and looks if they foot.
func (m *monthly) reports(l *Ledger) {
	off := map[string]cents{}
	var parts []string
	for i := range reports {
		r := &reports[i]
		s := m.answer(r)
		l.Reports = append(l.Reports, Answered{r.form, r.line, r.what, s.amount()})
		if r.part == "" {
			continue
		}
		if r.opening != nil {
			parts = append(parts, r.part)
		}
		if r.closing != nil || r.out != nil {
			s = cents{}.minus(s)
		}
		off[r.part] = off[r.part].plus(s)
	}
	c := Check{What: "the monthly reports foot", OK: true, Says: "what was on hand, and came, less what went, is on hand"}
	for _, part := range parts {
		if !off[part].zero() {
			c.OK, c.Of, c.By = false, part, off[part].amount()
			c.Says = "a line below moves what no line of the report takes"
		}
	}
	l.Checks = append(l.Checks, c)
}
