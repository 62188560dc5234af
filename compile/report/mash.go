package report

import (
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// mashPart is the mash as the plan shows it.
func mashPart(b *recipe.Batch, r mash.Result) plan.Mash {

	m := plan.Mash{
		OriginalGravitySG: r.OriginalSG, HydrometerSG: r.HydrometerSG, PH: r.PH,
		VolumeL: r.Out.VolumeM3() * lot.LitresPerM3, MostVolumeL: r.MostVolumeM3 * lot.LitresPerM3,
		LiquorGristLPerKg: r.LiquorGristLPerKg,
		GelatinizedPct:    100 * r.Gelatinized, ConversionPct: 100 * r.Conversion, FermentablePct: 100 * r.FermentableShare,
		ExtractKg: r.ExtractKg, TheoryExtractKg: r.TheoryExtractKg,
		Lautered: r.Lautered, DraffKg: r.Draff.MassKg(), Hours: r.DurationS / lot.SecondsPerHour, BoilC: r.BoilC,
		KeptL: r.Kept.VolumeM3 * lot.LitresPerM3, KeptSG: keptSG(r),
		AcidKg: r.AcidKg, AcidMEq: r.AcidMEq, SaltsMEq: r.SaltsMEq,
		HeatKWh: r.HeatJ / lot.JoulesPerKWh, CoolKWh: r.CoolJ / lot.JoulesPerKWh,
		CoolingWaterL: r.CoolingWaterM3 * lot.LitresPerM3, SteamCondensateL: r.SteamKg / fluid.WaterDensity(lot.ReferenceC) * lot.LitresPerM3,
	}
	if plato, err := fluid.PlatoFromSG(r.HydrometerSG); err == nil {
		m.Plato = 100 * plato
	}
	m.Steps = make([]plan.MashStep, 0, len(b.Mash.Steps))
	for i, s := range b.Mash.Steps {
		switch s.Verb {
		case recipe.MashBackset:
			m.BacksetL += s.VolumeM3 * lot.LitresPerM3
			m.LiquorL += s.VolumeM3 * lot.LitresPerM3
		case recipe.MashWater, recipe.MashSparge:
			m.LiquorL += s.VolumeM3 * lot.LitresPerM3
			m.KeptInL += s.KeptM3 * lot.LitresPerM3
		}
		if i >= len(r.Steps) {
			continue
		}
		st := r.Steps[i]
		m.Steps = append(m.Steps, plan.MashStep{
			ID: plan.MashStepID(i), Verb: s.Verb.Word(), Adds: adds(b, s), StartMin: st.StartS / 60, Minutes: (st.EndS - st.StartS) / 60, FromC: st.StartC, ToC: st.EndC,
			VolumeL: st.VolumeM3 * lot.LitresPerM3, HeatKWh: st.HeatJ / lot.JoulesPerKWh, CoolKWh: st.CoolJ / lot.JoulesPerKWh, Limit: st.Limit,
			GravitySG: st.SG, GelatinizedPct: 100 * st.GelatinizedShare, ConvertedPct: 100 * st.ConvertedShare,
			AlphaLeftPct: 100 * st.AlphaLeft, BetaLeftPct: 100 * st.BetaLeft, AddedLeftPct: 100 * st.AddedLeft,
		})
	}
	if m.LiquorL > 0 {
		m.BacksetPct = 100 * m.BacksetL / m.LiquorL
	}
	m.Windows = windows(b, r)
	m.Curve = make([]plan.MashPoint, 0, len(r.Curve))
	for _, p := range r.Curve {
		m.Curve = append(m.Curve, plan.MashPoint{
			Min: p.TimeS / 60, TempC: p.TempC, GelatinizedPct: 100 * p.GelatinizedShare, ConvertedPct: 100 * p.ConvertedShare,
			AlphaLeftPct: 100 * p.AlphaLeft, BetaLeftPct: 100 * p.BetaLeft, AddedLeftPct: 100 * p.AddedLeft,
		})
	}
	return m
}

// keptSG is the gravity of what is kept for the next mash; 0 if nothing is.
func keptSG(r mash.Result) float64 {
	if r.Kept.VolumeM3 == 0 {
		return 0
	}
	return r.Kept.Stream.SG()
}

// maltWindows are where a malt's own enzymes work. Beta-amylase from 55 to 65 C
// and half gone in 10 min at 65 (Muller 1991), alpha-amylase from 65 to 75 and
// gone above 80: common practice. They guide the
// reader only: the model computes with rates (package starch).
var maltWindows = []plan.EnzymeWindow{
	{Name: "beta-amylase", Malt: true, LowC: 55, HighC: 65, GoneC: 68},
	{Name: "alpha-amylase", Malt: true, LowC: 65, HighC: 75, GoneC: 80},
}

// windows are those of the enzymes in the mash, in the order in which they go
// in: those dosed, and the malt's own with the first malt.
func windows(b *recipe.Batch, r mash.Result) []plan.EnzymeWindow {
	out := []plan.EnzymeWindow{}
	seen, malted := map[string]bool{}, false
	for i, s := range b.Mash.Steps {
		if i >= len(r.Steps) {
			break
		}
		from := r.Steps[i].StartS / lot.SecondsPerMin
		switch e := s.Enzyme; {
		case s.Verb == recipe.MashAdd && !malted && hasEnzymes(b, s):
			malted = true
			for _, w := range maltWindows {
				w.FromMin = from
				out = append(out, w)
			}
		case s.Verb == recipe.MashDose && e != nil && !seen[e.Name] && e.HighC > e.LowC:
			seen[e.Name] = true
			out = append(out, plan.EnzymeWindow{Name: e.Name, FromMin: from, LowC: e.LowC, HighC: e.HighC, GoneC: e.MostC})
		}
	}
	return out
}

// hasEnzymes reports whether a step adds grain with enzymes of its own.
func hasEnzymes(b *recipe.Batch, s recipe.MashStep) bool {
	for _, l := range s.Grains {
		if b.Bill.Lines[l].Grain.AlphaDU > 0 {
			return true
		}
	}
	return false
}

// adds names what a step of the mash puts in.
func adds(b *recipe.Batch, s recipe.MashStep) []string {
	switch s.Verb {
	case recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
		return []string{s.Verb.Word()}
	case recipe.MashDose:
		return []string{s.Enzyme.Name}
	case recipe.MashAdd:
		var out []string
		for _, l := range s.Grains {
			out = append(out, b.Bill.Lines[l].Grain.Name)
		}
		return out
	}
	return nil
}
