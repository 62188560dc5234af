package ferment

import (
	"fmt"
	"strings"

	"newmake/lang/recipe"
)

const (
	gasJMolK = 8.314462618 // CODATA 2018
	zeroC    = 273.15
)

// constants are those of the stock entry `model ferment`, in SI.
type constants struct {
	biomassMost        float64 // kg yeast that a kg of extract can grow
	restingRate        float64 // of yeast that has stopped growing, against growing
	glycerolPerBiomass float64

	maltoseHalf, maltotrioseHalf      float64 // kg/m3
	maltotrioseRate                   float64 // against glucose and maltose
	glucoseRepresses, maltoseRepress  float64 // kg/m3 that halve the next sugar's uptake
	deathByEthanol                    float64
	heatGlucose                       float64 // J/kg
	wallLoss                          float64 // W/(m2 K)
	coolingApproach, controlBand      float64 // K
	buffer                            float64 // mol/(m3 pH)
	acidPerNitrogen                   float64 // mol/mol
	lacticSeed, lacticMost, lacticDue float64 // kg/m3
	lacticGrowth, lacticEnergy        float64 // 1/s at 30 C, J/mol
	lacticHeld                        float64
	gums                              float64 // of the solubles
}

type namedConstant struct {
	name  string
	value *float64
}

// fields pairs each constant with its name in the stock, in stock order.
func (k *constants) fields() []namedConstant {
	return []namedConstant{
		{"biomass-most", &k.biomassMost},
		{"resting-rate", &k.restingRate},
		{"glycerol-per-biomass", &k.glycerolPerBiomass},
		{"maltose-half", &k.maltoseHalf},
		{"maltotriose-half", &k.maltotrioseHalf},
		{"maltotriose-rate", &k.maltotrioseRate},
		{"glucose-represses", &k.glucoseRepresses},
		{"maltose-represses", &k.maltoseRepress},
		{"death-by-ethanol", &k.deathByEthanol},
		{"heat-glucose", &k.heatGlucose},
		{"wall-loss", &k.wallLoss},
		{"cooling-approach", &k.coolingApproach},
		{"control-band", &k.controlBand},
		{"buffer", &k.buffer},
		{"acid-per-nitrogen", &k.acidPerNitrogen},
		{"lactic-seed", &k.lacticSeed},
		{"lactic-growth", &k.lacticGrowth},
		{"lactic-energy", &k.lacticEnergy},
		{"lactic-held", &k.lacticHeld},
		{"lactic-most", &k.lacticMost},
		{"lactic-shows", &k.lacticDue},
		{"gums", &k.gums},
	}
}

// Names are the constants that `model ferment` must hold.
func Names() []string {
	var k constants
	var names []string
	for _, f := range k.fields() {
		names = append(names, f.name)
	}
	return names
}

func constantsFrom(m *recipe.Model) (constants, error) {
	var k constants
	if m == nil {
		return k, fmt.Errorf("there is no model of the ferment: the stock entry `model ferment` is missing")
	}
	var missing []string
	for _, f := range k.fields() {
		v, ok := m.Values[f.name]
		if !ok {
			missing = append(missing, f.name)
			continue
		}
		*f.value = v
	}
	if len(missing) > 0 {
		return k, fmt.Errorf("model %s lacks %s", m.Name, strings.Join(missing, ", "))
	}
	for _, f := range []namedConstant{
		{"maltose-half", &k.maltoseHalf}, {"maltotriose-half", &k.maltotrioseHalf},
		{"glucose-represses", &k.glucoseRepresses}, {"maltose-represses", &k.maltoseRepress},
		{"control-band", &k.controlBand}, {"cooling-approach", &k.coolingApproach},
		{"buffer", &k.buffer}, {"lactic-most", &k.lacticMost},
	} {
		if !(*f.value > 0) {
			return k, fmt.Errorf("model %s: %s must be above nothing", m.Name, f.name)
		}
	}
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
