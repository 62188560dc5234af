package ferment

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
)

const (
	dryShare     = 0.98 // of the sugar gone: the wash is dry
	hourS        = 3600
	seaLevelPa   = 101325
	usualWortPH  = 5.2 // common practice: a set stands at 4.8 to 5.4
	longestDaysS = 60 * 24 * hourS
)

// Run ferments a wort. The error is in words for the distiller and names what
// is missing or impossible.
func Run(in Input) (Result, error) { return run(&in, 1) }

// run is Run with every step made shorter by a factor; tests use it to see that
// the result does not hang on the step.
func run(in *Input, finer float64) (Result, error) {
	k, err := constantsFrom(in.Model)
	if err != nil {
		return Result{}, err
	}
	sk, err := starch.ConstantsFrom(in.Mash)
	if err != nil {
		return Result{}, err
	}
	if err := complete(in); err != nil {
		return Result{}, err
	}
	if !(in.PressurePa > 0) {
		in.PressurePa = seaLevelPa
	}
	if !(in.PH > 0) {
		in.PH = usualWortPH
	}
	f := newFerment(in, k, &sk)
	if err := f.work(finer); err != nil {
		return Result{}, err
	}
	return f.finish(), nil
}

// mostSteps bounds the work of one ferment. What a brewery does takes a few
// thousand steps; a constant that is out by orders of magnitude would take days.
const mostSteps = 50_000

func complete(in *Input) error {
	switch {
	case in.Yeast == nil:
		return fmt.Errorf("nothing is pitched: the ferment names no yeast")
	case !(in.PitchKg > 0):
		return fmt.Errorf("no amount of %s is pitched", in.Yeast.Name)
	case !(in.Wort.WaterKg > 0):
		return fmt.Errorf("there is no wort to ferment")
	case !(in.DurationS > 0):
		return fmt.Errorf("the ferment has no duration")
	case in.DurationS > longestDaysS:
		return fmt.Errorf("the ferment lasts %.0f days; the model goes no further than %d",
			in.DurationS/(24*hourS), longestDaysS/(24*hourS))
	case in.HoldHighC > 0 && in.HoldLowC > in.HoldHighC:
		return fmt.Errorf("the ferment's hold runs from high to low")
	case !(in.Wort.TempC > 0 && in.Wort.TempC < 100):
		return fmt.Errorf("the wort is at %.0f C: yeast needs liquid to live in", in.Wort.TempC)
	}
	return checkYeast(in.Yeast)
}

// ferment is one run under way.
type ferment struct {
	in     *Input
	sys    system
	starch saccharification
	s, d   vector
	timeS  float64
	ph     float64
	steps  int
	out    Result
}

func newFerment(in *Input, k constants, sk *starch.Constants) *ferment {
	f := &ferment{in: in, ph: in.PH}
	w := in.Wort
	enzymes := in.Enzymes.Clone()
	for i := range in.Doses {
		enzymes.Dose(in.Doses[i].Enzyme, in.Doses[i].MassKg)
	}
	f.out.Enzymes = enzymes
	takes := math.Min(1, math.Max(0, in.Yeast.Maltotriose))
	f.starch = saccharification{
		k: sk, enzymes: &f.out.Enzymes, maltotriose: takes,
		state: starch.StateOf(w, enzymes),
	}

	y := &f.sys
	y.k = k
	y.strain = newStrain(in.Yeast, &y.k)
	y.vessel = newVessel(in, &y.k)
	y.fixedM3 = volumeSolids * (w.BacksetKg + w.FermentedKg())
	y.pressurePa = in.PressurePa
	y.growthMost = math.Min(k.biomassMost*w.ExtractKg(), (1-k.gums)*w.SolublesKg/y.strain.gr.ammonia)

	dry := in.PitchKg * in.Yeast.Solids
	s := &f.s
	s[glucose], s[maltose] = w.GlucoseKg, w.MaltoseKg
	s[maltotriose], s[maltotrioseLeft] = takes*w.MaltotrioseKg, (1-takes)*w.MaltotrioseKg
	s[dextrin] = w.DextrinKg
	s[water] = w.WaterKg + in.PitchKg - dry
	s[ethanol] = w.EthanolKg
	s[solubles], s[gums] = (1-k.gums)*w.SolublesKg, k.gums*w.SolublesKg
	s[alive], s[dead] = dry*in.Yeast.Viable, dry*(1-in.Yeast.Viable)
	s[tempC] = w.TempC
	if in.Yeast.LagS > 0 {
		y.lagPerS = 1 / in.Yeast.LagS
	} else {
		s[awake] = 1
	}
	f.out.Curve = make([]Point, 0, int(in.DurationS/hourS)+2)
	return f
}

