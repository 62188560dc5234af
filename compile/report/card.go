package report

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/gauge"
	"newmake/lang/recipe"
)

// The proofing card: the water goes in by thirds, and the last third by halves
// (common practice: gauge before the last of it, since what was added cannot be
// taken out). It shows readings where spirit is likely to stand.
var (
	cardShares = []float64{0, 1. / 3, 2. / 3, 5. / 6, 11. / 12, 1}
	cardTempsF = []float64{50, 55, 60, 65, 70, 75, 80}
	cardTempsC = []float64{10, 12.5, 15, 17.5, 20, 22.5, 25}
	overProof  = []float64{0.5, 1, 2, 3}
	overAbvPct = []float64{0.2, 0.5, 1, 1.5}
)

// Card works the reduction of the hearts step by step; nil if they are not
// reduced. An error is a *numbers.Failure.
func Card(b *recipe.Batch, hearts stream.Stream, r numbers.Reduction) (*plan.Card, error) {
	if !r.Done {
		return nil, nil
	}
	card, err := stepByStep(b, hearts, r)
	if err != nil {
		return nil, &numbers.Failure{Stage: numbers.Carding, Err: err}
	}
	return card, nil
}

func stepByStep(b *recipe.Batch, hearts stream.Stream, r numbers.Reduction) (*plan.Card, error) {
	room, to := b.Plant.AmbientC, r.ToMassFrac
	spirit := fluid.Lot{MassKg: hearts.EthanolKg + hearts.WaterKg, TempC: room}
	spirit.EthanolMassFrac = hearts.EthanolKg / spirit.MassKg
	card := &plan.Card{Target: lot.AtMassFrac(to), RoomC: room}
	before := 0.0
	for _, share := range cardShares {
		waterKg := share * r.WaterKg
		mixed, err := fluid.Blend(spirit, fluid.Lot{MassKg: waterKg, TempC: room})
		if err != nil {
			return nil, err
		}
		s := plan.CardStep{
			SharePct: 100 * share, AddL: waterL(waterKg - before), AddScaleKg: waterScaleKg(waterKg - before),
			WaterL: waterL(waterKg), WaterScaleKg: waterScaleKg(waterKg), MixedC: mixed.TempC,
			AddGallons: waterGal(waterKg - before), WaterGallons: waterGal(waterKg),
			Gives: lot.Of(stream.Stream{EthanolKg: hearts.EthanolKg, WaterKg: hearts.WaterKg + waterKg}),
		}
		s.GivesScaleKg = fluid.MassInAirKg(s.Gives.MassKg, fluid.Density(mixed.EthanolMassFrac, mixed.TempC))
		if s.Shows, err = shows(b.Units, mixed.EthanolMassFrac); err != nil {
			return nil, err
		}
		card.Steps = append(card.Steps, s)
		before = waterKg
	}
	var err error
	card.Trims, err = trims(b.Units, hearts.EthanolKg, to)
	return card, err
}

func waterGal(kg float64) float64 { return kg / fluid.WaterDensity(fluid.SixtyF) / fluid.USGallonM3 }

func waterL(kg float64) float64 { return kg / fluid.WaterDensity(lot.ReferenceC) * lot.LitresPerM3 }

// waterScaleKg is what a scale in air shows for a mass of water.
func waterScaleKg(kg float64) float64 {
	return fluid.MassInAirKg(kg, fluid.WaterDensity(lot.ReferenceC))
}

// shows is what hydrometers read in spirit of a mass fraction, at the round
// temperatures of the batch's own scale.
func shows(units recipe.System, w float64) ([]plan.Shown, error) {
	proof, abv := fluid.ProofFromMassFrac(w), fluid.ABVFromMassFrac(w)
	temps := cardTempsC
	if units == recipe.US {
		temps = cardTempsF
	}
	var out []plan.Shown
	for _, t := range temps {
		if units == recipe.US {
			t = fluid.FahrenheitToC(t)
		}
		p, err := fluid.HydrometerReading(proof, t*1.8+32)
		if err != nil {
			return nil, err
		}
		a, err := gauge.ReadingABV(abv, t)
		if err != nil {
			return nil, err
		}
		out = append(out, plan.Shown{TempC: t, Proof: p, AbvPct: 100 * a})
	}
	return out, nil
}

// trims is the water for the last of it: from a little over the target.
func trims(units recipe.System, ethanolKg, to float64) ([]plan.Trim, error) {
	var out []plan.Trim
	overs := overAbvPct
	if units == recipe.US {
		overs = overProof
	}
	for _, over := range overs {
		q := plan.Of(over, plan.AbvDiff)
		from, err := fluid.MassFracFromABV(fluid.ABVFromMassFrac(to) + over/100)
		if units == recipe.US {
			q = plan.Of(over/2, plan.AbvDiff)
			q.Proof = over
			from, err = fluid.MassFracFromProof(fluid.ProofFromMassFrac(to) + over)
		}
		if err != nil {
			return nil, err
		}
		kg := ethanolKg/to - ethanolKg/from
		out = append(out, plan.Trim{Over: q, WaterL: waterL(kg), WaterScaleKg: waterScaleKg(kg), WaterGallons: waterGal(kg)})
	}
	return out, nil
}
