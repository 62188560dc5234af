// Package reference writes lang/REFERENCE.md, the description of the language,
// and the pages beside it, from the checker's tables and pages written by hand. A test fails if the
// file is stale; `go test ./lang/... -update` writes it anew.
package reference

import (
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

//go:embed top.md
var top string

//go:embed rules.md
var rules string

//go:embed edition.md
var edition string

// Markdown is the whole reference.
func Markdown() string {
	d := &document{told: map[string]string{}}
	d.text(top)
	d.text(rules)
	d.limits()
	d.grammar()
	d.forms()
	for _, f := range schema.Language.Fields {
		d.declaration(f)
	}
	d.promises()
	d.values()
	d.library()
	d.text(edition)
	return contents(d.b.String())
}

// Units is the page of the units.
func Units() string { return page("Units", (*document).units) }

// Codes is the page of what newmake may say of a text.
func Codes() string { return page("Codes", (*document).codes) }

func page(title string, write func(*document)) string {
	d := &document{told: map[string]string{}}
	d.text("# " + title)
	d.text("<!-- Made by `go test ./lang/... -update` from the checker's tables. -->")
	write(d)
	return strings.TrimRight(d.b.String(), "\n") + "\n"
}

// contents puts a list of the headings before the first of them.
func contents(text string) string {
	var list strings.Builder
	fenced := false
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "```") {
			fenced = !fenced
		}
		title, ok := strings.CutPrefix(strings.TrimSpace(line), "## ")
		if ok && !fenced {
			fmt.Fprintf(&list, "- [%s](#%s)\n", title, strings.ReplaceAll(strings.ToLower(title), " ", "-"))
		}
	}
	before, after, _ := strings.Cut(text, "\n## ")
	return before + "\n" + list.String() + "- [Units](UNITS.md), [codes](CODES.md), [the words of the trade](GLOSSARY.md)\n\n## " + after
}

// document is the reference as it grows.
type document struct {
	b    strings.Builder
	told map[string]string // entries of lines written, and the block they stood in
}

func (d *document) printf(format string, args ...any) { fmt.Fprintf(&d.b, format, args...) }

// text adds a part that ends in one blank line.
func (d *document) text(part string) { d.b.WriteString(strings.TrimRight(part, "\n") + "\n\n") }

func (d *document) limits() {
	d.text(wrapped(fmt.Sprintf("Limits: a file has at most %d MiB, a line at most %d KiB, and blocks stand at most %d deep; "+
		"a file has at most %s lines that say something, %s words, numbers, marks, remarks and ends of lines, and %d batches. At most %s errors are shown, and as many warnings. "+
		"Control characters are refused, and so are those that turn the order of text round on the screen.",
		lang.MaxFileBytes>>20, lang.MaxLineBytes>>10, lang.MaxNesting,
		thousands(lang.MaxStatements), thousands(lang.MaxItems), house.MostBatches, thousands(diag.MostSaid)), ""))
}

// thousands writes a number of four figures or more with a comma.
func thousands(n int) string { return fmt.Sprintf("%d,%03d", n/1000, n%1000) }

func (d *document) grammar() {
	d.text("### Grammar")
	d.text("Words are `Word`, texts in quotes `String`, a unit that is no plain word `Unit`\n(`%`, `g/L`, `USD/lb`). Spaces and remarks may stand between any two.")
	d.text("```ebnf\n" + lang.Grammar() + "```")
	d.text("A word after a number is its unit, but for those that join the parts of a line:\n" + wrapped(list(connectives())+".", ""))
}

// connectives are the words that are never a unit.
func connectives() []string {
	candidates := strings.Fields("at to from in of for with and any on within new used over by until as plus than least most per into none about lot")
	return slices.DeleteFunc(candidates, func(w string) bool { return !lang.IsConnective(w) })
}

func (d *document) forms() {
	d.text("## How to read a form")
	d.text("A form shows a line: small words stand as they are, and words in capitals stand\n" +
		"for values (see [Values](#values)). `[...]` may be left out, `|` parts one from\nanother, and `(...)*` may stand as often as you like, also never.")
}

// promises lists what a batch may expect of itself.
func (d *document) promises() {
	d.text("## Promises")
	d.text("What may stand after `promise`, and as what it may be promised:")
	d.printf("| word | stands for | promised as |\n|---|---|---|\n")
	for _, p := range schema.Promises {
		kinds := make([]string, len(p.Kinds))
		for i, k := range p.Kinds {
			kinds[i] = k.String()
		}
		d.printf("| `%s` | %s | %s |\n", p.What, p.Doc, strings.Join(kinds, ", "))
	}
	d.printf("\n")
}

// library lists the names that a batch may use without declaring them.
func (d *document) library() {
	s := check.Builtin().Library
	d.text("## The library")
	d.text("These names are there without being declared. `newmake library NAME` shows the\nfigures of one and where they come from.")
	for _, part := range []struct {
		title string
		names []string
	}{
		{"Grains", names(s.Grains)}, {"Yeasts", names(s.Yeasts)}, {"Enzymes", names(s.Enzymes)}, {"Woods", names(s.Woods)},
		{"Standards of identity", names(s.Standards)}, {"Countries", names(s.Countries)}, {"Aromas", names(s.Aromas)},
	} {
		d.text(wrapped("- "+part.title+": "+list(part.names)+".", "  "))
	}
}

func names[V *recipe.Grain | *recipe.Yeast | *recipe.Enzyme | *recipe.CaskWood | *recipe.Standard | *recipe.Country | *recipe.Aroma](m map[string]V) []string {
	return slices.Sorted(maps.Keys(m))
}

// codes lists the diagnostics.
func (d *document) codes() {
	d.text("What newmake may say of a text. `newmake explain NM0303` shows the page of one,\nwith a wrong and a right example.")
	d.printf("| code | name | | about |\n|---|---|---|---|\n")
	for _, i := range diag.Table {
		severity := i.Severity.String()
		if i.Code == diag.CodeBidi { // there it changes nothing that is computed
			severity += ", in quotes and remarks a warning"
		}
		d.printf("| %s | %s | %s | %s |\n", i.Code, i.Name, severity, i.Title)
	}
}
