package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/record"
)

func TestBlanksHaveKeysOfTheirOwn(t *testing.T) {
	low, high := Of(59, Celsius), Of(61, Celsius)
	p := &Plan{
		Bill: Bill{Lines: []Grain{{Name: "rye", MassKg: 40, AddedIn: "mash.2"}}, Additions: []Addition{{Name: "water", Amount: Of(100, Litre), Step: "mash.1"}, {Name: "yeast", Amount: Of(1, Kilogram), Step: "ferment.pitch"}}},
		Schedule: Schedule{Steps: []Step{
			{ID: "mash.1", Stage: "mash", Vessel: "Kettle", End: "10:00", Read: []Reading{
				{Kind: record.Temperature, Should: Of(60, Celsius), Low: &low, High: &high}, {Kind: record.PH, Should: Of(5.2, PH)}}},
			{ID: "strip.collect", Stage: "strip", End: "12:19", Read: []Reading{
				{Kind: record.Spout, At: "11:04", Should: Of(25, AbvPct)}, {Kind: record.Receiver, At: "11:04", Should: Of(200, Litre)},
				{Kind: record.Spout, At: "12:04", Should: Of(4, AbvPct)}, {Kind: record.Spout, At: "12:19", Should: Of(2, AbvPct)}}},
		}},
	}
	p.Schedule.NameReadings()
	var ids []string
	blanks := p.Blanks()
	for _, b := range blanks {
		ids = append(ids, b.ID)
	}
	assert.Equal(t, []string{"used.rye", "used.mash.1.water", "used.ferment.pitch.yeast",
		"mash.1.temperature", "mash.1.pH", "strip.collect.spout.1", "strip.collect.receiver.1", "strip.collect.spout.2", "strip.collect.spout"}, ids)
	assert.Equal(t, record.Volume, blanks[1].Kind)
	assert.Equal(t, "scale", blanks[2].Instrument)
	assert.Equal(t, "10:00", blanks[3].Due, "at the end of the step")
	assert.Equal(t, [2]float64{59, 61}, [2]float64{blanks[3].Low.Value, blanks[3].High.Value})
	assert.Nil(t, blanks[4].Low)
	assert.Equal(t, "11:04", blanks[5].Due)
}
