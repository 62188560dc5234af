package ledger

import (
	"testing"

	"github.com/stretchr/testify/assert"

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
		assert.Equal(t, want, InStore(stores, runs, bushel, day(d)), "day %d", d)
	}
	used := []*record.Run{{Number: "26-02", Date: day(1), Used: []record.Used{{What: "rye", Amount: record.Reading{Value: kg(30)}}}}}
	assert.Empty(t, InStore(nil, used, bushel, day(3)), "what nobody wrote that it came is not there afterwards")
}
