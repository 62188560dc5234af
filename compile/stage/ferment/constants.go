package ferment

import (
	"fmt"

	"newmake/compile/matter/exponential"
	"newmake/lang/recipe"
)

// constants are those of the library entry `model ferment`, in SI.
type constants struct {
	biomassMost        float64 // kg yeast that a kg of extract can grow
	doublingsMost      float64 // of what is pitched alive
	restingRate        float64 // of yeast that has stopped growing, against growing
	glycerolPerBiomass float64

	maltoseHalf, maltotrioseHalf      float64 // kg/m3
	maltotrioseRate                   float64 // against glucose and maltose
	glucoseRepresses, maltoseRepress  float64 // kg/m3 that halve the next sugar's uptake
	deathByEthanol                    float64
	heatGlucose                       float64 // J/kg
	wallLoss                          float64 // W/(m2 K)
	coolingApproach, controlBand      float64 // K
	coolingLeast                      float64 // K
	jacketWM2K, coilWM2K              float64
	buffer                            float64 // mol/(m3 pH)
	acidPerNitrogen                   float64 // mol/mol
	lacticSeed, lacticMost, lacticDue float64 // kg/m3
	lacticGrowth, lacticEnergy        float64 // 1/s at 30 C, J/mol
	lacticHeld                        float64
	gums                              float64 // of the solubles

	lacticByTemp exponential.Arrhenius // lacticGrowth's
}

// fields pairs each constant with its name in the library, in library order.
func (k *constants) fields() []recipe.Constant {
	return []recipe.Constant{
		{Name: "biomass-most", To: &k.biomassMost},
		{Name: "doublings-most", To: &k.doublingsMost},
		{Name: "resting-rate", To: &k.restingRate},
		{Name: "glycerol-per-biomass", To: &k.glycerolPerBiomass},
		{Name: "maltose-half", To: &k.maltoseHalf},
		{Name: "maltotriose-half", To: &k.maltotrioseHalf},
		{Name: "maltotriose-rate", To: &k.maltotrioseRate},
		{Name: "glucose-represses", To: &k.glucoseRepresses},
		{Name: "maltose-represses", To: &k.maltoseRepress},
		{Name: "death-by-ethanol", To: &k.deathByEthanol},
		{Name: "heat-glucose", To: &k.heatGlucose},
		{Name: "wall-loss", To: &k.wallLoss},
		{Name: "cooling-approach", To: &k.coolingApproach},
		{Name: "cooling-least", To: &k.coolingLeast},
		{Name: "jacket-transfer", To: &k.jacketWM2K},
		{Name: "coil-transfer", To: &k.coilWM2K},
		{Name: "control-band", To: &k.controlBand},
		{Name: "buffer", To: &k.buffer},
		{Name: "acid-per-nitrogen", To: &k.acidPerNitrogen},
		{Name: "lactic-seed", To: &k.lacticSeed},
		{Name: "lactic-growth", To: &k.lacticGrowth},
		{Name: "lactic-energy", To: &k.lacticEnergy},
		{Name: "lactic-held", To: &k.lacticHeld},
		{Name: "lactic-most", To: &k.lacticMost},
		{Name: "lactic-shows", To: &k.lacticDue},
		{Name: "gums", To: &k.gums},
	}
}

func constantsFrom(m *recipe.Model) (constants, error) {
	var k constants
	if err := m.Read("ferment", k.fields()); err != nil {
		return k, err
	}
	for _, f := range []recipe.Constant{
		{Name: "maltose-half", To: &k.maltoseHalf}, {Name: "maltotriose-half", To: &k.maltotrioseHalf},
		{Name: "glucose-represses", To: &k.glucoseRepresses}, {Name: "maltose-represses", To: &k.maltoseRepress},
		{Name: "control-band", To: &k.controlBand}, {Name: "cooling-approach", To: &k.coolingApproach},
		{Name: "buffer", To: &k.buffer}, {Name: "lactic-most", To: &k.lacticMost},
	} {
		if !(*f.To > 0) {
			return k, fmt.Errorf("model %s: %s must be above nothing", m.Name, f.Name)
		}
	}
	k.lacticByTemp = exponential.ArrheniusOf(k.lacticEnergy, lacticRefC)
	return k, nil
}

// checkYeast says what a yeast lacks that the model cannot do without.
func checkYeast(y *recipe.Yeast) error {
	for _, f := range []struct {
		name  string
		value float64
	}{
		{"growth", y.GrowthPerS},
		{"half-saturation", y.HalfKgM3},
		{"ethanol-limit", y.EthanolMostKgM3},
		{"inhibition-power", y.InhibitionPower},
		{"yield-biomass", y.YieldBiomass},
		{"yield-biomass-ethanol", y.YieldBiomassEthanolKgM3},
		{"biomass-per-ethanol", y.YieldBiomassPerEthanol},
		{"ethanol-yield", y.EthanolYield},
		{"solids", y.Solids},
		{"viable", y.Viable},
	} {
		if !(f.value > 0) {
			return fmt.Errorf("yeast %s: %s is missing, or not above nothing", y.Name, f.name)
		}
	}
	if y.EthanolYield > 1 {
		return fmt.Errorf("yeast %s: ethanol-yield is above 100 %%, more than sugar has carbon for", y.Name)
	}
	if y.MostC <= y.HighC {
		return fmt.Errorf("yeast %s: dies-above must lie above the range's upper end", y.Name)
	}
	return nil
}
