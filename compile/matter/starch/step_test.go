package starch_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/starch/starchtest"
	"newmake/lang/recipe"
)

func constants(t testing.TB) starch.Constants {
	t.Helper()
	k, err := starch.ConstantsFrom(starchtest.Model(t))
	require.NoError(t, err)
	return k
}

// mixed is a state in which every reaction runs, with every enzyme.
func mixed(t testing.TB) (starch.State, starch.Enzymes) {
	s := starch.State{
		WaterKg: 1000,
		Raw: []starch.Granules{
			{LowC: 52, HighC: 65, Extract: 0.16, TotalKg: 60, RawKg: 60, HeldKg: 1},
			{LowC: 62, HighC: 75, TotalKg: 90, RawKg: 80, HeldKg: 4},
		},
		GelKg: 20, DextrinKg: 10, LimitDextrinKg: 5, ClosedKg: 1, MaltotrioseKg: 4, MaltoseKg: 12, GlucoseKg: 6, BesideKg: 25,
	}
	e := starch.Enzymes{Alpha: 5000, Beta: 8000, BetaTail: 2000, Limit: 1500, LimitBound: 3000, LimitHeld: 500}
	e.Dose(starchtest.Enzyme(t, "alpha-amylase"), 0.1)
	e.Dose(starchtest.Enzyme(t, "glucoamylase"), 0.2)
	return s, e
}

// Nothing is lost, whatever the state, the step and the weather.
func TestStepConserves(t *testing.T) {
	k := constants(t)
	rng := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		s, e := mixed(t)
		for _, p := range []*float64{&s.GelKg, &s.DextrinKg, &s.LimitDextrinKg, &s.ClosedKg, &s.MaltotrioseKg, &s.MaltoseKg, &s.GlucoseKg, &e.Alpha, &e.Beta, &e.Limit, &e.LimitBound} {
			*p *= 3 * rng.Float64()
		}
		starchKg, massKg := s.StarchKg(), s.MassKg()
		for range 5 {
			k.Run(&s, &e, 20+80*rng.Float64(), 3.5+3.5*rng.Float64(), 2000*rng.Float64())
		}
		require.InEpsilon(t, starchKg, s.StarchKg(), 1e-9)
		require.InEpsilon(t, massKg, s.MassKg(), 1e-9)
		for _, v := range []float64{s.GelKg, s.DextrinKg, s.LimitDextrinKg, s.ClosedKg, s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg, s.WaterKg,
			s.Raw[0].RawKg, s.Raw[1].RawKg, e.Alpha, e.Beta, e.BetaTail, e.Limit, e.LimitBound, e.LimitHeld, e.Added[0].Activity} {
			require.GreaterOrEqual(t, v, 0.0)
			require.False(t, math.IsNaN(v))
		}
	}
}

