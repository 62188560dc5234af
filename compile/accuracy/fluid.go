package accuracy

import (
	"math"

	"newmake/compile/accuracy/published"
	"newmake/compile/internal/balling"
	"newmake/compile/matter/fluid"
)

func density(m *measurer) Section {
	s := Section{Title: "Density and strength of ethanol-water",
		Text: "To 40 °C by OIML R 22; above, carried on by the pure liquids and the trend of OIML's own excess volume (package fluid). No published table of hot mixtures could be had: in stronger hot spirit reckon with 0.3 %."}
	oiml := m.table("fluid/oiml_r22_table1_cells.csv", func(l line) (float64, float64, bool) {
		return m.must(fluid.DensityOIML(l.num("mass_pct")/100, l.num("temp_C"))), l.num("density_kg_m3_printed"), true
	})
	perry := m.table("fluid/perry7_density_20C_0to12.9wt.csv", func(l line) (float64, float64, bool) {
		// Perry's mL is of the litre of 1901, 1.000028 dm3.
		return fluid.Density(l.num("wt_pct")/100, 20), 1000 * l.num("density_g_mL") / 1.000028, true
	})
	water := func(low, high float64) published.Deviations {
		return m.table("oracle/water.csv", func(l line) (float64, float64, bool) {
			t := l.num("T_C")
			return fluid.WaterDensity(t), l.num("rho_kg_m3"), t >= low && t <= high
		})
	}
	ethanol := grid(40, 100, 60, func(t float64) (float64, float64) {
		k := t + fluid.KelvinOffset
		return fluid.Density(1, t), 1162.39 + k*(-2.25788+k*(5.30621e-3-k*6.63070e-6))
	})
	// Each of the abstract's two numbers is one point, whatever the temperature.
	excess := grid(5, 65, 60, func(t float64) (float64, float64) { return excessVolume(0.082, t), -0.420 }).AsOne()
	partial := grid(5, 65, 60, func(t float64) (float64, float64) {
		const x, h = 0.038, 1e-4
		slope := (excessVolume(x+h, t) - excessVolume(x-h, t)) / (2 * h)
		return excessVolume(x, t) + (1-x)*slope, -5.23
	}).AsOne()
	back := grid(0.001, 0.999, 500, func(w float64) (float64, float64) {
		return m.must(fluid.MassFracFromABV(fluid.ABVFromMassFrac(w))), w
	})
	const marsh = "Marsh and Richards, Aust. J. Chem. 33 (1980) 2121, abstract"
	s.Rows = []Row{
		{Quantity: "density", Why: "print rounding: 0.005", Source: "OIML R 22 (1975), Table I", Range: "5-95 % by mass, -20 to 40 °C", Unit: "kg/m³", Deviations: oiml, Claim: 0.00501, Remark: "print rounding is 0.005"},
		{Quantity: "density", Why: "two sets of measurements differ: the largest seen, rounded up", Source: "Perry's Chemical Engineers' Handbook, 7th ed.", Range: "0-12.9 % by mass, 20 °C", Unit: "kg/m³", Deviations: perry, Claim: 0.045, Remark: "an older set of measurements"},
		{Quantity: "density of water", Why: "approximation: OIML's formula of 1975 against today's", Source: "IAPWS-95 by python3-iapws", Range: "1-40 °C", Unit: "kg/m³", Deviations: water(0, 40), Claim: 0.01, Remark: "OIML's water of 1975"},
		{Quantity: "density of water", Why: "approximation: meant to be no worse than below 40 °C", Source: "IAPWS-95 by python3-iapws", Range: "45-110 °C", Unit: "kg/m³", Deviations: water(41, 110), Claim: 0.01},
		{Quantity: "density of water", Why: "approximation: meant to be no worse than below 40 °C", Source: "IAPWS-95 by python3-iapws", Range: "115-120 °C", Unit: "kg/m³", Deviations: water(111, 120), Claim: 0.01, Remark: "the release that is followed ends at 110 °C"},
		{Quantity: "density of ethanol", Why: "none: two sources differ, and neither is known to be the better", Source: "Landolt-Börnstein IV/8G (2000), a cubic as a public code carries it", Range: "40-100 °C", Unit: "kg/m³", Deviations: ethanol, Remark: "two sources of the pure liquid"},
		{Quantity: "excess volume", Why: "approximation: one published number; the largest seen, rounded up", Source: marsh + ": -0.420 at every temperature", Range: "mole fraction 0.082, 5-65 °C", Unit: "cm³/mol", Deviations: excess, Claim: 0.005, Remark: "0.005 is 0.02 % of the volume"},
		{Quantity: "partial molar excess volume of ethanol", Why: "none: one published number, and a slope of the density that nothing here uses", Source: marsh + ": -5.23 at every temperature", Range: "mole fraction 0.038, 5-65 °C", Unit: "cm³/mol", Deviations: partial, Remark: "mean " + signedFigures(partial.Mean())},
		{Quantity: "mass fraction from % vol and back", Why: "arithmetic: it is solved to this", Source: "itself", Range: "0.1-99.9 % by mass", Unit: "mass fraction", Deviations: back, Claim: 1e-9},
	}
	return s
}

