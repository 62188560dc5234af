package recipe

import (
	"cmp"
	"slices"
	"strings"

	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Country is a country as its law bears on a house's books.
type Country struct {
	Entry
	Title    string
	Records  string // the law or guide that asks for records
	Kept     string // how long, "" if nobody wrote it
	Counts   string // proof, litres or hectolitres
	Unit     string // how that is written: PG, LPA
	UnitLong string
	Calls    map[string]string // names of accounts, by schema.Accounts
	Excise   []Excise          // in the order of the text
	Notes    []string
}

// Excise is what a unit of alcohol is taxed at: a proof gallon, or a litre of pure alcohol.
type Excise struct {
	Money    float64
	Currency string
	From     record.Date // it holds from this day on; zero: since before the records of any house
	UpTo     float64     // of the units that are removed in a calendar year, those up to so many; 0: all
	Reduced  bool        // it is for those whom the law lets have it
	Source   string
}

// ExciseOn are the rates that hold on a day: of each band the last that began by then.
func (c *Country) ExciseOn(on record.Date) []Excise {
	var out []Excise
	for _, r := range c.Excise {
		if r.From.Compare(on) > 0 {
			continue
		}
		i := slices.IndexFunc(out, func(o Excise) bool { return o.UpTo == r.UpTo })
		switch {
		case i < 0:
			out = append(out, r)
		case out[i].From.Compare(r.From) <= 0:
			out[i] = r
		}
	}
	sorting.Stable(out, func(a, b Excise) int {
		switch {
		case a.UpTo == 0 || b.UpTo == 0:
			return cmp.Compare(b.UpTo, a.UpTo)
		}
		return cmp.Compare(a.UpTo, b.UpTo)
	})
	return out
}

// The zones of the United States and its territories, in the IANA time zone
// database (zone1970.tab and backward): by name, or by what their names begin
// with.
var (
	zonesUS = []string{
		"America/Adak", "America/Anchorage", "America/Boise", "America/Chicago", "America/Denver", "America/Detroit",
		"America/Fort_Wayne", "America/Indianapolis", "America/Juneau", "America/Los_Angeles", "America/Louisville", "America/Menominee",
		"America/Metlakatla", "America/New_York", "America/Nome", "America/Phoenix", "America/Puerto_Rico", "America/Shiprock",
		"America/Sitka", "America/St_Thomas", "America/Yakutat", "Pacific/Guam", "Pacific/Honolulu",
	}
	zoneGroupsUS = []string{"US/", "America/Indiana/", "America/Kentucky/", "America/North_Dakota/"}
)

// CountryUS is the name of the country whose sections the sheets and the ledger cite.
const CountryUS = "us"

// Under is the name of the country under whose law a plant stands: as it is written, else by
// its time zone, of which only those of the United States tell; "" where neither does.
func (p *Plant) Under() string {
	switch {
	case p.Country != "":
		return p.Country
	case slices.Contains(zonesUS, p.Zone), slices.ContainsFunc(zoneGroupsUS, func(g string) bool { return strings.HasPrefix(p.Zone, g) }):
		return CountryUS
	}
	return ""
}
