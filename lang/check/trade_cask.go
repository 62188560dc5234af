package check

import (
	"fmt"
	"math"

	"newmake/lang/diag"
)

// tradeCask looks at the cask itself.
func (b *builder) tradeCask() {
	c := &b.batch.Cask
	if c.Kind == nil {
		return
	}
	if c.Char > 0 && !c.Kind.Charred {
		b.add(diag.Diagnostic{
			Code: diag.CodeCharless, At: b.at("cask.fill"), Summary: fmt.Sprintf("`%s` is not charred, and the line names a char", c.Kind.Name),
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
		sizes = append(sizes, b.volume(s))
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeCaskSize, Severity: diag.Note, At: b.at("cask.fill"),
		Summary: fmt.Sprintf("`%s` is not usually made to hold %s", c.Kind.Name, b.volume(c.SizeM3)),
		Help:    "usual sizes: " + andWords(sizes),
	})
}
