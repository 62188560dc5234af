package work

import (
	"math"

	"newmake/compile/stage/ferment"
	"newmake/compile/stage/still"
)

// Tolerance is how far off a reading may be before one asks why: the parts are
// what the models may be off and what the instrument may. They have nothing to
// do with one another, and so are added as squares. A house that has recorded
// its own runs knows better.
type Tolerance struct {
	Of    string // what is read
	Unit  string // of a part's Abs
	Parts []Part
}

// Part is one cause: so much, and such a share of the value, and why.
type Part struct {
	Abs, Share float64
	Why        string
}

// of is the tolerance of a value, with what is known of this reading alone.
func (t Tolerance) of(value float64, besides ...float64) float64 {
	sum := 0.0
	for _, p := range t.Parts {
		sum = math.Hypot(sum, p.Abs+p.Share*math.Abs(value))
	}
	for _, b := range besides {
		sum = math.Hypot(sum, b)
	}
	return sum
}

// At is the tolerance of a value.
func (t Tolerance) At(value float64) float64 { return t.of(value) }

const (
	asPublished  = "vapour of Carey and Lewis (1932) or Kirschbaum (1939) in place of the model's"
	washAlcohol  = "alcohol of the wash: published grain, ACCURACY, Mash"
	thermometer  = "a thermometer: common practice"
	dipstick     = "a dipstick or gauge glass: common practice"
	hydrometerOf = "a hydrometer: common practice"
)

// The tolerances, in the units of a plan: litres, C, % vol, SG, pH.
var (
	tolMashC = Tolerance{"temperature of a mash", "°C", []Part{
		{0.8, 0, "mixing by published heat capacities, in a mash that is not alike throughout: common practice"}, {0.5, 0, thermometer}}}
	tolFermentC = Tolerance{"temperature of a ferment", "°C", []Part{
		{1.9, 0, "heat and cooling as the house states them: common practice"}, {0.5, 0, thermometer}}}
	tolVapourC = Tolerance{"temperature of the vapour", "°C", []Part{
		{0.9, 0, "boiling points of two published sets: ACCURACY, Equilibrium"}, {0.5, 0, thermometer}}}
	tolWort = Tolerance{"original gravity, of its points", "SG", []Part{
		{0, 0.04, "extract of the grain: published grain, ACCURACY, Mash"}, {0.001, 0, hydrometerOf}}}
	tolFinal = Tolerance{"final gravity", "SG", []Part{
		{0.003, 0, "half the range of common practice: ACCURACY, Ferment"}, {0.001, 0, hydrometerOf}}}
	tolPH = Tolerance{"pH", "pH", []Part{
		{0.2, 0, "buffering of the grain: common practice"}, {0.05, 0, "a meter: common practice"}}}

	tolMashVolume = Tolerance{"volume of a mash or wort", "L", []Part{
		{0, 0.02, "room of the grain, and what boils off: common practice"}, {0, 0.02, dipstick + ", with the rakes on"}}}
	tolWashVolume = Tolerance{"volume of a wash", "L", []Part{
		{0, 0.02, "room of the grain: common practice"}, {0, 0.01, dipstick}}}
	tolLowWinesVolume = Tolerance{"volume of low wines", "L", []Part{
		{0, 0.04, asPublished}, {0, 0.02, "volume of the wash"}, {0, 0.01, dipstick}}}
	tolHeartsVolume = Tolerance{"volume of hearts", "L", []Part{
		{0, 0.012, asPublished}, {0, 0.04, washAlcohol}, {0, 0.01, dipstick}}}
	tolFeintsVolume = Tolerance{"volume of feints or tails", "L", []Part{
		{0, 0.08, asPublished}, {0, 0.04, washAlcohol}, {0, 0.01, dipstick}}}
	tolSetVolume = Tolerance{"a volume that is measured out", "L", []Part{
		{0, 0.02, "casks and cans of one size differ: common practice"}, {0, 0.01, dipstick}, {0.01, 0, "a jug is read to 10 mL: common practice"}}}

	tolWashStrength = Tolerance{"strength of a wash", "% vol", []Part{
		{0, 0.04, washAlcohol}, {0.1, 0, "a laboratory's distillation: common practice"}}}
	tolLowWinesStrength = Tolerance{"strength of low wines", "% vol", []Part{
		{0, 0.04, asPublished}, {0, 0.04, washAlcohol}, {0.1, 0, hydrometerOf}}}
	tolFeintsStrength = Tolerance{"strength of feints", "% vol", []Part{
		{1, 0, asPublished}, {0.1, 0, hydrometerOf}}}
	tolHeartsStrength = Tolerance{"strength of hearts", "% vol", []Part{
		{0.7, 0, asPublished}, {0.1, 0, hydrometerOf}}}
	tolSetStrength = Tolerance{"strength that spirit is brought to", "% vol", []Part{
		{0.2, 0, "reduced by steps: common practice"}, {0.1, 0, hydrometerOf}}}
	tolFlow = Tolerance{"flow at the spout", "of it", []Part{
		{0, 0.1, "a valve that is set by hand: common practice"}, {0, 0.03, "timed in a measure: common practice"}}}
	tolSpout = Tolerance{"strength at the spout", "% vol", []Part{
		{0.5, 0.03, asPublished}, {0.5, 0, "a hydrometer in a stream that is warm and moves: common practice"}}}
)

