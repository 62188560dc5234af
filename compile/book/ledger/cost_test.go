package ledger_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/ledger"
	"newmake/compile/plan"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// costed keeps the books of a month with prices: a kilogram of corn and a new cask at round
// sums, money at a tenth a year.
func costed(t *testing.T, text string, y, m int, bottle ...float64) *ledger.Money {
	t.Helper()
	h, c, said := read(t, text)
	require.False(t, said.HasErrors(), "%v", said)
	o := ledger.HouseOf(h, c, "us", false)
	o.US = true
	o.Prices = &ledger.Prices{
		Costs: recipe.Costs{Currency: "USD", PerKg: map[string]float64{"corn": 1}, PerCask: 100, PerUsedCask: 40, CarryingPerYear: 0.1},
		Plan: func(*record.Run) (*plan.Cost, bool) {
			return &plan.Cost{Lines: []plan.CostLine{{What: "corn", Cost: 300}, {What: "work", Cost: 500}, {What: "casks", Cost: 100}}}, true
		},
		New:    func(string) bool { return true },
		Margin: 0.5,
	}
	if len(bottle) > 0 {
		o.Prices.PerBottle = bottle[0]
	}
	on := month(y, m)
	return ledger.Of(o, on.Year, on.Month).Cost
}

// What a bottling leaves in its vat, or in a tank, keeps its part of what the vat cost, however
// little it is: the bottles bear theirs alone. What nobody gauged is lost, and they bear it.
func TestLeftKeepsItsCost(t *testing.T) {
	text := loft + filled("24-01", "2024-03-01", "K", 50) + "vat \"V\" on 2026-03-01 {\n  from \"K\" 45 gal, 118 proof at 60 F\n  gauge 59 gal, 90 proof at 60 F\n}\n" +
		"bottling \"26C02\" of \"V\" on 2026-03-02 {\n  bottles 290 of 750 mL at 90 proof\n"
	bottled := 290 * 0.75 / 3.785411784 * 0.9
	each := func(left string) float64 { return costed(t, text+left+"}\n", 2026, 3).Bottlings[0].Each }
	whole := (600*0.45359237 + 500 + 100) * (1 + 0.1*730/365.25)
	for left, kept := range map[string]float64{
		"": 0, "  left none\n": 0, // what is off is under what a bottling may lose
		"  left 1.4 gal, 90 proof at 60 F\n": 1.26, "  left 1.4 gal, 90 proof at 60 F to \"Small tank\"\n": 1.26,
		"  left 0.1 gal, 90 proof at 60 F\n": 0.09,
	} {
		assert.InDelta(t, whole*bottled/(bottled+kept)/290, each(left), 0.011, left)
	}
}

// TestCost follows money by hand from the corn to the bottle: what evaporates, breaks or is
// tasted is paid for by what is left.
func TestCost(t *testing.T) {
	// 60 PG in, lain for 2 years, 53.1 PG out, 295 bottles of which 5 are broken or tasted.
	text := loft + filled("24-01", "2024-03-01", "K", 50) + "vat \"V\" on 2026-03-01 {\n  from \"K\" 45 gal, 118 proof at 60 F\n  gauge 59 gal, 90 proof at 60 F\n}\n" +
		"bottling \"26C02\" of \"V\" on 2026-03-02 {\n  bottles 295 of 750 mL at 90 proof\n  broken 2 of 750 mL\n  samples 3 of 750 mL\n}\n"
	m := costed(t, text, 2026, 3)
	require.Len(t, m.Casks, 1)
	k := m.Casks[0]
	spirit := 600*0.45359237 + 500
	years := 730 / 365.25
	total := (spirit + 100) * (1 + 0.1*years)
	assert.InDelta(t, spirit, k.Spirit, 0.01)
	assert.InDelta(t, 100, k.Wood, 0.001)
	assert.InDelta(t, (spirit+100)*0.1*years, k.Carrying, 0.01)
	assert.InDelta(t, spirit/60, k.EachIn, 0.006)
	assert.InDelta(t, total/53.1, k.EachLeft, 0.006)
	require.Len(t, m.Bottlings, 1)
	b := m.Bottlings[0]
	assert.Equal(t, 290, b.Bottles)
	assert.InDelta(t, total/290, b.Each, 0.006, "all of it is paid for by the bottles that can be sold")
	pg := 0.75 / 3.785411784 * 0.9
	assert.InDelta(t, 2.70*pg, b.ExciseReduced, 0.006)
	assert.InDelta(t, 13.50*pg, b.ExciseFull, 0.006)
	assert.InDelta(t, 2*(b.Each+b.ExciseReduced), b.Price, 0.01, "half of it is left")

	glass := costed(t, text, 2026, 3, 2.40).Bottlings[0]
	assert.InDelta(t, 295*2.40, glass.Glass, 0.001, "what breaks or is tasted had its bottle too")
	assert.InDelta(t, (total+295*2.40)/290, glass.Each, 0.006)
	assert.Contains(t, strings.Join(m.LeftOut, "; "), "`bottle 2.40 USD`")
	assert.NotContains(t, strings.Join(costed(t, text, 2026, 3, 2.40).LeftOut, "; "), "bottle")

	run := costed(t, text, 2024, 3).Runs
	require.Len(t, run, 1)
	assert.InDelta(t, spirit, run[0].Total, 0.01)
	assert.False(t, run[0].ByPlan)
	bare := costed(t, strings.Replace(text, "    corn 600 lb lot \"C\"\n", "", 1), 2024, 3).Runs
	assert.True(t, bare[0].ByPlan)
	assert.InDelta(t, 800, bare[0].Total, 0.01)
}

