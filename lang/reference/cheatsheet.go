package reference

import (
	_ "embed"
	"strings"

	"newmake/lang/schema"
)

//go:embed cheatsheet.md
var cheatsheet string

// CheatSheet is how each line of a batch, a plant and a record is written, and no more, to
// print on one page. The library's blocks are left to the reference: few people write them.
func CheatSheet() string {
	d := &document{}
	d.text(cheatsheet)
	for _, f := range schema.Language.Fields {
		if f.Block == nil || !daily[f.Name] {
			continue
		}
		d.text("## " + f.Name)
		d.text("```text\n" + synopsis(f, "") + "```")
	}
	return strings.TrimRight(d.b.String(), "\n") + "\n"
}

// daily are the declarations that people write again and again.
var daily = map[string]bool{"plant": true, "batch": true, "costs": true}
