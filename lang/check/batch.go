package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/trade"
	"newmake/lang/words"
)

// builder reads one batch, variants applied, into a recipe.
type builder struct {
	house *House
	node  *node
	batch *recipe.Batch
	diags *diag.List
	whole map[string]bool // parts that can be reasoned about: "bill", "mash", ...
	entry *entry
	none  []string // grains of the bill of which there is nothing
	gone  []string // grains that were in the bill of a batch it varies
	vague bool     // the plant could not be read whole: what it has is not sure
}

// make reads a batch once.
func (h *House) make(e *entry) { e.once.Do(func() { h.build(e) }) }

func (h *House) build(e *entry) {
	if e.broken || slices.ContainsFunc(h.chain(e), func(a *entry) bool { return a.node.bad }) {
		return // what is wrong with it is said
	}
	merged, parent := h.merged(e, &e.diags)
	if merged == nil {
		return
	}
	b := &builder{
		house: h, node: merged, entry: e, diags: &e.diags, whole: map[string]bool{},
		batch: &recipe.Batch{Name: e.name, Where: make(map[recipe.Path]diag.Span, 96), Models: h.Stock.Models},
	}
	for _, a := range h.chain(e)[1:] {
		b.batch.Chain = append(b.batch.Chain, a.name)
	}
	if len(b.batch.Chain) > 0 {
		b.batch.Parent = b.batch.Chain[0]
		b.batch.Changes = changes(parent, merged)
	}
	b.read(e.file)
	e.diags = append(e.diags, trade.Check(b.batch, b.parts())...)
	e.batch = b.batch
	e.inherit()
}

// owns says that a place is in the batch's own text, not in that of one it varies.
func (e *entry) owns(at diag.Span) bool {
	own := e.node.whole()
	return at.Src == own.Src && own.Start <= at.Start && at.Start < own.End
}

// inherit says of a variant's diagnostics that fall on lines of its parents whose
// they are.
func (e *entry) inherit() {
	if !e.node.has("parent") {
		return
	}
	for i := range e.diags {
		if d := &e.diags[i]; !e.owns(d.At) {
			d.Related = append(slices.Clip(d.Related), diag.Related{At: e.node.at(), Text: fmt.Sprintf("in the variant %q", e.name)})
		}
	}
}

// written finds the units in which a batch is written: those of most of its file,
// or, of a variant, of most of what it says together with what it varies.
func (b *builder) written(f *file) recipe.System {
	if b.batch.Parent == "" {
		return f.units()
	}
	return systemOf(b.node.countUnits())
}

func (n *node) countUnits() (us, si int) {
	us, si = itemUnits(n.stmt.Items)
	for _, l := range n.lines {
		a, b := l.countUnits()
		us, si = us+a, si+b
	}
	return us, si
}