// oracle solves the same reactions independently: written as differential
// equations in starch units, by classical Runge-Kutta at 1 s, at constant
// temperature and pH. It shares only the published rate laws with the code.
func oracle(k starch.Constants, s starch.State, e starch.Enzymes, tempC, pH, durS float64) [16]float64 {
	const r, zero = 8.314462618, 273.15
	arr := func(ea, ref, t float64) float64 { return math.Exp(ea / r * (1/(ref+zero) - 1/(t+zero))) }
	bell := func(lo, hi float64) float64 {
		f := func(p float64) float64 { return 1 / (1 + math.Pow(10, lo-1-p) + math.Pow(10, p-hi-1)) }
		return f(pH) / f((lo+hi)/2)
	}
	melt := func(g starch.Granules, tempC float64) float64 {
		x := math.Max(0, math.Min(1, (tempC-g.LowC)/(g.HighC-g.LowC)/k.GelDonePosition))
		return 3*x*x - 2*x*x*x
	}
	gelRate := func(g starch.Granules, tempC float64) float64 {
		split := g.LowC + k.GelSplitPosition*(g.HighC-g.LowC)
		if tempC < split {
			return k.GelRate * arr(k.GelBelowJMol, split, tempC)
		}
		return k.GelRate * arr(k.GelAboveJMol, split, tempC)
	}
	kdA := math.Ln2 / k.AlphaHalfLifeS * arr(k.AlphaDeathJMol, k.ReferenceC, tempC)
	kdB := math.Ln2 / k.BetaHalfLifeS * arr(k.BetaDeathJMol, k.ReferenceC, tempC)
	kdT := math.Ln2 / k.BetaTailHalfLifeS * arr(k.BetaDeathJMol, k.ReferenceC, tempC)
	kdL := math.Ln2 / k.LimitHalfLifeS * arr(k.LimitDeathJMol, k.ReferenceC, tempC)
	kdI := math.Ln2 / k.LimitBoundHalfLifeS * arr(k.LimitDeathJMol, k.ReferenceC, tempC)
	frees := k.LimitRelease * arr(k.LimitReleaseJMol, k.ReferenceC, tempC) * math.Pow(10, k.LimitReleasePH-pH)
	added := func(i int, at float64) (act, death float64) {
		z := e.Added[i].Enzyme
		death = math.Ln2 / z.HalfLifeS * arr(z.DeathJMol, z.HalfLifeC, tempC)
		act = e.Added[i].Activity * math.Exp(-death*at) * arr(k.AddedJMol, z.OptimumC, math.Min(tempC, z.OptimumC)) * bell(z.PHLow, z.PHHigh)
		return act, death
	}
	y := [16]float64{s.Raw[0].RawKg, s.Raw[1].RawKg, s.GelKg, s.DextrinKg / starch.PerDextrin, s.LimitDextrinKg / starch.PerDextrin,
		s.MaltotrioseKg / starch.PerMaltotriose, s.MaltoseKg / starch.PerMaltose, s.GlucoseKg / starch.PerGlucose, s.WaterKg,
		e.Alpha, e.Beta, e.BetaTail, e.LimitHeld, e.LimitBound, e.Limit, s.ClosedKg / starch.PerDextrin}
	f := func(at float64, y [16]float64) (d [16]float64) {
		w := y[8]
		dissolved := s.BesideKg + (y[3]+y[4]+y[15])*starch.PerDextrin + y[5]*starch.PerMaltotriose + y[6]*starch.PerMaltose + y[7]*starch.PerGlucose
		extract := dissolved / (dissolved + w)
		thick := math.Exp((k.ProtectExtract - extract) / k.ProtectFold)
		d[9], d[10], d[11] = -kdA*thick*y[9], -kdB*thick*y[10], -kdT*thick*y[11]
		d[12] = -(k.LimitDissolves + kdI) * y[12]
		d[13] = k.LimitDissolves*y[12] - (frees+kdI)*y[13]
		d[14] = frees*y[13] - kdL*y[14]
		toThem := func(g starch.Granules) float64 { return tempC - k.GelPerExtractK*(extract-g.Extract) }
		alpha := y[9] / w * arr(k.AlphaJMol, k.ReferenceC, tempC) * bell(k.AlphaPHLow, k.AlphaPHHigh)
		beta := (y[10] + y[11]) / w * arr(k.BetaJMol, k.ReferenceC, tempC) * bell(k.BetaPHLow, k.BetaPHHigh)
		limit := y[14] / w * arr(k.LimitJMol, k.ReferenceC, tempC) * bell(k.LimitPHLow, k.LimitPHHigh)
		liq, _ := added(0, at)
		glu, _ := added(1, at)
		liq, glu = liq/w, glu/w
		g0 := gelRate(s.Raw[0], toThem(s.Raw[0])) * math.Max(0, y[0]-s.Raw[0].TotalKg*(1-melt(s.Raw[0], toThem(s.Raw[0]))))
		g1 := gelRate(s.Raw[1], toThem(s.Raw[1])) * math.Max(0, y[1]-s.Raw[1].TotalKg*(1-melt(s.Raw[1], toThem(s.Raw[1]))))
		gel := (k.AlphaOnStarch*alpha + liq) * y[2]
		gelGlu := glu * y[2]
		open, openGlu, closedGlu := k.LimitOnBranch*limit*y[4], k.GlucoOnBranch*glu*y[4], k.GlucoOnBranch*glu*y[15]
		byA, byB, byG := k.AlphaOnDextrin*alpha*y[3], k.BetaOnDextrin*beta*y[3], glu*y[3]
		m3, m2 := k.GlucoOnMaltose*glu*y[5], k.GlucoOnMaltose*glu*y[6]
		d[0], d[1] = -g0, -g1
		d[2] = g0 + g1 - gel - gelGlu
		d[3] = gel*(1-k.BranchedShare) + open - byA - byB - byG
		d[4] = gel*k.BranchedShare*(1-k.ClosedShare) - open - openGlu
		d[15] = gel*k.BranchedShare*k.ClosedShare - closedGlu
		d[5] = byA*(1-k.AlphaToGlucose-k.AlphaToMaltose) + byB*k.BetaToMaltotriose - m3
		d[6] = byA*k.AlphaToMaltose + byB*(1-k.BetaToMaltotriose) - m2
		d[7] = gelGlu + openGlu + closedGlu + byG + byA*k.AlphaToGlucose + m3 + m2
		d[8] = -(d[3]+d[4]+d[15])*(starch.PerDextrin-1) - d[5]*(starch.PerMaltotriose-1) - d[6]*(starch.PerMaltose-1) - d[7]*(starch.PerGlucose-1)
		return d
	}
	h := 1.0
	if tempC > 80 {
		h = 0.05 // the enzymes die within seconds
	}
	plus := func(a, b [16]float64, f float64) [16]float64 {
		for i := range a {
			a[i] += f * b[i]
		}
		return a
	}
	for n := range int(durS / h) {
		at := float64(n) * h
		k1 := f(at, y)
		k2 := f(at+h/2, plus(y, k1, h/2))
		k3 := f(at+h/2, plus(y, k2, h/2))
		k4 := f(at+h, plus(y, k3, h))
		for i := range y {
			y[i] += h / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
		}
	}
	return y
}

