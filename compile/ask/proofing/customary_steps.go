package proofing

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// reduce adds water to the lot in hand.
func (c *customary) reduce(s reduce) {
	to := c.proofGiven(s.To, " to reduce to")
	row, ok := c.weaker(s.To, to)
	if !ok {
		return
	}
	var gal, lb float64
	if c.weighed || c.blended {
		after := carry(c.pg / row.ProofGallonsPerPound)
		lb = carry(after - c.pounds)
		gal = carry(lb / fluid.WaterPoundsPerGallon)
		c.step("Water by weight", table4,
			fmt.Sprintf("%s PG / %s = %s lb after reduction", say(c.pg), num(row.ProofGallonsPerPound, 5), say(after)),
			fmt.Sprintf("%s - %s = %s lb of water", say(after), exact(c.pounds), say(lb)))
		c.step("Water by volume", section41, fmt.Sprintf("%s lb / 8.32823 lb = %s gal of water at 60 F", say(lb), say(gal)))
	} else {
		gal, lb = c.waterByVolume(c.Row, row, c.gallons)
	}
	after := carry(c.gallons * c.Proof / row.Proof)
	working := fmt.Sprintf("%s gal x %s / %s = %s gal at 60 F", exact(c.gallons), num(c.Proof, 1), num(row.Proof, 1), say(after))
	if c.blended { // its proof gallons are known better than the proof recorded
		after = carry(c.pg * 100 / row.Proof)
		working = fmt.Sprintf("%s PG x 100 / %s = %s gal at 60 F", say(c.pg), num(row.Proof, 1), say(after))
	}
	shrunk := carry(c.gallons + gal - after)
	c.step("Volume after", section51, working, contraction(c.gallons, gal, shrunk, "gal"))
	tempF := c.warming(c.usLot, gal, s.Water)

	c.Row, c.gallons, c.pounds, c.tempF = row, after, carry(c.pounds+lb), tempF
	c.result(TrueProof, "proof after reduction", c.Proof, 1, "proof")
	c.counted(Weight, "weight after", c.pounds, "lb")
	c.counted(Volume, "wine gallons after, at 60 F", after, "gal")
	c.shrinks(shrunk, "gal")
	c.counted(WaterWeight, "water to add, by weight", lb, "lb")
	c.result(WaterVolume, "water to add, at 60 F", gal, 2, "gal")
	c.note(shortOf)
}

const shortOf = "Add a little less water than this, stir, let it come to rest and cool, gauge again, and then make up the rest (common practice)."

// weaker is the row of the proof to reduce to, which must be below the lot's.
func (c *customary) weaker(v Value, to float64) (gauge.Row, bool) {
	if c.failed() {
		return gauge.Row{}, false
	}
	row, err := gauge.TableRow(to)
	switch {
	case err != nil || to < 0.1:
		c.fail(diag.CodeOutOfRange, v.Item.At, "a proof runs from 0.1 to 200", "%s proof cannot be reached", num(to, 1))
	case to == c.Proof:
		c.fail(diag.CodeOutOfRange, v.Item.At, "no water is wanted; to weaken it, ask for less", "the spirit is of %s proof already", num(c.Proof, 1))
	case to > c.Proof:
		c.fail(diag.CodeOutOfRange, v.Item.At, "water only weakens it; to make it stronger, blend it with stronger spirit",
			"spirit of %s proof cannot be reduced to %s", num(c.Proof, 1), num(to, 1))
	default:
		return row, true
	}
	return row, false
}

// waterByVolume is the water that brings gallons of one row down to another, by
// Table 6.
func (c *customary) waterByVolume(from, to gauge.Row, gallons float64) (gal, lb float64) {
	per100 := gauge.Places(from.AlcoholParts/to.AlcoholParts*to.WaterParts-from.WaterParts, 2)
	gal = carry(gallons / 100 * per100)
	lb = carry(gal * fluid.WaterPoundsPerGallon)
	source := table6
	if between(from.Proof)+between(to.Proof) != "" {
		source += ", between whole proofs"
	}
	c.step("Water by volume", source,
		fmt.Sprintf("%s proof: %s parts of alcohol, %s of water", num(from.Proof, 1), num(from.AlcoholParts, 2), num(from.WaterParts, 2)),
		fmt.Sprintf("%s proof: %s parts of alcohol, %s of water", num(to.Proof, 1), num(to.AlcoholParts, 2), num(to.WaterParts, 2)),
		fmt.Sprintf("%s / %s x %s - %s = %s gal of water to each 100 gal", num(from.AlcoholParts, 2), num(to.AlcoholParts, 2), num(to.WaterParts, 2), num(from.WaterParts, 2), num(per100, 2)),
		fmt.Sprintf("%s / 100 x %s = %s gal of water at 60 F", exact(gallons), num(per100, 2), say(gal)))
	c.step("Water by weight", section41, fmt.Sprintf("%s gal x 8.32823 lb = %s lb", say(gal), say(lb)))
	return gal, lb
}

