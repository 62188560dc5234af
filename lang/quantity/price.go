package quantity

import "strings"

// Price is the unit of a price, such as USD/lb: a currency and what it buys.
type Price struct {
	Currency string
	Per      *Unit  // nil if the price is for a thing with no unit, as USD/cask
	PerName  string // the word after the slash
}

// ParsePrice reads the unit of a price. The currency is three capitals, as in
// ISO 4217, or a symbol; which currency it is stays the house's business.
func ParsePrice(unit string) (Price, bool) {
	currency, per, ok := strings.Cut(unit, "/")
	currency = Currency(currency)
	if !ok || !IsCurrency(currency) || per == "" {
		return Price{}, false
	}
	u, _ := Lookup(per)
	return Price{Currency: currency, Per: u, PerName: per}, true
}

// symbols are those that name one currency where prices of a house are written. `$` is
// that of too many.
var symbols = map[string]string{"£": "GBP", "€": "EUR", "¥": "JPY"}

// Currency is the code of a currency that is written by its symbol or its code.
func Currency(word string) string {
	if code, ok := symbols[word]; ok {
		return code
	}
	return word
}

// IsCurrency reports whether a word has the form of an ISO 4217 currency code and
// is no unit.
func IsCurrency(word string) bool {
	word = Currency(word)
	if len(word) != 3 {
		return false
	}
	for i := range 3 {
		if word[i] < 'A' || word[i] > 'Z' {
			return false
		}
	}
	_, unit := Lookup(word)
	return !unit
}

// priceMeasure brings a price to money per SI unit of what is bought.
func priceMeasure(unit string) (Measure, error) {
	p, ok := ParsePrice(unit)
	if !ok {
		return Measure{}, newUnitError(unit, UnitPrice)
	}
	if p.Per == nil {
		return linear(UnitPrice, 1), nil
	}
	m := p.Per.Measures[0]
	if m.Curve != nil || m.Shift != 0 {
		return Measure{}, newUnitError(unit, UnitPrice)
	}
	return linear(UnitPrice, 1/m.Factor), nil
}
