package constants

import (
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// row is a constant of the table, for whatever batch.
type row struct {
	id, words string
	stage     numbers.Stage
	owner     Owner
	form      Form
	kind      quantity.Kind
	shape     Shape
	sd        float64 // of the figure, or of the factor
	low, high float64
	why       string
	// uses finds what it is of in a batch; nothing where the batch has none.
	uses func(r *row, b *recipe.Batch) []use
}

// use is a constant in a batch.
type use struct {
	of    string
	words string // in place of the row's, "" for those
	stage numbers.Stage
	is    float64 // what is written; 1 of a factor, 0 of what is added
	prior *Prior  // in place of the row's
	sure  *stated // how sure the figure is, in place of the row's deviation; nil where nobody says
	// unsaid says that the house states nothing of it.
	unsaid bool
	as     string // see Constant.As
	paths  []recipe.Path
	set    func(b *recipe.Batch, x float64)
}

// most is a bound where nothing else bounds a factor.
const most = 10

// table is all of them, in the order of the work; of one value, what is put in its
// place stands before what multiplies it.
//
// A standard deviation is a judgment where no publication gives one, and says so. A
// range "common practice" of a to b is read as holding 9 times in 10.
var table = []row{
	// The house.
	{"yield-efficiency", "yield efficiency", numbers.Mashing, House, Times, quantity.Share, Normal, 0, 0.5, 1, "see efficiency", yieldEfficiency},
	{"cooker-heat", "heating of the cooker", numbers.Mashing, House, Times, quantity.Share, Lognormal, 0.15, 0.1, most, heatWhy, cookerHeat},
	{"cooker-cooling", "cooling of the cooker", numbers.Mashing, House, Times, quantity.Share, Lognormal, 0.20, 0.1, most, coolWhy, cookerCooling},
	{"yeast-lag", "lag of the yeast", numbers.Fermenting, House, Value, quantity.Duration, Lognormal, 0.40, 0, 24 * 3600, "relative; gas shows after 2 to 4 h: common practice", yeastLag},
	{"yeast-rate", "rate of the yeast", numbers.Fermenting, House, Times, quantity.Share, Lognormal, 0.25, 0.1, most, "dry at 44 to 96 h in houses that work alike: common practice, from memory", yeastRate},
	{"fermenter-cooling", "cooling of the fermenters", numbers.Fermenting, House, Times, quantity.Share, Lognormal, 0.25, 0.1, most, coolWhy, fermenterCooling},
	{"still-heat", "heating of the still", numbers.Stripping, House, Times, quantity.Share, Lognormal, 0.15, 0.1, most, heatWhy, stillHeat},
	{"reflux", "reflux", numbers.Stripping, House, Value, quantity.Share, Normal, 0, 0, still.MostReflux, "a head that nobody has measured: from memory, 4 in 10 of it and a point more", reflux},
	{"alcohol-lost", "alcohol lost in a run", numbers.Stripping, House, Value, quantity.Share, Lognormal, 0.01, 0, 0.2, "a tight still loses nothing to 3 %: common practice", alcoholLost},
	{"loss-first-year", "cask's loss of the first year", numbers.Filling, House, Times, quantity.Share, Lognormal, 0.30, 0, most, "2 to 12 % between houses of all climates: common practice", lossFirst},
	{"loss", "cask's loss of a later year", numbers.Filling, House, Times, quantity.Share, Lognormal, 0.30, 0, most, "2 to 5 % in one climate: common practice", lossLater},
	{"soak", "soak of the wood", numbers.Filling, House, Times, quantity.Share, Lognormal, 0.30, 0, most, "2 to 6 % of the fill: common practice", soak},

	// The run.
	{"lot-starch", "starch of the lot", numbers.Mashing, Run, Times, quantity.Share, Normal, 0.015, 0.5, 1.2, "lots of one grain differ by 2 points of starch: from memory", lotStarch},
	{"lot-moisture", "moisture of the lot", numbers.Mashing, Run, Plus, quantity.Share, Normal, 0.007, -0.05, 0.05, "lots of one grain differ by a point of moisture: common practice", lotMoisture},
	{"lot-enzymes", "enzymes of the lot", numbers.Mashing, Run, Times, quantity.Share, Normal, 0.08, 0.5, 2, "lots of one malt differ by a tenth in power: from memory", lotEnzymes},
	{"weighing", "grain as it is weighed out", numbers.Mashing, Run, Times, quantity.Share, Normal, 0.004, 0.9, 1.1, "a floor scale and what stays in the sack: common practice", weighing},
	{"liquor", "water as it is measured in", numbers.Mashing, Run, Times, quantity.Share, Normal, 0.01, 0.9, 1.1, "a dipstick is read to a hundredth: common practice", liquor},
	{"backset-acidity", "acidity of the backset", numbers.Mashing, Run, Plus, quantity.PH, Normal, 0.12, -1, 1, "3.8 to 4.2 in one house: common practice", backsetAcidity},
	{"supply", "water supply on the day", numbers.Mashing, Run, Plus, quantity.TempDifference, Normal, 1.0, -10, 10, "a well keeps within 2 C of its mean: from memory", supply},
	{"room", "air of the house on the day", numbers.Mashing, Run, Plus, quantity.TempDifference, Normal, 3.0, -15, 15, "a still house keeps within 5 C of its mean: from memory", room},
	{"vigor", "vigor of the yeast", numbers.Fermenting, Run, Times, quantity.Share, Lognormal, 0.10, 0.2, most, "yeast of one kind, of another packet and another day: from memory", vigor},
	{"steam", "heating on the day", numbers.Mashing, Run, Times, quantity.Share, Lognormal, 0.03, 0.5, 2, "a boiler keeps its pressure within a tenth, and others draw on it: common practice; what that does, from memory", steam},
	{"reflux-of-day", "reflux on the day", numbers.Stripping, Run, Times, quantity.Share, Lognormal, 0.12, 0.1, most, "the draught about a head and the water of a condenser change from day to day: from memory", refluxOfDay},
	{"hand", "hand at the cut", numbers.Distilling, Run, Times, quantity.Share, Normal, 0.008, 0.9, 1.1, "a hydrometer at the spout is read to half a percent of volume, and the hand is slow: common practice", handAtCut},

	// The instruments: what their readings are off by.
	{"hydrometer", "hydrometer", numbers.Mashing, Instrument, Plus, quantity.Gravity, Normal, 0.0010, -0.02, 0.02, instrumentWhy, instrument},
	{"alcoholometer", "alcoholometer", numbers.Stripping, Instrument, Plus, quantity.Strength, Normal, 0.003, -0.05, 0.05, instrumentWhy, instrument},
	{"thermometer", "thermometer", numbers.Mashing, Instrument, Plus, quantity.TempDifference, Normal, 0.4, -5, 5, instrumentWhy, instrument},
	{"dip", "dipstick", numbers.Fermenting, Instrument, Times, quantity.Share, Normal, 0.015, 0.9, 1.1, instrumentWhy, instrument},
	{"scale", "scale", numbers.Mashing, Instrument, Times, quantity.Share, Normal, 0.001, 0.95, 1.05, instrumentWhy, instrument},
}

const (
	heatWhy       = "a plate on a boiler against what a full vessel takes up: common practice"
	coolWhy       = "scale, flow and rakes make a cooler worth more or less: common practice"
	instrumentWhy = "a good one of its kind that nobody has checked: common practice"
)

// Of lists the constants of a batch: those of the table that it has.
func Of(b *recipe.Batch) []Constant {
	var out []Constant
	for i := range table {
		r := &table[i]
		for _, u := range r.uses(r, b) {
			c := Constant{
				ID: r.id, Of: u.of, Words: r.words, Stage: r.stage, Owner: r.owner, Form: r.form, Kind: r.kind, Why: r.why,
				Prior:     Prior{Shape: r.shape, Mean: u.is, SD: r.sd, Low: r.low, High: r.high},
				AsWritten: u.is, Unsaid: u.unsaid, As: u.as, Paths: u.paths, set: u.set,
			}
			if r.form == Value && r.shape == Lognormal {
				c.SD *= u.is
			}
			if u.words != "" {
				c.Words = u.words
			}
			if u.stage != "" {
				c.Stage = u.stage
			}
			if u.prior != nil {
				c.Prior = *u.prior
			}
			if u.sure != nil {
				c.SD, c.Why = u.sure.sd, u.sure.why
				if r.form == Times {
					c.SD /= u.sure.figure
				}
			}
			if b.Learned != nil {
				c = c.narrowed(b.Learned)
			}
			out = append(out, c)
		}
	}
	return out
}
