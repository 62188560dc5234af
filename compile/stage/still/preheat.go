package still

import (
	"newmake/compile/matter/exchanger"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// PreheatInput is a wash on its way to the still, against the pot ale of the charge
// before in a counter-current cooler. Both run for as long: the pot ale waits in its
// tank until then. Nothing is lost to the room.
type PreheatInput struct {
	Wash      stream.Stream // of one charge
	PotAle    stream.Stream // of one charge, at the temperature at which it comes
	Preheater recipe.Preheater
	LastsS    float64 // how long the wash takes into the still
}

// Preheat is what came of it, for one charge.
type Preheat struct {
	FromC, ToC       float64 // of the wash
	PotAleC, LeavesC float64 // of the pot ale, before and after
	HeatJ            float64 // that passed
	SavedJ, SavedS   float64 // of heat and time, beside the same charge cold
	Charges          int     // of the batch that are preheated
	WantsC           float64 // what the house asks for; 0: nothing said
}

// What holds where the house does not say.
const (
	// preheaterWM2K: a tube in a tube, which grain does not stop, passes 500 to 1,200
	// W/(m2 K) (from memory).
	preheaterWM2K = 800
	// preheatedC: wash goes in at 60 to 65 C (common practice). What the exchanger
	// could do besides goes by it.
	preheatedC = 65
)

// Preheated brings the wash as far as the pot ale can, and no further than is asked.
func Preheated(in PreheatInput) Preheat {
	p := Preheat{FromC: in.Wash.TempC, ToC: in.Wash.TempC, PotAleC: in.PotAle.TempC, LeavesC: in.PotAle.TempC, WantsC: in.Preheater.WashC}
	most := p.WantsC
	if most == 0 {
		most = preheatedC
	}
	if !(in.LastsS > 0) || p.PotAleC <= p.FromC || most <= p.FromC {
		return p
	}
	surface := in.Preheater.WM2K
	if surface == 0 {
		surface = preheaterWM2K
	}
	surface *= in.Preheater.AreaM2
	washJK, aleJK := heatCapacity(in.Wash, p.FromC, p.PotAleC), heatCapacity(in.PotAle, p.FromC, p.PotAleC)
	out := exchanger.CounterHotOutC(p.PotAleC, aleJK/in.LastsS, p.FromC, washJK/in.LastsS, surface)
	p.HeatJ = min(aleJK*(p.PotAleC-out), washJK*(most-p.FromC))
	p.ToC, p.LeavesC = p.FromC+p.HeatJ/washJK, p.PotAleC-p.HeatJ/aleJK
	return p
}

// heatCapacity is that of a stream, in J/K, from one temperature to another.
func heatCapacity(s stream.Stream, fromC, toC float64) float64 {
	ethanol, water := s.EthanolKg/fluid.MolarMassEthanol, s.WaterKg/fluid.MolarMassWater
	liquid := 0.0
	if n := ethanol + water; n > 0 {
		x := ethanol / n
		liquid = n * (liquidEnthalpy(x, toC) - liquidEnthalpy(x, fromC)) / (toC - fromC)
	}
	return liquid + solidsHeatCapacity(s)
}