// excessVolume is that of mixing, in cm3/mol.
func excessVolume(x, tempC float64) float64 {
	mixture := fluid.MolarMass(x) / fluid.Density(fluid.MassFrac(x), tempC)
	pure := x*fluid.MolarMassEthanol/fluid.Density(1, tempC) + (1-x)*fluid.MolarMassWater/fluid.Density(0, tempC)
	return 1e6 * (mixture - pure)
}

func equilibrium(m *measurer) Section {
	s := Section{Title: "Equilibrium of ethanol and water",
		Text: "NRTL with the vapour pressures of Wagner and of IAPWS, ideal vapour (package fluid), claimed from 50 to 110 kPa. Errors in y are of the vapour's mole fraction. Against either set the model has in the mean too much ethanol in the vapour. In weak liquid the sources part: at a mole fraction of 0.02 Carey and Lewis lie below the model, Kirschbaum above. What either would make of a run stands under Bands."}
	for _, set := range []struct {
		source, file, span string
		low, high          float64 // kPa
		tClaim, yClaim     float64
		why, remark        string
	}{
		{"Carey and Lewis, Ind. Eng. Chem. 24 (1932) 882", "vle_ethanol_water_carey_lewis_1932.csv", "x 0.019-0.894, 101.3 kPa", 100, 110, 0.9, 0.015, "approximation: one set of constants and an ideal vapour, for two sets of measurements; the largest seen, rounded up", ""},
		{"Kirschbaum (1939)", "vle_ethanol_water_kirschbaum_1939.csv", "x 0.006-0.8, 98.7 kPa", 90, 110, 0.9, 0.015, "approximation: one set of constants and an ideal vapour, for two sets of measurements; the largest seen, rounded up", ""},
		{"Kirschbaum (1939)", "vle_ethanol_water_kirschbaum_1939.csv", "33.3 kPa: below the range claimed", 0, 90, 0, 0, "none: below the pressures claimed", "points at one x differ among themselves by 0.02"},
	} {
		in := func(l line) (x, pa float64, counts bool) {
			kPa := l.num("P_kPa")
			return l.num("x_ethanol"), 1000 * kPa, kPa > set.low && kPa < set.high
		}
		y := m.table("fluid/"+set.file, func(l line) (float64, float64, bool) {
			x, pa, counts := in(l)
			_, y := fluid.BubblePointC(x, pa)
			return y, l.num("y_ethanol"), counts
		})
		t := m.table("fluid/"+set.file, func(l line) (float64, float64, bool) {
			x, pa, counts := in(l)
			t, _ := fluid.BubblePointC(x, pa)
			return t, l.num("T_K") - fluid.KelvinOffset, counts
		})
		s.Rows = append(s.Rows,
			Row{Quantity: "vapour", Why: set.why, Source: set.source, Range: set.span, Unit: "y", Deviations: y, Claim: set.yClaim, Remark: joined("mean "+signedFigures(y.Mean()), set.remark)},
			Row{Quantity: "boiling point", Why: set.why, Source: set.source, Range: set.span, Unit: "°C", Deviations: t, Claim: set.tClaim, Remark: "mean " + signedFigures(t.Mean())})
	}
	partial := func(l line) (p1, p2 float64) {
		x := l.num("x_ethanol")
		g1, g2 := fluid.ActivityCoefficients(x, 30)
		return x * g1 * fluid.VapourPressureEthanolPa(30), (1 - x) * g2 * fluid.VapourPressureWaterPa(30)
	}
	const pemberton = "fluid/vle_ethanol_water_pemberton_mash_1978.csv"
	pressure := m.table(pemberton, func(l line) (float64, float64, bool) {
		p1, p2 := partial(l)
		got, want := percent(p1+p2, 1000*l.num("P_kPa"))
		return got, want, true
	})
	vapour := m.table(pemberton, func(l line) (float64, float64, bool) {
		p1, p2 := partial(l)
		return p1 / (p1 + p2), l.num("y_ethanol"), true
	})
	azX, azT := fluid.Azeotrope(fluid.StandardPressurePa)
	water := m.table("oracle/water.csv", func(l line) (float64, float64, bool) {
		got, want := percent(fluid.VapourPressureWaterPa(l.num("T_C")), l.num("psat_Pa"))
		return got, want, true
	})
	const pm = "Pemberton and Mash, J. Chem. Thermodyn. 10 (1978) 867"
	s.Rows = append(s.Rows,
		Row{Quantity: "pressure", Why: "none: far below the pressures claimed", Source: pm, Range: "30 °C: far below the range claimed", Unit: "%", Deviations: pressure, Remark: "the data are good to 0.1 %"},
		Row{Quantity: "vapour", Why: "none: far below the pressures claimed", Source: pm, Range: "30 °C", Unit: "y", Deviations: vapour},
		Row{Quantity: "azeotrope", Why: "print rounding is 0.0005; the rest is approximation", Source: "Carey and Lewis (1932): 0.894", Range: "101.3 kPa", Unit: "x", Deviations: points([2]float64{azX, 0.894}), Claim: 0.002},
		Row{Quantity: "azeotrope", Why: "print rounding is 0.005; the rest is approximation", Source: "Carey and Lewis (1932): 78.15 °C", Range: "101.3 kPa", Unit: "°C", Deviations: points([2]float64{azT, 78.15}), Claim: 0.05},
		Row{Quantity: "vapour pressure of water", Why: "approximation: a short formula for the full equation", Source: "IAPWS-95 by python3-iapws", Range: "1-120 °C", Unit: "%", Deviations: water, Claim: 0.02})
	return s
}

