package ledger

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/inventory"
	"newmake/lang/quantity"
	"newmake/lang/record"
)

// What came counts from its day on, what a run used goes off on the day of the run, a
// count puts right what the books say, and bushels are weighed.
func TestInStore(t *testing.T) {
	day := func(d int) record.Date { return record.Date{Year: 2026, Month: 3, Day: d} }
	kg := func(x float64) record.Value { return record.Value{Number: x, Unit: "kg", SI: x, Kind: quantity.Mass} }
	stores := []*record.Store{{Lots: []record.Lot{
		{On: day(1), What: "corn", Lot: "C-1", Amount: kg(1000)},
		{On: day(5), What: "corn", Lot: "C-2", Amount: record.Value{Number: 10, Unit: "bushel", SI: 10, Kind: quantity.Bushel}},
		{Word: "count", On: day(9), What: "corn", Lot: "C-1", Amount: kg(650)},
		{On: day(2), What: "used-cask", Amount: record.Value{Number: 4}},
		{On: day(2), What: "lactic-acid", Amount: record.Value{Number: 5, Unit: "L", SI: 0.005, Kind: quantity.Volume}},
	}}}
	runs := []*record.Run{{Number: "26-01", Date: day(7), Used: []record.Used{{What: "corn", Lot: "C-1", Amount: record.Reading{Value: kg(300)}}}}}
	bushel := func(string) float64 { return 25 }
	for d, want := range map[int]map[string]float64{
		1: {"corn": 1000},
		2: {"corn": 1000, "used-cask": 4},
		5: {"corn": 1250, "used-cask": 4},
		6: {"corn": 1250, "used-cask": 4},
		7: {"corn": 950, "used-cask": 4},
		9: {"corn": 900, "used-cask": 4},
	} {
		assert.Equal(t, want, InStore(&inventory.Inventory{Stores: stores, Runs: runs}, bushel, day(d)), "day %d", d)
	}
	used := []*record.Run{{Number: "26-02", Date: day(1), Used: []record.Used{{What: "rye", Amount: record.Reading{Value: kg(30)}}}}}
	assert.Empty(t, InStore(&inventory.Inventory{Runs: used}, bushel, day(3)), "what nobody wrote that it came is not there afterwards")
}

// Casks that were filled and bottles go out of the stores, each by its kind and its size.
func TestContainersInStore(t *testing.T) {
	day := func(d int) record.Date { return record.Date{Year: 2026, Month: 3, Day: d} }
	n := func(x float64) record.Value { return record.Value{Number: x} }
	const gallon, mL = 0.003785411784, 1e-6
	fill := func(serial string, d int, c *record.Cask) *record.Life {
		return &record.Life{Serial: serial, Cask: c, Fills: []record.Filling{{Visit: &record.Visit{When: record.When{Date: day(d)}}}}}
	}
	texts := &inventory.Inventory{
		Stores: []*record.Store{{Lots: []record.Lot{
			{On: day(1), What: "cask", Amount: n(6)}, {On: day(1), What: "used-cask", Amount: n(3)}, {On: day(1), What: "30 gal cask", Amount: n(2)},
			{On: day(1), What: "750 mL bottle", Amount: n(700)}, {On: day(1), What: "375 mL bottles", Amount: n(50)}, {On: day(1), What: "bottle corks", Amount: n(900)},
		}}},
		Lives: []*record.Life{
			fill("A-1", 2, &record.Cask{SizeM3: 53 * gallon}), fill("A-2", 3, &record.Cask{SizeM3: 53 * gallon}),
			fill("A-1", 9, &record.Cask{SizeM3: 53 * gallon}), // filled again: it was in the house
			fill("A-3", 4, &record.Cask{SizeM3: 30 * gallon, Used: true}), fill("A-4", 5, nil),
		},
		Bottlings: []*record.Bottling{{On: day(6), Bottles: []record.Bottles{
			{Word: "bottles", N: 308, EachM3: 750 * mL}, {Word: "bottles", N: 20, EachM3: 375 * mL}, {Word: "broken", N: 2, EachM3: 750 * mL}, {Word: "bottles", N: 5, EachM3: 1000 * mL},
		}}},
	}
	for d, want := range map[int]map[string]float64{
		1: {"cask": 6, "used-cask": 3, "30 gal cask": 2, "750 mL bottle": 700, "375 mL bottles": 50, "bottle corks": 900},
		3: {"cask": 4, "used-cask": 3, "30 gal cask": 2, "750 mL bottle": 700, "375 mL bottles": 50, "bottle corks": 900},
		4: {"cask": 4, "used-cask": 2, "30 gal cask": 2, "750 mL bottle": 700, "375 mL bottles": 50, "bottle corks": 900},
		5: {"cask": 3, "used-cask": 2, "30 gal cask": 2, "750 mL bottle": 700, "375 mL bottles": 50, "bottle corks": 900},
		9: {"cask": 3, "used-cask": 2, "30 gal cask": 2, "750 mL bottle": 392, "375 mL bottles": 30, "bottle corks": 900},
	} {
		assert.Equal(t, want, InStore(texts, nil, day(d)), "day %d", d)
	}
}