func (b *builder) read(f *file) {
	n, r := b.node, b.batch
	missing(b.diags, n, fmt.Sprintf("the batch %q", r.Name))
	b.lines(recipe.Path{}, n)
	b.where(recipe.PathBatch, n.at())
	b.plant(n.line("at"))
	b.style(n.line("style"))
	b.start(n.line("start"))
	r.Gauge = b.written(f)
	r.Units = r.Gauge
	switch n.word("units") {
	case "us":
		r.Units = recipe.US
	case "si":
		r.Units = recipe.SI
	}
	b.whole["bill"] = b.bill(n.line("bill"))
	b.removed()
	b.whole["mash"] = b.mash(n.line("mash")) && b.whole["bill"] && b.whole["plant"]
	b.whole["ferment"] = b.ferment(n.line("ferment")) && b.whole["plant"]
	b.whole["strip"] = b.strip(n.line("strip")) && b.whole["plant"]
	b.whole["spirit"] = b.spirit(n.line("spirit")) && b.whole["plant"]
	b.whole["cask"] = b.cask(n.line("cask"))
	b.whole["unaged"] = b.unaged()
	b.expects(n)
	strayEdits(n, b.diags)
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
func (b *builder) places(path recipe.Path, n *node) {
	b.where(path, n.at())
	b.lines(path, n)
}

func (b *builder) lines(path recipe.Path, n *node) {
	for _, l := range n.lines {
		if !l.field.Repeat {
			b.where(path.Child(l.field.Name), l.at())
		}
	}
}

// plant finds the plant: the one named, or the only one.
func (b *builder) plant(n *node) {
	h := b.house
	var name string
	switch {
	case n != nil:
		name = n.text("plant")
	case b.node.present("at"):
		return
	case len(h.Plants) == 1:
		name = h.Plants[0].Name
	case len(h.Plants) == 0 && slices.ContainsFunc(h.files, func(f *file) bool { return len(f.lost) > 0 }):
		return // it may be in what could not be read
	case len(h.Plants) == 0:
		b.add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: "the house has no plant", At: b.node.at(),
			Help: "declare one in " + houseFile + ", for example: " + schema.Example(schema.Plant) + " { ... }",
		})
		return
	default:
		b.add(diag.Diagnostic{
			Code: diag.CodeNoPlant, Summary: "the house has several plants, and this batch does not say at which it is made", At: b.node.at(),
			Help: "add a line such as `at " + fmt.Sprintf("%q", h.Plants[0].Name) + "`",
		})
		return
	}
	p, ok := h.plants[nameKey(name)]
	if !ok && h.lost(schema.Plant, name) {
		return
	}
	if !ok {
		b.add(unknownName("plant", n.get("plant"), h.known.plants))
		return
	}
	b.batch.Plant, b.batch.Costs = p.plant, p.plant.Costs
	b.whole["plant"] = p.whole
	b.vague = p.node.bad || p.node.gaps || slices.ContainsFunc(p.node.lines, func(l *node) bool { return l.bad })
	b.places(recipe.PathPlant, p.node)
}

func (b *builder) style(n *node) {
	if n == nil {
		return
	}
	c := n.get("standard")
	if b.batch.Style = b.house.Stock.Standards[c.text()]; b.batch.Style == nil {
		b.unknown(schema.Standard, "standard of identity", c, b.house.known.standards)
	}
}

// The years in which a batch may begin.
const firstYear, lastYear = 1900, 2199

func (b *builder) start(n *node) {
	if n == nil {
		return
	}
	s := &b.batch.Start
	fmt.Sscanf(n.text("date"), "%d-%d-%d", &s.Year, &s.Month, &s.Day)
	if s.Year < firstYear || s.Year > lastYear {
		b.add(diag.Diagnostic{
			Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("the year %d is outside what `start` can be", s.Year), At: n.get("date").at(),
			Help: fmt.Sprintf("allowed: %d to %d; write the date as year-month-day", firstYear, lastYear), Reason: "no batch that anybody works from begins then",
		})
	}
	if c := n.get("clock"); c != nil {
		s.Hour, s.Minute, _ = parseClock(c.text())
	} else if p := b.batch.Plant; p != nil {
		s.Hour, s.Minute = p.Shift.FromMinute/60, p.Shift.FromMinute%60
	}
}

// vessel finds a vessel of a kind by its name, with a diagnostic if there is
// none.
func (b *builder) vessel(c *capture, kind recipe.VesselKind, sort string) *recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	var known []string
	for _, v := range b.batch.Plant.Vessels {
		if nameKey(v.Name) == nameKey(c.text()) {
			if v.Kind == kind {
				return v
			}
			b.add(diag.Diagnostic{
				Code: diag.CodeWrongVessel, Summary: fmt.Sprintf("%q is a %s, and a %s is wanted here", v.Name, v.Kind.String(), sort), At: c.at(),
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
		b.add(unknownName(sort, c, func() []string { return known }))
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
func (b *builder) only(kind recipe.VesselKind, n *node, better func(a, b *recipe.Vessel) bool) *recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	all := b.ofKind(kind)
	if len(all) == 0 && b.vague {
		return nil
	}
	if len(all) == 0 {
		b.add(diag.Diagnostic{
			Code: diag.CodeNoVessel, Summary: fmt.Sprintf("the plant has no %s", kind.String()), At: n.at(),
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
