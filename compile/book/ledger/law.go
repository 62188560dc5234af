package ledger

// Law is what a country wants its books to be, as far as this program knows it.
type Law struct {
	Name     string // as --law has it
	Country  string
	Text     string // the law or guide that asks for records
	Read     string // how far it was read
	Alcohol  string // what alcohol is counted in
	US       bool   // proof gallons at 60 F; else litres of pure alcohol at 20 C
	Each     float64
	Keep     string             // how long records are kept
	Sections bool               // the sections of account.go are its own
	Terms    map[Account]string // what it calls the accounts, where not as titles has it
}

// laws are the countries that are known, the first for a house that counts in gallons.
// None but the first names a section for each line: their texts ask for the same accounts
// and fix no form.
var laws = []Law{
	{
		Name: "us", Country: "United States", Text: "27 CFR part 19, subpart V", Read: "read in a copy of November 2024, not in the official print",
		Alcohol: "PG", US: true, Each: 1, Keep: "3 years, and 3 more where an officer asks (27 CFR 19.575)", Sections: true,
		Terms: map[Account]string{Wood: "storage: packages", Tanks: "storage: tanks", Unfinished: "production: unfinished spirits", Vats: "processing: bulk", Bottles: "processing: bottled"},
	},
	{
		Name: "uk", Country: "United Kingdom", Text: "Revenue Traders (Accounts and Records) Regulations 1992, reg. 6; alcoholic products technical guide, section 9", Read: "the list of regulation 6 was read in the guide; how long is from memory",
		Alcohol: "LPA", Each: 1, Keep: "6 years (from memory)",
		Terms: map[Account]string{Unfinished: "low wines and feints", Wood: "warehouse: casks", Tanks: "spirit receiver and tanks", Withdrawn: "delivered to duty"},
	},
	{
		Name: "ireland", Country: "Ireland", Text: "SI 379/2004, Alcohol Products Tax Regulations", Read: "read in part",
		Alcohol: "LPA", Each: 1, Keep: "6 years (from memory)",
		Terms: map[Account]string{Unfinished: "low wines and feints", Wood: "tax warehouse: casks", Tanks: "spirit receiver and tanks", Withdrawn: "delivered for home consumption"},
	},
	{
		Name: "canada", Country: "Canada", Text: "Excise Act, 2001; memoranda EDM9-1-1 and EDM3-1-1; return B266", Read: "their beginnings were read; how long is from memory",
		Alcohol: "LAA", Each: 1, Keep: "6 years (from memory)",
		Terms: map[Account]string{Bottles: "packaged spirits", Vats: "bulk spirits: blending", Wood: "bulk spirits: casks", Tanks: "bulk spirits: tanks"},
	},
	{
		Name: "australia", Country: "Australia", Text: "ATO, Record keeping for alcohol distilleries", Read: "read",
		Alcohol: "LAL", Each: 1, Keep: "5 years",
		Terms: map[Account]string{Wood: "bulk storage register: barrels", Tanks: "bulk storage register: vessels", Bottles: "packaging"},
	},
	{
		Name: "eu", Country: "European Union", Text: "Directive (EU) 2020/262; Directive 92/83/EEC, art. 19 to 22; Regulation (EC) No 178/2002, art. 18", Read: "from memory",
		Alcohol: "hlpa", Each: 100, Keep: "as the member state says",
		Terms: map[Account]string{Withdrawn: "released for consumption"},
	},
}

// LawNames are those that Of knows.
func LawNames() []string {
	var out []string
	for _, l := range laws {
		out = append(out, l.Name)
	}
	return out
}

// LawOf finds a law by its name.
func LawOf(name string) (Law, bool) {
	for _, l := range laws {
		if l.Name == name {
			return l, true
		}
	}
	return Law{}, false
}

// title is what a law calls an account.
func (l Law) title(a Account) string {
	if t := l.Terms[a]; t != "" {
		return t
	}
	return titles[a]
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
