package ferment

import (
	"math"

	"newmake/compile/matter/exponential"

	"newmake/lang/recipe"
)

// strain is a yeast's kinetics, ready to be evaluated.
type strain struct {
	y  *recipe.Yeast
	k  *constants
	gr growthBalance

	perEthanol float64 // kg glucose fermented per kg yeast at the limit of Yx/p

	byTemp                        [3]exponential.Arrhenius // growth, ferment, death
	tempC                         float64                  // for which the next are worked out
	grows, ferments, dies, killed float64
}

func newStrain(y *recipe.Yeast, k *constants) strain {
	return strain{
		y: y, k: k, gr: growthOf(k.glycerolPerBiomass),
		perEthanol: 1 / (y.YieldBiomassPerEthanol * ethanolPerGlucose * y.EthanolYield),
		byTemp: [...]exponential.Arrhenius{
			exponential.ArrheniusOf(y.ActivationGrowthJMol, y.RefC),
			exponential.ArrheniusOf(y.ActivationEthanolJMol, y.RefC),
			exponential.ArrheniusOf(y.ActivationDeathJMol, y.RefC),
		},
		tempC: math.NaN(),
	}
}

// setTemp works out what a temperature makes of the rates, unless that is done.
func (s *strain) setTemp(tempC float64) {
	if tempC == s.tempC {
		return
	}
	s.tempC = tempC
	perK := exponential.PerKelvin(tempC)
	warmth := s.y.GrowthPerS * s.warmth(tempC)
	s.grows, s.ferments = warmth*s.byTemp[0].At(perK), warmth*s.byTemp[1].At(perK)
	s.dies = s.y.DeathPerS * s.byTemp[2].At(perK)
	s.killed = killPerS * exponential.Exp(math.Ln10/killZ*(tempC-s.y.MostC))
}

// stopsC is where yeast does nothing for cold: 1.3 to 4.3 C, by species of
// Saccharomyces (Salvado et al., Appl. Environ. Microbiol. 77 (2011) 2292).
const stopsC = 3.0

// warmth is the share of its rate that yeast keeps in heat and in cold: all
// within its range, nothing at the temperature that kills it (common practice:
// above 34-35 C yeast suffers) and at the one that stops it, straight between.
func (s *strain) warmth(tempC float64) float64 {
	hot := (s.y.MostC - tempC) / (s.y.MostC - s.y.HighC)
	cold := 1.0
	if tempC < s.y.LowC {
		cold = (tempC - stopsC) / (s.y.LowC - stopsC)
	}
	return min(1, max(0, min(hot, cold)))
}

// inhibition is (1 - (P/Pm)^n) of Warren 1990; nothing beyond Pm.
func (s *strain) inhibition(ethanolKgM3 float64) float64 {
	p := max(0, ethanolKgM3) / s.y.EthanolMostKgM3
	if p >= 1 {
		return 0
	}
	if p == 0 {
		return 1
	}
	return 1 - exponential.Exp(s.y.InhibitionPower*math.Log(p))
}

// biomassYield is Yx/s of Warren 1990 at a strength.
func (s *strain) biomassYield(ethanolKgM3 float64) float64 {
	return s.y.YieldBiomass * (1 - ethanolKgM3/s.y.YieldBiomassEthanolKgM3)
}

// appetite is the share of its full rate at which yeast takes sugar, and the
// share of each sugar in what it takes. Concentrations in kg/m3.
func (s *strain) appetite(glucose, maltose, maltotriose float64) (all, g, m, t float64) {
	glucose, maltose, maltotriose = max(0, glucose), max(0, maltose), max(0, maltotriose)
	k := s.k
	free := k.glucoseRepresses / (k.glucoseRepresses + glucose)
	g = glucose / (s.y.HalfKgM3 + glucose)
	m = maltose / (k.maltoseHalf + maltose) * free
	t = k.maltotrioseRate * maltotriose / (k.maltotrioseHalf + maltotriose) * free *
		k.maltoseRepress / (k.maltoseRepress + maltose)
	sum := g + m + t
	if sum <= 0 {
		return 0, 0, 0, 0
	}
	return 1 - (1-g)*(1-m)*(1-t), g / sum, m / sum, t / sum
}

// uptake is the glucose, kg per kg of living yeast and s, that is fermented
// and the yeast grown on it, for yeast that is awake. nutrients is the share of
// growth that the wort still allows, all the appetite.
func (s *strain) uptake(tempC, ethanolKgM3, all, nutrients float64) (growth, ferments float64) {
	s.setTemp(tempC)
	rate := all * s.inhibition(ethanolKgM3)
	if rate <= 0 {
		return 0, 0
	}
	growth = rate * s.grows * nutrients
	perYeast := s.perEthanol
	if yield := s.biomassYield(ethanolKgM3); yield > 0 {
		perYeast = min(perYeast, 1/yield-s.gr.glucose*nutrients)
	}
	ferments = rate * s.ferments * s.pace(nutrients) * max(0, perYeast)
	return growth, ferments
}

// pace is how fast yeast ferments that may still grow by a share of its growth: 1 while
// it grows freely, the resting rate once it has stopped.
func (s *strain) pace(share float64) float64 {
	return s.k.restingRate + (1-s.k.restingRate)*share
}

// Death by heat, a rate that grows tenfold every killZ. The rate at dies-above
// and killZ are from memory (pasteurization of yeast, z of 4 to 7 C).
const (
	killPerS = 0.2 / 3600 // at dies-above
	killZ    = 4.0        // C for a factor of ten
	killMost = 30.0 / 3600
)

// death is the rate at which yeast dies, per second.
func (s *strain) death(tempC, ethanolKgM3 float64) float64 {
	s.setTemp(tempC)
	p := max(0, ethanolKgM3) / s.y.EthanolMostKgM3
	return min(killMost, s.dies*(1+s.k.deathByEthanol*p*p)+s.killed)
}
