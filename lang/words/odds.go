package words

import (
	"fmt"
	"math"
)

// Odds says a share of all cases in whole tenths, and at the ends in twentieths.
func Odds(share float64) string {
	switch {
	case share < 0.05:
		return "hardly ever, in less than 1 of 20"
	case share >= 0.95:
		return "nearly always, in 19 of 20 or more"
	}
	return fmt.Sprintf("about %d in 10", int(math.Round(10*share)))
}
