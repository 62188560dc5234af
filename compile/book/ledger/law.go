package ledger

import "newmake/lang/recipe"

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
// movements, or what is on hand.
type reportRow struct {
	form, line, what string
	opening, closing []Account
	kinds            []Kind
}

// reports are lines of the monthly reports of 27 CFR 19.632. The numbers of lines were
// read in copies of the forms and their help, not in the official print; a row without a
// number has one on the form that was not read.
var reports = []reportRow{
	{form: "TTB F 5110.40", line: "14", what: "produced, by the gauges", kinds: []Kind{"produced"}},
	{form: "TTB F 5110.40", line: "11", what: "entered in storage", kinds: []Kind{"produced"}},
	{form: "TTB F 5110.40", line: "17(b)", what: "unfinished spirits on hand (at the end of a quarter)", closing: []Account{Unfinished}},
	{form: "TTB F 5110.40", line: "III", what: "into wood", kinds: []Kind{"filled"}},
	{form: "TTB F 5110.11", line: "1", what: "on hand, first of the month", opening: []Account{Wood, Tanks}},
	{form: "TTB F 5110.11", line: "2", what: "deposited", kinds: []Kind{"produced", "to tanks from vats", "filled from a vat"}},
	{form: "TTB F 5110.11", what: "transferred to processing", kinds: []Kind{"dumped from wood", "dumped from tanks", "bottled from wood", "bottled from tanks"}},
	{form: "TTB F 5110.11", what: "losses, less what was found", kinds: []Kind{"lost from wood", "lost from tanks", "-found in wood", "-found in tanks"}},
	{form: "TTB F 5110.11", what: "samples", kinds: []Kind{"samples from wood", "samples from tanks"}},
	{form: "TTB F 5110.11", what: "destroyed", kinds: []Kind{"destroyed"}},
	{form: "TTB F 5110.11", line: "23", what: "on hand, end of the month", closing: []Account{Wood, Tanks}},
	{form: "TTB F 5110.28", line: "1", what: "bulk on hand, first of the month", opening: []Account{Vats}},
	{form: "TTB F 5110.28", what: "received and dumped", kinds: []Kind{"dumped from wood", "dumped from tanks"}},
	{form: "TTB F 5110.28", what: "bottled", kinds: []Kind{"bottled", "bottled from wood", "bottled from tanks"}},
	{form: "TTB F 5110.28", what: "losses before bottling, less what was found", kinds: []Kind{"lost before bottling", "-found in vats"}},
	{form: "TTB F 5110.28", line: "26", what: "bulk on hand, end of the month", closing: []Account{Vats}},
	{form: "TTB F 5110.28", line: "27", what: "bottled on hand, first of the month", opening: []Account{Bottles}},
	{form: "TTB F 5110.28", what: "withdrawn", kinds: []Kind{"withdrawn"}},
	{form: "TTB F 5110.28", line: "46", what: "bottled on hand, end of the month", closing: []Account{Bottles}},
}
