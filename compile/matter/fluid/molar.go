package fluid

// Molar masses in kg/mol (IUPAC standard atomic weights).
const (
	MolarMassEthanol = 0.0460684
	MolarMassWater   = 0.01801528
)

// MoleFrac is the mole fraction of ethanol in ethanol-water of mass fraction w.
func MoleFrac(w float64) float64 {
	return w * MolarMassWater / (w*MolarMassWater + (1-w)*MolarMassEthanol)
}

// MassFrac is the mass fraction of ethanol in ethanol-water of mole fraction x.
func MassFrac(x float64) float64 {
	return x * MolarMassEthanol / (x*MolarMassEthanol + (1-x)*MolarMassWater)
}

// MolarMass is the mean molar mass, in kg/mol, at mole fraction x of ethanol.
func MolarMass(x float64) float64 {
	return x*MolarMassEthanol + (1-x)*MolarMassWater
}
