package proofing

import (
	"fmt"

	"newmake/compile/matter/fluid"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
)

// proofGiven brings a true strength to proof at 60 F, as recorded.
func (c *customary) proofGiven(v Value, which string) float64 {
	if v.unit() == "proof" {
		return fluid.RoundProof(v.Item.Value)
	}
	w, err := c.massFrac(v)
	if err != nil {
		c.outOfTable(v, err)
		return 0
	}
	p := fluid.ProofFromMassFrac(w)
	written, source := v.Item.Num+" "+v.unit(), oiml
	if v.unit() == "% abv" {
		written += " at " + c.usual
		if c.in60F() {
			source = proofRule
		}
	}
	c.step("Proof"+which, source, fmt.Sprintf("%s is %s proof at 60 F, recorded as %s",
		written, num(p, 2), num(fluid.RoundProof(p), 1)))
	return fluid.RoundProof(p)
}

// in60F reports whether volumes and strengths of the question stand at 60 F.
func (s *sheet) in60F() bool { return s.usualC == fluid.SixtyF }

// massFrac is the mass fraction of a true strength in whatever unit. `% abv` is
// by volume at the temperature of the question's units, as in a batch: at 60 F
// beside gallons, where it is half the proof, and at 20 C beside litres.
func (s *sheet) massFrac(v Value) (float64, error) {
	switch {
	case v.unit() == "proof":
		return fluid.MassFracFromProof(v.Item.Value)
	case v.unit() == "% abw":
		return v.SI, nil
	case s.in60F():
		return fluid.MassFracFromABV60F(v.SI)
	}
	return fluid.MassFracFromABV(v.SI)
}

// proofRead corrects what a hydrometer shows to true proof. The temperature in
// u becomes the corrected one.
func (c *customary) proofRead(l Lot, u *usLot, which string) float64 {
	if l.Reading.unit() == "% abv" && !l.scaleAt60F() {
		return c.alcoholometer(l, which)
	}
	mark := l.Reading.Item.Value
	var lines []string
	if l.Reading.unit() == "% abv" {
		mark = gauge.Places(2*mark, 4)
		lines = append(lines, fmt.Sprintf("%s %% abv on a scale of 60 F is a mark of %s proof", exact(l.Reading.Item.Value), exact(mark)))
		c.note("A scale of % abv whose sample is in F is taken to be true at 60 F, where it is half the proof (27 CFR 19.1). Of one that is true at 20 C (OIML R 44), write the sample in C.")
	}
	if h := l.Hydrometer; h != nil {
		seen, by := mark, h.Item.Value
		if l.Reading.unit() == "% abv" {
			by *= 2
		}
		mark = gauge.Places(seen+by, 4)
		lines = append(lines, fmt.Sprintf("hydrometer: %s %s = %s", exact(seen), signed(by), exact(mark)))
	}
	if t := l.Thermometer; t != nil {
		by, seen := gauge.Places(t.in("F"), 3), u.tempF
		u.tempF = gauge.Places(seen+by, 3)
		lines = append(lines, fmt.Sprintf("thermometer: %s %s = %s F", exact(seen), signed(by), exact(u.tempF)))
	}
	p, err := fluid.TrueProof(mark, u.tempF)
	if err != nil {
		c.noSuchReading(l, exact(mark), exact(u.tempF)+" F")
		return 0
	}
	lines = append(lines, fmt.Sprintf("a reading of %s at %s F is %s, recorded as %s proof", exact(mark), exact(u.tempF), num(p, 2), num(fluid.RoundProof(p), 1)))
	c.step("True proof"+which, table1, lines...)
	return c.obscured(l, fluid.RoundProof(p), which)
}

// scaleAt60F reports whether a reading in % abv stands on a scale that is true at 60 F: by the
// degrees of its sample, as in the record of a run.
func (l Lot) scaleAt60F() bool { return l.Temp != nil && l.Temp.unit() == "F" }

