package explain

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// tablePages makes the pages that the checker's tables give, for a reader who counts in a
// system.
func tablePages(reader quantity.System) []Page {
	lines, words := linePages(reader), wordPages(reader)
	return slices.Concat(lines, words, valuePages(reader), unitPages(), libraryPages())
}

// place is a field and the blocks in which it stands alike.
type place struct {
	field *schema.Field
	in    []string
}

// places lists every field of the language in the order of the table. A field
// that several blocks have alike comes once.
var places = sync.OnceValue(func() []*place {
	var out []*place
	var walk func(b *schema.Block, in string)
	walk = func(b *schema.Block, in string) {
		for _, f := range b.Lines() {
			at := slices.IndexFunc(out, func(p *place) bool { return sameField(p.field, f) })
			switch {
			case at >= 0 && in != "":
				out[at].in = append(out[at].in, in)
			case at < 0:
				p := &place{field: f}
				if in != "" {
					p.in = []string{in}
				}
				out = append(out, p)
			}
			switch {
			case f.Block != nil && f.Block.Timed: // a batch has blocks of the same names
				walk(f.Block, strings.TrimSpace(in+" "+f.Name))
			case f.Block != nil:
				walk(f.Block, f.Name)
			}
		}
	}
	walk(schema.Language, "")
	return out
})

func sameField(a, b *schema.Field) bool {
	return a == b || a.Name == b.Name && a.Block == nil && b.Block == nil && a.Doc == b.Doc && a.Default == b.Default &&
		a.Example == b.Example && a.Need == b.Need && a.Form() == b.Form()
}

// linePages has one page for each word that begins a line, with every block in
// which it does.
func linePages(reader quantity.System) []Page {
	var out []Page
	for _, p := range places() {
		name := p.field.Name
		if name == "" {
			continue
		}
		at := slices.IndexFunc(out, func(q Page) bool { return q.Name == name })
		if at < 0 {
			out = append(out, Page{Name: name, Sort: OfLine, Title: "a line of the language"})
			at = len(out) - 1
		}
		out[at].Body = append(out[at].Body, describe(p, reader)...)
	}
	return out
}

// describe says what a field is, how it is written and what it may hold.
func describe(p *place, reader quantity.System) []Block {
	f := p.field
	where := "A declaration."
	if len(p.in) > 0 {
		where = "In " + list(p.in, "and") + "."
	}
	out := []Block{
		{Kind: Paragraph, Text: where + " " + wording.Prose(f.Doc, reader)},
		{Kind: Code, Info: "form", Text: Form(f, reader) + "\n"},
	}
	if f.Example != "" {
		out = append(out, Block{Kind: Code, Info: "newmake example", Text: wording.Restated(f.Example, reader) + "\n"})
	}
	for _, text := range Facts(f, reader) {
		out = append(out, Block{Kind: Item, Text: text})
	}
	if f.Block != nil {
		out = append(out, Block{Kind: Paragraph, Text: wording.Prose(inside(f.Block, reader), reader)})
	}
	return out
}

// Form is a field's line for a reader who counts in a system, with its block.
func Form(f *schema.Field, reader quantity.System) string {
	if f.Block == nil {
		return f.FormFor(reader)
	}
	return f.FormFor(reader) + " { ... }"
}

func inside(b *schema.Block, reader quantity.System) string {
	var text string
	if len(b.Fields) > 0 {
		text = "Its lines: " + list(b.Words(), "and") + "."
	}
	if b.Any != nil {
		text = strings.TrimSpace(text + " A line may also begin with a name: `" + b.Any.FormFor(reader) + "`. " + b.Any.Doc)
	}
	if b.Timed {
		text += " Each may have a day or a date before it, and a clock: `tue 13:30`."
	}
	if b.Bare != nil {
		text += " After a time it may also begin with what was read: `" + b.Bare.FormFor(reader) + "`. " + b.Bare.Doc
	}
	return text
}

// Facts says of a field what is allowed, usual, needed and left out, for a reader who
// counts in a system.
func Facts(f *schema.Field, reader quantity.System) []string {
	var out []string
	if f.Need {
		out = append(out, "It must be there.")
	}
	if f.Default != "" {
		word := "Left out"
		if f.Need { // it cannot be, and a part of it can
			word = "What stands in brackets, left out"
		}
		out = append(out, word+": "+wording.Restated(f.Default, reader)+".")
	}
	for _, b := range f.Bounds(reader) {
		word := "Allowed"
		if b.Severity != diag.Error {
			word = "Usual"
		}
		if b.Of != "" {
			word += ", " + b.Of
		}
		out = append(out, fmt.Sprintf("%s: %s; %s.", word, b.Text, wording.Prose(b.Reason, reader)))
	}
	if f.Step {
		out = append(out, "It is a step of work: its place among the lines is when it is done.")
	} else if f.Repeat {
		out = append(out, "It may stand more than once.")
	}
	return out
}