// warming is the temperature of spirit and water once mixed.
func (c *customary) warming(u usLot, waterGal float64, water *Value) float64 {
	waterF := u.tempF
	if water != nil {
		waterF = gauge.Places(water.in("F"), 2)
	}
	a, errA := model(u)
	b, errB := gauge.FromVolume(waterGal*fluid.USGallonM3, 0, quantityC(waterF))
	mixed, err := gauge.Blend(a, b)
	if errA != nil || errB != nil || err != nil {
		return u.tempF
	}
	to, rise := quantity.TempC(mixed.TempC).F(), quantity.DeltaC(mixed.TempRiseC).F()
	c.warms(num(to, 0)+" F", num(rise, 1)+" F", fmt.Sprintf("spirit at %s F and water at %s F", exact(u.tempF), exact(waterF)))
	c.result(Rise, "rise by the heat of mixing", rise, 1, "delta_F")
	c.result(Temperature, "temperature when mixed", to, 0, "F")
	return gauge.Places(to, 1)
}

// warms shows the heat of mixing, which no gauging table has.
func (s *sheet) warms(to, rise, of string) {
	s.step("Warming", "Larkin 1975; not in the tables", fmt.Sprintf("%s come to %s, of which %s is the heat of mixing", of, to, rise))
}

func quantityC(f float64) float64 { return float64(quantity.TempFromF(f)) }

// model is a lot as the model counts it.
func model(u usLot) (gauge.Lot, error) {
	w, err := fluid.MassFracFromProof(u.Proof)
	if err != nil {
		return gauge.Lot{}, err
	}
	return gauge.FromWeight(u.pounds*fluid.PoundKg, w, quantityC(u.tempF))
}

// fill finds spirit and water for a cask, from the lot in hand or from as much
// as it takes.
func (c *customary) fill(s fill) {
	to := c.proofGiven(s.To, " in the cask")
	row := c.Row
	if to != c.Proof {
		var ok bool
		if row, ok = c.weaker(s.To, to); !ok {
			return
		}
	}
	holds := c.inUnit(s.Volume, "gal", " in the cask")
	if c.tempF != 60 {
		holds = c.volumeAt60(s.Volume, holds, row.Proof)
	}
	pg := carry(holds * row.Proof / 100)
	spirit := carry(pg * 100 / c.Proof)
	c.step("Spirit for the cask", section51,
		fmt.Sprintf("%s gal x %s / 100 = %s PG in the cask", exact(holds), num(row.Proof, 1), say(pg)),
		fmt.Sprintf("%s PG x 100 / %s = %s gal of spirit at 60 F", say(pg), num(c.Proof, 1), say(spirit)))
	if c.failed() || c.amount && !c.enough(s, spirit, holds) {
		return
	}
	pounds := carry(spirit * c.PoundsPerGallon)
	c.step("Weight of the spirit", table5+between(c.Proof), fmt.Sprintf("%s gal x %s lb = %s lb", say(spirit), num(c.PoundsPerGallon, 5), say(pounds)))
	var gal, lb float64
	used := usLot{Row: c.Row, tempF: c.tempF, gallons: spirit, pounds: pounds}
	if to != c.Proof {
		gal, lb = c.waterByVolume(c.Row, row, spirit)
		c.warming(used, gal, nil)
		c.note(shortOf)
	}
	c.filled(pg, spirit, pounds, gal, lb, row.Proof)
}

func (c *customary) volumeAt60(v Value, holds, proof float64) float64 {
	f, err := gauge.TableVolumeFactor(proof, c.tempF)
	if err != nil {
		c.outOfTable(v, err)
		return holds
	}
	at60 := carry(holds * f)
	c.step("The cask at 60 F", table7,
		fmt.Sprintf("factor for %s proof at %s F: %s", num(proof, 1), exact(c.tempF), num(f, 3)),
		fmt.Sprintf("%s gal x %s = %s gal at 60 F", exact(holds), num(f, 3), say(at60)))
	return at60
}