func TestStepAgainstIndependentSolution(t *testing.T) {
	k := constants(t)
	for _, tempC := range []float64{31, 55, 63, 65, 70, 74, 88} {
		s, e := mixed(t)
		want := oracle(k, s, e, tempC, 5.2, 1800)
		for range 180 {
			k.Run(&s, &e, tempC, 5.2, 10)
		}
		got := [16]float64{s.Raw[0].RawKg, s.Raw[1].RawKg, s.GelKg, s.DextrinKg / starch.PerDextrin, s.LimitDextrinKg / starch.PerDextrin,
			s.MaltotrioseKg / starch.PerMaltotriose, s.MaltoseKg / starch.PerMaltose, s.GlucoseKg / starch.PerGlucose, s.WaterKg,
			e.Alpha, e.Beta, e.BetaTail, e.LimitHeld, e.LimitBound, e.Limit, s.ClosedKg / starch.PerDextrin}
		for i := range got {
			// 1e-4 of the 200 kg of starch in play, and of the enzymes: four digits
			// at the step the mash uses.
			of := 200.0
			if i >= 9 && i < 15 {
				of = 5000
			}
			assert.InDelta(t, want[i], got[i], 1e-4*of, "%g C, quantity %d", tempC, i)
		}
	}
}

// The error of the integrator's steps, against a tolerance a hundred times
// finer: 2e-5 of the starch in play at every temperature.
func TestStepErrorIsStated(t *testing.T) {
	k := constants(t)
	for _, tempC := range []float64{31, 55, 63, 65, 70, 74, 88, 99} {
		at := func(tolerance float64) [7]float64 {
			s, e := mixed(t)
			k.RunTo(tolerance, &s, &e, tempC, 5.3, 1800)
			return [7]float64{s.GelKg, s.DextrinKg, s.LimitDextrinKg, s.ClosedKg, s.MaltotrioseKg, s.MaltoseKg, s.GlucoseKg}
		}
		exact := at(starch.Tolerance / 100)
		for i, v := range at(starch.Tolerance) {
			assert.InDelta(t, exact[i], v, 200*2e-5, "%g C, quantity %d", tempC, i)
		}
	}
}

