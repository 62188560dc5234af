package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// yeast reads one strain.
func yeast(n *tree.Node, e recipe.Entry, diags *diag.List) *recipe.Yeast {
	y := &recipe.Yeast{
		Entry:                   e,
		Dry:                     n.Word("form") != "pressed",
		GrowthPerS:              n.SI("growth"),
		RefC:                    n.SIOr("growth-at", 30),
		HalfKgM3:                n.SI("half-saturation"),
		EthanolMostKgM3:         n.SI("ethanol-limit"),
		InhibitionPower:         n.SIOr("inhibition-power", 1),
		YieldBiomass:            n.SI("yield-biomass"),
		YieldBiomassEthanolKgM3: n.SI("yield-biomass-ethanol"),
		YieldBiomassPerEthanol:  n.SI("biomass-per-ethanol"),
		ActivationGrowthJMol:    n.SI("growth-energy"),
		ActivationEthanolJMol:   n.SI("ethanol-energy"),
		ActivationDeathJMol:     n.SI("death-energy"),
		MostC:                   n.SI("dies-above"),
		Maltotriose:             n.SIOr("maltotriose", 1),
		EthanolYield:            n.SIOr("ethanol-yield", 0.98),
		LagS:                    n.SIOr("lag", 2*quantity.HourS),
		DeathPerS:               n.SI("death"),
	}
	y.LowC, y.HighC = n.Span("range")
	y.PitchLowKgM3, y.PitchHighKgM3 = n.Span("pitch")
	y.Solids, y.Viable = 0.94, 0.8
	if !y.Dry {
		y.Solids, y.Viable = 0.3, 0.95
	}
	y.Solids, y.Viable = n.SIOr("solids", y.Solids), n.SIOr("viable", y.Viable)
	if l := n.Line("dies-above"); l != nil && y.MostC <= y.HighC {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeLibrarySum, At: l.At(), Summary: fmt.Sprintf("the yeast `%s` dies within its own range", y.Name),
			Help: "`dies-above` lies above the upper end of `range`",
		})
	}
	return y
}
