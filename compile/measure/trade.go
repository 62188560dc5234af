package measure

import (
	"newmake/lang/quantity"
	"newmake/lang/words"
)

// System is the system of a text whose reader counts in these units.
func (u Units) System() quantity.System {
	if u == US {
		return quantity.US
	}
	return quantity.SI
}

// Words gives a sentence the trade's words of a reader of these units: stillage for pot ale
// and spent lees, spent grain for draff, mash water for liquor, and the other way.
func (u Units) Words(s string) string { return words.Trade(s, u.System()) }
