package reference

import (
	"maps"
	"slices"
	"strings"

	"newmake/lang/explain"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// declaration writes one declaration: its form with all that may stand in it,
// then each line.
func (d *document) declaration(f *schema.Field) {
	d.text("## " + f.Name)
	d.text(wrapped(f.Doc, ""))
	d.text("```text\n" + synopsis(f, "") + "```")
	d.facts(f)
	if f.Block != nil {
		d.block(f.Block, f.Name, "### ")
	}
}

// synopsis is a field with its block, as it would stand in a file.
func synopsis(f *schema.Field, indent string) string {
	if f.Block == nil {
		return indent + f.Form() + "\n"
	}
	out := indent + strings.TrimSpace(f.Form()) + " {\n"
	if indent != "" && steps(f.Block) {
		return indent + f.Form() + " { STEPS }\n"
	}
	for _, l := range f.Block.Lines() {
		if l.Block != nil && indent != "" {
			out += indent + "  " + l.Form() + " { ... }\n"
			continue
		}
		out += synopsis(l, indent+"  ")
	}
	return out + indent + "}\n"
}

// steps reports whether a block holds nothing but steps of work.
func steps(b *schema.Block) bool {
	for _, f := range b.Fields {
		if !f.Step {
			return false
		}
	}
	return len(b.Fields) > 0 && len(b.Unworded()) == 0
}

// block writes each line of a block; what another block has alike is not said
// again. Blocks inside it follow, each under a heading of its own.
func (d *document) block(b *schema.Block, of, heading string) {
	var inner []*schema.Field
	same := map[string][]string{} // by the block that has them too
	for _, f := range b.Lines() {
		entry := field(f)
		home, told := d.told[entry]
		switch {
		case f.Block != nil && !steps(f.Block):
			inner = append(inner, f)
		case told:
			same[home] = append(same[home], f.Form())
		default:
			d.told[entry] = of
			d.b.WriteString(entry)
		}
	}
	for _, home := range slices.Sorted(maps.Keys(same)) {
		d.printf("%s\n", wrapped("- As in `"+home+"`: "+list(same[home])+".", "  "))
	}
	if len(inner) < len(b.Lines()) {
		d.printf("\n")
	}
	for _, f := range inner {
		d.text(heading + "`" + explain.Form(f, quantity.Both) + "`")
		d.text(wrapped(f.Doc, ""))
		d.facts(f)
		d.block(f.Block, f.Name, heading)
	}
}

// field is one line of a block as an entry of a list.
func field(f *schema.Field) string {
	form := f.Form()
	if f.Block != nil {
		form += " { STEPS }"
	}
	text := "- `" + form + "`: " + f.Doc
	if f.Example != "" && f.Example != form {
		text += " For example `" + f.Example + "`" + inLitres(f.Example) + "."
	}
	entry := wrapped(text, "  ") + "\n"
	for _, fact := range explain.Facts(f, quantity.Both) {
		entry += wrapped("  - "+fact, "    ") + "\n"
	}
	return entry
}

// inLitres is an example as a house in litres writes it, "" if that is no other.
func inLitres(example string) string {
	if other := wording.Restated(example, quantity.SI); other != example {
		return ", or `" + other + "`"
	}
	if other := wording.Restated(example, quantity.US); other != example {
		return ", or `" + other + "`"
	}
	return ""
}

// facts writes what is needed, allowed and left out of a line that has a heading
// of its own.
func (d *document) facts(f *schema.Field) {
	facts := explain.Facts(f, quantity.Both)
	for _, fact := range facts {
		d.printf("%s\n", wrapped("- "+fact, "  "))
	}
	if len(facts) > 0 {
		d.printf("\n")
	}
}

// wrapped breaks a text at 80 columns. It ends in no line end.
func wrapped(text, indent string) string { return explain.Wrap(text, indent) }

// list writes words as `a`, `b`, `c`.
func list(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = "`" + w + "`"
	}
	return strings.Join(quoted, ", ")
}
