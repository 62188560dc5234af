package ferment

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/ode"
	"newmake/compile/matter/starch"
)

const (
	dryShare     = 0.98 // of the sugar gone: the wash is dry
	hourS        = 3600
	seaLevelPa   = 101325
	usualWortPH  = 5.2 // common practice: a set stands at 4.8 to 5.4
	longestDaysS = 60 * 24 * hourS
)

// stepError is the error of an integrator's step, as a share of a quantity or of
// its floor. A whole ferment comes within 1e-5 of its masses (its acid, set hot,
// within 5e-5), and within 1e-4 of moments and peaks (TestVatAgainstScipy,
// TestStepHalvingAgreesToFourDigits).
const stepError = 2.5e-5

// Run ferments a wort. The error is in words for the distiller and names what
// is missing or impossible.
func Run(in Input) (Result, error) { return run(in, stepError) }

// run is Run to a tolerance; tests use it to see what the step's error is.
func run(in Input, tolerance float64) (Result, error) {
	c, err := begin(in, tolerance)
	if err != nil {
		return Result{}, err
	}
	return c.To(in.DurationS)
}

// Course is a ferment that goes as far as it is asked, and then further if it is
// asked again. Its steps know of no end, so what it gives for a time is the same
// whatever it was asked before. It may be used from several goroutines.
type Course struct {
	in        Input
	tolerance float64

	mu   sync.Mutex
	f    *ferment // nil once it could not be followed
	last *ode.Step
}

// Begin pitches the yeast; the input's duration does not count.
func Begin(in Input) (*Course, error) { return begin(in, stepError) }

func begin(in Input, tolerance float64) (*Course, error) {
	k, err := constantsFrom(in.Model)
	if err != nil {
		return nil, err
	}
	sk, err := starch.ConstantsFrom(in.Mash)
	if err != nil {
		return nil, err
	}
	if err := complete(&in); err != nil {
		return nil, err
	}
	if !(in.PressurePa > 0) {
		in.PressurePa = seaLevelPa
	}
	if !(in.PH > 0) {
		in.PH = usualWortPH
	}
	c := &Course{in: in, tolerance: tolerance}
	c.f = newFerment(&c.in, k, &sk)
	c.f.start(tolerance)
	return c, nil
}

