package text

import (
	"fmt"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// The columns of a prediction: its name, its value, and what it means.
const (
	valueCol = 24
	noteCol  = 43
)

// fact writes one prediction.
func (t *text) fact(name, value, note string) {
	head := columns.Fill("  "+name, valueCol) + value
	if note == "" {
		t.Line(columns.Cut(head, columns.Page))
		return
	}
	if columns.Width(head) >= noteCol {
		t.Line(columns.Cut(head, columns.Page))
		head = ""
	}
	t.Item(head, noteCol, note)
}

func pct(x float64, places int) string { return measure.Number(x, places) + " %" }

// fraction finds a fraction of the spirit run by name.
func (t *text) fraction(name string) plan.Fraction { return t.p.Spirit.Fraction(name) }

func (t *text) stage(title, use string) {
	v := t.p.VesselOf(use)
	if v.Name == "" {
		t.Heading(title)
		return
	}
	t.Heading(fmt.Sprintf("%s: %s, holds %s", title, diag.Safe(v.Name), t.Litres(v.HoldsL)))
}

func (t *text) full(use string) {
	if v := t.p.VesselOf(use); v.MostL > 0 {
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
		t.fact("mash water/grain", t.LiquorToGrist(m.LiquorGristLPerKg), "a distiller's bushel, 56 lb of any grain; "+measure.SI.LiquorToGrist(m.LiquorGristLPerKg))
	} else {
		t.fact("liquor to grist", t.LiquorToGrist(m.LiquorGristLPerKg), "")
	}
	if m.SteamCondensateL > 0 {
		t.fact("condensed steam", t.Litres(m.SteamCondensateL), "of the steam that is blown in: it thins the mash besides")
	}
	t.full("mash")
	if m.Lautered {
		t.fact(t.Words("draff"), t.Mass(m.DraffKg), "wet, left in the tun")
	}
	if m.KeptInL > 0 {
		t.fact("kept water in", t.Litres(m.KeptInL), "the last water of the mash before")
	}
	if m.KeptL > 0 {
		t.fact("kept for the next", t.Litres(m.KeptL), "at "+measure.Gravity(m.KeptSG))
	}
	t.fact("to the fermenter", t.Litres(m.VolumeL), "")
	t.fact("time in the cooker", measure.Duration(m.Hours*60), "")
	t.fact("heat, cooling", measure.Number(m.HeatKWh, 0)+" kWh, "+measure.Number(m.CoolKWh, 0)+" kWh", "cooling water "+t.Litres(m.CoolingWaterL))
}

func (t *text) ferment() {
	f := t.p.Ferment
	t.stage("FERMENT", "ferment")
	t.fact("pitch", t.Mass(f.PitchKg), fmt.Sprintf("%s, %s g/L, at %s", diag.Safe(f.Yeast), measure.Number(f.PitchGPerL, 2), t.Temp(f.PitchC)))
	if f.NutrientKg > 0 {
		t.fact("nutrient", t.Mass(f.NutrientKg), "diammonium phosphate; brings "+measure.Number(f.NutrientNMgL, 0)+" mg/L of nitrogen that yeast takes")
	}
	if f.DryHours > 0 {
		from := ""
		if f.AsItFills {
			from = ", from the full fermenter on"
		}
		t.fact("dry after", measure.Hours(f.DryHours), "of "+measure.Hours(f.Hours)+from+"; good to about a quarter")
	} else {
		t.fact("dry after", "not in "+measure.Hours(f.Hours), t.Mass(f.SugarLeftKg)+" of sugar left")
	}
	if f.Hours > f.AskedHours+0.1 {
		t.fact("in the fermenter", measure.Hours(f.Hours), measure.Hours(f.AskedHours)+" asked for; it stands, and goes on, until the still is charged")
	}
	attenuated := pct(f.AttenuationPct, 0) + " apparent attenuation"
	if m := t.p.Mash; m.BacksetL > 0 {
		t.fact("final gravity", measure.Gravity(f.FinalGravitySG), "as the hydrometer will read, with the backset's solids")
		t.fact("grain alone", measure.Gravity(f.FinalGrainSG), attenuated)
	} else {
		t.fact("final gravity", measure.Gravity(f.FinalGravitySG), attenuated)
	}
	solids := "grain"
	if t.p.Mash.Lautered {
		solids = "yeast"
	}
	whole, liquid := t.LotAbv(f.Wash), t.StrengthAbv(f.Liquid)
	if whole == liquid {
		t.fact("wash", t.Volume(f.Wash), "at "+whole+"; "+pure(t.Units, f.Wash))
	} else {
		t.fact("wash", t.Volume(f.Wash), "at "+whole+", "+solids+" in; "+pure(t.Units, f.Wash))
		t.fact("wash, strained", liquid, "as a laboratory finds it: "+solids+" takes room and holds no alcohol")
	}
	t.fact("warmest", t.Temp(f.PeakC), fmt.Sprintf("after %s; heat %s kW at its greatest", measure.Hours(f.PeakHours), measure.Number(f.PeakHeatKW, 1)))
	if f.LeavesHoldC != 0 {
		side := "above its hold"
		if f.LeavesHoldC < f.HoldLowC {
			side = "below its hold"
		}
		t.fact(side, t.Temp(f.LeavesHoldC), fmt.Sprintf("from %s on; it is to be held at %s to %s", measure.Hours(f.LeavesHoldH), t.Temp(f.HoldLowC), t.Temp(f.HoldHighC)))
	}
	if f.CoolingWaterL > 0 {
		t.fact("cooling", measure.Number(f.CoolKWh, 0)+" kWh", "cooling water "+t.Litres(f.CoolingWaterL))
	}
	if f.SourHours > 0 {
		t.fact("pH at the end", measure.Number(f.PH, 2), "souring sets in after "+measure.Hours(f.SourHours))
	} else {
		t.fact("pH at the end", measure.Number(f.PH, 2), "")
	}
	t.full("ferment")
	t.fact("carbon dioxide", t.Mass(f.CO2Kg), t.Quantity(plan.Of(f.CO2M3, plan.CubicMetre))+" of gas: keep the room aired")
}

func (t *text) strip() {
	r := t.p.Strip
	t.stage("STRIP", "strip")
	t.charge(r, t.Volume(r.Charge))
	lw := r.Fraction("low wines")
	t.fact("low wines", t.Volume(lw.Lot), "at "+t.Strength(lw.Strength()))
	t.fact("stop", "at "+t.StrengthAbv(lw.Ends), "at the spout")
	t.still(r)
	ale := "at " + t.LotAbv(r.Residue)
	if t.p.Mash.BacksetL > 0 {
		ale += "; backset is drawn from it"
	}
	t.fact(t.Words("pot ale"), t.Volume(r.Residue), ale)
}

func (t *text) charge(r plan.Run, volume string) {
	note := "at " + t.LotAbv(r.Charge) + "; " + pct(r.MostFillPct, 0) + " of the still when hot"
	if r.Charges > 1 {
		note = fmt.Sprintf("each of %d, %s", r.Charges, note)
	}
	t.fact("charge", volume, note)
}

func (t *text) still(r plan.Run) {
	if h := r.Preheat; h != nil {
		note := fmt.Sprintf("from %s by the "+t.Words("pot ale")+" of the charge before, which comes at %s and leaves at %s", t.Temp(h.FromC), t.Temp(h.PotAleC), t.Temp(h.LeavesC))
		if h.Charges < r.Charges {
			note += "; the first charge goes in cold"
		}
		t.fact("preheated", "to "+t.Temp(h.ToC), note)
		t.fact("saved by it", measure.Number(h.SavedKWh, 0)+" kWh", measure.Duration(h.SavedMin)+" sooner to the first drop, each charge")
	}
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
		whose := map[plan.FeintsFrom]string{plan.FeintsSteady: "once the house runs steadily", plan.FeintsOnHand: "as the house has them today"}
		t.fact("of which feints", t.Volume(*f), fmt.Sprintf("at %s, %s", t.Strength(f.Strength()), whose[r.FeintsFrom]))
	}
	if w := r.ChargeWater; w != nil {
		t.fact("of which water", t.Volume(*w), "brings it to its strength")
	}
	t.still(r)
	t.Gap()
	t.fractions(r)
	if f := r.Feints; f != nil {
		goes := "go into the next charge"
		if r.FeintsFrom == "" {
			goes = "are kept apart: none go into this charge"
		}
		t.Para(2, 4, fmt.Sprintf("Feints (heads and tails) %s at %s %s.", t.Volume(*f), t.Strength(f.Strength()), goes))
		if r.FeintsFrom == plan.FeintsSteady {
			t.Para(2, 4, t.Words(fmt.Sprintf("With feints returned, %s of the alcohol of the low wines comes out as hearts in the end; "+
				"the rest goes with the foreshots and stays in the lees. Where the cuts lie sets the strength of the hearts, their taste and the hours; "+
				"the foreshots and the stop set what is lost.", pct(r.HeartsOfLowWinesPct, 0))))
		}
	}
	if r.FeintsFrom == plan.FeintsSteady && r.Feints != nil {
		t.Para(2, 4, "Until the feints have settled, say what there is: `feints none yet` in a first batch, or `"+t.StatedFeints(*r.Feints)+"`.")
	}
}

