package ferment

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// everything is a ferment in which all that the model has happens: residual
// starch, an added enzyme, backset, a strain that leaves sugar, cooling,
// warming and bacteria.
func everything(t testing.TB) Input {
	in := bourbon(t)
	in.Enzymes = starch.Enzymes{Alpha: 3000, Beta: 900, Limit: 2200, BranchedShare: 0.6}
	in.Wort.GelStarchKg, in.Wort.BacksetKg, in.Wort.AcidKg, in.Wort.EthanolKg = 12, 18, 1.5, 0.4
	in.Yeast = yeastNamed(t, "ale-yeast")
	in.Doses = []recipe.Dose{{Enzyme: enzymeNamed(t, "glucoamylase"), MassKg: 0.15}}
	in.Vessel.HeatsW = 3000
	in.HoldLowC, in.HoldHighC = 25, 26
	return in
}

func cases(t testing.TB) map[string]Input {
	hot := everything(t)
	hot.Wort.TempC = 60
	return map[string]Input{"bourbon": bourbon(t), "malt": malt(t), "everything": everything(t), "set at 60 C": hot}
}

// All mass that goes in comes out, to 1e-9.
func TestMassIsConserved(t *testing.T) {
	for name, in := range cases(t) {
		r := ferments(t, in)
		before := in.Wort.MassKg() + in.PitchKg
		after := r.Wash.MassKg() + r.CO2Kg + r.VentEthanol + r.VentWater
		assert.InEpsilon(t, before, after, 1e-9, name)
		assert.Zero(t, r.Wash.RawStarchKg-in.Wort.RawStarchKg, name)
		assert.InDelta(t, in.Wort.BacksetKg, r.Wash.BacksetKg, 0, name)
	}
}

// carbonKg of what the model tracks; that of the wort's solubles is not known,
// so acid made of them is left out. Sugars and dextrins are glucose less
// water; other by-products and lactic acid are CH2O.
func carbonKg(w stream.Stream, yeast, glycerol, other, lactic float64) float64 {
	const inGlucose = 6 * massC / molGlucose
	starchAsGlucose := starch.PerGlucose * w.GelStarchKg
	return inGlucose*(w.GlucoseKg+glucosePerMaltose*w.MaltoseKg+glucosePerMaltotriose*w.MaltotrioseKg+
		glucosePerDextrin*w.DextrinKg+starchAsGlucose+other+lactic) +
		2*massC/molEthanol*w.EthanolKg + massC/molYeast*yeast + 3*massC/molGlycerol*glycerol
}

func TestCarbonAndNitrogenAreConserved(t *testing.T) {
	for name, in := range cases(t) {
		r := ferments(t, in)
		before := carbonKg(in.Wort, 0, 0, 0, 0)
		after := carbonKg(r.Wash, r.GrownKg, r.GlycerolKg, r.OtherKg, r.Wash.AcidKg-in.Wort.AcidKg-r.SouredKg) +
			massC/molCO2*r.CO2Kg + 2*massC/molEthanol*r.VentEthanol
		assert.InEpsilon(t, before, after, 1e-9, name)

		taken := in.Wort.SolublesKg - r.Wash.SolublesKg - r.SouredKg
		assert.InDelta(t, taken*massN/molAmmonia, r.GrownKg*0.2*massN/molYeast, 1e-9, name)
	}
}

func TestEnergyIsConserved(t *testing.T) {
	for name, in := range cases(t) {
		r := ferments(t, in)
		rise := r.Wash.TempC - in.Wort.TempC
		sum := r.HeatJ + r.WarmJ - r.CoolJ - r.LossJ - r.VentJ
		scale := r.HeatJ + r.WarmJ + r.CoolJ + math.Abs(r.LossJ) + r.VentJ
		assert.InDelta(t, sum, r.HeatCapacityJK*rise, 1e-9*scale, name)
		k := in.Model.Values["heat-glucose"]
		assert.InDelta(t, r.SugarTakenKg*k, r.HeatJ, 1e-9*math.Max(1, r.HeatJ), name)
	}
}

func TestNothingIsNegative(t *testing.T) {
	heavy := bourbon(t) // ten times the pitch and a cooler far too large
	heavy.PitchKg, heavy.CoolW = 30, 500e3
	list := cases(t)
	list["heavy"] = heavy
	for name, in := range list {
		r := ferments(t, in)
		w := r.Wash
		for _, kg := range []float64{
			w.WaterKg, w.EthanolKg, w.GlucoseKg, w.MaltoseKg, w.MaltotrioseKg, w.DextrinKg, w.GelStarchKg,
			w.SolublesKg, w.AcidKg, w.YeastKg, r.CO2Kg, r.GrownKg, r.OtherKg, r.CoolJ, r.WarmJ,
		} {
			assert.GreaterOrEqual(t, kg, 0.0, name)
		}
		for _, p := range r.Curve {
			assert.False(t, math.IsNaN(p.SG+p.ABV+p.PH+p.TempC+p.HeatW+p.Cooling), "%s at %g h", name, p.TimeS/hour)
			assert.GreaterOrEqual(t, p.SugarKgM3, 0.0, name)
		}
	}
}
