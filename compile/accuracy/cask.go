package accuracy

import (
	"newmake/compile/accuracy/published"
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

func maturing(m *measurer) Section {
	s := Section{Title: "Cask",
		Text: "Water goes by how damp the air is, ethanol into air that holds none, both by the surface that the spirit wets. The published table of proof by age rises by 0.9 a year to the sixth year, by 1.9 in the seventh and by 1.5 in the eighth; no smooth law has such a step, and the model is high just before it."}
	years := func(age, proof float64) cask.Year {
		w := m.must(fluid.MassFracFromProof(proof))
		kg := 53 * galM3 * fluid.Density(w, 20)
		r, err := cask.Forecast(cask.Input{
			SpiritEthanolKg: kg * w, SpiritWaterKg: kg * (1 - w), SizeM3: 53 * galM3, Kind: library().Woods["charred-oak"],
			Climate: recipe.Climate{Named: "warm"}, RestS: age * cask.YearS, Model: library().Models["cask"],
		})
		if err != nil || len(r.Years) == 0 {
			m.fail(err)
			return cask.Year{}
		}
		return r.Years[len(r.Years)-1]
	}
	proof := m.table("cask/barrel_proof_schoeneman1971.csv", func(l line) (float64, float64, bool) {
		age := l.num("age_years")
		if age == 0 {
			return 0, 0, false // the fill itself
		}
		return years(age, 104.6).Proof, l.num("proof"), true
	})
	var loss published.Deviations
	want := 1.0
	for age := 1; age <= 12; age++ {
		switch {
		case age == 1:
			want = 0.90
		case age <= 9:
			want *= 0.96
		default:
			want *= 0.97
		}
		loss.Add(100*years(float64(age), 105).VolumeM3/(53*galM3), 100*want)
	}
	sized := func(gal float64) float64 { // loss of the second year, share of what was there
		w := m.must(fluid.MassFracFromProof(115))
		kg := gal * galM3 * fluid.Density(w, 20)
		r, err := cask.Forecast(cask.Input{
			SpiritEthanolKg: kg * w, SpiritWaterKg: kg * (1 - w), SizeM3: gal * galM3, Kind: library().Woods["charred-oak"],
			Climate: recipe.Climate{Named: "temperate"}, RestS: 2 * cask.YearS, Model: library().Models["cask"],
		})
		if err != nil || len(r.Years) < 3 {
			m.fail(err)
			return 0
		}
		return 1 - r.Years[2].VolumeM3/r.Years[1].VolumeM3
	}
	small := points([2]float64{sized(15) / sized(53), 6.5 / 3.5}, [2]float64{sized(5) / sized(53), 9 / 3.5})
	s.Rows = []Row{
		{Quantity: "proof by age", Why: "none: no smooth law follows the step in the table", Source: "Schoeneman, Dyer and Earl, J. AOAC 54 (1971) 1247", Range: "0.5-8 years, 104.6 proof, new charred oak", Unit: "proof", Deviations: proof, Remark: "mean " + signedFigures(proof.Mean())},
		{Quantity: "volume by age", Why: "the library's warm climate is made from the rule, and spirit goes by its surface; the largest seen, rounded up", Source: "published rule: 10 % the first year, 4 % for eight, then 3", Range: "1-12 years, 105 proof, 53 gal", Unit: "% of the fill", Deviations: loss, Claim: 0.4},
		{Quantity: "loss of small wood, that of 53 gal being 1", Why: "none: the ranges of practice are wide, and the model is known to be low", Source: "common practice: 2-5 % a year in 53 gal, 5-8 in 15, 8-10 in 5, read at their middles", Range: "15, 5 gal", Unit: "1", Deviations: small, Remark: "the model is low: it goes by surface to contents, and thinner staves are left out"},
	}
	return s
}