// fractions is the spirit run, cut by cut.
func (t *text) fractions(r plan.Run) {
	us := t.Units == measure.US
	tab := columns.Table{}
	head := []string{"fraction", "volume", "% vol", "alcohol", "begins after", "takes", "spout, % vol"}
	if us {
		head = []string{"fraction", "volume", "proof", "alcohol", "begins after", "takes", "spout, % abv"}
	}
	tab.Row(head...)
	for _, f := range r.Fractions {
		if f.VolumeL == 0 {
			tab.Row(f.Name, "none")
			continue
		}
		row := []string{f.Name, t.Volume(f.Lot)}
		if us {
			row = append(row, measure.Number(f.Proof, 1))
		} else {
			row = append(row, measure.Number(f.AbvPct, 1))
		}
		tab.Row(append(row, pct(f.PureShare, 1),
			measure.Duration(f.StartMin), measure.Duration(f.EndMin-f.StartMin),
			spout(t.Units, f.Begins)+" to "+spout(t.Units, f.Ends))...)
	}
	tab.Write(&t.page)
	t.Para(2, 4, "alcohol: share of the alcohol in the charge. begins: after the fire is lit.")
}

// spout is a strength in % by volume, without the unit.
func spout(u measure.Units, s plan.Strength) string {
	number, _, _ := strings.Cut(u.StrengthAbv(s), " ")
	return number
}

