package plan

// wholeMoney are the currencies without a minor unit (ISO 4217): a sum in one of
// them has no decimals.
var wholeMoney = map[string]bool{
	"BIF": true, "CLP": true, "DJF": true, "GNF": true, "ISK": true, "JPY": true, "KMF": true, "KRW": true, "PYG": true,
	"RWF": true, "UGX": true, "VND": true, "VUV": true, "XAF": true, "XOF": true, "XPF": true,
}

// MoneyPlaces is to how many decimals a sum of money is written.
func MoneyPlaces(currency string) int {
	if wholeMoney[currency] {
		return 0
	}
	return 2
}
