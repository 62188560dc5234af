package entries

import (
	"fmt"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// yeast reads one strain.
func yeast(n *tree.Node, e recipe.Entry, diags *diag.List) *recipe.Yeast {
	y := &recipe.Yeast{
		Entry: e, Dry: n.Word("form") != "pressed", Solids: 0.94, Viable: 0.8,
		RefC: 30, InhibitionPower: 1, Maltotriose: 1, EthanolYield: 0.98, LagS: 2 * quantity.HourS,
	}
	if !y.Dry {
		y.Solids, y.Viable = 0.3, 0.95
	}
	y.Read(fields.Text{In: n})
	if l := n.Line("dies-above"); l != nil && y.MostC <= y.HighC {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeLibrarySum, At: l.At(), Summary: fmt.Sprintf("the yeast `%s` dies within its own range", y.Name),
			Help: "`dies-above` lies above the upper end of `range`",
		})
	}
	return y
}
