package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/trade"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// builder reads one batch, variants applied, into a recipe.
type builder struct {
	house *House
	entry *batch
	node  *tree.Node
	batch *recipe.Batch
	diags *diag.List
	whole map[string]bool // parts that can be reasoned about: "bill", "mash", ...
	none  []string        // grains of the bill of which there is nothing
	gone  []string        // grains that were in the bill of a batch it varies
	vague bool            // the plant could not be read whole: what it has is not sure
}

// read reads a batch.
func (h *House) read(e *batch) {
	chain := h.Chain(e.decl)
	if e.decl.Taken || slices.ContainsFunc(chain, func(a *house.Decl) bool { return a.Node().Bad }) {
		return // what is wrong with it is said
	}
	merged, changed := h.Merged(e.decl, &e.diags)
	if merged == nil {
		return
	}
	b := &builder{
		house: h, node: merged, entry: e, diags: &e.diags, whole: map[string]bool{},
		batch: &recipe.Batch{Name: e.decl.Name, Where: make(map[recipe.Path]diag.Span, 96), Changes: changed, Models: mapped[recipe.Model](h.stock, schema.Model)},
	}
	for _, a := range chain[1:] {
		b.batch.Chain = append(b.batch.Chain, a.Name)
	}
	if len(b.batch.Chain) > 0 {
		b.batch.Parent = b.batch.Chain[0]
	}
	b.read()
	e.diags = append(e.diags, trade.Check(b.batch, b.parts())...)
	e.batch = b.batch
	e.inherit()
}

// inherit says of a variant's diagnostics that fall on lines of its parents whose
// they are.
func (e *batch) inherit() {
	if e.decl.Parent == "" {
		return
	}
	for i := range e.diags {
		if d := &e.diags[i]; !e.decl.Has(d.At) {
			d.Related = append(slices.Clip(d.Related), diag.Related{At: e.decl.At, Text: fmt.Sprintf("in the variant %q", e.decl.Name)})
		}
	}
}

// written finds the units in which a batch is written: those of most of its file,
// or, of a variant, of most of what it says together with what it varies. It is US
// if there are as many of both.
func (b *builder) written() recipe.System {
	us, si := 0, 0
	if b.batch.Parent == "" {
		us, si = b.entry.decl.File.Units()
	} else {
		us, si = countUnits(b.node)
	}
	if si > us {
		return recipe.SI
	}
	return recipe.US
}

func countUnits(n *tree.Node) (us, si int) {
	us, si = house.ItemUnits(n.Stmt.Items)
	for _, l := range n.Lines {
		a, b := countUnits(l)
		us, si = us+a, si+b
	}
	return us, si
}

// named finds an entry of the stock, and notes that the batch uses it.
func named[T any](b *builder, f *schema.Field, name string) *T {
	m := b.house.stock.find(f, name)
	if m == nil {
		return nil
	}
	b.entry.uses = append(b.entry.uses, m)
	return m.value.(*T)
}

// entries lists the names of a sort of the stock's entries.
func (b *builder) entries(f *schema.Field) func() []string {
	return func() []string { return b.house.EntryNames(f) }
}

// unknown says that nothing is called so, if that is sure.
func (b *builder) unknown(f *schema.Field, sort string, c *tree.Capture, names func() []string) {
	if !b.house.Lost(f, c.Text()) {
		b.add(tree.UnknownName(sort, c, names))
	}
}

func (b *builder) read() {
	n, r := b.node, b.batch
	tree.Missing(b.diags, n, fmt.Sprintf("the batch %q", r.Name))
	b.lines(recipe.Path{}, n)
	b.where(recipe.PathBatch, n.At())
	b.plant(n.Line("at"))
	b.standard(n.Line("standard"))
	b.start(n.Line("start"))
	r.Gauge = b.written()
	r.Units = r.Gauge
	switch n.Word("units") {
	case "us":
		r.Units = recipe.US
	case "si":
		r.Units = recipe.SI
	}
	b.whole["bill"] = b.bill(n.Line("bill"))
	b.removed()
	b.whole["mash"] = b.mash(n.Line("mash")) && b.whole["bill"] && b.whole["plant"]
	b.whole["ferment"] = b.ferment(n.Line("ferment")) && b.whole["plant"]
	b.whole["strip"] = b.strip(n.Line("strip")) && b.whole["plant"]
	b.whole["spirit"] = b.spirit(n.Line("spirit")) && b.whole["plant"]
	b.whole["cask"] = b.cask(n.Line("cask"))
	b.whole["unaged"] = b.unaged()
	b.expects(n)
	house.StrayEdits(n, b.diags)
}

// parts says which parts of the batch the rules may reason about.
func (b *builder) parts() trade.Parts {
	return trade.Parts{
		Bill: b.whole["bill"], Mash: b.whole["mash"], Ferment: b.whole["ferment"],
		Strip: b.whole["strip"], Spirit: b.whole["spirit"], Cask: b.whole["cask"], Unaged: b.whole["unaged"],
	}
}

func (b *builder) add(d diag.Diagnostic) { b.diags.Add(d) }

// where notes the place of a value.
func (b *builder) where(path recipe.Path, at diag.Span) { b.batch.Where[path] = at }

// places notes the place of a block, and of each line of it that may stand once.
func (b *builder) places(path recipe.Path, n *tree.Node) {
	b.where(path, n.At())
	b.lines(path, n)
}

func (b *builder) lines(path recipe.Path, n *tree.Node) {
	for _, l := range n.Lines {
		if !l.Field.Repeat {
			b.where(path.Child(l.Field.Name), l.At())
		}
	}
}

