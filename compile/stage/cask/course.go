package cask

import (
	"fmt"
	"math"

	"newmake/lang/recipe"
)

// Course is one cask followed from its fill, step by step, with what is put in, taken out
// or runs out on the way.
type Course struct {
	c   *cask
	s   content
	age float64

	filledAt float64 // as in Input
}

// Wood is a cask that can be filled: what wood and air do to it, found once for all
// courses.
type Wood struct {
	in Input
	c  *cask
}

// NewWood readies a cask for what is filled into it, which need not fill it.
func NewWood(in Input) (*Wood, error) {
	kg := in.SpiritEthanolKg + in.SpiritWaterKg
	if !(kg > 0) || !(in.SizeM3 > 0) || math.IsInf(kg+in.SizeM3, 1) {
		return nil, fmt.Errorf("no cask is filled with %g kg of spirit", kg)
	}
	k, err := readConstants(in.Model)
	if err != nil {
		return nil, err
	}
	c, err := newCask(in, k)
	return &Wood{in, c}, err
}

// Course fills the cask. pace is how much faster than the climate says it evaporates; 1 is
// as it says.
func (w *Wood) Course(pace float64) *Course {
	c := *w.c
	for _, a := range []*air{&c.first, &c.later, &c.late} {
		a.ethanolKg *= pace
		a.waterKg *= pace
	}
	return &Course{c: &c, filledAt: w.in.FilledAt, s: content{inEthanol: w.in.SpiritEthanolKg, inWater: w.in.SpiritWaterKg}}
}

// To follows the cask to an age in years; to an earlier one nothing happens. It says if
// there is still something in it.
func (o *Course) To(ageYears float64) bool {
	for o.age < ageYears && o.s[inEthanol]+o.s[inWater] > o.c.leastKg {
		next := math.Min(math.Floor(o.age+1e-9)+1, ageYears)
		o.s = o.c.pass(o.s, o.age, next)
		o.age = next
	}
	return o.s[inEthanol]+o.s[inWater] > o.c.leastKg
}

// Add puts spirit in.
func (o *Course) Add(ethanolKg, waterKg float64) {
	o.s[inEthanol] += ethanolKg
	o.s[inWater] += waterKg
}

// Take takes out so much of the liquid's volume, at 20 C, as it is.
func (o *Course) Take(m3 float64) {
	share := math.Min(1, m3/o.Now().VolumeM3)
	o.s[inEthanol] *= 1 - share
	o.s[inWater] *= 1 - share
}

// Move puts the cask into another rack house: into its air, or where nobody wrote that,
// into what the climate says for all the year. What a house states of its losses it states
// of the air in which the cask was filled.
func (o *Course) Move(to recipe.YearOfAir) {
	if o.c.season = seasonOf(to, o.filledAt); o.filledAt < 0 {
		o.c.season = o.c.season.mean()
	}
}

// Now is the cask as it stands. What is lost to the air is in it, what was taken is not.
func (o *Course) Now() Year { return o.s.year(o.age) }

// Set puts another strength into what there is, at the same mass: that of a sample.
func (o *Course) Set(w float64) {
	m := o.s[inEthanol] + o.s[inWater]
	o.s[inEthanol], o.s[inWater] = m*w, m*(1-w)
}

// LiquidKg is the mass of spirit that can be drawn.
func (y Year) LiquidKg() float64 { return y.EthanolKg + y.WaterKg }

// WoodKg is what the wood has taken up, less what it has given of its own water. The scale
// weighs it with the spirit.
func (y Year) WoodKg() float64 { return y.WoodEthanolKg + y.WoodWaterKg }

// MassFrac is the share of ethanol by mass.
func (y Year) MassFrac() float64 { return y.EthanolKg / y.LiquidKg() }