// Tolerances are all of them, for the page that says how good the numbers are.
func Tolerances() []Tolerance {
	return []Tolerance{
		tolMashC, tolFermentC, tolVapourC, tolWort, tolFinal, tolPH,
		tolMashVolume, tolWashVolume, tolLowWinesVolume, tolHeartsVolume, tolFeintsVolume, tolSetVolume,
		tolWashStrength, tolLowWinesStrength, tolFeintsStrength, tolHeartsStrength, tolSetStrength, tolSpout, tolFlow,
	}
}

// What stands on the clock may come sooner or later. A ferment is good to a
// quarter of its time (ACCURACY, Ferment). A run is good to a twelfth: its heat to
// 3 % by two sources of heat capacity, its equilibrium to 5 % of the hours, its
// power as the house states it.
const (
	FermentPace = 0.25
	RunPace     = 0.08
	// cutSlack is how far the spout may be from the model's when a cut by
	// strength falls, in % vol: the largest between the model and the two
	// published sets from 50 % vol up.
	cutSlack = 1.0
)

// drift is the most that a reading moves if the clock is so much off.
func drift(at func(s float64) float64, s, pace float64) float64 {
	now := at(s)
	return max(math.Abs(at(s*(1+pace))-now), math.Abs(at(s/(1+pace))-now))
}

// fermentDrift is what a quarter of the time does to a reading of the ferment.
func fermentDrift(curve []ferment.Point, s float64, of func(ferment.Point) float64) float64 {
	return drift(func(s float64) float64 { return of(fermentAt(curve, s)) }, s, FermentPace)
}

// runDrift is the same of a still, counted from the first drop.
func runDrift(r still.Run, s float64, of func(still.Point) float64) float64 {
	return drift(func(after float64) float64 { return of(pointAt(r.Curve, r.HeatUpS+after)) }, s-r.HeatUpS, RunPace)
}

// cutShiftL is by how many litres a cut by strength may come sooner or later than
// the plan has it: how much runs while the spout falls by cutSlack.
func cutShiftL(r still.Run, abv float64) float64 {
	return 1000 * math.Abs(overAt(r.Curve, abv+cutSlack/100)-overAt(r.Curve, abv-cutSlack/100)) / 2
}

// overAt is what has come over, in m3, when the spout has fallen to abv; at the
// ends of the run, what it is there.
func overAt(curve []still.Point, abv float64) float64 {
	for i, p := range curve {
		if p.ABV > abv {
			continue
		}
		if i == 0 {
			return p.OverM3
		}
		before := curve[i-1]
		return mix(before.OverM3, p.OverM3, (before.ABV-abv)/(before.ABV-p.ABV))
	}
	if len(curve) == 0 {
		return 0
	}
	return curve[len(curve)-1].OverM3
}