// work goes through the ferment hour by hour. The error says that it goes too
// fast to be followed.
func (f *ferment) work(finer float64) error {
	f.sys.derivative(&f.s, &f.d)
	f.mark()
	for f.timeS < f.in.DurationS {
		end := math.Min(f.in.DurationS, (math.Floor(f.timeS/hourS+1e-9)+1)*hourS)
		for f.timeS < end {
			if f.step(end, finer); float64(f.steps) > mostSteps*finer || math.IsNaN(f.timeS) {
				return fmt.Errorf("the ferment changes too fast to be followed: a figure of the yeast %s or of `model ferment`, or what is pitched, is out by orders of magnitude", f.in.Yeast.Name)
			}
		}
		f.ph = f.sys.acidity(f.in.PH, &f.s)
		f.sys.derivative(&f.s, &f.d)
		f.mark()
	}
	return nil
}

// step moves on towards end, by no more than the state's own pace allows.
func (f *ferment) step(end, finer float64) {
	y := &f.sys
	left := end - f.timeS
	h := math.Min(longestStepS, stepPerTime/math.Max(y.stiff, 1e-9)) / finer
	n := math.Ceil(left/h - 1e-9)
	h = left / n
	next := f.timeS + h
	if n <= 1 {
		next = end
	}

	moles := f.s[ethanol] / molEthanol
	y.vent = ventAt(f.s[tempC], moles/(moles+f.s[water]/molWater), y.pressurePa)

	before := f.s
	f.starch.to(&f.s, f.ph, f.timeS+h/2)
	y.derivative(&f.s, &f.d)
	if y.fermentHeat > f.out.PeakHeatW {
		f.out.PeakHeatW, f.out.PeakS = y.fermentHeat, f.timeS
	}
	y.rk4(&f.s, &f.d, h)
	f.s.clear()
	f.starch.to(&f.s, f.ph, next)
	f.watch(&before, h)
	f.timeS = next
	f.steps++
}

// watch notes peaks and moments within a step.
func (f *ferment) watch(before *vector, h float64) {
	o, s := &f.out, &f.s
	o.PeakTempC = math.Max(o.PeakTempC, s[tempC])
	if a, b := before.dryness(), s.dryness(); o.DryS == 0 && b >= dryShare && s[taken] > 0 {
		o.DryS = between(f.timeS, h, a, b, dryShare)
	}
	v := s.liquidM3(f.sys.fixedM3)
	if a, b := before[lactic]/v, s[lactic]/v; o.SourS == 0 && b >= f.sys.k.lacticDue {
		o.SourS = between(f.timeS, h, a, b, f.sys.k.lacticDue)
	}
}

// mark writes a point of the curve.
func (f *ferment) mark() {
	s := &f.s
	w := s.into(f.in.Wort)
	v := s.liquidM3(f.sys.fixedM3)
	p := Point{
		TimeS: f.timeS, TempC: s[tempC], SG: w.SG(), ABV: w.ABV(), PH: f.ph,
		YeastKgM3: s[alive] / v, HeatW: f.sys.fermentHeat, CO2Kg: s[co2],
		SugarKgM3:   (s[glucose] + s[maltose] + s[maltotriose]) / v,
		AcidKgM3:    s[lactic] / v,
		ViableShare: s.viableShare(),
	}
	if f.sys.vessel.coolW > 0 {
		p.Cooling = f.sys.cooling / f.sys.vessel.coolW
	}
	f.out.PeakTempC = math.Max(f.out.PeakTempC, s[tempC])
	f.out.Curve = append(f.out.Curve, p)
}

// finish sums up.
func (f *ferment) finish() Result {
	s, o := &f.s, &f.out
	w := s.into(f.in.Wort)
	w.GelStarchKg = f.starch.state.GelKg
	o.Wash = w
	o.Enzymes.BranchedShare = f.starch.state.BranchedShare()
	o.FinalSG, o.ABV = w.SG(), w.ABV()
	o.CO2Kg, o.PH = s[co2], f.ph
	o.SugarLeftKg = s[glucose] + s[maltose] + s[maltotriose]
	if s[taken] > 0 {
		o.EthanolYield = (s[ethanol] + s[ventEthanol] - f.in.Wort.EthanolKg) / (s[taken] * ethanolPerGlucose)
	}
	o.SugarTakenKg, o.GrownKg, o.ViableShare = s[taken], s[grown], s.viableShare()
	o.GlycerolKg, o.OtherKg = s[glycerol], s[other]
	o.SouredKg = f.sys.k.gums*f.in.Wort.SolublesKg - s[gums]
	o.VentEthanol, o.VentWater = s[ventEthanol], s[ventWater]
	o.HeatJ, o.WarmJ, o.CoolJ, o.LossJ, o.VentJ = s[heatJ], s[warmJ], s[coolJ], s[lossJ], s[ventJ]
	o.HeatCapacityJK = f.sys.vessel.heatCapacity

	grain, fermented := f.in.Wort, w
	grain.BacksetKg, fermented.BacksetKg = 0, 0
	before, err1 := fluid.PlatoFromSG(grain.SG())
	after, err2 := fluid.PlatoFromSG(fermented.SG())
	if err1 == nil && err2 == nil && before > 0 {
		o.Attenuation = (before - after) / before
	}
	return *o
}
