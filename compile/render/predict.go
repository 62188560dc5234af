package render

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// The columns of a prediction: its name, its value, and what it means.
const (
	valueCol = 24
	noteCol  = 43
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

func pct(x float64, places int) string { return measure.Number(x, places) + " %" }

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
	t.heading(fmt.Sprintf("%s: %s, holds %s", title, safe(v.Name), t.Litres(v.HoldsL)))
}

func (t *text) full(use string) {
	if v := t.vesselOf(use); v.MostL > 0 {
		t.fact("fullest", t.Litres(v.MostL), pct(v.FillPct, 0)+" of the vessel")
	}
}

func (t *text) mash() {
	m := t.p.Mash
	t.stage("MASH", "mash")
	t.fact("original gravity", measure.Gravity(m.OriginalGravitySG), "from the grain alone")
	plato := measure.Number(m.Plato, 1) + " plato"
	if m.BacksetL > 0 {
		plato += ", with the backset's solids"
	}
	t.fact("hydrometer will read", measure.Gravity(m.HydrometerSG), plato)
	t.fact("starch gelatinized", pct(m.GelatinizedPct, 1), "")
	t.fact("starch converted", pct(m.ConversionPct, 1), "to sugars and dextrins in the mash")
	t.fact("fermentable", pct(m.FermentablePct, 1), "of the extract, before the fermenter")
	t.fact("extract", t.Mass(m.ExtractKg), "of "+t.Mass(m.TheoryExtractKg)+" in the grain")
	t.fact("pH", measure.Number(m.PH, 2), "")
	if t.Units == measure.US {
		t.fact("liquor to grist", t.LiquorToGrist(m.LiquorGristLPerKg), "a distiller's bushel, 56 lb; "+measure.SI.LiquorToGrist(m.LiquorGristLPerKg))
	} else {
		t.fact("liquor to grist", t.LiquorToGrist(m.LiquorGristLPerKg), "")
	}
	t.full("mash")
	if m.Lautered {
		t.fact("draff", t.Mass(m.DraffKg), "wet, left in the tun")
	}
	t.fact("to the fermenter", t.Litres(m.VolumeL), "")
	t.fact("time in the cooker", measure.Duration(m.Hours*60), "")
	t.fact("heat, cooling", measure.Number(m.HeatKWh, 0)+" kWh, "+measure.Number(m.CoolKWh, 0)+" kWh", "cooling water "+t.Litres(m.CoolingWaterL))
}

func (t *text) ferment() {
	f := t.p.Ferment
	t.stage("FERMENT", "ferment")
	t.fact("pitch", t.Mass(f.PitchKg), fmt.Sprintf("%s, %s g/L, at %s", safe(f.Yeast), measure.Number(f.PitchGPerL, 2), t.Temp(f.PitchC)))
	if f.DryHours > 0 {
		t.fact("dry after", measure.Number(f.DryHours, 0)+" h", "of "+measure.Number(f.Hours, 0)+" h; good to about a quarter")
	} else {
		t.fact("dry after", "not in "+measure.Number(f.Hours, 0)+" h", t.Mass(f.SugarLeftKg)+" of sugar left")
	}
	t.fact("final gravity", measure.Gravity(f.FinalGravitySG), pct(f.AttenuationPct, 0)+" apparent attenuation")
	t.fact("wash", t.Litres(f.WashVolumeL), "at "+t.Abv(f.AbvPct)+"; "+t.pure(plan.Lot{PureL: f.PureL, ProofGallons: f.ProofGallons}))
	t.fact("warmest", t.Temp(f.PeakC), fmt.Sprintf("after %s h; heat %s kW at its greatest", measure.Number(f.PeakHours, 0), measure.Number(f.PeakHeatKW, 1)))
	if f.SourHours > 0 {
		t.fact("pH at the end", measure.Number(f.PH, 2), "souring sets in after "+measure.Number(f.SourHours, 0)+" h")
	} else {
		t.fact("pH at the end", measure.Number(f.PH, 2), "")
	}
	t.full("ferment")
	t.fact("carbon dioxide", t.Mass(f.CO2Kg), t.Quantity(plan.Of(f.CO2M3, plan.CubicMetre))+" of gas: keep the room aired")
}

func (t *text) strip() {
	r := t.p.Strip
	t.stage("STRIP", "strip")
	t.charge(r, t.Litres(r.Charge.VolumeL))
	lw := find(r, "low wines")
	t.fact("low wines", t.Volume(lw.Lot), "at "+t.Strength(lw.Strength()))
	t.fact("stop", "at "+t.Abv(lw.Ends.AbvPct), "at the spout")
	t.still(r)
	t.fact("pot ale", t.Litres(r.Residue.VolumeL), "at "+t.Abv(r.Residue.AbvPct)+"; backset is drawn from it")
}

func (t *text) charge(r plan.Run, volume string) {
	note := "at " + t.LotAbv(r.Charge) + "; " + pct(r.MostFillPct, 0) + " of the still when hot"
	if r.Charges > 1 {
		note = fmt.Sprintf("each of %d, %s", r.Charges, note)
	}
	t.fact("charge", volume, note)
}