// enough reports whether the lot in hand fills the cask.
func (c *customary) enough(s fill, spirit, holds float64) bool {
	if spirit <= c.gallons {
		return true
	}
	c.fail(diag.CodeCaskNotFilled, s.Volume.Item.At, "fill a smaller cask, fill it weaker, or blend in more spirit",
		"the lot fills %s of the %s gal, at 60 F, that are to go into this cask: %s gal of spirit are short", num(c.gallons/spirit*holds, 1), num(holds, 1), num(spirit-c.gallons, 1))
	return false
}

// filled gives the results of a filling, and leaves what is left over in hand.
func (c *customary) filled(pg, spirit, pounds, gal, lb, proof float64) {
	c.result(TrueProof, "proof in the cask", proof, 1, "proof")
	c.counted(ProofGallons, "proof gallons in the cask", pg, "PG")
	c.counted(PureAlcohol, "pure alcohol in the cask", pg*litresPerPG, "L")
	if c.amount {
		left := carry(c.gallons - spirit)
		c.counted(LeftOver, "spirit left over, at 60 F", left, "gal")
		c.gallons, c.pounds, c.pg = left, carry(c.pounds-pounds), carry(c.pg-pg)
		c.drop(Volume, Weight)
	}
	c.counted(WaterWeight, "water, by weight", lb, "lb")
	c.counted(SpiritWeight, "spirit, by weight", pounds, "lb")
	c.result(WaterVolume, "water, at 60 F", gal, 2, "gal")
	c.result(SpiritVolume, "spirit, at 60 F", spirit, 2, "gal")
}

// blend puts another lot into the same vat. Proof is rounded when it is
// recorded and not before: a volume from the recorded proof would be off by up
// to 0.04 %, more than the contraction of lots that are nearly alike.
func (c *customary) blend(s blend) {
	a := c.usLot
	b := c.lot(s.With, ", second lot")
	if c.failed() {
		return
	}
	la, errA := model(a)
	lb, errB := model(b)
	mixed, err := gauge.Blend(la, lb)
	if errA != nil || errB != nil || err != nil {
		c.fail(diag.CodeOutOfRange, s.At, "give both lots temperatures between 18 and 100 F", "these lots cannot be blended")
		return
	}
	u := usLot{amount: true, blended: true, tempF: gauge.Places(quantity.TempC(mixed.TempC).F(), 1)}
	u.pounds, u.pg = carry(a.pounds+b.pounds), carry(a.pg+b.pg)
	if u.Row, err = gauge.TableRow(fluid.RoundProof(mixed.Proof)); err != nil {
		c.fail(diag.CodeOutOfRange, s.At, "a proof runs from 0 to 200", "%v", err)
		return
	}
	at, err := fluid.AtProof(mixed.Proof)
	if err != nil {
		c.fail(diag.CodeOutOfRange, s.At, "a proof runs from 0 to 200", "%v", err)
		return
	}
	perPound := gauge.Places(u.pg/u.pounds, 7)
	galPerPound := gauge.Places(at.GallonsPerPound, 7)
	u.gallons = carry(u.pounds * galPerPound)
	shrunk := carry(a.gallons + b.gallons - u.gallons)
	c.step("Proof of the blend", table4,
		fmt.Sprintf("%s PG + %s PG = %s PG", say(a.pg), say(b.pg), say(u.pg)),
		fmt.Sprintf("%s lb + %s lb = %s lb", say(a.pounds), say(b.pounds), say(u.pounds)),
		fmt.Sprintf("%s / %s = %s PG to the pound: %s proof, recorded as %s proof", say(u.pg), say(u.pounds), num(perPound, 7), num(mixed.Proof, 3), num(u.Proof, 1)))
	c.step("Volume of the blend", table4+", to more places",
		fmt.Sprintf("at %s proof a pound is %s gal at 60 F", num(mixed.Proof, 3), num(galPerPound, 7)),
		fmt.Sprintf("%s lb x %s = %s gal at 60 F", say(u.pounds), num(galPerPound, 7), say(u.gallons)),
		contraction(a.gallons, b.gallons, shrunk, "gal"))
	c.warms(num(u.tempF, 0)+" F", num(quantity.DeltaC(mixed.TempRiseC).F(), 1)+" F", fmt.Sprintf("lots at %s F and %s F", exact(a.tempF), exact(b.tempF)))
	c.usLot = u
	c.shrinks(shrunk, "gal")
	c.result(Temperature, "temperature when mixed", u.tempF, 0, "F")
	c.counts()
	c.result(TrueProof, "proof of the blend", u.Proof, 1, "proof")
}