// slope is the heat capacity that Larkin's heat of mixing gives: that of
// LiquidEnthalpy.
func slope(w, t float64) float64 {
	const h = 0.01
	return (fluid.LiquidEnthalpy(w, t+h) - fluid.LiquidEnthalpy(w, t-h)) / (2 * h)
}

func heat(m *measurer) Section {
	s := Section{Title: "Heat",
		Text: "Heat capacity is Perry's table, interpolated, from 3 to 41 °C; hot it is the slope of Larkin's heat of mixing. The two sources part in weak spirit, and that is the uncertainty: it moves the heat of a run by up to 3 %."}
	var perry, cold, warm published.Deviations
	for _, c := range []struct {
		column string
		tempC  float64
	}{{"t3C", 3}, {"t23C", 23}, {"t41C", 41}} {
		perry = perry.With(m.table("fluid/cp_ethanol_water_perry.csv", func(l line) (float64, float64, bool) {
			got, want := percent(fluid.HeatCapacity(fluid.MassFrac(l.num("mol_pct_ethanol")/100), c.tempC), l.num(c.column)*4184)
			return got, want, true
		}))
	}
	for w := 0; w <= 50; w++ {
		for t := 4; t < 70; t++ {
			got, want := percent(fluid.HeatCapacity(float64(w)/50, float64(t)), slope(float64(w)/50, float64(t)))
			if t < 41 {
				cold.Add(got, want)
			} else {
				warm.Add(got, want)
			}
		}
	}
	steam := func(column string, high float64, f func(t float64) float64) published.Deviations {
		return m.table("oracle/water.csv", func(l line) (float64, float64, bool) {
			t := l.num("T_C")
			got, want := percent(f(t), l.num(column))
			return got, want, t <= high
		})
	}
	malt := m.table("fluid/malt_specific_heat_slaking.csv", func(l line) (float64, float64, bool) {
		got, want := percent(fluid.GrainHeatCapacity(l.num("moisture_pct")/100), l.num("specific_heat")*4186.8)
		return got, want, true
	})
	slaking := m.table("fluid/malt_specific_heat_slaking.csv", func(l line) (float64, float64, bool) {
		return fluid.SlakingHeat(l.num("moisture_pct")/100) / (4186.8 * (l.num("specific_heat") + 2.68)), l.num("slaking_F") / 1.8, true
	})
	from, to := m.must(fluid.MassFracFromABV(0.625)), m.must(fluid.MassFracFromABV(0.40))
	r, err := fluid.Reduce(fluid.Lot{MassKg: 100, EthanolMassFrac: from, TempC: 25}, to, 25)
	if err != nil {
		m.fail(err)
	}
	s.Rows = []Row{
		{Quantity: "heat capacity", Why: "arithmetic: the table gives itself back", Source: "Perry's, 7th ed., p. 2-184", Range: "0-100 % by mole, 3, 23, 41 °C", Unit: "%", Deviations: perry, Claim: 0.01, Remark: "the table itself, interpolated: no test of it"},
		{Quantity: "heat capacity", Why: "two sources disagree: the largest seen, rounded up", Source: "slope of Larkin, J. Chem. Thermodyn. 7 (1975) 137", Range: "4-40 °C", Unit: "%", Deviations: cold, Claim: 8, Remark: "two sources that disagree"},
		{Quantity: "heat capacity", Why: "two sources disagree, and this leads from one to the other: the largest seen, rounded up", Source: "slope of Larkin (1975)", Range: "41-69 °C", Unit: "%", Deviations: warm, Claim: 5, Remark: "Larkin's own slope from 70 °C"},
		{Quantity: "rise on reduction", Why: "rounding: 4.9 is computed to 0.1", Source: "Larkin (1975), 62.5 to 40 % vol, computed apart", Range: "25 °C", Unit: "°C", Deviations: points([2]float64{r.Result.RiseC, 4.9}), Claim: 0.1},
		{Quantity: "heat capacity of water", Why: "approximation: a short formula for the full equation", Source: "IAPWS-95 by python3-iapws", Range: "1-110 °C", Unit: "%", Deviations: steam("cp_J_kgK", 110, fluid.WaterHeatCapacity), Claim: 0.02},
		{Quantity: "heat capacity of water", Why: "none: the release ends at 110 °C", Source: "IAPWS-95 by python3-iapws", Range: "1-120 °C", Unit: "%", Deviations: steam("cp_J_kgK", 120, fluid.WaterHeatCapacity), Remark: "the release ends at 110 °C"},
		{Quantity: "latent heat of water", Why: "approximation: a short formula for the full equation", Source: "IAPWS-95 by python3-iapws", Range: "1-120 °C", Unit: "%", Deviations: steam("latent_J_kg", 120, fluid.LatentHeatWater), Claim: 0.02},
		{Quantity: "enthalpy of steam", Why: "approximation: a short formula for the full equation", Source: "IAPWS-95 by python3-iapws", Range: "1-120 °C", Unit: "%", Deviations: steam("h_vap_J_kg", 120, fluid.SteamEnthalpy), Claim: 0.02},
		{Quantity: "latent heat of ethanol", Why: "print rounding: half of 1", Source: "Perry's, 8th ed., Table 2-150: 845 kJ/kg", Range: "78.29 °C", Unit: "kJ/kg", Deviations: points([2]float64{fluid.LatentHeatEthanol(78.29) / 1000, 845}), Claim: 0.5},
		{Quantity: "heat capacity of malt", Why: "arithmetic: the table gives itself back", Source: "Pauls and Whites Brewing Room Book 1984/85", Range: "0-8 % moisture", Unit: "%", Deviations: malt, Claim: 0.01, Remark: "the table itself"},
		{Quantity: "slaking of malt", Why: "arithmetic: the table gives itself back", Source: "Pauls and Whites Brewing Room Book 1984/85", Range: "0-8 % moisture", Unit: "°C", Deviations: slaking, Claim: 0.01, Remark: "the table itself"},
	}
	return s
}

