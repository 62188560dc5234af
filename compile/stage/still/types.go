package still

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// Setting is the still and where it stands.
type Setting struct {
	Still      recipe.Vessel
	PressurePa float64 // local air pressure, 50 to 110 kPa
	AmbientC   float64
	WaterC     float64 // condenser water in
	BoilerW    float64 // 0: no limit
	HeatUp     recipe.HeatUp
	WarmedK    float64 // by how much the charge was warmed on its way in; the still was not
	Boils      *Boils  // shared by the runs of a house; nil: made anew for each
}

// StripInput is one stripping run. A stripping run in several charges is several wash
// runs: the caller gives one charge, and doubles what comes of it.
type StripInput struct {
	Setting
	Wash stream.Stream
	Stop recipe.Strength     // at the spout
	Pace recipe.FractionPace // of the low wines; nothing: full heat
}

// SpiritInput is one spirit run. A volume of distillate, of the foreshots or of
// a cut, is meant at GaugeC; 0 is 20 C. Feints is what is returned to the charge; the
// caller, or Steady, finds it.
type SpiritInput struct {
	Setting
	LowWines             stream.Stream
	Feints               stream.Stream
	ForeshotsM3          float64
	GaugeC               float64
	HeartsFrom, HeartsTo recipe.Cut
	Stop                 recipe.Strength
	Pace                 recipe.Pace     // of each fraction; none said: full heat
	WaterTo              recipe.Strength // water brings the charge down to this; zero: none
}

// Names of the fractions. A stripping run has one, low wines; a spirit run always
// has the other four, in this order, empty ones too.
const (
	LowWines  = "low wines"
	Foreshots = "foreshots"
	Heads     = "heads"
	Hearts    = "hearts"
	Tails     = "tails"
)

// Fraction is what came over between two cuts. Its stream is at the
// temperature at which it leaves the condenser.
type Fraction struct {
	Name string // foreshots, heads, hearts, tails, low wines
	stream.Stream
	VolumeM3         float64 // at 20 C
	ABV              float64 // 20 C
	StartS, EndS     float64 // from the fire
	StartABV, EndABV float64 // at the spout
	EndVapourC       float64 // leaving the head
	HeatJ            float64 // put in while it came over
	AskedS           float64 // the time that its pace asks for; 0: none. It takes longer where the heat does not give that
}

// Run is one run of a still.
type Run struct {
	Charge         stream.Stream
	ChargeM3       float64 // at 20 C
	ChargeABV      float64
	WaterKg        float64 // of the charge, put in to bring it to its strength
	HeatUpS        float64 // fire to first drop
	HeatUpJ        float64 // put in until then
	HeatUpAskedS   float64 // the time that the batch asks for; 0: none. It takes longer where the heat does not give that
	DurationS      float64 // fire to stop
	Fractions      []Fraction
	Lost           stream.Stream // of what came over: it reached no receiver
	Residue        stream.Stream // pot ale or spent lees, hot: backset is drawn from it
	ResidueM3      float64       // at 20 C
	ResidueABV     float64
	LeftHotM3      float64 // what is left in the pot at the stop, hot
	Curve          []Point
	HeatJ          float64 // put in through jacket or steam, from the fire to the stop
	CondenserJ     float64 // taken out by the condenser's water
	HeadJ          float64 // given off by the head, with what it condenses
	LossJ          float64 // given off by the pot
	SteamKg        float64 // condensate added to the charge; direct steam only
	CoolingWaterM3 float64 // through the condenser, warmed by CoolingRiseK
	MostFill       float64 // charge volume hot, as share of the still; above 1 it does not fit
	Problems       []Problem

	// The steps of a run whose curve is drawn, from the first drop on, for the
	// congeners to follow.
	path []node
	pot  *pot
}

// Point is the run at one moment from the first drop on.
type Point struct {
	TimeS    float64 // from the fire
	PotC     float64
	VapourC  float64 // leaving the head
	ABV      float64 // at the spout, 20 C
	MassFrac float64 // the same by mass
	PotABV   float64 // of ethanol and water alone
	OverM3   float64 // collected since the first drop, at 20 C
	RateM3S  float64 // at 20 C
	Fraction string  // the one that is being collected, or that begins here
}

// Problem is a machine word for what did not go as written. The run was
// computed all the same, and shows how it would go.
type Problem string

const (
	// ProblemNoDistillate: the spout is weaker than the stop strength from
	// the first drop on; nothing was collected.
	ProblemNoDistillate Problem = "no-distillate"
	// ProblemStopNotReached: the stop strength was never reached; the run
	// ended when the pot was nearly empty or held no more alcohol.
	ProblemStopNotReached Problem = "stop-not-reached"
	// ProblemForeshotsNotReached: the run ended within the foreshots.
	ProblemForeshotsNotReached Problem = "foreshots-not-reached"
	// ProblemHeartsWeak: the run was never as strong (or its vapour never as
	// cool) as the cut that begins the hearts; they began after the foreshots.
	ProblemHeartsWeak Problem = "hearts-from-never-so-strong"
	// ProblemHeartsFromPassed: that cut fell within the foreshots; the hearts
	// began after them.
	ProblemHeartsFromPassed Problem = "hearts-from-within-foreshots"
	// ProblemHeartsFromNotReached: the run ended before the hearts began.
	ProblemHeartsFromNotReached Problem = "hearts-from-not-reached"
	// ProblemCutsCrossed: the hearts were to end before they began.
	ProblemCutsCrossed Problem = "cuts-crossed"
	// ProblemHeartsToNotReached: the run ended before the hearts did.
	ProblemHeartsToNotReached Problem = "hearts-to-not-reached"
	// ProblemNotSteady: with its feints returned the run does not come to
	// repeat itself; what is shown is the first batch, without feints.
	ProblemNotSteady Problem = "not-steady"
)

// Fraction finds a fraction by name; an empty one if the run has none.
func (r Run) Fraction(name string) Fraction {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f
		}
	}
	return Fraction{Name: name}
}

// Feints is the heads and tails together: what goes back into the next charge.
func (r Run) Feints() stream.Stream {
	heads, tails := r.Fraction(Heads), r.Fraction(Tails)
	if heads.MassKg() == 0 {
		return tails.Stream
	}
	return heads.Plus(tails.Stream)
}

// massFrac turns a strength, whatever its basis, into a mass fraction.
func massFrac(s recipe.Strength) (float64, error) {
	switch s.Basis {
	case recipe.Proof:
		return fluid.MassFracFromABV60F(s.Value)
	case recipe.ABW:
		if !(s.Value >= 0 && s.Value <= 1) {
			return 0, errStrength(s.Value)
		}
		return s.Value, nil
	default:
		return fluid.MassFracFromABV(s.Value)
	}
}
