package check

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// stockBuilder gathers the declarations of a stock and lays them over another's.
type stockBuilder struct {
	base *Library // nil when the built-in stock itself is made
	own  map[*schema.Field]*index
	done map[*schema.Field]*index // the same with all that lies under them
}

func newStockBuilder(base *Library) *stockBuilder {
	b := &stockBuilder{base: base, own: make(map[*schema.Field]*index, len(schema.Stock)), done: make(map[*schema.Field]*index)}
	for _, f := range schema.Stock {
		b.own[f], b.done[f] = newIndex(f.Name), newIndex(f.Name)
	}
	return b
}

func (b *stockBuilder) takes(n *node) bool { return b.own[n.field] != nil }

func (b *stockBuilder) add(n *node, diags *diag.List) { b.own[n.field].add(n, diags) }

// find gives an entry's lines with all that lies under them: the built-in entry
// of the same name, and those it begins from. seen guards against a circle.
func (b *stockBuilder) find(f *schema.Field, name string, seen []string, diags *diag.List) *node {
	if n := b.done[f].find(name); n != nil {
		return n
	}
	var below *node
	if b.base != nil {
		below = b.base.nodes[f].find(name)
	}
	n := b.own[f].find(name)
	if n == nil {
		return below
	}
	if from := n.get("parent"); from != nil {
		if slices.Contains(seen, nameKey(name)) || len(seen) > mostVariants {
			diags.Add(cycle(f.Name, n))
			return n
		}
		below = b.find(f, from.text(), append(seen, nameKey(name)), diags)
		if below == nil {
			diags.Add(unknownName(f.Name, from, func() []string { return b.names(f) }))
		}
	}
	if below != nil {
		n = overlay(below, n, diags)
	}
	b.done[f].byKey[nameKey(name)] = n
	return n
}

func (b *stockBuilder) names(f *schema.Field) []string {
	names := slices.Clone(b.own[f].order)
	if b.base != nil {
		names = append(names, b.base.nodes[f].order...)
	}
	return names
}

// build reads every entry. What a house does not touch is the library's own.
func (b *stockBuilder) build(diags *diag.List) recipe.Stock {
	s := recipe.Stock{
		Grains: map[string]*recipe.Grain{}, Yeasts: map[string]*recipe.Yeast{}, Enzymes: map[string]*recipe.Enzyme{},
		Casks: map[string]*recipe.CaskKind{}, Standards: map[string]*recipe.Standard{}, Models: map[string]*recipe.Model{},
	}
	if b.base != nil {
		if b.empty() {
			return b.base.Stock
		}
		under := b.base.Stock
		maps.Copy(s.Grains, under.Grains)
		maps.Copy(s.Yeasts, under.Yeasts)
		maps.Copy(s.Enzymes, under.Enzymes)
		maps.Copy(s.Casks, under.Casks)
		maps.Copy(s.Standards, under.Standards)
		maps.Copy(s.Models, under.Models)
	}
	each := func(f *schema.Field, read func(n *node, e recipe.Entry)) {
		for _, name := range b.own[f].order {
			n := b.find(f, name, nil, diags)
			b.done[f].order = append(b.done[f].order, name)
			e := b.entry(n, name)
			if f.Block.Any == nil || len(f.Block.Fields) > 0 {
				missing(diags, n, fmt.Sprintf("the %s `%s`", f.Name, name))
			}
			said := len(*diags)
			read(n, e)
			if n.bad {
				*diags = (*diags)[:said] // what is wrong with it is said
			}
		}
	}
	each(schema.Grain, func(n *node, e recipe.Entry) { s.Grains[e.Name] = grain(n, e, diags) })
	each(schema.Yeast, func(n *node, e recipe.Entry) { s.Yeasts[e.Name] = yeast(n, e, diags) })
	each(schema.Enzyme, func(n *node, e recipe.Entry) { s.Enzymes[e.Name] = enzyme(n, e, diags) })
	each(schema.CaskKind, func(n *node, e recipe.Entry) { s.Casks[e.Name] = caskKind(n, e) })
	each(schema.Model, func(n *node, e recipe.Entry) { s.Models[e.Name] = model(n, e, b.base, diags) })
	each(schema.Standard, func(n *node, e recipe.Entry) { s.Standards[e.Name] = standard(n, e, s, diags) })
	return s
}

func (b *stockBuilder) empty() bool {
	for _, x := range b.own {
		if len(x.order) > 0 {
			return false
		}
	}
	return true
}

// entry is what every entry carries: its doc and the source of each figure.
func (b *stockBuilder) entry(n *node, name string) recipe.Entry {
	e := recipe.Entry{Name: name, House: b.base != nil, Source: make(map[string]string, len(n.lines)), Where: make(map[string]diag.Span, len(n.lines)), At: n.at()}
	if e.Doc = docOf(n.stmt); e.Doc == "" && b.base != nil {
		if below := b.base.nodes[n.field].find(name); below != nil {
			e.Doc = docOf(below.stmt)
		}
	}
	for _, l := range n.lines {
		word := l.field.Name
		if word == "" {
			word = l.text("name")
		}
		e.Where[word] = l.at()
		if source := l.comment(); source != "" && e.Source[word] == "" {
			e.Source[word] = source
		}
	}
	return e
}

// docOf is the comment directly above a declaration. What stands apart, with a
// blank line between, is about the file.
func docOf(st *lang.Stmt) string {
	line, _ := st.At.Position()
	first := len(st.Lead)
	for first > 0 {
		if above, _ := st.Lead[first-1].At.Position(); above != line-1 {
			break
		}
		line--
		first--
	}
	doc := make([]string, 0, len(st.Lead)-first)
	for _, c := range st.Lead[first:] {
		doc = append(doc, commentText(c.Text))
	}
	return strings.Join(doc, "\n")
}

// cycle says that something begins from itself.
func cycle(sort string, n *node) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeCycle, Summary: fmt.Sprintf("the %s %q begins from itself", sort, n.text("name")), At: n.get("parent").at(),
		Help: fmt.Sprintf("one in the circle has to stand on its own, without `from`; and no more than %d may follow one another", mostVariants),
	}
}

// Names of the stock, sorted, for messages and completion.
func stockNames(s recipe.Stock) []string {
	return slices.Concat(sortedKeys(s.Grains), sortedKeys(s.Yeasts), sortedKeys(s.Enzymes))
}

// commentText is a comment without its mark.
func commentText(text string) string { return strings.TrimSpace(strings.TrimLeft(text, "#")) }
