package proofing

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// The sources of the steps, as a person looks them up.
const (
	section32 = "27 CFR 30.32"
	section41 = "27 CFR 30.41"
	section51 = "27 CFR 30.51"
	proofRule = "27 CFR 19.1: proof is twice the % by volume"
	table1    = "27 CFR 30.61, Table 1"
	table4    = "27 CFR 30.64, Table 4"
	table5    = "27 CFR 30.65, Table 5"
	table6    = "27 CFR 30.66, Table 6"
	table7    = "27 CFR 30.67, Table 7"
	oiml      = "OIML R 22"
	defined   = "by definition"
)

// litresPerPG is the pure alcohol, in litres at 20 C, in one proof gallon: half
// a gallon at 60 F of ethanol.
var litresPerPG = gauge.Places(fluid.USGallonM3/2*1000*fluid.Density(1, fluid.SixtyF)/fluid.Density(1, 20), 4)

// customary works a question as 27 CFR part 30 does: proof, gallons at 60 F,
// pounds weighed in air.
type customary struct {
	*sheet
	usLot
}

// usLot is what is known of spirit so far, each number as it was shown.
type usLot struct {
	gauge.Row         // of its proof
	tempF     float64 // of the spirit; its volume stands at 60 F all the same
	amount    bool    // false if only the strength is known
	weighed   bool    // it was weighed, not measured by volume
	blended   bool    // weight and proof gallons are sums, and proof came of them
	gallons   float64
	pounds    float64
	pg        float64
}

func (c *customary) work(q Question) {
	c.note("Official gauging follows the regulation's own tables (27 CFR part 30). The factors here are computed from OIML R 22; a factor's last place may differ by one or two from the table's.")
	c.usLot = c.lot(q.Lot, "")
	if !c.amount && len(q.Steps) == 0 {
		c.row()
	}
	if c.amount {
		c.counts()
	}
	for _, s := range q.Steps {
		if c.failed() {
			return
		}
		switch s := s.(type) {
		case reduce:
			c.reduce(s)
		case fill:
			c.fill(s)
		case blend:
			c.blend(s)
		}
	}
}

// lot gauges one lot; which tells it from another.
func (c *customary) lot(l Lot, which string) usLot {
	u := usLot{tempF: gauge.Places(quantity.TempC(c.usualC).F(), 2)}
	if l.Temp != nil {
		u.tempF = gauge.Places(l.Temp.in("F"), 2)
		if l.Temp.unit() != "F" {
			c.step("Temperature"+which, defined, fmt.Sprintf("%s %s = %s F", l.Temp.Item.Num, l.Temp.Item.Unit, exact(u.tempF)))
		}
	}
	var proof float64
	if l.Reading != nil {
		proof = c.proofRead(l, &u, which)
	} else {
		proof = c.proofGiven(*l.Strength, which)
	}
	if c.failed() {
		return u
	}
	var err error
	if u.Row, err = gauge.TableRow(proof); err != nil || proof < 0.1 {
		c.fail(diag.CodeOutOfRange, l.At, "a proof runs from 0.1 to 200", "%s proof cannot be gauged", num(proof, 1))
		return u
	}
	c.result(TrueProof, "true proof", proof, 1, "proof")
	c.trueOrRead(l)
	if l.Amount == nil {
		return u
	}
	u.amount = true
	if l.Amount.Kind == quantity.Mass {
		c.byWeight(*l.Amount, &u, which)
	} else {
		c.byVolume(l, &u, which)
	}
	return u
}

// byWeight finds gallons and proof gallons from pounds.
func (c *customary) byWeight(v Value, u *usLot, which string) {
	u.weighed, u.pounds = true, c.inUnit(v, "lb", which)
	u.gallons, u.pg = carry(u.pounds*u.GallonsPerPound), carry(u.pounds*u.ProofGallonsPerPound)
	c.step("Wine gallons"+which, table4, fmt.Sprintf("%s lb x %s = %s gal at 60 F", exact(u.pounds), num(u.GallonsPerPound, 5), say(u.gallons)))
	c.step("Proof gallons"+which, table4, fmt.Sprintf("%s lb x %s = %s PG", exact(u.pounds), num(u.ProofGallonsPerPound, 5), say(u.pg)))
}