// alcoholometer corrects the reading of one marked in % vol at 20 C.
func (c *customary) alcoholometer(l Lot, which string) float64 {
	w, lines, ok := c.abvRead(l)
	if !ok {
		return 0
	}
	p := fluid.ProofFromMassFrac(w)
	lines = append(lines, fmt.Sprintf("this is %s proof at 60 F, recorded as %s", num(p, 2), num(fluid.RoundProof(p), 1)))
	c.note("A scale of % vol whose sample is in C is taken to be true at 20 C (OIML R 44), whatever the units of the question.")
	c.step("True strength"+which, oiml, lines...)
	return c.obscured(l, fluid.RoundProof(p), which)
}

// obscured adds the proof that solids hide.
func (c *customary) obscured(l Lot, proof float64, which string) float64 {
	if l.Solids == nil {
		return proof
	}
	grams, hidden := c.hidden(l)
	sum := fluid.RoundProof(proof + hidden)
	c.step("Obscuration"+which, section32,
		fmt.Sprintf("%s g of solids in 100 mL: 4 x %s = %s proof hidden", exact(grams), exact(grams), num(hidden, 1)),
		fmt.Sprintf("%s + %s = %s proof", num(proof, 1), num(hidden, 1), num(sum, 1)))
	c.obscurationNotes(l, proof)
	return sum
}

// hidden is the grams of solids in 100 mL and the proof that they hide.
func (s *sheet) hidden(l Lot) (grams, proof float64) {
	grams = gauge.Places(l.Solids.SI/10, 3)
	proof = gauge.Places(fluid.Obscuration(grams), 1)
	s.result(Obscuration, "obscuration", proof, 1, "proof")
	return grams, proof
}

// obscurationNotes says where the rule comes to its ends.
func (s *sheet) obscurationNotes(l Lot, proof float64) {
	if l.Solids.SI <= 4 {
		s.note("The regulation adds the obscuration of solids above 400 mg in 100 mL (27 CFR 30.31); for less see 27 CFR 30.71.")
	}
	if proof < 80 || proof > 100 {
		s.note("The rule of 0.4 proof to 0.1 g was found for spirit of 80 to 100 proof (27 CFR 30.32).")
	}
}

// abvRead corrects an alcoholometer's reading. It gives the mass fraction of
// ethanol and the lines of the working.
func (s *sheet) abvRead(l Lot) (w float64, lines []string, ok bool) {
	mark, tempC := 100*l.Reading.SI, gauge.Places(l.Temp.SI, 2)
	if h := l.Hydrometer; h != nil {
		seen := mark
		mark = gauge.Places(seen+h.Item.Value, 4)
		lines = append(lines, fmt.Sprintf("alcoholometer: %s %s = %s", exact(seen), signed(h.Item.Value), exact(mark)))
	}
	if t := l.Thermometer; t != nil {
		seen := tempC
		tempC = gauge.Places(seen+t.SI, 3)
		lines = append(lines, fmt.Sprintf("thermometer: %s %s = %s C", exact(seen), signed(gauge.Places(t.SI, 3)), exact(tempC)))
	}
	abv, err := gauge.TrueABV(mark/100, tempC)
	if err == nil {
		w, err = fluid.MassFracFromABV(abv)
	}
	if err != nil {
		s.noSuchReading(l, exact(mark), exact(tempC)+" C")
		return 0, nil, false
	}
	return w, append(lines, fmt.Sprintf("a reading of %s %% at %s C is %s %% vol at 20 C", exact(mark), exact(tempC), num(100*abv, 2))), true
}

// noSuchReading ends the working at a reading outside the tables.
func (s *sheet) noSuchReading(l Lot, mark, temp string) {
	s.fail(diag.CodeOutOfRange, l.Reading.Item.At,
		"read both again; if they are right, something is dissolved in it, or the hydrometer is not one for spirit",
		"nothing made of alcohol and water alone reads %s at %s", mark, temp)
}
