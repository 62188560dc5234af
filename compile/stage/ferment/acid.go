package ferment

import (
	"math"

	"newmake/compile/matter/exponential"
)

const (
	lacticRefC = 30.0 // of lactic-growth
	lacticPKa  = 3.86 // CRC Handbook, lactic acid at 25 C, from memory
)

// souring is the rate at which bacteria make lactic acid, kg/(m3 s), when they
// have made acidKgM3. Acid goes with their growth, and growth is logistic: it
// starts from the few that came with the grain, is slowed while the yeast
// works (appetite near 1), and their own acid ends it. food is what is left
// for them, dextrins, gums and sugars the yeast does not take, kg/m3.
func (k *constants) souring(tempC, acidKgM3, appetite, food float64) float64 {
	const scarce = 0.5 // kg/m3 of food at which they are half fed
	free := 1 - k.lacticHeld*appetite
	full := max(0, 1-acidKgM3/k.lacticMost)
	fed := max(0, food) / (scarce + max(0, food))
	// Lactobacilli stop above 45-50 C (from memory).
	cool := min(1, max(0, (50-tempC)/8))
	return k.lacticGrowth * k.lacticByTemp.At(exponential.PerKelvin(tempC)) * cool * free * full * fed *
		(k.lacticSeed + max(0, acidKgM3))
}

// acidity is the pH now: the acid of the yeast is a hydrogen ion for each
// nitrogen it took up as it grew (common practice puts a yeast's own fall of pH
// at about 1), that of the bacteria lactic acid.
func (y *system) acidity(s vector) float64 { return y.acidityIn(s, s.liquidM3(y.fixedM3)) }

// acidityIn is acidity in a volume.
func (y *system) acidityIn(s vector, m3 float64) float64 {
	hydrons := s[grown] * y.strain.gr.hydrons * y.k.acidPerNitrogen
	return y.k.pH(y.startPH, hydrons/m3, s[lactic]/m3)
}

// pH is that of a wort that started at ph, when yeast has put hydrons
// mol/m3 into it and bacteria lacticKgM3 of lactic acid: a constant buffer
// takes up what the acid gives off, and the acid is the less dissociated the
// lower the pH.
func (k *constants) pH(ph, hydrons, lacticKgM3 float64) float64 {
	lactic := lacticKgM3 / molLactic * 1000
	lo, hi := 0.0, ph
	x := ph - hydrons/k.buffer
	for range 50 {
		e := exponential.Exp(math.Ln10 * (lacticPKa - x))
		share := 1 / (1 + e)
		f := k.buffer*(ph-x) - hydrons - lactic*share
		if f > 0 {
			lo = x
		} else {
			hi = x
		}
		step := f / (k.buffer + lactic*share*share*e*math.Ln10)
		next := x + step
		if !(next >= lo && next <= hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-x) < 1e-9 {
			return next
		}
		x = next
	}
	return x
}
