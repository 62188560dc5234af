// Package compile turns a checked batch into a plan: one stage of the trade
// after the other, each a pure function of what the stage before gave.
//
//	bill -> mash -> ferment -> strip -> spirit -> reduction -> cask -> schedule
//
// Each stage's model is a package of its own; a file here feeds it, reads what
// came of it into the plan, and says what a distiller would want to be told.
package compile

import (
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/still"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Compile computes a batch. The list holds what computing has shown: errors
// where the batch cannot work, warnings where the trade would frown. The plan
// is nil if a stage could not be computed at all; a plan that comes with errors
// shows how the batch would go wrong, and is not to be worked from.
func Compile(b *recipe.Batch) (*plan.Plan, diag.List) {
	c, ok := run(b, &Memo{}, printed)
	if !ok {
		return nil, c.diags
	}
	c.p.Round()
	return c.p, c.diags
}

// purpose is what a batch is computed for.
type purpose uint8

const (
	calculated purpose = iota // for numbers to work with: no first batch, no congeners, nothing rounded
	checked                   // for what there is to be said of it: no congeners, nothing rounded
	printed                   // for people: all of it
)

// mostPasses is how often a batch is computed to bring ferment and clock
// together; a second pass does it but for a change of the clocks.
const mostPasses = 3

// run computes a batch. A ferment goes on until somebody is there to light the
// still; when that is longer than was asked for, the batch is computed again
// with the hours that the clock gives. What comes after the wash run has no say
// in when that begins, so it is computed once.
func run(b *recipe.Batch, memo *Memo, p purpose) (c *compiler, ok bool) {
	b = meant(b)
	stood := 0.0
	for range mostPasses {
		c = newCompiler(b)
		c.memo, c.purpose, c.stoodS = memo, p, stood
		if !all(c.header, c.bill, c.mash, c.ferment, c.strip) {
			return c, false
		}
		stands := c.stands()
		if math.Abs(stands-c.fermentS()) < minute {
			break
		}
		stood = stands
	}
	if !all(c.spirit, c.congeners, c.cask, c.streams, c.yield, c.cost, c.law, c.schedule, c.promises) {
		return c, false
	}
	c.p.Summary = c.summary()
	c.p.Notices = Notices(c.diags)
	return c, true
}

// all runs one stage after the other. It says whether all could be computed.
func all(stages ...func() bool) bool {
	for _, stage := range stages {
		if !stage() {
			return false
		}
	}
	return true
}

func newCompiler(b *recipe.Batch) *compiler {
	return &compiler{b: b, p: &plan.Plan{Format: plan.Format, Version: plan.Version}, say: units(b.Units)}
}

// compiler is one batch on its way through the stages.
type compiler struct {
	b     *recipe.Batch
	p     *plan.Plan
	diags diag.List
	say   measure.Units // for diagnostics, which speak the batch's own units
	memo  *Memo         // what stages gave before

	purpose purpose
	stoodS  float64 // the ferment's time as the clock gave it before; 0 if none has

	pressurePa float64
	mashed     mash.Result
	fermented  ferment.Result
	fermenter  *recipe.Vessel
	stripped   still.Run     // one charge
	lowWines   stream.Stream // of all charges
	distilled  still.Run     // one charge
	returned   stream.Stream // feints in that charge
	hearts     stream.Stream // of all charges
	work       []work        // what there is to do, in order
}

func units(s recipe.System) measure.Units {
	if s == recipe.SI {
		return measure.SI
	}
	return measure.US
}

// header fills in which batch this is and where it is made.
func (c *compiler) header() bool {
	b, pl := c.b, c.b.Plant
	c.pressurePa = fluid.PressureAtElevation(pl.ElevationM)
	c.p.Batch = plan.Batch{Name: b.Name, Parent: b.Parent, Chain: b.Chain, Changes: b.Changes, Units: "us"}
	if b.Units == recipe.SI {
		c.p.Batch.Units = "si"
	}
	if b.Style != nil {
		c.p.Batch.Style = b.Style.Title
	}
	c.p.House = plan.House{
		Name: pl.Name, ElevationM: pl.ElevationM, PressureKPa: c.pressurePa / 1000,
		WaterBoilsC: fluid.WaterBoilC(c.pressurePa), WaterC: pl.WaterC, HardnessPPM: pl.HardnessPPM,
		AmbientC: pl.AmbientC, BoilerKW: pl.BoilerW / 1000, Crew: pl.Crew, Zone: pl.Zone,
		ShiftFrom: minuteOfDay(pl.Shift.FromMinute), ShiftTo: minuteOfDay(pl.Shift.ToMinute),
		ShiftDays: shiftDays(pl.Shift),
	}
	return true
}

// summary gathers the twenty numbers.
func (c *compiler) summary() plan.Summary {
	p := c.p
	hearts := lotOf(c.hearts)
	lowWines := lotOf(c.lowWines)
	s := plan.Summary{
		OriginalGravitySG: p.Mash.OriginalGravitySG, FinalGravitySG: p.Ferment.FinalGravitySG,
		WashVolumeL: p.Ferment.WashVolumeL, WashAbvPct: p.Ferment.AbvPct,
		LowWinesVolumeL: lowWines.VolumeL, LowWinesAbvPct: lowWines.AbvPct,
		HeartsVolumeL: hearts.VolumeL, HeartsAbvPct: hearts.AbvPct,
		HeartsProofGal: hearts.ProofGallons, PureAlcoholL: hearts.PureL,
		CaskEntryAbvPct: p.Cask.Entry.AbvPct, CasksFilled: p.Cask.Casks, LeftoverL: p.Cask.Leftover.VolumeL,
		MashHours: p.Mash.Hours, FermentHours: p.Ferment.Hours,
		StripHours: p.Strip.TotalHours, SpiritHours: p.Spirit.TotalHours,
		YieldLPAPerTonne: p.Yield.HeartsLPAPerTonne,
	}
	if f := p.Spirit.Feints; f != nil {
		s.FeintsVolumeL, s.FeintsAbvPct = f.VolumeL, f.AbvPct
	}
	return s
}
