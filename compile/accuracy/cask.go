package accuracy

import (
	"fmt"
	"math"

	"newmake/compile/accuracy/published"
	"newmake/compile/matter/fluid"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
)

func maturing(m *measurer) Section {
	s := Section{Title: "Cask",
		Text: "Water goes by how damp the air is, ethanol into air that holds none, both by the surface that the spirit wets. The published table of proof by age rises by 0.9 a year to the sixth year, by 1.9 in the seventh and by 1.5 in the eighth. From the first year on a straight line is off from it by 0.60 at best and a parabola by 0.23, so it is no scatter that a smooth curve cannot follow; it is a rise that nearly doubles. In air that is every year the same the model's can not: as a cask empties its surface grows beside its contents, by a seventh in eight years, and that is all. With what proof rises a year, how long the wood soaks and what water it gives chosen for this one table, the model would be off by 0.39 at best, by a soak that takes a year; with the losses and the humidity at which strength stands still free as well by about 0.32, at twice the published losses. Neither reaches 0.3, so the constants stay as they are. What quickened in the seventh year, other casks in the mean or another place in the house, the table does not say.\n\nWhere the plant has its rack house by the month, which way strength goes is held against what is published. How much of a year's loss each month takes, and by how much strength differs from tier to tier, was found nowhere: those are the model's alone."}
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
	outdoors := func(tempC, humidity [12]float64) cask.Year {
		w := m.must(fluid.MassFracFromProof(125))
		kg := 53 * galM3 * fluid.Density(w, 20)
		air := recipe.YearOfAir{Said: true}
		for i := range air.Months {
			air.Months[i] = recipe.Air{TempC: tempC[i], Humidity: humidity[i] / 100}
		}
		r, err := cask.Forecast(cask.Input{
			SpiritEthanolKg: kg * w, SpiritWaterKg: kg * (1 - w), SizeM3: 53 * galM3, Kind: library().Woods["charred-oak"],
			Climate: recipe.Climate{Named: "temperate"}, Air: air, RestS: 4 * cask.YearS, Model: library().Models["cask"],
		})
		if err != nil || len(r.Years) < 5 {
			m.fail(err)
			return cask.Year{}
		}
		return r.Years[4]
	}
	// Sterling, Virginia, and Golden, Colorado.
	damp := outdoors([12]float64{0.6, 1.6, 7.7, 12.5, 18.2, 22.5, 24.5, 23.0, 20.1, 11.9, 7.8, 1.0}, [12]float64{61, 68, 60, 63, 72, 71, 75, 74, 77, 67, 73, 68})
	dry := outdoors([12]float64{1.1, -1.3, 3.2, 8.4, 13.1, 18.8, 20.8, 21.5, 17.0, 9.4, 2.6, 1.8}, [12]float64{50, 63, 62, 57, 49, 55, 52, 47, 48, 58, 61, 42})
	way := func(x float64) float64 { return math.Copysign(1, x) }
	ways := points([2]float64{way(damp.Proof - 125), -1}, [2]float64{way(dry.Proof - 125), 1}, [2]float64{way(damp.VolumeM3 - dry.VolumeM3), 1})
	s.Rows = []Row{
		{Quantity: "proof by age", Why: "none: its rise nearly doubles in the seventh year, see above", Source: "Schoeneman, Dyer and Earl, J. AOAC 54 (1971) 1247", Range: "0.5-8 years, 104.6 proof, new charred oak", Unit: "proof", Deviations: proof, Remark: "mean " + signedFigures(proof.Mean())},
		{Quantity: "volume by age", Why: "the library's warm climate is made from the rule, and spirit goes by its surface; the largest seen, rounded up", Source: "published rule: 10 % the first year, 4 % for eight, then 3", Range: "1-12 years, 105 proof, 53 gal", Unit: "% of the fill", Deviations: loss, Claim: 0.4},
		{Quantity: "loss of small wood, that of 53 gal being 1", Why: "none: the ranges of practice are wide, and the model is known to be low", Source: "common practice: 2-5 % a year in 53 gal, 5-8 in 15, 8-10 in 5, read at their middles", Range: "15, 5 gal", Unit: "1", Deviations: small, Remark: "the model is low: it goes by surface to contents, and thinner staves are left out"},
		{Quantity: "which way strength and volume go by the month's air", Why: "none: a direction is right or wrong", Source: "Conner, Reid and Jack in Russell (ed.), Whisky (2003), ch. 7, p. 230: low and damp strength falls, high and dry it rises and more is lost in all", Range: "4 years; air out of doors of Sterling, Virginia, and Golden, Colorado: typical meteorological years (TMY3), National Renewable Energy Laboratory", Unit: "1 up, -1 down", Deviations: ways, Remark: fmt.Sprintf("from 125 proof to %.1f and %.1f, %.0f and %.0f L of 201", damp.Proof, dry.Proof, 1000*damp.VolumeM3, 1000*dry.VolumeM3)},
	}
	return s
}
