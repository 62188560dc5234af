package render

import (
	"fmt"
	"strings"

	"newmake/compile/plan"
)

// The columns of a prediction: its name, its value, and what it means.
const (
	valueCol = 28
	noteCol  = 47
)

// fact writes one prediction.
func (t *text) fact(name, value, note string) {
	head := fill("  "+name, valueCol) + value
	if note == "" {
		t.line(cut(head, pageWidth))
		return
	}
	if width(head) >= noteCol {
		t.line(cut(head, pageWidth))
		head = ""
	}
	t.item(head, noteCol, note)
}

func pct(x float64, places int) string { return number(x, places) + " %" }

// fraction finds a fraction of the spirit run by name.
func (t *text) fraction(name string) plan.Fraction { return find(t.p.Spirit, name) }

func find(r plan.Run, name string) plan.Fraction {
	for _, f := range r.Fractions {
		if f.Name == name {
			return f
		}
	}
	return plan.Fraction{Name: name}
}

// vesselOf is the vessel of a use, for the headings.
func (t *text) vesselOf(use string) plan.Vessel {
	for _, v := range t.p.House.Vessels {
		if v.Use == use {
			return v
		}
	}
	return plan.Vessel{}
}

func (t *text) stage(title, use string) {
	v := t.vesselOf(use)
	if v.Name == "" {
		t.heading(title)
		return
	}
	t.heading(fmt.Sprintf("%s  %s, holds %s", title, safe(v.Name), t.litres(v.HoldsL)))
}

func (t *text) full(use string) {
	if v := t.vesselOf(use); v.MostL > 0 {
		t.fact("fullest", t.litres(v.MostL), pct(v.FillPct, 0)+" of the vessel")
	}
}

func (t *text) mash() {
	m := t.p.Mash
	t.stage("MASH", "mash")
	t.fact("original gravity", gravity(m.OriginalGravitySG), "from the grain alone")
	if m.BacksetL > 0 {
		t.fact("hydrometer will read", gravity(m.HydrometerSG), "with the backset's solids; "+number(m.Plato, 1)+" plato")
	} else {
		t.fact("", number(m.Plato, 1)+" plato", "")
	}
	t.fact("starch gelatinized", pct(m.GelatinizedPct, 1), "")
	t.fact("starch converted", pct(m.ConversionPct, 1), "to sugars and dextrins in the mash")
	t.fact("fermentable", pct(m.FermentablePct, 1), "of the extract, before the fermenter")
	t.fact("extract", t.Units.mass(m.ExtractKg), "of "+t.Units.mass(m.TheoryExtractKg)+" in the grain")
	t.fact("pH", number(m.PH, 2), "")
	if t.Units == US {
		t.fact("liquor to grist", number(m.LiquorGristLPerKg*kgPerPound/litrePerGallon*56, 1)+" gal/bu", "a distiller's bushel, 56 lb; "+number(m.LiquorGristLPerKg, 2)+" L/kg")
	} else {
		t.fact("liquor to grist", number(m.LiquorGristLPerKg, 2)+" L/kg", "")
	}
	t.full("mash")
	if m.Lautered {
		t.fact("draff", t.Units.mass(m.DraffKg), "wet, left in the tun")
	}
	t.fact("to the fermenter", t.litres(m.VolumeL), "")
	t.fact("time in the cooker", duration(m.Hours*60), "")
	t.fact("heat, cooling", number(m.HeatKWh, 0)+" kWh, "+number(m.CoolKWh, 0)+" kWh", "cooling water "+t.litres(m.CoolingWaterL))
}