// byVolume finds gallons at 60 F, proof gallons and pounds from a volume, or
// from proof gallons or litres of pure alcohol.
func (c *customary) byVolume(l Lot, u *usLot, which string) {
	switch l.Amount.Kind {
	case quantity.ProofGallons, quantity.PureAlcohol:
		u.pg = l.Amount.Item.Value
		if l.Amount.Kind == quantity.PureAlcohol {
			litres := u.pg
			u.pg = carry(litres / litresPerPG)
			c.step("Proof gallons"+which, "27 CFR 19.1", fmt.Sprintf("%s L / %s L = %s PG", exact(litres), num(litresPerPG, 4), say(u.pg)))
		}
		u.gallons = carry(u.pg * 100 / u.Proof)
		c.step("Wine gallons"+which, section51, fmt.Sprintf("%s PG x 100 / %s = %s gal at 60 F", exact(u.pg), num(u.Proof, 1), say(u.gallons)))
	default:
		u.gallons = c.inUnit(*l.Amount, "gal", which)
		c.at60F(l, u, which)
		u.pg = carry(u.gallons * u.Proof / 100)
		c.step("Proof gallons"+which, section51, fmt.Sprintf("%s gal x %s / 100 = %s PG", exact(u.gallons), num(u.Proof, 1), say(u.pg)))
	}
	u.pounds = carry(u.gallons * u.PoundsPerGallon)
	c.step("Weight"+which, table5+between(u.Proof), fmt.Sprintf("%s gal x %s lb = %s lb", exact(u.gallons), num(u.PoundsPerGallon, 5), say(u.pounds)))
}

// at60F corrects a measured volume.
func (c *customary) at60F(l Lot, u *usLot, which string) {
	at := *l.Amount
	if l.Temp != nil {
		at = *l.Temp
	} else {
		c.assume()
	}
	if l.Temp == nil && u.tempF == 60 {
		return // it stands at 60 F already
	}
	f, err := gauge.TableVolumeFactor(u.Proof, u.tempF)
	if err != nil {
		c.outOfTable(at, err)
		return
	}
	measured := u.gallons
	u.gallons = carry(measured * f)
	c.step("Volume at 60 F"+which, table7,
		fmt.Sprintf("factor for %s proof at %s F: %s", num(u.Proof, 1), exact(u.tempF), num(f, 3)),
		fmt.Sprintf("%s gal x %s = %s gal at 60 F", exact(measured), num(f, 3), say(u.gallons)))
}

// counts are the results of a lot whose amount is known.
func (c *customary) counts() {
	litres := carry(c.pg * litresPerPG)
	c.step("Pure alcohol", oiml, fmt.Sprintf("%s PG x %s L = %s L at 20 C", say(c.pg), num(litresPerPG, 4), say(litres)))
	c.counted(Weight, "weight", c.pounds, "lb")
	c.counted(Volume, "wine gallons at 60 F", c.gallons, "gal")
	c.counted(PureAlcohol, "pure alcohol at 20 C", litres, "L")
	c.counted(ProofGallons, "proof gallons", c.pg, "PG")
}

// row shows what the tables say of a strength alone.
func (c *customary) row() {
	c.step("Weight and volume", table4, fmt.Sprintf("a pound is %s gal at 60 F and %s PG", num(c.GallonsPerPound, 5), num(c.ProofGallonsPerPound, 5)))
	c.step("Weight of a gallon", table5+between(c.Proof), fmt.Sprintf("a gallon at 60 F weighs %s lb", num(c.PoundsPerGallon, 5)))
	c.step("Parts", table6+between(c.Proof), fmt.Sprintf("100 parts hold %s of alcohol and %s of water", num(c.AlcoholParts, 2), num(c.WaterParts, 2)))
	c.result(TrueABV60F, "% abv at 60 F", c.Proof/2, 2, "% abv")
	c.result(TrueProof, "true proof", c.Proof, 1, "proof")
}

// between says that a table of whole proofs is entered between its lines.
func between(proof float64) string {
	if low := float64(int(proof)); low != proof {
		return fmt.Sprintf(", between %s and %s", exact(low), exact(low+1))
	}
	return ""
}

// inUnit brings an amount to gallons, pounds, litres or kilograms, and shows
// that if it was written in another unit.
func (s *sheet) inUnit(v Value, unit, which string) float64 {
	if v.unit() == unit {
		return v.Item.Value
	}
	x := carry(v.in(unit))
	s.step("Amount"+which, defined, fmt.Sprintf("%s %s = %s %s", v.Item.Num, v.Item.Unit, say(x), unit))
	return x
}

// outOfTable ends the working at a value that the model refuses.
func (s *sheet) outOfTable(v Value, err error) {
	s.fail(diag.CodeOutOfRange, v.Item.At, "bring the sample nearer 60 F or 20 C, and see that it is spirit and water alone", "%v", err)
}
