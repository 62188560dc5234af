package learn

import (
	"math"

	"newmake/compile/constants"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Format and Version name the document.
const (
	Format  = "newmake.learned"
	Version = "1.0"
)

// Document is what was learned, in the reader's units and rounded: what is shown, and
// what is given as JSON.
type Document struct {
	Format    string      `json:"format"`
	Version   string      `json:"version"`
	Plant     string      `json:"plant"`
	Runs      []string    `json:"runs"`
	Skipped   []Skipped   `json:"skipped"`
	Readings  int         `json:"readings"`
	Settled   bool        `json:"settled"` // the search came to its end
	Gross     []GrossLine `json:"grossErrors"`
	Unused    []GrossLine `json:"unused"` // readings that the model does not come to
	Robust    bool        `json:"robust,omitempty"`
	Eased     []EasedLine `json:"countForLess,omitempty"` // where that was asked for, the least first
	Constants []Line      `json:"constants"`
	Together  []PairLine  `json:"together"`
	Told      int         `json:"told"` // combinations of constants that the readings tell more of than was known
	Of        int         `json:"of"`
	Foretold  []RunLine   `json:"foretold"`
	Exact     bool        `json:"foretoldExactly,omitempty"` // by constants found anew without each run
	Own       []OwnLine   `json:"ownOfRuns"`
	Scatter   []OwnLine   `json:"scatter"`
	Drifts    []DriftLine `json:"drifts"`
	Warnings  []string    `json:"warnings"`
}

// Line is one constant.
type Line struct {
	Name     string  `json:"name"`
	Whose    string  `json:"whose"`
	Words    string  `json:"words"`
	Owner    string  `json:"owner"` // house or instrument
	Value    float64 `json:"value"`
	Low      float64 `json:"low"` // holds 9 times in 10, to high
	High     float64 `json:"high"`
	Base     float64 `json:"base"`
	Unit     string  `json:"unit"`
	PriorPct float64 `json:"priorPct"` // how much of it is what was known before
	Untold   bool    `json:"untold"`
	// Uneven says that the curvature of the likelihood has another interval, by more than a
	// quarter of the way to an end: from curveLow to curveHigh.
	Uneven     bool    `json:"uneven"`
	CurveLow   float64 `json:"curveLow"`
	CurveHigh  float64 `json:"curveHigh"`
	AtItsBound bool    `json:"atItsBound"`
}

// PairLine is two constants that cannot be told apart.
type PairLine struct {
	One         string  `json:"one"`
	Two         string  `json:"two"`
	Correlation float64 `json:"correlation"`
	Read        string  `json:"read"` // what would tell them
}

// GrossLine is a reading that was left out.
type GrossLine struct {
	Run     string  `json:"run"`
	Reading string  `json:"reading"`
	Said    float64 `json:"said"`
	Over    float64 `json:"over"`
	Unit    string  `json:"unit"`
	Times   float64 `json:"standardDeviations"`
}

// RunLine is how well a run is foretold by all others.
type RunLine struct {
	Run      string        `json:"run"`
	Before   float64       `json:"before"` // rms of what its readings are off, in standard deviations: by the library
	After    float64       `json:"after"`  // and by what the other runs tell
	Expected float64       `json:"expected"`
	Outcomes []OutcomeLine `json:"outcomes"`
}

// OutcomeLine is one reading that the house lives by.
type OutcomeLine struct {
	Reading string  `json:"reading"`
	Said    float64 `json:"said"`
	Before  float64 `json:"before"`
	After   float64 `json:"after"`
	Margin  float64 `json:"margin"` // 9 times in 10
	Unit    string  `json:"unit"`
}

// OwnLine is what one run had of its own, or how much runs differ in it.
type OwnLine struct {
	Run    string  `json:"run,omitempty"`
	Words  string  `json:"words"`
	Amount float64 `json:"amount"`
	Unit   string  `json:"unit"`
	Runs   int     `json:"runs,omitempty"`
	Usual  float64 `json:"usual,omitempty"` // what was taken for it before
}

// EasedLine is a reading that counts for less, being far from what all others say.
type EasedLine struct {
	Run     string  `json:"run"`
	Reading string  `json:"reading"`
	Weight  float64 `json:"weight"` // 1 is the whole
}

// DriftLine is a constant that does not stay.
type DriftLine struct {
	Words string  `json:"words"`
	Since string  `json:"since"`
	Shown string  `json:"shown"`
	By    float64 `json:"by"`
	Unit  string  `json:"unit"`
}

// ownShown is how far from its middle, in prior standard deviations, what a run had of its own
// must be for it to be said.
const ownShown = 1.5

// Document puts what was learned in words and units.
func (l *Learned) Document(g *Gathered, system recipe.System) *Document {
	d := &Document{
		Format: Format, Version: Version, Plant: g.Plant, Runs: []string{}, Skipped: append([]Skipped{}, g.Skipped...),
		Readings: l.Readings, Settled: l.Converged, Exact: l.Exact, Told: l.Told, Of: l.Of,
		Gross: []GrossLine{}, Unused: []GrossLine{}, Constants: []Line{}, Together: []PairLine{}, Foretold: []RunLine{}, Own: []OwnLine{}, Scatter: []OwnLine{}, Drifts: []DriftLine{}, Warnings: []string{},
	}
	for _, r := range g.Runs {
		d.Runs = append(d.Runs, r.Number)
	}
	gross := func(x Gross) GrossLine {
		rd := g.Runs[x.Run].Readings[x.Reading]
		said, unit := shown(rd.What, rd.Said, system)
		over, _ := shownDifference(rd.What, x.Over, system)
		return GrossLine{g.Runs[x.Run].Number, rd.Words, said, over, unit, plan.RoundTo(x.Times, 1)}
	}
	for _, x := range l.Gross {
		d.Gross = append(d.Gross, gross(x))
	}
	for _, x := range l.Unused {
		d.Unused = append(d.Unused, gross(x))
	}
	d.Robust = l.Robust
	for _, x := range l.Eased {
		d.Eased = append(d.Eased, EasedLine{g.Runs[x.Run].Number, g.Runs[x.Run].Readings[x.Reading].Words, plan.RoundTo(x.Weight, 2)})
	}
	for _, f := range l.Found {
		v := func(x float64) float64 { x, _ = inUnits(x, f.Kind, system); return x }
		_, unit := inUnits(0, f.Kind, system)
		d.Constants = append(d.Constants, Line{
			Name: f.ID, Whose: f.Constant.Of, Words: f.Words, Owner: f.Owner.String(), Value: v(f.Value), Low: v(f.Low), High: v(f.High), Base: v(f.AsWritten),
			Unit: unit, PriorPct: plan.RoundTo(100*f.priorPart(), 0), Untold: f.Untold, AtItsBound: f.AtBound,
			Uneven: f.Uneven, CurveLow: v(f.ByCurve[0]), CurveHigh: v(f.ByCurve[1]),
		})
	}
	for _, p := range l.Together {
		a, b := l.Found[p.A], l.Found[p.B]
		d.Together = append(d.Together, PairLine{a.Words, b.Words, plan.RoundTo(p.Correlation, 2), measure.UnitsOf(system).Words(toTell(a.ID, b.ID))})
	}
	for _, p := range l.Predicted {
		line := RunLine{Run: g.Runs[p.Run].Number, Before: plan.RoundTo(p.Before, 1), After: plan.RoundTo(p.After, 1), Expected: plan.RoundTo(p.Expected, 1), Outcomes: []OutcomeLine{}}
		for _, o := range p.Outcomes {
			rd := g.Runs[p.Run].Readings[o.Reading]
			said, unit := shown(rd.What, rd.Said, system)
			before, _ := shown(rd.What, o.Before, system)
			after, _ := shown(rd.What, o.After, system)
			margin, _ := shownDifference(rd.What, o.margin(), system)
			line.Outcomes = append(line.Outcomes, OutcomeLine{rd.Words, said, before, after, margin, unit})
		}
		d.Foretold = append(d.Foretold, line)
	}
	for _, e := range l.Effects {
		if math.Abs(e.Z) > ownShown {
			amount, unit := ofOwn(e.Constant, e.Value, system)
			d.Own = append(d.Own, OwnLine{Run: g.Runs[e.Run].Number, Words: e.Words, Amount: amount, Unit: unit})
		}
	}
	for _, s := range l.Scatter {
		sd, unit := ofOwn(s.Constant, s.Constant.Prior.At(s.Times), system)
		usual, _ := ofOwn(s.Constant, s.Constant.Prior.At(1), system)
		d.Scatter = append(d.Scatter, OwnLine{Words: s.Words, Amount: math.Abs(sd), Unit: unit, Runs: s.Runs, Usual: math.Abs(usual)})
	}
	for _, x := range l.Drifts {
		f := l.Found[x.Constant]
		by := f.Prior.At(f.Z+x.By/2) - f.Prior.At(f.Z-x.By/2)
		shown, unit := inUnits(by, f.Kind, system)
		d.Drifts = append(d.Drifts, DriftLine{f.Words, g.Runs[x.Since].Number, g.Runs[x.At].Number, shown, unit})
	}
	if l.Hopeless {
		d.Warnings = append(d.Warnings, "a quarter of what was read of each run is explained by nothing, and the search was given up: the values should not be relied on; look at the readings first")
	} else if !l.Converged {
		d.Warnings = append(d.Warnings, "the search did not come to its end: the values are not the best ones, and should not be relied on")
	}
	if used := l.Readings; used < l.Of {
		d.Warnings = append(d.Warnings, "there are fewer readings than constants: most of what stands here was known before")
	}
	return d
}

// inUnits is a figure of a kind in the reader's unit.
func inUnits(si float64, k quantity.Kind, s recipe.System) (float64, string) {
	switch {
	case k == quantity.TempDifference && s == recipe.US:
		return plan.RoundTo(1.8*si, 2), "F"
	case k == quantity.TempDifference:
		return plan.RoundTo(si, 2), "C"
	case k == quantity.Duration:
		return plan.RoundTo(si/3600, 2), "h"
	case k == quantity.Gravity:
		return plan.RoundTo(si, 5), "SG"
	case k == quantity.PH:
		return plan.RoundTo(si, 2), "pH"
	case k == quantity.Strength:
		return plan.RoundTo(100*si, 2), abv(s)
	}
	return plan.RoundTo(100*si, 2), "%"
}

// abv is the unit of a strength by volume.
func abv(s recipe.System) string {
	if s == recipe.US {
		return "% abv"
	}
	return "% vol"
}

// ofOwn is by how much a cause of scatter is off its middle.
func ofOwn(c constants.Constant, x float64, s recipe.System) (float64, string) {
	if c.Form == constants.Times {
		return plan.RoundTo(100*(x-1), 1), "%"
	}
	return inUnits(x, c.Kind, s)
}

const gallonM3 = 3.785411784e-3

// shown is a reading in the reader's units.
func shown(w record.What, si float64, s recipe.System) (float64, string) {
	if w == record.Temperature || w == record.Vapour {
		if s == recipe.US {
			return plan.RoundTo(1.8*si+32, 1), "F"
		}
		return plan.RoundTo(si, 1), "C"
	}
	return shownDifference(w, si, s)
}

// shownDifference is a difference of readings in the reader's units.
func shownDifference(w record.What, si float64, s recipe.System) (float64, string) {
	switch w {
	case "":
		return plan.RoundTo(si/60, 0), "min"
	case record.Gravity:
		return plan.RoundTo(si, 4), "SG"
	case record.Temperature, record.Vapour:
		if s == recipe.US {
			return plan.RoundTo(1.8*si, 1), "F"
		}
		return plan.RoundTo(si, 1), "C"
	case record.Spout, record.Strength:
		return plan.RoundTo(100*si, 1), abv(s)
	}
	if s == recipe.US {
		return plan.RoundTo(si/gallonM3, 1), "gal"
	}
	return plan.RoundTo(1000*si, 0), "L"
}

// tells says what would tell two constants apart; the first row that has either is taken
// where none has both.
var tells = []struct{ one, two, read string }{
	{"yeast-rate", "yeast-lag", "a gravity 10 to 14 h after the pitch"},
	{"hydrometer", "yield-efficiency", "the hydrometer in distilled water, or a sample's gravity from a laboratory"},
	{"reflux", "alcohol-lost", "the strength of the pot ale, and of the foreshots and tails"},
	{"alcohol-lost", "yield-efficiency", "the strength and the volume of the pot ale and of the lees"},
	{"hydrometer", "", "the hydrometer in distilled water"},
	{"alcoholometer", "", "a sample's strength from a laboratory"},
	{"dip", "", "a dip of a weighed volume of water"},
	{"thermometer", "", "the thermometer in ice and in boiling water"},
	{"yield-efficiency", "", "a sample's gravity and strength from a laboratory"},
	{"cooker-heat", "", "the time of one more heating, of water alone"},
	{"still-heat", "", "the condenser's water: how much, and how warm in and out"},
	{"reflux", "", "the strength at the spout at a few known volumes"},
	{"alcohol-lost", "", "the strength of the pot ale"},
}

func toTell(a, b string) string {
	for _, t := range tells {
		if t.two != "" && (t.one == a && t.two == b || t.one == b && t.two == a) {
			return t.read
		}
	}
	for _, t := range tells {
		if t.two == "" && (t.one == a || t.one == b) {
			return t.read
		}
	}
	return "either of them by itself"
}
