package still

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
)

// heated is a charge brought to its boil.
type heated struct {
	boilC    float64
	x        float64 // mole fraction of ethanol, with the steam's water
	ethanol  float64 // mol
	water    float64
	heatUpS  float64
	askedS   float64 // what the batch asks for; 0: nothing
	heatJ    float64 // put in
	lossJ    float64
	steamMol float64
}

// steamC is the temperature at which live steam is taken to come in, dry and
// saturated at about 1 atm: its power is its latent heat there, and its
// condensate brings the liquid's enthalpy (common practice).
const steamC = 100

// steam is the condensate that comes with the still's heat: mol/s and J/mol.
func (s Setting) steam() (molS, enthalpy float64) {
	latent := fluid.MolarMassWater * fluid.LatentHeatWater(steamC)
	return s.heatW() / latent, waterEnthalpy(steamC)
}

// heatUpAskedS is how long a charge is to take that is to be so much warmer; 0 where
// the batch does not say, or says with what heat.
func (s Setting) heatUpAskedS(risesK float64) float64 {
	if r := s.HeatUp.RateKS; r > 0 {
		return risesK / r
	}
	return s.HeatUp.OverS
}

// heatUp brings a charge to its boil. The temperature rises nearly evenly, so
// the mean loss is that at the mean temperature.
func (s Setting) heatUp(charge stream.Stream, direct bool, mixture equilibrium) (heated, error) {
	ethanol := charge.EthanolKg / fluid.MolarMassEthanol
	water0 := charge.WaterKg / fluid.MolarMassWater
	inert := s.inertHeatCapacity(charge)
	startH := (ethanol + water0) * liquidEnthalpy(ethanol/(ethanol+water0), charge.TempC)
	steamS, steamH := 0.0, 0.0
	if direct {
		steamS, steamH = s.steam()
	}
	h := heated{ethanol: ethanol, water: water0}
	for range 50 { // settles at once with a jacket; with steam, a tenth a round
		h.water = water0 + h.steamMol
		h.x = ethanol / (ethanol + h.water)
		h.boilC, _ = mixture.bubble(h.x)
		if charge.TempC >= h.boilC {
			return h, fmt.Errorf("the charge is at %.1f C and boils at %.1f C: it must go into the still below its boil", charge.TempC, h.boilC)
		}
		needs := (ethanol+h.water)*liquidEnthalpy(h.x, h.boilC) - startH - h.steamMol*steamH +
			inert*(h.boilC-charge.TempC) + s.metalKg()*copperCp*s.WarmedK
		loss := s.lossW((charge.TempC+h.boilC)/2, h.boilC)
		powerW := s.heatW()
		if s.HeatUp.PowerW > 0 {
			powerW = min(powerW, s.HeatUp.PowerW)
		}
		if powerW <= s.lossW(h.boilC, h.boilC) || powerW <= loss {
			return h, fmt.Errorf("the still's heat of %.1f kW does not make up its losses of %.1f kW at the boil: it never boils", powerW/1000, s.lossW(h.boilC, h.boilC)/1000)
		}
		h.askedS = s.heatUpAskedS(h.boilC - charge.TempC)
		h.heatUpS = max(needs/(powerW-loss), h.askedS)
		h.lossJ = loss * h.heatUpS
		h.heatJ = needs + h.lossJ
		steam := steamS * h.heatJ / s.heatW()
		settled := math.Abs(steam-h.steamMol) <= 1e-13*(ethanol+h.water)
		h.steamMol = steam
		if settled {
			break
		}
	}
	return h, nil
}
