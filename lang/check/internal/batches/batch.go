// Package batches reads batches: a function a block, each of which gives its part of the
// recipe.
package batches

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"newmake/lang/check/internal/entries"
	"newmake/lang/check/internal/fields"
	"newmake/lang/check/internal/plants"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/inventory"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/trade"
	"newmake/lang/tree"
	"newmake/lang/words"
)

// Around is what a batch is read beside.
type Around struct {
	House   *house.House
	Library *entries.Library
	Plant   func(*house.Decl) *plants.Plant
	Stores  *inventory.Stores
}

// Batch is one batch of the house, read.
type Batch struct {
	Decl *house.Decl

	Batch *recipe.Batch // nil where it could not be read
	Diags diag.List
	Plant *plants.Plant
	Uses  []*entries.Entry // of the library
}

// reader is what the blocks of one batch, variants applied, are read with: where
// names are found, and where places and diagnostics go.
type reader struct {
	Around
	entry *Batch
	node  *tree.Node
	batch *recipe.Batch
	diags *diag.List
	whole map[string]bool // parts that can be reasoned about: "bill", "mash", ...
	none  []string        // grains of the bill of which there is nothing
	gone  []string        // grains that were in the bill of a batch it varies
	vague bool            // the plant could not be read whole: what it has is not sure
}

// Read reads a batch.
func Read(d *house.Decl, a Around) *Batch {
	e := &Batch{Decl: d}
	e.read(a)
	return e
}

func (e *Batch) read(a Around) {
	h := a.House
	chain := h.Chain(e.Decl)
	if e.Decl.Taken || slices.ContainsFunc(chain, func(a *house.Decl) bool { return a.Node().Bad }) {
		return // what is wrong with it is said
	}
	merged, changed := h.Merged(e.Decl, &e.Diags)
	if merged == nil {
		return
	}
	b := &reader{
		Around: a, node: merged, entry: e, diags: &e.Diags, whole: map[string]bool{},
		batch: &recipe.Batch{Name: e.Decl.Name, Where: make(map[recipe.Path]diag.Span, 96), Changes: changed, Models: entries.Mapped[recipe.Model](a.Library, schema.Model)},
	}
	for _, a := range chain[1:] {
		b.batch.Chain = append(b.batch.Chain, a.Name)
	}
	if len(b.batch.Chain) > 0 {
		b.batch.Parent = b.batch.Chain[0]
	}
	readBatch(b)
	e.Diags = append(e.Diags, trade.Check(b.batch, b.parts())...)
	e.Batch = b.batch
	e.inherit()
}

// inherit says of a variant's diagnostics that fall on lines of its parents whose
// they are.
func (e *Batch) inherit() {
	if e.Decl.Parent == "" {
		return
	}
	for i := range e.Diags {
		if d := &e.Diags[i]; !e.Decl.Has(d.At) {
			d.Related = append(slices.Clip(d.Related), diag.Related{At: e.Decl.At, Text: fmt.Sprintf("in the variant %q", e.Decl.Name)})
		}
	}
}

