package schema

// Accounts are those of a house's books, by the words by which a country's names for them
// are written.
var Accounts = []string{"unfinished", "tanks", "wood", "vats", "bottles", "distilled", "stills", "losses", "samples", "withdrawn", "destroyed"}

// Country is the declaration of a country whose law the books of a house follow.
var Country = &Field{
	Name: "country", Shape: libraryName, Repeat: true, Key: "name", Example: "country ireland",
	Doc: "A country, as its law bears on the books of a house: what asks for records, what alcohol is counted in, what the accounts are called, and the excise. `ledger` keeps its books by it.",
	Block: &Block{Fields: []*Field{
		{Name: "title", Shape: "TEXT", Need: true, Example: `title "Ireland"`, Doc: "Its name."},
		{Name: "records", Shape: "TEXT", Need: true, Example: `records "SI 379/2004, Alcohol Products Tax Regulations"`, Doc: "The law or the guide that asks for records. How far it was read stands in the comment."},
		{Name: "kept", Shape: "TEXT", Example: `kept "6 years"`, Default: "not known", Doc: "How long records are kept."},
		{
			Name: "counts", Shape: `("proof"|"litres"|"hectolitres") unit:TEXT long:TEXT`, Need: true, Example: `counts litres "LPA" "litres of pure alcohol at 20 C"`,
			Doc: "What alcohol is counted in, how that is written, and its name; `proof` is as the gauger of the United States does.",
		},
		{Name: "calls", Shape: `NAME text:TEXT`, Repeat: true, Key: "name", Example: `calls unfinished "low wines and feints"`, Default: "as the ledger calls it", Doc: "What an account is called there: `unfinished`, `tanks`, `wood`, `vats`, `bottles`, `withdrawn` and so on."},
		{
			Name: "excise", Shape: `MONEY ["from" since:DATE] ["up" "to" NUMBER] ["," "reduced"]`, Repeat: true, Example: "excise 42.57 EUR from 2013-10-16",
			Doc:    "Excise on what `counts` names (on a litre, where that is hectolitres), from a day on; of the removals of a calendar year up to so many; `reduced` where not everybody has it. A line with a later day takes the place of one before. A house that writes any in a `country` of its own writes all of them.",
			Limits: []Limit{aPrice.of("money"), mustBe(1, 1e9, "a year's removals are counted").of("number")},
		},
		{Name: "note", Shape: "TEXT", Repeat: true, Example: `note "a relief for small producers is not reckoned here"`, Doc: "What the ledger does not reckon."},
	}},
}