func (t *text) yield() {
	y, e := t.p.Yield, t.p.Energy
	t.Heading("YIELD AND ENERGY")
	if t.Units == measure.US {
		t.fact("hearts by the bushel", measure.Number(y.HeartsPGPerBushel, 2)+" PG"+measure.PerBushel, "proof gallons a distiller's bushel, 56 lb of any grain; in the wash "+measure.Number(y.WashPGPerBushel, 2))
	}
	t.fact("hearts by the tonne", measure.Number(y.HeartsLPAPerTonne, 0)+" LPA/t", fmt.Sprintf("litres of pure alcohol a tonne; in the wash %s, %s of theory", measure.Number(y.WashLPAPerTonne, 0), pct(y.OfTheoryPct, 1)))
	t.fact("heat", measure.Number(e.HeatKWh, 0)+" kWh", measure.Number(e.KWhPerLPA, 1)+" kWh a litre of pure alcohol")
	t.fact("water", t.Litres(e.WaterL), "cooling and process")
	if r := t.p.Spirit; r.FeintsFrom == plan.FeintsOnHand && r.FeintsReturned != nil {
		t.Para(2, 4, "These hearts, by grain and by energy, count alcohol of other grain: the feints that the house had brought "+pure(t.Units, *r.FeintsReturned)+" into the charge.")
	}
}

func (t *text) cost() {
	c := t.p.Cost
	if c == nil {
		return
	}
	t.Heading("COST: by the house's own prices, " + diag.Safe(c.Currency))
	tab := columns.Table{}
	for _, l := range c.Lines {
		tab.Row(diag.Safe(l.What), t.Quantity(l.Amount), measure.Number(l.Cost, plan.MoneyPlaces(c.Currency)))
	}
	tab.Row("in all", "", measure.Number(c.Total, plan.MoneyPlaces(c.Currency)))
	tab.Write(&t.page)
	money := func(x float64) string { return measure.Number(x, plan.MoneyPlaces(c.Currency)) }
	hearts, each, spirit := measure.Number(t.fraction("hearts").PureL, 2)+" litres of pure alcohol in the hearts", c.PerLPA, c.SpiritPerLPA
	if t.Units == measure.US {
		hearts, each, spirit = measure.Number(t.fraction("hearts").ProofGallons, 2)+" proof gallons of hearts", c.PerPG, c.SpiritPerPG
	}
	said := money(c.Total) + " / " + hearts + " = " + money(each) + " each"
	if t.Units == measure.US {
		said += ", " + money(c.PerLPA) + " a litre of pure alcohol"
	}
	if spirit > 0 {
		said += "; " + money(spirit) + " without casks, as the books count a run"
	}
	t.Para(2, 4, said+". The feints count as nothing.")
	if c.PerBottle > 0 {
		said := measure.Number(c.PerBottle, plan.MoneyPlaces(c.Currency)) + " a bottle, without glass, label and excise"
		if c.EmptyBottle > 0 {
			said = money(c.PerBottle) + " a bottle, " + money(c.EmptyBottle) + " of it the bottle itself, without excise"
		}
		if c.Carrying > 0 {
			said += fmt.Sprintf("; %s of it all is what the money costs while it lies in wood", measure.Number(c.Carrying, plan.MoneyPlaces(c.Currency)))
		}
		t.Para(2, 4, said+".")
	}
	if len(c.Unpriced) > 0 {
		t.Para(2, 4, "No price is stated for, and counted as nothing: "+diag.Safe(strings.Join(c.Unpriced, ", "))+".")
	}
}