// written finds the units in which a batch is written: those of most of its file,
// or, of a variant, of most of what it says together with what it varies. It is US
// if there are as many of both.
func (b *reader) written() recipe.System {
	us, si := 0, 0
	if b.batch.Parent == "" {
		us, si = b.entry.Decl.File.Units()
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

// named finds an entry of the library, and notes that the batch uses it.
func named[T any](b *reader, f *schema.Field, name string) *T {
	m := b.Library.Find(f, name)
	if m == nil {
		return nil
	}
	b.entry.Uses = append(b.entry.Uses, m)
	return m.Value.(*T)
}

// entries lists the names of a sort of the library's entries.
func (b *reader) entries(f *schema.Field) func() []string {
	return func() []string { return b.House.EntryNames(f) }
}

// unknown says that nothing is called so, if that is sure.
func (b *reader) unknown(f *schema.Field, sort string, c *tree.Capture, names func() []string) {
	if !b.House.Lost(f, c.Text()) {
		b.add(tree.UnknownName(sort, c, names))
	}
}

// readBatch reads a batch block by block; each gives its part of the recipe, and
// whether it could be read whole.
func readBatch(b *reader) {
	n, r := b.node, b.batch
	tree.Missing(b.diags, n, fmt.Sprintf("the batch %q", r.Name))
	b.lines(recipe.Path{}, n)
	b.where(recipe.PathBatch, n.At())
	readAt(b, n.Line("at"))
	readStandard(b, n.Line("standard"))
	readStart(b, n.Line("start"))
	r.Gauge = b.written()
	r.Units = r.Gauge
	switch n.Word("units") {
	case "us":
		r.Units = recipe.US
	case "si":
		r.Units = recipe.SI
	}
	var whole bool
	r.Bill, b.whole["bill"] = readBill(b, n.Line("bill"))
	noteRemoved(b)
	r.Today = fields.Today(n)
	r.Mash, whole = readMash(b, n.Line("mash"))
	b.whole["mash"] = whole && b.whole["bill"] && b.whole["plant"]
	r.Ferm, whole = readFerment(b, n.Line("ferment"))
	b.whole["ferment"] = whole && b.whole["plant"]
	r.Resolve()
	r.Strip, whole = readStrip(b, n.Line("strip"))
	b.whole["strip"] = whole && b.whole["plant"]
	r.Spirit, whole = readSpirit(b, n.Line("spirit"))
	b.whole["spirit"] = whole && b.whole["plant"]
	r.Cask, b.whole["cask"] = readCask(b, n.Line("cask"))
	b.whole["unaged"] = readUnaged(b)
	r.Read(fields.Text{In: n})
	readPromises(b, n)
	house.StrayEdits(n, b.diags)
}

// parts says which parts of the batch the rules may reason about.
func (b *reader) parts() trade.Parts {
	return trade.Parts{
		Bill: b.whole["bill"], Mash: b.whole["mash"], Ferment: b.whole["ferment"],
		Strip: b.whole["strip"], Spirit: b.whole["spirit"], Cask: b.whole["cask"], Unaged: b.whole["unaged"],
	}
}

func (b *reader) add(d diag.Diagnostic) { b.diags.Add(d) }

// where notes the place of a value.
func (b *reader) where(path recipe.Path, at diag.Span) { b.batch.Where[path] = at }

// places notes the place of a block, and of each line of it that may stand once.
func (b *reader) places(path recipe.Path, n *tree.Node) {
	b.where(path, n.At())
	b.lines(path, n)
}

func (b *reader) lines(path recipe.Path, n *tree.Node) {
	for _, l := range n.Lines {
		if !l.Field.Repeat {
			b.where(path.Child(l.Field.Name), l.At())
		}
	}
}

// readAt finds the plant: the one named, or the only one.
func readAt(b *reader, n *tree.Node) {
	h := b.House
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
			Help: "declare one in " + house.FileName + ", for example: " + schema.Example(schema.Plant, b.node.At().Units()) + " { ... }",
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
	p := b.Around.Plant(h.Plants[i])
	b.entry.Plant = p
	b.batch.Plant, b.batch.Costs = p.Plant, p.Plant.Costs
	b.whole["plant"] = p.Whole
	node := p.Decl.Node()
	b.vague = node.Bad || node.Gaps || slices.ContainsFunc(node.Lines, func(l *tree.Node) bool { return l.Bad })
	b.places(recipe.PathPlant, node)
	if n := node.Line("rates"); n != nil {
		b.places(recipe.PathRates, n)
	}
}

func readStandard(b *reader, n *tree.Node) {
	if n == nil {
		return
	}
	var all []*recipe.Standard
	for _, c := range n.Match.All("standard") {
		if s := named[recipe.Standard](b, schema.Standard, c.Text()); s != nil {
			all = append(all, s)
		} else {
			b.unknown(schema.Standard, "standard of identity", c, b.entries(schema.Standard))
		}
	}
	b.batch.Standard = recipe.Both(all...)
}

// standIn is the day of a batch that names none.
var standIn = recipe.Start{Year: 2001, Month: 1, Day: 1, Hour: 7, Assumed: true}

// readStart reads the day of the mash. A batch that names none can still be
// computed: the first working day of a year that is long past stands in for it.
func readStart(b *reader, n *tree.Node) {
	s := &b.batch.Start
	if n == nil {
		*s = standIn
		if p := b.batch.Plant; p != nil {
			for i := range 7 { // 2001 began on a Monday
				if p.Shift.Days[(1+i)%7] {
					s.Day = 1 + i
					break
				}
			}
			s.Hour, s.Minute = p.Shift.FromMinute/60, p.Shift.FromMinute%60
		}
		return
	}
	s.Year, s.Month, s.Day = numbersOf(n.Text("date"))
	if s.Year < record.FirstYear || s.Year > record.LastYear {
		b.add(diag.Diagnostic{
			Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("the year %d is outside what `start` can be", s.Year), At: n.Get("date").At(),
			Help: fmt.Sprintf("allowed: %d to %d; write the date as year-month-day", record.FirstYear, record.LastYear), Reason: "no batch that anybody works from begins then",
		})
	}
	if c := n.Get("clock"); c != nil {
		at := fields.MinuteOfDay(c)
		s.Hour, s.Minute = at/60, at%60
	} else if p := b.batch.Plant; p != nil {
		s.Hour, s.Minute = p.Shift.FromMinute/60, p.Shift.FromMinute%60
	}
}

// findVessel finds a vessel of a kind by its name, with a diagnostic if there is
// none.
func findVessel(b *reader, c *tree.Capture, kind recipe.VesselKind, sort string) *recipe.Vessel {
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
				Help:    "the plant has " + listVessels(b, kind),
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

func vesselsOf(b *reader, kind recipe.VesselKind) []*recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(b.batch.Plant.Vessels), func(v *recipe.Vessel) bool { return v.Kind != kind })
}

func listVessels(b *reader, kind recipe.VesselKind) string {
	var names []string
	for _, v := range vesselsOf(b, kind) {
		names = append(names, fmt.Sprintf("%q", v.Name))
	}
	if len(names) == 0 {
		return "no " + kind.String()
	}
	return words.And(names)
}

// onlyVessel gives the vessel that is meant when none is named: the one that pick
// prefers. It says so if the plant has none.
func onlyVessel(b *reader, kind recipe.VesselKind, n *tree.Node, better func(a, b *recipe.Vessel) bool) *recipe.Vessel {
	if b.batch.Plant == nil {
		return nil
	}
	all := vesselsOf(b, kind)
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

// smaller takes the last of several that are alike, where larger takes the first: of two
// stills of one size each has its run.
func smaller(a, b *recipe.Vessel) bool { return a.HoldsM3 <= b.HoldsM3 }

// numbersOf parts a date as it is written, whether there is such a day or not.
func numbersOf(date string) (year, month, day int) {
	parts := strings.SplitN(date+"--", "-", 4)
	number := func(i int) int {
		n, _ := strconv.Atoi(parts[i])
		return n
	}
	return number(0), number(1), number(2)
}