// plant finds the plant: the one named, or the only one.
func (b *builder) plant(n *tree.Node) {
	h := b.house
	var name string
	switch {
	case n != nil:
		name = n.Text("plant")
	case b.node.Present("at"):
		return
	case len(h.Plants) == 1:
		name = h.Plants[0].Name
	case len(h.Plants) == 0 && h.LostAny():
		return // it may be in what could not be read
	case len(h.Plants) == 0:
		b.add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: "the house has no plant", At: b.node.At(),
			Help: "declare one in " + house.FileName + ", for example: " + schema.Example(schema.Plant) + " { ... }",
		})
		return
	default:
		b.add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: "the house has several plants, and this batch does not say at which it is made", At: b.node.At(),
			Help: "add a line such as `at " + fmt.Sprintf("%q", h.Plants[0].Name) + "`",
		})
		return
	}
	i := slices.IndexFunc(h.Plants, func(d *house.Decl) bool { return tree.Key(d.Name) == tree.Key(name) })
	switch {
	case i < 0 && h.Lost(schema.Plant, name):
		return
	case i < 0:
		b.add(tree.UnknownName("plant", n.Get("plant"), h.PlantNames))
		return
	}
	p := h.plant(h.Plants[i])
	b.entry.plant = p
	b.batch.Plant, b.batch.Costs = p.plant, p.plant.Costs
	b.whole["plant"] = p.whole
	node := p.decl.Node()
	b.vague = node.Bad || node.Gaps || slices.ContainsFunc(node.Lines, func(l *tree.Node) bool { return l.Bad })
	b.places(recipe.PathPlant, node)
}

func (b *builder) standard(n *tree.Node) {
	if n == nil {
		return
	}
	c := n.Get("standard")
	if b.batch.Standard = named[recipe.Standard](b, schema.Standard, c.Text()); b.batch.Standard == nil {
		b.unknown(schema.Standard, "standard of identity", c, b.entries(schema.Standard))
	}
}

// The years in which a batch may begin.
const firstYear, lastYear = 1900, 2199

func (b *builder) start(n *tree.Node) {
	if n == nil {
		return
	}
	s := &b.batch.Start
	fmt.Sscanf(n.Text("date"), "%d-%d-%d", &s.Year, &s.Month, &s.Day)
	if s.Year < firstYear || s.Year > lastYear {
		b.add(diag.Diagnostic{
			Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("the year %d is outside what `start` can be", s.Year), At: n.Get("date").At(),
			Help: fmt.Sprintf("allowed: %d to %d; write the date as year-month-day", firstYear, lastYear), Reason: "no batch that anybody works from begins then",
		})
	}
	if c := n.Get("clock"); c != nil {
		s.Hour, s.Minute, _ = parseClock(c.Text())
	} else if p := b.batch.Plant; p != nil {
		s.Hour, s.Minute = p.Shift.FromMinute/60, p.Shift.FromMinute%60
	}
}

// vessel finds a vessel of a kind by its name, with a diagnostic if there is
// none.
func (b *builder) vessel(c *tree.Capture, kind recipe.VesselKind, sort string) *recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	var known []string
	for _, v := range b.batch.Plant.Vessels {
		if tree.Key(v.Name) == tree.Key(c.Text()) {
			if v.Kind == kind {
				return v
			}
			b.add(diag.Diagnostic{
				Code: diag.CodeWrongVessel, Summary: fmt.Sprintf("%q is a %s, and a %s is wanted here", v.Name, v.Kind.String(), sort), At: c.At(),
				Help:    "the plant has " + b.vesselList(kind),
				Related: []diag.Related{{At: v.At, Text: "it is declared here"}},
			})
			return nil
		}
		if v.Kind == kind {
			known = append(known, v.Name)
		}
	}
	if !b.vague {
		b.add(tree.UnknownName(sort, c, func() []string { return known }))
	}
	return nil
}

func (b *builder) ofKind(kind recipe.VesselKind) []*recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(b.batch.Plant.Vessels), func(v *recipe.Vessel) bool { return v.Kind != kind })
}

func (b *builder) vesselList(kind recipe.VesselKind) string {
	var names []string
	for _, v := range b.ofKind(kind) {
		names = append(names, fmt.Sprintf("%q", v.Name))
	}
	if len(names) == 0 {
		return "no " + kind.String()
	}
	return words.And(names)
}

// only gives the vessel that is meant when none is named: the one that pick
// prefers. It says so if the plant has none.
func (b *builder) only(kind recipe.VesselKind, n *tree.Node, better func(a, b *recipe.Vessel) bool) *recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	all := b.ofKind(kind)
	if len(all) == 0 && b.vague {
		return nil
	}
	if len(all) == 0 {
		b.add(diag.Diagnostic{
			Code: diag.CodeNoVessel, Summary: fmt.Sprintf("the plant has no %s", kind.String()), At: n.At(),
			Help:    fmt.Sprintf("declare one in the plant: %s \"...\" { ... }", kind.String()),
			Related: []diag.Related{{At: b.batch.Plant.At, Text: "the plant is declared here"}},
		})
		return nil
	}
	best := all[0]
	for _, v := range all[1:] {
		if better(v, best) {
			best = v
		}
	}
	return best
}

func larger(a, b *recipe.Vessel) bool { return a.HoldsM3 > b.HoldsM3 }

func smaller(a, b *recipe.Vessel) bool { return a.HoldsM3 < b.HoldsM3 }