// To is the ferment when it has lasted so long. A time before the step that the
// course stands in is run anew.
func (c *Course) To(durationS float64) (Result, error) {
	switch {
	case !(durationS > 0):
		return Result{}, fmt.Errorf("the ferment has no duration")
	case durationS > longestDaysS:
		return Result{}, fmt.Errorf("the ferment lasts %.0f days; the model goes no further than %d",
			durationS/(24*hourS), longestDaysS/(24*hourS))
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.f == nil || c.last != nil && durationS < c.last.T {
		anew, err := begin(c.in, c.tolerance)
		if err != nil {
			return Result{}, err
		}
		return anew.To(durationS)
	}
	for c.last == nil || c.last.T+c.last.H < durationS {
		if c.last != nil {
			c.f.pass(c.last, math.Inf(1))
		}
		var ok bool
		if c.last, ok = c.f.solver.Next(); !ok {
			yeast := c.in.Yeast.Name
			c.f = nil
			return Result{}, fmt.Errorf("the ferment changes too fast to be followed: a figure of the yeast %s or of `model ferment`, or what is pitched, is out by orders of magnitude", yeast)
		}
	}
	return c.f.until(c.last, durationS), nil
}

// mostSteps bounds the work of one ferment. What a brewery does takes some
// hundreds of steps; a constant that is out by orders of magnitude would take days.
const mostSteps = 50_000

func complete(in *Input) error {
	switch {
	case in.Yeast == nil:
		return fmt.Errorf("nothing is pitched: the ferment names no yeast")
	case !(in.PitchKg > 0):
		return fmt.Errorf("no amount of %s is pitched", in.Yeast.Name)
	case !(in.Wort.WaterKg > 0):
		return fmt.Errorf("there is no wort to ferment")
	case !(in.PitchKg <= in.Wort.MassKg()):
		return fmt.Errorf("%.3g kg of %s is more yeast than wort", in.PitchKg, in.Yeast.Name)
	case in.HoldHighC > 0 && in.HoldLowC > in.HoldHighC:
		return fmt.Errorf("the ferment's hold runs from high to low")
	case !(in.Wort.TempC > 0 && in.Wort.TempC < 100):
		return fmt.Errorf("the wort is at %.0f C: yeast needs liquid to live in", in.Wort.TempC)
	}
	return checkYeast(in.Yeast)
}

// ferment is one run under way.
type ferment struct {
	in  *Input
	sys system
	s   vector // at pitching, then room for a state that is read

	solver *ode.Solver
	hour   float64 // the next of the curve
	out    Result
}

func newFerment(in *Input, k constants, sk *starch.Constants) *ferment {
	f := &ferment{in: in}
	w := in.Wort
	enzymes := in.Enzymes.Clone()
	for i := range in.Doses {
		enzymes.Dose(in.Doses[i].Enzyme, in.Doses[i].MassKg)
	}
	f.out.Enzymes = enzymes
	set := starch.StateOf(w, enzymes)

	y := &f.sys
	y.k = k
	y.strain = newStrain(in.Yeast, &y.k)
	y.vessel = newVessel(in, &y.k)
	y.fixedM3 = volumeSolids * (w.BacksetKg + w.FermentedKg())
	y.pressurePa, y.startPH = in.PressurePa, in.PH
	y.growthMost = min(k.biomassMost*w.ExtractKg(), (1-k.gums)*w.SolublesKg/y.strain.gr.ammonia)
	y.maltotriose = min(1, max(0, in.Yeast.Maltotriose))
	y.starch = starch.NewKinetics(sk, &set, &f.out.Enzymes, w.TempC, in.PH)
	zs, es := y.starch.Size(), y.starch.Enzymes()
	n := enzymesLeft + es
	room := make([]float64, 2*zs+2*es+2*n)
	y.z, y.dz, room = room[:zs], room[zs:2*zs], room[2*zs:]
	y.acidityFrom, y.acidityTo, room = room[:es], room[es:2*es], room[2*es:]
	y.ahead, f.s = room[:n:n], room[n:]

	dry := in.PitchKg * in.Yeast.Solids
	s := f.s
	s[glucose], s[maltose] = w.GlucoseKg, w.MaltoseKg
	s[maltotriose], s[maltotrioseLeft] = y.maltotriose*w.MaltotrioseKg, (1-y.maltotriose)*w.MaltotrioseKg
	s[dextrin], s[limitDextrin], s[closedDextrin], s[gel] = set.DextrinKg, set.LimitDextrinKg, set.ClosedKg, set.GelKg
	y.starch.PutEnzymes(s[enzymesLeft:])
	s[water] = w.WaterKg + in.PitchKg - dry
	s[ethanol] = w.EthanolKg
	s[solubles], s[gums] = (1-k.gums)*w.SolublesKg, k.gums*w.SolublesKg
	s[tempC] = w.TempC
	if in.Yeast.LagS > 0 {
		y.lagPerS = 1 / in.Yeast.LagS
	}
	y.wort, y.pitchedKg, y.pitchedAliveKg = w, dry, dry*in.Yeast.Viable
	y.doubledKg = y.pitchedAliveKg * (math.Exp2(k.doublingsMost) - 1)
	y.hold = 1 // as of the least usual pitch, and less in proportion (from memory)
	if usualKg := in.Yeast.PitchLowKgM3 * w.VolumeM3(); in.PitchKg < usualKg {
		y.hold = in.PitchKg / usualKg
	}
	y.seedKg = k.lacticSeed * s.liquidM3(y.fixedM3)
	f.out.Curve = make([]Point, 0, int(in.DurationS/hourS)+2)
	return f
}

const (
	// Steps of the integrator: from 10 min up or down by the error, to 5 h at
	// most.
	baseStepS   = 600
	longestRung = 40
	// Steps for which the columns of its Jacobian are kept.
	keptColumns = 7
)

// floors are what each quantity counts for at least in the error of a step.
func (f *ferment) floors() []float64 {
	s, w := f.s, &f.in.Wort
	floors := make([]float64, len(s))
	dissolved := max(0.1*w.ExtractKg(), 1e-9)
	for i := range floors {
		switch {
		case i >= glycerol:
			floors[i] = math.Inf(1) // sums that drive nothing
		default:
			floors[i] = dissolved
		}
	}
	f.sys.starch.EnzymeFloors(floors[enzymesLeft:])
	floors[life], floors[waking], floors[bacteria], floors[tempC] = 2, 1, 3, 10
	floors[grown] = f.sys.pitchedKg
	floors[lactic] = math.Inf(1) // the bacteria say it
	return floors
}

// weights make the yeast followed more closely than the rest, for while it grows an
// error in it grows along; and the temperature, whose regulator opens and shuts
// within a step.
func (f *ferment) weights() []float64 {
	weights := make([]float64, len(f.s))
	for i := range weights {
		weights[i] = 1
	}
	weights[life], weights[bacteria], weights[tempC] = 14, 3, 2
	return weights
}

// start makes ready to go through the ferment.
func (f *ferment) start(tolerance float64) {
	y := &f.sys
	f.solver = ode.New(y, len(f.s), ode.Options{
		Base: baseStepS, Most: longestRung, Tolerance: tolerance, Floors: f.floors(), Weights: f.weights(),
		MostTries: int(mostSteps * max(1, stepError/tolerance)),
		Fast:      []int{tempC, glucose, maltose, maltotriose}, Keep: keptColumns,
	})
	copy(f.solver.Y(), f.s)
	y.begin(f.s)
	f.solver.Start(0)
}

// pass notes what a step shows, and the hours of the curve before the end.
func (f *ferment) pass(p *ode.Step, end float64) {
	if f.hour == 0 {
		f.mark(0, p.Y0, p.Slope(heatJ, 0))
		f.hour++
	}
	for ; f.hour*hourS <= p.T+p.H && f.hour*hourS < end-1e-6; f.hour++ {
		p.Read(f.hour*hourS, f.s)
		f.mark(f.hour*hourS, f.s, p.Slope(heatJ, f.hour*hourS))
	}
	f.watch(p)
}

// until is the result at a time within a step. The ferment can still go on.
func (f *ferment) until(p *ode.Step, end float64) Result {
	before, hour := f.out, f.hour
	room := make([]float64, 2*len(f.s))
	s, d := vector(room[:len(f.s)]), room[len(f.s):]
	cut := p.Until(end, s, d)
	f.pass(&cut, end)
	f.sys.Settle(s) // the cubic may pass below nothing where the steps do not
	f.mark(end, s, d[heatJ])
	out := f.finish(s)
	f.out, f.hour = before, hour
	return out
}

// watch notes peaks and moments within a step.
func (f *ferment) watch(p *ode.Step) {
	o := &f.out
	if heat, _ := p.Steepest(heatJ); heat > o.PeakHeatW {
		o.PeakHeatW = heat
	}
	if warmest, at := p.Greatest(tempC); warmest > o.PeakTempC {
		o.PeakTempC, o.PeakTempS = warmest, at
	}
	if o.DryS == 0 && vector(p.Y1).dryness() >= dryShare && p.Y1[taken] > 0 {
		o.DryS = p.Passes(func(t float64) float64 {
			gone := p.At(taken, t)
			left := p.At(glucose, t) + glucosePerMaltose*p.At(maltose, t) + glucosePerMaltotriose*p.At(maltotriose, t)
			return gone - dryShare*(gone+left)
		})
	}
	due := f.sys.k.lacticDue
	v := vector(p.Y1).liquidM3(f.sys.fixedM3)
	if o.SourS == 0 && p.Y1[lactic]/v >= due {
		o.SourS = p.Passes(func(t float64) float64 { return f.sys.acidKg(p.At(bacteria, t)) - due*v })
	}
}

// mark writes a point of the curve.
func (f *ferment) mark(timeS float64, s vector, heatW float64) {
	w := f.sys.into(s)
	v := s.liquidM3(f.sys.fixedM3)
	p := Point{
		TimeS: timeS, TempC: s[tempC], SG: w.SG(), ABV: w.ABV(), PH: f.sys.acidity(s),
		YeastKgM3: f.sys.aliveKg(s) / v, HeatW: heatW, CO2Kg: s[co2],
		SugarKgM3:   max(0, s[glucose]+s[maltose]+s[maltotriose]) / v,
		AcidKgM3:    s[lactic] / v,
		ViableShare: f.sys.viableShare(s),
	}
	p.Cooling = f.sys.vessel.open(s[tempC])
	if s[tempC] > f.out.PeakTempC {
		f.out.PeakTempC, f.out.PeakTempS = s[tempC], timeS
	}
	f.out.Curve = append(f.out.Curve, p)
}

// finish sums up.
func (f *ferment) finish(s vector) Result {
	o := f.out
	o.Curve, o.Enzymes = slices.Clone(o.Curve), o.Enzymes.Clone()
	w := f.sys.into(s)
	o.Wash = w
	e := &o.Enzymes
	copy(f.sys.z[starch.Alpha:], s[enzymesLeft:])
	f.sys.starch.TakeEnzymes(f.sys.z, e)
	if w.DextrinKg > 0 {
		e.BranchedShare, e.ClosedShare = s[limitDextrin]/w.DextrinKg, s[closedDextrin]/w.DextrinKg
	}
	o.FinalSG, o.ABV = w.SG(), w.ABV()
	o.CO2Kg, o.PH = s[co2], f.sys.acidity(s)
	o.SugarLeftKg = s[glucose] + s[maltose] + s[maltotriose]
	if s[taken] > 0 {
		o.EthanolYield = (s[ethanol] + s[ventEthanol] - f.in.Wort.EthanolKg) / (s[taken] * ethanolPerGlucose)
	}
	o.SugarTakenKg, o.GrownKg, o.ViableShare = s[taken], s[grown], f.sys.viableShare(s)
	o.GlycerolKg, o.OtherKg = s[glycerol], s[other]
	o.SouredKg = f.sys.k.gums*f.in.Wort.SolublesKg - s[gums]
	o.VentEthanol, o.VentWater = s[ventEthanol], s[ventWater]
	o.HeatJ, o.WarmJ, o.CoolJ, o.LossJ, o.VentJ = s[heatJ], s[warmJ], s[coolJ], s[lossJ], s[ventJ]
	o.HeatCapacityJK = f.sys.vessel.heatCapacity
	o.CoolMostW = f.sys.vessel.coolW
	if f.in.CoolW > 0 || f.in.Vessel.Cooler.AreaM2 > 0 {
		o.ColdestC = f.in.WaterC + f.sys.k.coolingLeast
	}
	for i := 1; i < len(o.Curve); i++ { // the water runs as far as its valve is open
		a, b := o.Curve[i-1], o.Curve[i]
		o.CoolingWaterM3 += f.in.Vessel.Cooler.WaterM3S * (a.Cooling + b.Cooling) / 2 * (b.TimeS - a.TimeS)
	}

	grain, fermented := f.in.Wort, w
	grain.BacksetKg, fermented.BacksetKg = 0, 0
	before, err1 := fluid.PlatoFromSG(grain.SG())
	after, err2 := fluid.PlatoFromSG(fermented.SG())
	if err1 == nil && err2 == nil && before > 0 {
		o.Attenuation = (before - after) / before
	}
	return o
}