func (t *text) still(r plan.Run) {
	t.fact("first drop after", measure.Duration(r.HeatUpMin), "")
	each := ""
	if r.Charges > 1 {
		each = fmt.Sprintf("each charge; %s for all %d", measure.Duration(r.TotalHours*60), r.Charges)
	}
	t.fact("fire to stop", measure.Duration(r.Hours*60), each)
	t.fact("heat, cooling", measure.Number(r.HeatKWh, 0)+" kWh, "+measure.Number(r.CoolKWh, 0)+" kWh", "condenser water "+t.Litres(r.CoolingWaterL))
}

func (t *text) spirit() {
	r := t.p.Spirit
	t.stage("SPIRIT", "spirit")
	t.charge(r, t.Volume(r.Charge))
	if f := r.FeintsReturned; f != nil {
		t.fact("of which feints", t.Volume(*f), fmt.Sprintf("at %s, once the house runs steadily", t.Strength(f.Strength())))
	}
	t.still(r)
	t.gap()
	t.fractions(r)
	if f := r.Feints; f != nil {
		t.para(2, 4, fmt.Sprintf("Feints (heads and tails) %s at %s go into the next charge.", t.Volume(*f), t.Strength(f.Strength())))
	}
	if f := t.p.First; f != nil {
		t.para(2, 4, fmt.Sprintf("The first batch, with no feints yet: %s of hearts at %s, %s.",
			t.Volume(f.Hearts), t.Strength(f.Hearts.Strength()), t.pure(f.Hearts)))
	}
}

// fractions is the spirit run, cut by cut.
func (t *text) fractions(r plan.Run) {
	us := t.Units == measure.US
	tab := table{indent: 2}
	head := []string{"fraction", "volume", "% vol", "alcohol", "from the fire", "% vol at the spout"}
	if us {
		head = []string{"fraction", "volume", "proof", "alcohol", "from the fire", "% abv at the spout"}
	}
	tab.row(head...)
	for _, f := range r.Fractions {
		if f.VolumeL == 0 {
			tab.row(f.Name, "none")
			continue
		}
		row := []string{f.Name, t.Volume(f.Lot)}
		if us {
			row = append(row, measure.Number(f.Proof, 1))
		} else {
			row = append(row, measure.Number(f.AbvPct, 1))
		}
		tab.row(append(row, pct(f.PureShare, 1),
			clockMinutes(f.StartMin)+" to "+clockMinutes(f.EndMin),
			measure.Number(f.Begins.AbvPct, 1)+" to "+measure.Number(f.Ends.AbvPct, 1))...)
	}
	tab.write(&t.page)
	t.para(2, 4, "alcohol: share of the alcohol in the charge.")
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
		t.fact("hearts", t.Volume(r.From), "at "+t.Strength(r.From.Strength()))
		t.fact("water to add", t.Litres(r.WaterL), t.Mass(r.WaterKg)+", to "+t.Strength(r.To.Strength()))
		t.fact("gives", t.Volume(r.To), t.Litres(r.ContractionL)+" less than spirit and water; warms by "+t.TempDiff(r.TempRiseC))
	}
	c := p.Cask
	if c.SizeL == 0 {
		return
	}
	t.heading("CASK: " + t.caskWords())
	if c.Fill != nil {
		t.fact("filled", count(c.Casks, "cask"), fmt.Sprintf("each %s (at %s), %s, %s", t.Litres(c.Fill.VolumeL), t.Temp(20), t.Strength(c.Fill.Strength()), t.pure(*c.Fill)))
	} else {
		t.fact("filled", "none", "there is not enough for one")
	}
	t.fact("left over", t.Volume(c.Leftover), fmt.Sprintf("at entry strength, %s of a cask", pct(c.LeftoverOf, 0)))
}

func (t *text) caskWords() string {
	c := t.p.Cask
	words := t.Litres(c.SizeL)
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
	if t.Units == measure.US {
		t.fact("hearts by the bushel", measure.Number(y.HeartsPGPerBushel, 2)+" PG/bu", "proof gallons a distiller's bushel; in the wash "+measure.Number(y.WashPGPerBushel, 2))
	}
	t.fact("hearts by the tonne", measure.Number(y.HeartsLPAPerTonne, 0)+" LPA/t", fmt.Sprintf("litres of pure alcohol a tonne; in the wash %s, %s of theory", measure.Number(y.WashLPAPerTonne, 0), pct(y.OfTheoryPct, 1)))
	t.fact("heat", measure.Number(e.HeatKWh, 0)+" kWh", measure.Number(e.KWhPerLPA, 1)+" kWh a litre of pure alcohol")
	t.fact("water", t.Litres(e.WaterL), "cooling and process")
}

func (t *text) cost() {
	c := t.p.Cost
	if c == nil {
		return
	}
	t.heading("COST: by the house's own prices, " + safe(c.Currency))
	tab := table{indent: 2}
	for _, l := range c.Lines {
		tab.row(safe(l.What), t.Quantity(l.Amount), measure.Number(l.Cost, 2))
	}
	tab.row("in all", "", measure.Number(c.Total, 2))
	tab.write(&t.page)
	t.para(2, 4, fmt.Sprintf("%s a proof gallon of hearts, %s a litre of pure alcohol.", measure.Number(c.PerPG, 2), measure.Number(c.PerLPA, 2)))
	if len(c.Unpriced) > 0 {
		t.para(2, 4, "No price is stated for: "+safe(strings.Join(c.Unpriced, ", "))+".")
	}
}
