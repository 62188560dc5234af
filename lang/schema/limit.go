package schema

import (
	"math"

	"newmake/lang/diag"
)

var inf = math.Inf(1)

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

// positive is the limit of what must be more than nothing.
var positive = mustBe(1e-12, inf, "nothing can be made with none of it")

// aShare is the limit of a share of a whole.
var aShare = mustBe(0, 1, "a share of a whole lies between nothing and all of it")
