package accuracy

import (
	"math"

	"newmake/compile/accuracy/published"
	"newmake/compile/ask/proofing"
	"newmake/compile/matter/fluid"
	"newmake/compile/measure"
	"newmake/lang/quantity"
)

func gauging(m *measurer) Section {
	s := Section{Title: "US gauging",
		Text: "The rows of the gauging tables that 27 CFR part 30 itself prints, and its worked examples. The official tables rest on the densities of 1912, with pure alcohol of specific gravity 0.7939; OIML R 22 has 0.79382, and the columns by weight feel that near 200 proof. **Official gauging follows the regulation's own tables.**"}
	rows := func(name string, f func(l line) float64) published.Deviations {
		return m.table("fluid/us_gauging_published_rows.csv", func(l line) (float64, float64, bool) {
			if l.Row["quantity"] != name {
				return 0, 0, false
			}
			return f(l), l.num("published"), true
		})
	}
	at := func(l line) fluid.Strength60F {
		row, err := fluid.AtProof(l.num("proof_or_reading"))
		if err != nil {
			m.fail(err)
		}
		return row
	}
	proof := rows("true proof", func(l line) float64 {
		return m.must(fluid.TrueProof(l.num("proof_or_reading"), l.num("temp_F")))
	})
	proof.Add(m.must(fluid.TrueProof(192.82, 72.15)), 189.972) // 30.23's worked example
	parts := rows("water parts/100", func(l line) float64 { return at(l).WaterParts })
	weight := m.table("fluid/us_gauging_published_rows.csv", func(l line) (float64, float64, bool) {
		var got float64
		switch l.Row["quantity"] {
		case "proof gal/lb":
			got = at(l).ProofGallonsPerPound
		case "lb/proof gal":
			got = at(l).PoundsPerProofGallon
		case "wine gal/lb water":
			got = at(l).GallonsPerPound
		default:
			return 0, 0, false
		}
		g, w := percent(got, l.num("published"))
		return g, w, true
	})
	factor := rows("volume factor", func(l line) float64 {
		return m.must(fluid.VolumeFactor(l.num("proof_or_reading"), l.num("temp_F")))
	})
	examples := percents(
		m.asked("81,000 lb at 190 proof", proofing.Volume, 11921.6),
		m.asked("81,000 lb at 190 proof", proofing.ProofGallons, 22650.8),
		m.asked("1,000 lb at 200 proof, reduce to 190 proof", proofing.WaterWeight, 82.03),
		m.asked("4,308.48 gal at 86.8 proof at 72 F", proofing.ProofGallons, 3721.1),
		m.asked("100 gal at 112 proof, reduce to 100 proof", proofing.WaterVolume, 12.42),
	)
	containers := m.table("fluid/us_gauging_30_44_containers.csv", func(l line) (float64, float64, bool) {
		row, err := fluid.AtProof(l.num("proof"))
		if err != nil {
			m.fail(err)
		}
		return math.Ceil(16 * l.num("wine_gal") / row.GallonsPerPound), 16*l.num("lb") + l.num("oz"), true
	})
	cask := points(m.asked("fill 53 gal at 120 proof from 140 proof", proofing.WaterVolume, 7.98))
	s.Rows = []Row{
		{Quantity: "true proof", Why: "print rounding: half of 0.1", Source: "27 CFR 30.23, 30.61 (Table 1) and TTB's proofing page", Range: "80-193 proof, 68-75 °F", Unit: "proof", Deviations: proof, Claim: 0.05, Remark: "printed to 0.1"},
		{Quantity: "parts of water", Why: "print rounding is 0.005; the rest is the densities of 1912", Source: "27 CFR 30.66 (Table 6)", Range: "100-191 proof", Unit: "in 100", Deviations: parts, Claim: 0.01, Remark: "printed to 0.01"},
		{Quantity: "by weight", Why: "the source's pure alcohol is 0.010 % heavier; the rest is print rounding", Source: "27 CFR 30.41, 30.64, 30.65 (Tables 4, 5)", Range: "0-200 proof", Unit: "%", Deviations: weight, Claim: 0.015, Remark: "pure alcohol of 0.7939"},
		{Quantity: "volume factor", Why: "print rounding: half of 0.001", Source: "27 CFR 30.51 (Table 7)", Range: "86.8 proof, 72 °F", Unit: "1", Deviations: factor, Claim: 0.0005, Remark: "printed to 0.001"},
		{Quantity: "weight of spirits in a container", Why: "print rounding: whole ounces must agree", Source: "27 CFR 30.44(b)", Range: "1-10 gal, 190-200 proof", Unit: "oz", Deviations: containers, Claim: 0.5, Remark: "whole ounces, a fraction called one"},
		{Quantity: "`newmake gauge`", Why: "none: the examples round on the way, and a difference of weights magnifies it", Source: "worked examples of 27 CFR 30.51, 30.64, 30.66", Range: "5 answers", Unit: "%", Deviations: examples, Remark: "largest: water from a difference of two weights, to 0.01 lb"},
		{Quantity: "`newmake gauge`, water to fill 53 gal", Why: "print rounding is 0.005; the rest is rounding on the way", Source: "printed trade check: 7.98 gal, 70 to 60 %", Range: "60 °F", Unit: "gal", Deviations: cask, Claim: 0.02},
	}
	return s
}

// asked is what newmake gauge answers, and what is published.
func (m *measurer) asked(question, result string, want float64) [2]float64 {
	q, list := proofing.Read(question, quantity.Both)
	if list.HasErrors() {
		m.fail(list)
		return [2]float64{0, want}
	}
	a, list := proofing.Solve(q, measure.US)
	if list.HasErrors() {
		m.fail(list)
	}
	for _, r := range a.Results {
		if r.Name == result {
			return [2]float64{r.Value, want}
		}
	}
	return [2]float64{0, want}
}