// TestLotPrice takes what a lot cost itself, by weight, by the bushel or for all of it, and
// the house's price where the store has none.
func TestLotPrice(t *testing.T) {
	for price, want := range map[string]float64{"": 600 * 0.45359237, ", 0.50 USD/lb": 300, ", 1,800 USD": 120} {
		text := strings.Replace(loft, `from "Seller"`, `from "Seller"`+price, 1) + filled("24-01", "2024-03-01", "K", 50)
		run := costed(t, text, 2024, 3).Runs
		require.Len(t, run, 1, price)
		assert.InDelta(t, want, run[0].Materials, 0.01, price)
	}
}

// TestHeartsBearTheCost: the hearts of a run bear all that it cost, and feints that are charged
// again bring nothing, so that a run is together / hearts whatever came before it.
func TestHeartsBearTheCost(t *testing.T) {
	run := func(number, day, more string) string {
		return "run \"" + number + "\" of \"B\" on " + day + " {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  strip {\n    " + day + " 09:00 low-wines 200 gal, 50 proof at 60 F\n  }\n  spirit {\n    " + day + " 10:00 charge low-wines\n" + more + "    hearts 50 gal, 120 proof at 60 F\n    feints 50 gal, 80 proof at 60 F\n  }\n}\n"
	}
	text := loft + run("24-01", "2024-03-01", "") + run("24-02", "2024-03-08", "    charge feints 50 gal, 80 proof at 60 F from \"24-01\"\n")
	m := costed(t, text, 2024, 3)
	require.Len(t, m.Runs, 2)
	for _, r := range m.Runs {
		assert.Equal(t, 60.0, r.Produced.ProofGallons)
		assert.InDelta(t, (600*0.45359237+500)/60, r.Each, 0.006)
		assert.True(t, r.Kept)
	}
}

// TestMoneyByOnePath: what a litre of pure alcohol cost is what the accounts in litres say, and a
// hundred times as much a hectolitre.
func TestMoneyByOnePath(t *testing.T) {
	h, c, said := read(t, loft+filled("24-01", "2024-03-01", "K", 50))
	require.False(t, said.HasErrors(), "%v", said)
	for country, each := range map[string]float64{"uk": 1, "eu": 100} {
		o := ledger.HouseOf(h, c, country, false)
		o.Prices = &ledger.Prices{Costs: recipe.Costs{PerKg: map[string]float64{"corn": 1000}}, Plan: func(*record.Run) (*plan.Cost, bool) { return nil, false }, New: func(string) bool { return true }}
		run := ledger.Of(o, 2024, 3).Cost.Runs[0]
		assert.InEpsilon(t, run.Total/run.Produced.PureL*each, run.Each, 1e-4, country)
		assert.False(t, run.Kept, "no plan was kept")
	}
}

// TestRunOfFeintsAlone: feints count as nothing, so no bottle bears what a run cost that gave
// nothing else; that is said.
func TestRunOfFeintsAlone(t *testing.T) {
	run := func(hearts string) string {
		return loft + "run \"24-01\" of \"B\" on 2024-02-01 {\n  used {\n    corn 600 lb lot \"C\"\n  }\n  strip {\n    2024-02-04 10:00 low-wines 100 gal, 50 proof at 60 F\n  }\n  spirit {\n    2024-02-05 09:00 charge low-wines\n" + hearts + "    feints 40 gal, 60 proof at 60 F\n  }\n}\n"
	}
	said := "run 24-01, 772.15 USD: feints came of it and no hearts, feints count as nothing, and so nothing bears its cost"
	m := costed(t, run(""), 2024, 2)
	assert.Empty(t, m.Runs)
	assert.Contains(t, m.LeftOut, said)
	assert.NotContains(t, costed(t, run(""), 2024, 3).LeftOut, said, "it is of February")
	m = costed(t, run("    10:00 hearts 20 gal, 120 proof at 60 F\n"), 2024, 2)
	assert.Len(t, m.Runs, 1)
	assert.NotContains(t, m.LeftOut, said)
}