func (t *text) ferment() {
	f := t.p.Ferment
	t.stage("FERMENT", "ferment")
	t.fact("pitch", t.Units.mass(f.PitchKg), fmt.Sprintf("%s, %s g/L, at %s", safe(f.Yeast), number(f.PitchGPerL, 2), t.temp(f.PitchC)))
	if f.DryHours > 0 {
		t.fact("dry after", number(f.DryHours, 0)+" h", "of "+number(f.Hours, 0)+" h; good to about a quarter")
	} else {
		t.fact("dry after", "not in "+number(f.Hours, 0)+" h", t.Units.mass(f.SugarLeftKg)+" of sugar left")
	}
	t.fact("final gravity", gravity(f.FinalGravitySG), pct(f.AttenuationPct, 0)+" apparent attenuation")
	t.fact("wash", t.litres(f.WashVolumeL), "at "+t.abv(f.AbvPct)+"; "+number(f.PureL, 1)+" L of pure alcohol")
	t.fact("warmest", t.temp(f.PeakC), fmt.Sprintf("after %s h; heat %s kW at its greatest", number(f.PeakHours, 0), number(f.PeakHeatKW, 1)))
	if f.SourHours > 0 {
		t.fact("pH at the end", number(f.PH, 2), "souring sets in after "+number(f.SourHours, 0)+" h")
	} else {
		t.fact("pH at the end", number(f.PH, 2), "")
	}
	t.full("ferment")
	t.fact("carbon dioxide", t.Units.mass(f.CO2Kg), t.quantity(plan.Of(f.CO2M3, plan.CubicMetre))+" of gas: keep the room aired")
}

func (t *text) strip() {
	r := t.p.Strip
	t.stage("STRIP", "strip")
	t.charge(r)
	lw := find(r, "low wines")
	t.fact("low wines", t.volume(lw.Lot), "at "+t.strength(lw.Strength()))
	t.fact("stop", "at "+t.abv(lw.Ends.AbvPct), "at the spout")
	t.still(r)
	t.fact("pot ale", t.litres(r.Residue.VolumeL), "at "+t.abv(r.Residue.AbvPct)+"; backset is drawn from it")
}

func (t *text) charge(r plan.Run) {
	note := "at " + t.abv(r.Charge.AbvPct) + "; " + pct(r.MostFillPct, 0) + " of the still when hot"
	if r.Charges > 1 {
		note = fmt.Sprintf("each of %d, %s", r.Charges, note)
	}
	t.fact("charge", t.volume(r.Charge), note)
}

func (t *text) still(r plan.Run) {
	t.fact("first drop after", duration(r.HeatUpMin), "")
	each := ""
	if r.Charges > 1 {
		each = fmt.Sprintf("each charge; %s for all %d", duration(r.TotalHours*60), r.Charges)
	}
	t.fact("fire to stop", duration(r.Hours*60), each)
	t.fact("heat, cooling", number(r.HeatKWh, 0)+" kWh, "+number(r.CoolKWh, 0)+" kWh", "condenser water "+t.litres(r.CoolingWaterL))
}

func (t *text) spirit() {
	r := t.p.Spirit
	t.stage("SPIRIT", "spirit")
	t.charge(r)
	if f := r.FeintsReturned; f != nil {
		t.fact("of which feints", t.volume(*f), fmt.Sprintf("at %s, once the house runs steadily", t.strength(f.Strength())))
	}
	t.still(r)
	t.gap()
	tab := table{indent: 2, left: map[int]bool{5: true}}
	tab.row("fraction", "volume", "strength", "of the alcohol", "from the fire", "at the spout")
	for _, f := range r.Fractions {
		tab.row(f.Name, t.volume(f.Lot), t.strength(f.Strength()), pct(f.PureShare, 1),
			clockMinutes(f.StartMin)+" to "+clockMinutes(f.EndMin), t.spout(f))
	}
	tab.write(&t.page)
	if f := r.Feints; f != nil {
		t.para(2, 4, fmt.Sprintf("Feints (heads and tails) %s at %s go into the next charge.", t.volume(*f), t.strength(f.Strength())))
	}
	if f := t.p.First; f != nil {
		t.para(2, 4, fmt.Sprintf("The first batch, with no feints yet: %s of hearts at %s, %s proof gallons.",
			t.volume(f.Hearts), t.strength(f.Hearts.Strength()), number(f.Hearts.ProofGallons, 1)))
	}
}

