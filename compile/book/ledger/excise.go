package ledger

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/lang/recipe"
	"newmake/lang/record"
)

// dueOn is the excise on units that are removed after others in the same calendar year:
// with the reduced rates, and without. It is not known where the full rate is not.
func dueOn(c *recipe.Country, on record.Date, before, units float64) (reduced, full float64, known bool) {
	rest := units
	for _, r := range c.ExciseOn(on) {
		part := rest
		if r.UpTo > 0 {
			part = min(rest, max(0, r.UpTo-before))
		} else if !r.Reduced {
			full, known = r.Money*units, true
		}
		reduced += part * r.Money
		before, rest = before+part, rest-part
	}
	if !known {
		return 0, 0, false
	}
	return reduced, full, true
}

// sources are where the rates of a country stand that hold on a day, each with its day.
func sources(c *recipe.Country, on record.Date) []string {
	out := []string{}
	for _, r := range c.ExciseOn(on) {
		s := money(r.Money) + " " + r.Currency
		if r.UpTo > 0 {
			s += fmt.Sprintf(" up to %.0f", r.UpTo)
		}
		if !r.From.IsZero() {
			s += " from " + r.From.String()
		}
		if r.Source != "" {
			s += ": " + r.Source
		} else if c.House {
			s += ": the house's own"
		}
		out = append(out, s)
	}
	return out
}

// taxedIn says that the rates of a country are in a currency, that of the house's prices.
func taxedIn(c *recipe.Country, currency string) bool {
	for _, r := range c.Excise {
		if r.Currency == currency || currency == "" {
			return true
		}
	}
	return false
}

// money has cents, and more places only where the law has them.
func money(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	return strings.TrimSuffix(s, "0")
}
