package ledger

import "newmake/lang/record"

// Rate is what a unit of alcohol is taxed at, in a country.
type Rate struct {
	Law      string // of laws
	Currency string
	From     record.Date // it holds from this day on; none: since before the records of any house
	Upto     float64     // of the units that are removed in a calendar year, the first so many; 0: the rest
	Each     float64     // money for a unit: a proof gallon, or a litre of pure alcohol
	Reduced  bool        // it is for those whom the law lets have it
	Source   string
}

// rates are those that are known, with their sources. A rate that the source dates may have
// been changed since: the reader is told the day. Of the other countries none is known here.
var rates = []Rate{
	{Law: "us", Currency: "USD", Upto: 100_000, Each: 2.70, Reduced: true, Source: "26 USC 5001(c)(1)(A)"},
	{Law: "us", Currency: "USD", Upto: 22_230_000, Each: 13.34, Reduced: true, Source: "26 USC 5001(c)(1)(B): the next 22,130,000"},
	{Law: "us", Currency: "USD", Each: 13.50, Source: "26 USC 5001(a)(1)"},
	{Law: "ireland", Currency: "EUR", From: record.Date{Year: 2013, Month: 10, Day: 16}, Each: 42.57, Source: "Revenue, rates of alcohol products tax, as of 16 October 2013; no later one was looked up"},
	{Law: "canada", Currency: "CAD", From: record.Date{Year: 2023, Month: 4, Day: 1}, Each: 13.303, Source: "CRA, rate of excise duty on spirits over 7 %, as of 1 April 2023; it is raised each April"},
}

// dueOn is the excise on units that are removed after others in the same calendar year:
// with the reduced rates, and without. It is not known where no rate is.
func dueOn(law string, on record.Date, before, units float64) (reduced, full float64, known bool) {
	rest := units
	for _, r := range rates {
		if r.Law != law || r.From.Compare(on) > 0 {
			continue
		}
		known = true
		part := rest
		if r.Upto > 0 {
			part = min(rest, max(0, r.Upto-before))
		} else {
			full = r.Each * units
		}
		reduced += part * r.Each
		before, rest = before+part, rest-part
	}
	return reduced, full, known
}

// sources are where the rates of a law stand.
func sources(law string) []string {
	out := []string{}
	for _, r := range rates {
		if r.Law == law {
			out = append(out, r.Source)
		}
	}
	return out
}

// taxedIn says that the rates of a law are in a currency, that of the house's prices.
func taxedIn(law, currency string) bool {
	for _, r := range rates {
		if r.Law == law && (r.Currency == currency || currency == "") {
			return true
		}
	}
	return false
}
