package exponential

const (
	gasJMolK = 8.314462618 // CODATA 2018
	zeroC    = 273.15
)

// Arrhenius is how a rate changes with temperature, prepared for many temperatures:
// exp(ref - k/T), T in K.
type Arrhenius struct{ ref, k float64 }

// ArrheniusOf is the law of a rate whose value is given at refC.
func ArrheniusOf(energyJMol, refC float64) Arrhenius {
	k := energyJMol / gasJMolK
	return Arrhenius{k * PerKelvin(refC), k}
}

// At is the factor by which the rate changes at a temperature, given as PerKelvin.
func (a Arrhenius) At(perK float64) float64 { return Exp(a.ref - a.k*perK) }

// PerKelvin is 1/T of a temperature, for all the rates that are wanted there.
func PerKelvin(tempC float64) float64 { return 1 / (tempC + zeroC) }
