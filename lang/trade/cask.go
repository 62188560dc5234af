package trade

import (
	"fmt"
	"math"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// checkCask looks at the cask itself.
func checkCask(r *rules) {
	c := &r.batch.Cask
	if c.Kind == nil {
		return
	}
	if c.Char > 0 && !c.Kind.Charred {
		r.add(diag.Diagnostic{
			Code: diag.CodeCharless, At: r.at(recipe.PathFill), Summary: fmt.Sprintf("`%s` is not charred, and the line names a char", c.Kind.Name),
			Help: "take the char out, or fill a charred cask",
		})
	}
	if len(c.Kind.SizesM3) == 0 {
		return
	}
	var sizes []string
	for _, s := range c.Kind.SizesM3 {
		if math.Abs(c.SizeM3/s-1) < 0.02 {
			return
		}
		sizes = append(sizes, r.volume(s))
	}
	r.add(diag.Diagnostic{
		Code: diag.CodeCaskSize, Severity: diag.Note, At: r.at(recipe.PathFill),
		Summary: fmt.Sprintf("`%s` is not usually made to hold %s", c.Kind.Name, r.volume(c.SizeM3)),
		Help:    "usual sizes: " + words.And(sizes),
	})
}
