package schema

import (
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// mustBe is a limit outside which it cannot work.
func mustBe(low, high float64, reason string) Limit {
	return Limit{Low: low, High: high, Severity: diag.Error, Reason: reason}
}

// usually is a limit outside which the trade would frown.
func usually(low, high float64, reason string) Limit {
	return Limit{Low: low, High: high, Severity: diag.Warning, Reason: reason}
}

// of narrows a limit to one slot of the line.
func (l Limit) of(slot string) Limit {
	l.Slot = slot
	return l
}

// as narrows a limit to one kind of quantity.
func (l Limit) as(k quantity.Kind) Limit {
	l.Kind = k
	return l
}

// least is where a limit begins of what must be more than nothing.
const least = 1e-12

// aPrice, anEnergy, aStrength and aDose are limits that several fields share.
var (
	aPrice    = mustBe(0, 1e9, "from nothing to more than a cask costs in any currency")
	anEnergy  = mustBe(0, 1e6, "activation energies of yeast and enzymes lie below 1,000 kJ/mol")
	aStrength = mustBe(0, 1, "nothing is stronger than pure alcohol")
	aDose     = mustBe(0, 1e4, "no batch is given ten tonnes of an enzyme").of("mass")
)

// aShare is the limit of a share of a whole.
var aShare = mustBe(0, 1, "a share of a whole lies between nothing and all of it")