// wordPages has one page for each word that stands inside a line.
func wordPages(reader quantity.System) []Page {
	var out []Page
	for _, p := range places() {
		for _, w := range p.field.Words() {
			at := slices.IndexFunc(out, func(q Page) bool { return q.Name == w })
			if at < 0 {
				out = append(out, Page{Name: w, Sort: OfWord, Title: "a word inside a line",
					Body: []Block{{Kind: Paragraph, Text: "It stands in:"}}})
				at = len(out) - 1
			}
			text := "`" + p.field.FormFor(reader) + "`"
			if len(p.in) > 0 {
				text += ", in " + list(p.in, "and")
			}
			if doc := unsaid(wording.Prose(p.field.Doc, reader), out[at].Body); doc != "" {
				text += ": " + doc
			}
			out[at].Body = append(out[at].Body, Block{Kind: Item, Text: text})
		}
	}
	return append(out, promisePages(reader)...)
}

// unsaid is a text without its last sentences, where the page ends another item with them
// already.
func unsaid(doc string, page []Block) string {
	for i := range doc {
		begins := i == 0 || i > 1 && doc[i-2:i] == ". "
		if begins && slices.ContainsFunc(page, func(b Block) bool { return strings.HasSuffix(b.Text, " "+doc[i:]) }) {
			return strings.TrimSpace(doc[:i])
		}
	}
	return doc
}

// promisePages has one page for each thing that a batch may promise.
func promisePages(reader quantity.System) []Page {
	var out []Page
	for _, p := range schema.Promises {
		own := slices.DeleteFunc(slices.Clone(p.Kinds), func(k quantity.Kind) bool {
			return wording.OthersAlone(k, reader)
		})
		kinds := make([]string, len(own))
		for i, k := range own {
			kinds[i] = k.String()
		}
		out = append(out, Page{Name: p.What, Sort: OfWord, Title: "what a batch may promise", Body: []Block{
			{Kind: Paragraph, Text: "After `promise` it stands for " + wording.Prose(p.Doc, reader) + "; promised as " + strings.Join(kinds, ", or ") + "."},
		}})
		for _, k := range own {
			l := p.Within(k)
			page := &out[len(out)-1]
			page.Body = append(page.Body, Block{Kind: Item, Text: fmt.Sprintf("Allowed, %s: %s; %s.", k, wording.SpanIn(l.Low, l.High, k, reader), l.Reason)})
		}
	}
	return out
}

// valuePages has one page for each name of a sort of value.
func valuePages(reader quantity.System) []Page {
	var out []Page
	for _, t := range schema.SlotTypes {
		p := Page{Name: t.Name, Sort: OfValue, Title: t.Say}
		p.Body = append(p.Body,
			Block{Kind: Paragraph, Text: fmt.Sprintf("In the form of a line %s stands for %s.", t.Name, t.Say)},
			Block{Kind: Code, Info: "value", Text: wording.Restated(t.Example, reader) + "\n"})
		if units := wording.UnitsOf(t.Kind, reader); t.Kind != quantity.None && len(units) > 0 {
			p.Body = append(p.Body, Block{Kind: Paragraph, Text: "Its units: " + list(units, "and") + "."})
		} else if quantity.AllowsBare(t.Kind) {
			p.Body = append(p.Body, Block{Kind: Paragraph, Text: "It has no unit."})
		}
		out = append(out, p)
	}
	return out
}

// unitPages has one page for each unit.
func unitPages() []Page {
	var out []Page
	for _, u := range quantity.All() {
		p := Page{Name: u.Name, Also: u.Aliases, Sort: OfUnit, Title: "a unit of " + bare(u.Measures[0].Kind)}
		for i, m := range u.Measures {
			word := "Measures"
			if i > 0 {
				word = "Where that is wanted it measures"
			}
			p.Body = append(p.Body, Block{Kind: Paragraph, Text: word + " " + m.Kind.String() + ". " + Worth(u.Name, m)})
		}
		if len(u.Aliases) > 0 {
			p.Body = append(p.Body, Block{Kind: Item, Text: "Also read: " + list(u.Aliases, "and") + "."})
		}
		p.Body = append(p.Body, Block{Kind: Item, Text: "Source of the factor: " + u.Source + "."})
		out = append(out, p)
	}
	return out
}

// bare is a kind without its article.
func bare(k quantity.Kind) string {
	text := k.String()
	for _, a := range []string{"a number of ", "an amount of ", "an ", "a "} {
		text = strings.TrimPrefix(text, a)
	}
	return text
}

// list writes words as `a`, `b` and `c`.
func list(words []string, last string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = "`" + w + "`"
	}
	if len(quoted) < 2 {
		return strings.Join(quoted, "")
	}
	n := len(quoted) - 1
	return strings.Join(quoted[:n], ", ") + " " + last + " " + quoted[n]
}
