package chances

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/ask/odds"
	"newmake/compile/measure"
	_ "newmake/lang/testflag"
	"newmake/lang/words"
)

// A size that fills a cask a hair more often is not said in the same words as what it fills now.
func TestAHairMoreOften(t *testing.T) {
	says := func(now, then float64) string {
		of := func(share float64) odds.Odds { return odds.Odds{Share: share, Words: words.Odds(share)} }
		better := of(then)
		a := &odds.Answer{Casks: []odds.Casks{{Least: 1, Odds: of(now)}}, Change: &odds.Change{Casks: 1, Factor: 1.02, BillKg: 400, Odds: &better}}
		out, _ := change(a, measure.SI, "")
		return out
	}
	assert.Contains(t, says(0.84, 0.91), "fills one cask about 9 in 10.")
	assert.Contains(t, says(0.87, 0.91), "fills one cask in 91 of 100 draws, where it now does in 87.")
}
