package compile

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
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

// card works the reduction of the hearts to mass fraction to, step by step.
func (c *compiler) card(hearts stream.Stream, to float64, all gauge.Reduction) (*plan.Card, error) {
	room := c.b.Plant.AmbientC
	spirit := fluid.Lot{MassKg: hearts.EthanolKg + hearts.WaterKg, TempC: room}
	spirit.EthanolMassFrac = hearts.EthanolKg / spirit.MassKg
	card := &plan.Card{Target: strengthOf(to), RoomC: room}
	before := 0.0
	for _, share := range cardShares {
		waterKg := share * all.WaterKg
		mixed, err := fluid.Blend(spirit, fluid.Lot{MassKg: waterKg, TempC: room})
		if err != nil {
			return nil, err
		}
		s := plan.CardStep{
			SharePct: 100 * share, AddL: waterL(waterKg - before), AddKg: waterKg - before,
			WaterL: waterL(waterKg), WaterKg: waterKg, MixedC: mixed.TempC,
			AddGallons: waterGal(waterKg - before), WaterGallons: waterGal(waterKg),
			Gives: lotOf(stream.Stream{EthanolKg: hearts.EthanolKg, WaterKg: hearts.WaterKg + waterKg}),
		}
		if s.Shows, err = c.shows(mixed.EthanolMassFrac); err != nil {
			return nil, err
		}
		card.Steps = append(card.Steps, s)
		before = waterKg
	}
	return card, c.trims(card, hearts, to)
}

func waterGal(kg float64) float64 { return kg / fluid.WaterDensity(fluid.SixtyF) / fluid.USGallonM3 }

func waterL(kg float64) float64 { return kg / fluid.WaterDensity(referenceC) * litresPerM3 }

// shows is what hydrometers read in spirit of a mass fraction, at the round
// temperatures of the batch's own scale.
func (c *compiler) shows(w float64) ([]plan.Shown, error) {
	proof, abv := fluid.ProofFromMassFrac(w), fluid.ABVFromMassFrac(w)
	temps := cardTempsC
	if c.b.Units == recipe.US {
		temps = cardTempsF
	}
	var out []plan.Shown
	for _, t := range temps {
		if c.b.Units == recipe.US {
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
func (c *compiler) trims(card *plan.Card, hearts stream.Stream, to float64) error {
	overs := overAbvPct
	if c.b.Units == recipe.US {
		overs = overProof
	}
	for _, over := range overs {
		q := plan.Of(over, plan.AbvDiff)
		from, err := fluid.MassFracFromABV(fluid.ABVFromMassFrac(to) + over/100)
		if c.b.Units == recipe.US {
			q = plan.Of(over/2, plan.AbvDiff)
			q.Proof = over
			from, err = fluid.MassFracFromProof(fluid.ProofFromMassFrac(to) + over)
		}
		if err != nil {
			return err
		}
		kg := hearts.EthanolKg/to - hearts.EthanolKg/from
		card.Trims = append(card.Trims, plan.Trim{Over: q, WaterL: waterL(kg), WaterKg: kg, WaterGallons: waterGal(kg)})
	}
	return nil
}
