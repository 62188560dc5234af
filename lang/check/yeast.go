package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// yeast reads one strain.
func yeast(n *node, e recipe.Entry, diags *diag.List) *recipe.Yeast {
	y := &recipe.Yeast{
		Entry:                   e,
		Dry:                     n.word("form") != "pressed",
		GrowthPerS:              n.si("growth"),
		RefC:                    n.siOr("growth-at", 30),
		HalfKgM3:                n.si("half-saturation"),
		EthanolMostKgM3:         n.si("ethanol-limit"),
		InhibitionPower:         n.siOr("inhibition-power", 1),
		YieldBiomass:            n.si("yield-biomass"),
		YieldBiomassEthanolKgM3: n.si("yield-biomass-ethanol"),
		YieldBiomassPerEthanol:  n.si("biomass-per-ethanol"),
		ActivationGrowthJMol:    n.si("growth-energy"),
		ActivationEthanolJMol:   n.si("ethanol-energy"),
		ActivationDeathJMol:     n.si("death-energy"),
		MostC:                   n.si("dies-above"),
		Maltotriose:             n.siOr("maltotriose", 1),
		EthanolYield:            n.siOr("ethanol-yield", 0.98),
		LagS:                    n.siOr("lag", 2*quantity.HourS),
		DeathPerS:               n.si("death"),
	}
	y.LowC, y.HighC = n.span("range")
	y.PitchLowKgM3, y.PitchHighKgM3 = n.span("pitch")
	y.Solids, y.Viable = 0.94, 0.8
	if !y.Dry {
		y.Solids, y.Viable = 0.3, 0.95
	}
	y.Solids, y.Viable = n.siOr("solids", y.Solids), n.siOr("viable", y.Viable)
	if l := n.line("dies-above"); l != nil && y.MostC <= y.HighC {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeStockSum, At: l.at(), Summary: fmt.Sprintf("the yeast `%s` dies within its own range", y.Name),
			Help: "`dies-above` lies above the upper end of `range`",
		})
	}
	return y
}