func sugar(m *measurer) Section {
	s := Section{Title: "Sugar, wort and beer",
		Text: "At 20 °C to 30 % the table of NBS Circular 440; above, and with temperature, ICUMSA's formula. Extract counts as sucrose, what a ferment makes besides alcohol as glycerol and acids."}
	nbs := m.table("fluid/sucrose_sg_nbs440_t114_0to30.csv", func(l line) (float64, float64, bool) {
		return fluid.SGAirFromPlato(l.num("brix_wt_pct") / 100), l.num("sg20_20_air"), true
	})
	cubic := grid(0, 0.40, 400, func(p float64) (float64, float64) {
		sg := fluid.SGAirFromPlato(p)
		return 100 * p, ((182.46007*sg-775.68212)*sg+1262.7794)*sg - 669.56218
	})
	var model, rule, tabarie published.Deviations
	for _, c := range []struct{ original, alcohol, real, apparent float64 }{
		{14.08, 4.72, 5.28, 3.11}, {14.54, 5.14, 4.88, 2.53}, {17.67, 6.56, 5.38, 2.45},
		{11.34, 3.82, 3.80, 2.01}, {12.75, 4.21, 4.74, 2.79},
	} {
		model.Add(100*m.must(fluid.PlatoFromSG(fluid.SG(fluid.WortDensity(c.alcohol/100, c.real/100, 20)))), c.apparent)
		rule.Add(100*balling.ApparentExtract(c.original/100, c.real/100), c.apparent)
	}
	for e := 0.0; e <= 0.1801; e += 0.005 {
		for x := 0.0; x <= 0.0501; x += 0.005 {
			beer := fluid.WortDensity(e, x, 20)
			alcohol := madeUp(e*beer, func(w float64) float64 { return fluid.Density(w, 20) })
			extract := madeUp(x*beer, func(w float64) float64 { return fluid.SolutionDensity(w, 20) })
			tabarie.Add(fluid.SG(beer), fluid.SG(alcohol)+fluid.SG(extract)-1)
		}
	}
	byproducts := m.table("fluid/crc_byproducts_20C.csv", func(l line) (float64, float64, bool) {
		w := l.num("wt_pct") / 100
		return 1 / fluid.WashVolumeM3(1-w, 0, 0, w, 20), 1000 * l.num("density_g_cm3"), l.num("wt_pct") <= 2
	})
	asSugar := m.table("fluid/crc_byproducts_20C.csv", func(l line) (float64, float64, bool) {
		return fluid.SolutionDensity(l.num("wt_pct")/100, 20), 1000 * l.num("density_g_cm3"), l.num("wt_pct") <= 2
	})
	const cutaia = "Cutaia, Reid and Speers, J. Inst. Brew. 115 (2009) 318, Table III"
	const crc = "CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions"
	s.Rows = []Row{
		{Quantity: "specific gravity", Why: "arithmetic: the table gives itself back", Source: "NBS Circular 440 (1942), Table 114", Range: "0-30 %", Unit: "SG", Deviations: nbs, Claim: 1e-6, Remark: "the table itself"},
		{Quantity: "extract from gravity", Why: "approximation: the cubic is 0.005 off its own table; the largest seen, rounded up", Source: "the cubic in use for NBS 440", Range: "0-40 %", Unit: "Plato", Deviations: cubic, Claim: 0.008, Remark: "the cubic is 0.005 off its own table"},
		{Quantity: "apparent extract of beer", Why: "scatter of the measurements, means of brews: the largest seen, rounded up", Source: cutaia, Range: "11-18 Plato, means of 532 brews", Unit: "Plato", Deviations: model, Claim: 0.03},
		{Quantity: "the same by Balling's 0.1808/0.8192", Why: "none: the convention is not the model", Source: cutaia, Range: "as above", Unit: "Plato", Deviations: rule, Remark: "the convention, for comparison"},
		{Quantity: "gravity of beer", Why: "approximation: the largest seen, rounded up", Source: "Tabarié's relation, as Hackbarth, J. ASBC 69 (2011) 39 finds it right", Range: "0-18 % ethanol, 0-5 % extract", Unit: "SG", Deviations: tabarie, Claim: 0.0001},
		{Quantity: "density with glycerol or lactic acid", Why: "approximation: one volume for all by-products; the largest seen, rounded up", Source: crc, Range: "0.5-2 %, 20 °C", Unit: "kg/m³", Deviations: byproducts, Claim: 0.4, Remark: "one volume for all by-products"},
		{Quantity: "the same, counted as sugar", Why: "none: the model does not do so", Source: crc, Range: "as above", Unit: "kg/m³", Deviations: asSugar, Remark: "why they are not: for comparison"},
	}
	return s
}

// madeUp is the density of water with kgPerM3 of one solute.
func madeUp(kgPerM3 float64, density func(massFrac float64) float64) float64 {
	rho := 1000.0
	for range 50 {
		rho = density(kgPerM3 / rho)
	}
	return rho
}

func signedFigures(v float64) string {
	if v > 0 && math.Abs(v) >= 1e-6 {
		return "+" + figures(v)
	}
	return figures(v)
}

func joined(a, b string) string {
	if b == "" {
		return a
	}
	return a + "; " + b
}
