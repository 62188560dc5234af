// Package plants reads plants: their vessels, tanks and rack houses, the hours of work and
// the prices.
package plants

import (
	"cmp"
	"fmt"
	"strconv"

	"newmake/lang/check/internal/entries"
	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/tree"
	"newmake/lang/wording"
	"newmake/lang/zone"
)

// Plant is one plant of the house, read.
type Plant struct {
	Decl *house.Decl

	Plant *recipe.Plant
	Whole bool // it has all that a batch needs of it
	Diags diag.List
}

// Read reads a plant.
func Read(d *house.Decl, lib *entries.Library) *Plant {
	m := &Plant{Decl: d}
	diags, n := &m.Diags, d.Node()
	if n.Bad {
		diags = new(diag.List) // what is wrong with it is said
	}
	m.Plant, m.Whole = plant(n, lib, diags)
	return m
}

// plant reads one plant. whole says that nothing it needs is missing.
func plant(n *tree.Node, lib *entries.Library, diags *diag.List) (p *recipe.Plant, whole bool) {
	p = &recipe.Plant{
		Name:        n.Text("name"),
		WaterC:      12,
		HardnessPPM: 100,
		Shift:       fields.Shift(n.Line("shift"), "from", "end", fields.UsualShift, diags),
		Crew:        1,
		Zone:        "UTC",
		AmbientC:    20,
		Climate:     recipe.Climate{Named: cmp.Or(n.Word("climate"), "temperate")},
		At:          n.At(),
	}
	p.Read(fields.Text{In: n, At: recipe.PathPlant})
	whole = tree.Missing(diags, n, fmt.Sprintf("the plant %q", p.Name))
	readSupply(p, n.Line("water"), diags)
	if z := n.Line("zone"); z != nil {
		if _, err := zone.Load(p.Zone); err != nil {
			d := diag.Diagnostic{
				Code: diag.CodeUnknownZone, Summary: fmt.Sprintf("%q is not a time zone", p.Zone), At: z.Get("text").At(),
				Help: "write its name in the IANA database, such as \"America/New_York\" or \"Europe/London\"",
			}
			if city := spelling.Zone(p.Zone); city != "" {
				d.Help = fmt.Sprintf("write \"%s\": a zone is named by a city, for that says when the clocks change", city)
				d.Fix = &diag.Fix{At: d.At, Text: strconv.Quote(city), Label: "write \"" + city + "\""}
			}
			diags.Add(d)
			p.Zone = "UTC"
		}
	}
	if l := n.Line("country"); l != nil && lib.Find(schema.Country, p.Country) == nil {
		diags.Add(tree.UnknownName("country", l.Get("name"), func() []string { return lib.House().EntryNames(schema.Country) }))
		p.Country = ""
	}
	if l := n.Line("loss-first-year"); l != nil {
		p.Climate.LossFirstYear = l.Num("share")
	}
	if l := n.Line("loss"); l != nil {
		p.Climate.LossYearly = l.Num("peryear")
	}
	seen := make(map[string]diag.Span)
	for _, l := range n.Lines {
		if kind, ok := vesselKinds[l.Field.Name]; ok {
			whole = vessels(p, l, kind, seen, diags) && whole
		}
		if l.Field == schema.Tank {
			whole = tanks(p, l, seen, diags) && whole
		}
		if l.Field == schema.RackHouse {
			rackHouse(p, l, seen, diags)
		}
	}
	if n.Line("wort-cooler") == nil && (n.Present("wort-cooler") || n.Gaps) { // there is or may be one, whatever it is
		whole, p.WortCooler = false, recipe.Cooler{AreaM2: 1, WaterM3S: 1e-3}
	}
	p.Costs = costs(n.Line("costs"), lib, diags)
	return p, whole
}

var months = [...]string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// readSupply reads when the water is warmest, which is not when it is coldest.
func readSupply(p *recipe.Plant, l *tree.Node, diags *diag.List) {
	warm := l.Get("warm")
	if warm == nil {
		return
	}
	if warm.SI < p.WaterC {
		p.WarmestC = 0
		diags.Add(diag.Diagnostic{
			Code: diag.CodeRangeTurned, Summary: "the warmest water of the year is colder than the coldest", At: l.Get("temp").At().To(warm.At()),
			Help: "write the coldest first: " + wording.Example(warm.At(), "water 52 F to 68 F in aug"),
		})
		return
	}
	for i, m := range months {
		if l.Has(m) {
			p.WarmestIn = recipe.Month(i + 1)
		}
	}
}

// checkCondenser sees to it that a condenser's water leaves warmer than it ever comes in.
func checkCondenser(p *recipe.Plant, v *recipe.Vessel, l *tree.Node, diags *diag.List) {
	out, in := l.Get("out"), max(p.WaterC, p.WarmestC)
	if out != nil && out.SI < in+leastRiseK {
		diags.Add(diag.Diagnostic{
			Code: diag.CodeOutOfRange, Summary: fmt.Sprintf("condenser water that leaves at %s is hardly warmer than the plant's, at its warmest", wording.Decimal(out.Item.Value)+" "+out.Item.Unit), At: out.At(),
			Help:   "let it leave warmer: the less it is warmed, the more of it is wanted",
			Reason: "water takes up heat by warming, and a condenser that warms it by less than 5 K takes a stream of it (common practice)",
		})
		v.Condenser.WaterOutC = 0
	}
}

// leastRiseK is how much a condenser warms its water at least.
const leastRiseK = 5

var vesselKinds = map[string]recipe.VesselKind{
	"cooker": recipe.Cooker, "fermenter": recipe.Fermenter, "still": recipe.Still,
}

// vessels reads one block that declares one vessel or several alike.
func vessels(p *recipe.Plant, n *tree.Node, kind recipe.VesselKind, seen map[string]diag.Span, diags *diag.List) (whole bool) {
	whole = tree.Missing(diags, n, fmt.Sprintf("the %s %q", n.Field.Name, n.Text("name"))) && n.Sound()
	v := recipe.Vessel{
		Kind:  kind,
		Where: make(map[string]diag.Span, len(n.Lines)),
	}
	v.Read(fields.Text{In: n})
	for _, l := range n.Lines {
		v.Where[l.Field.Name] = l.At()
	}
	v.Within = fields.Within(n, diags)
	if n.Line("cools").Has("coil") {
		v.Cooler.Surface = recipe.CoilSurface
	}
	checkCondenser(p, &v, n.Line("condenser"), diags)
	for _, h := range []recipe.Heating{recipe.Direct, recipe.Elements} {
		if n.Line("heated").Has(h.String()) {
			v.HeatedBy = h
		}
	}
	if kind == recipe.Cooker && n.Line("agitator") == nil {
		v.Agitator = true
	}
	for _, c := range n.Match.All("name") {
		one := v
		one.Name, one.At = c.Text(), c.At()
		if at, twice := seen[tree.Key(one.Name)]; twice {
			diags.Add(house.Duplicate("vessel", one.Name, one.At, at))
			continue
		}
		seen[tree.Key(one.Name)] = one.At
		p.Vessels = append(p.Vessels, &one)
	}
	return whole
}