// spout is the strengths at the spout between which a fraction ran.
func (t *text) spout(f plan.Fraction) string {
	if f.VolumeL == 0 {
		return ""
	}
	return number(f.Begins.AbvPct, 1) + " to " + number(f.Ends.AbvPct, 1) + " %"
}

// clockMinutes shows minutes from the fire as h:mm.
func clockMinutes(m float64) string {
	n := int(m + 0.5)
	return fmt.Sprintf("%d:%02d", n/60, n%60)
}

func (t *text) cask() {
	p := t.p
	if r := p.Reduction; r != nil {
		t.heading("REDUCTION")
		t.fact("hearts", t.volume(r.From), "at "+t.strength(r.From.Strength()))
		t.fact("water to add", t.litres(r.WaterL), t.Units.mass(r.WaterKg)+", to "+t.strength(r.To.Strength()))
		t.fact("gives", t.volume(r.To), t.litres(r.ContractionL)+" less than spirit and water; warms by "+strings.TrimSuffix(t.tempDiff(r.TempRiseC), " apart"))
	}
	c := p.Cask
	if c.SizeL == 0 {
		return
	}
	t.heading("CASK  " + t.caskWords())
	if c.Fill != nil {
		t.fact("filled", count(c.Casks, "cask"), fmt.Sprintf("each %s at %s, %s proof gallons", t.volume(*c.Fill), t.strength(c.Fill.Strength()), number(c.Fill.ProofGallons, 1)))
	} else {
		t.fact("filled", "none", "there is not enough for one")
	}
	t.fact("left over", t.volume(c.Leftover), fmt.Sprintf("at entry strength, %s of a cask", pct(c.LeftoverOf, 0)))
}

func (t *text) caskWords() string {
	c := t.p.Cask
	words := t.litres(c.SizeL)
	if c.New {
		words += " new "
	} else {
		words += " used "
	}
	words += safe(c.Kind)
	if c.Char > 0 {
		words += fmt.Sprintf(", char %d", c.Char)
	}
	return words
}

func (t *text) yield() {
	y, e := t.p.Yield, t.p.Energy
	t.heading("YIELD AND ENERGY")
	if t.Units == US {
		t.fact("hearts", number(y.HeartsPGPerBushel, 2)+" PG/bu", "proof gallons a distiller's bushel; in the wash "+number(y.WashPGPerBushel, 2))
	}
	t.fact("hearts", number(y.HeartsLPAPerTonne, 0)+" LPA/t", fmt.Sprintf("litres of pure alcohol a tonne; in the wash %s, %s of theory", number(y.WashLPAPerTonne, 0), pct(y.OfTheoryPct, 1)))
	t.fact("heat", number(e.HeatKWh, 0)+" kWh", number(e.KWhPerLPA, 1)+" kWh a litre of pure alcohol")
	t.fact("water", t.litres(e.WaterL), "cooling and process")
}

func (t *text) cost() {
	c := t.p.Cost
	if c == nil {
		return
	}
	t.heading("COST  by the house's own prices, " + safe(c.Currency))
	tab := table{indent: 2}
	for _, l := range c.Lines {
		tab.row(safe(l.What), t.quantity(l.Amount), number(l.Cost, 2))
	}
	tab.row("in all", "", number(c.Total, 2))
	tab.write(&t.page)
	t.para(2, 4, fmt.Sprintf("%s a proof gallon of hearts, %s a litre of pure alcohol.", number(c.PerPG, 2), number(c.PerLPA, 2)))
	if len(c.Unpriced) > 0 {
		t.para(2, 4, "No price is stated for: "+safe(strings.Join(c.Unpriced, ", "))+".")
	}
}