// Steps allocate nothing: however long a run, it takes the room of its start.
func TestStepsAllocateNothing(t *testing.T) {
	k := constants(t)
	s, e := mixed(t)
	allocations := func(timeS float64) float64 {
		return testing.AllocsPerRun(20, func() { k.Run(&s, &e, 64, 5.3, timeS) })
	}
	assert.Equal(t, allocations(1), allocations(7200))
	assert.LessOrEqual(t, allocations(1), 12.0)
}

func TestNoWaterNoTimeNoChange(t *testing.T) {
	k := constants(t)
	s, e := mixed(t)
	before := s.MaltoseKg
	k.Run(&s, &e, 64, 5.3, 0)
	assert.Equal(t, before, s.MaltoseKg)
	s.WaterKg = 0
	k.Run(&s, &e, 64, 5.3, 10)
	assert.Equal(t, before, s.MaltoseKg)
}

// Granules below their range stay (a malt's is that of a mash, in thin liquor 3 K
// lower), whatever enzymes there are; without enzymes
// gelatinized starch stays starch.
func TestNothingWithoutHeatOrEnzymes(t *testing.T) {
	k := constants(t)
	s, e := mixed(t)
	raw := s.RawKg()
	k.Run(&s, &e, 48, 5.3, 24*3600)
	assert.Equal(t, raw, s.RawKg())

	s, _ = mixed(t)
	none := starch.Enzymes{}
	sugars := s.FermentableKg()
	k.Run(&s, &none, 95, 5.3, 3600)
	assert.Equal(t, sugars, s.FermentableKg())
	assert.InDelta(t, 160, s.GelKg, 1e-6, "all within reach has gelatinized")
	assert.InDelta(t, 5.0, s.RawKg(), 1e-6, "what is out of reach has not")
}

// Enzymes that a mash does not hold ask for no steps: where nothing else changes
// their death is not followed.
func TestWhatIsNotThereDoesNotDie(t *testing.T) {
	k := constants(t)
	s, e := mixed(t)
	s.Raw = nil
	for name, c := range map[string]struct {
		e     starch.Enzymes
		still bool
	}{"none": {starch.Enzymes{}, true}, "some": {starch.Enzymes{Alpha: e.Alpha, Beta: e.Beta, LimitHeld: e.LimitHeld}, false}} {
		r := starch.NewKinetics(&k, &s, &c.e, 70, 5.3)
		y, d := make([]float64, r.Size()), make([]float64, r.Size())
		r.Put(y, &s)
		r.Flow(y, d)
		for _, j := range []int{starch.Alpha, starch.Beta, starch.LimitHeld} {
			assert.Equal(t, c.still, d[j] == 0, "%s: %d", name, j)
			assert.LessOrEqual(t, d[j], 0.0)
		}
		assert.Zero(t, d[starch.BetaTail])
	}
}

func TestStreamRoundTrip(t *testing.T) {
	s, e := mixed(t)
	s.Raw = nil
	var w = starchStream(&s, &e)
	back := starch.StateOf(w, e)
	assert.InDelta(t, s.DextrinKg, back.DextrinKg, 1e-12)
	assert.InDelta(t, s.LimitDextrinKg, back.LimitDextrinKg, 1e-12)
	assert.InDelta(t, s.StarchKg(), back.StarchKg(), 1e-12)
}

func TestEnzymesBook(t *testing.T) {
	var e starch.Enzymes
	z := &recipe.Enzyme{Entry: recipe.Entry{Name: "z"}, ActivityPerKg: 10}
	e.Dose(z, 1)
	e.Dose(z, 2)
	require.Len(t, e.Added, 1)
	assert.Equal(t, 30.0, e.Added[0].Dosed)
	half := e.Scale(0.5)
	half.Added[0].Activity = 1
	assert.Equal(t, 30.0, e.Added[0].Activity, "a copy shares nothing")
}

// An hour at one temperature.
func BenchmarkRun(b *testing.B) {
	k := constants(b)
	b.ReportAllocs()
	for b.Loop() {
		s, e := mixed(b)
		k.Run(&s, &e, 64, 5.3, 3600)
	}
}
