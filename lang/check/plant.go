package check

import (
	"fmt"
	"sync"
	"time"
	_ "time/tzdata" // zones are known wherever the program runs

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/tree"
)

// plant is one plant of the house, read.
type plant struct {
	decl *house.Decl

	once  sync.Once
	plant *recipe.Plant
	whole bool // it has all that a batch needs of it
	diags diag.List
}

// read reads a plant.
func (m *plant) read(s *library) {
	diags, n := &m.diags, m.decl.Node()
	if n.Bad {
		diags = new(diag.List) // what is wrong with it is said
	}
	m.plant, m.whole = readPlant(n, s.house, diags)
}

// readPlant reads one plant. whole says that nothing it needs is missing.
func readPlant(n *tree.Node, h *house.House, diags *diag.List) (p *recipe.Plant, whole bool) {
	p = &recipe.Plant{
		Name:        n.Text("name"),
		ElevationM:  n.SI("elevation"),
		WaterC:      n.SIOr("water", 12),
		HardnessPPM: 100,
		BoilerW:     n.SI("boiler"),
		Shift:       shift(n.Line("shift"), diags),
		Crew:        int(n.SIOr("crew", 1)),
		Zone:        "UTC",
		AmbientC:    n.SIOr("ambient", 20),
		Climate:     climate(n.Word("climate")),
		At:          n.At(),
	}
	whole = tree.Missing(diags, n, fmt.Sprintf("the plant %q", p.Name))
	if c := n.Line("water").Get("ppm"); c != nil {
		p.HardnessPPM = c.SI
	}
	if z := n.Line("zone"); z != nil {
		p.Zone = z.Text("text")
		if _, err := time.LoadLocation(p.Zone); err != nil || p.Zone == "Local" {
			diags.Add(diag.Diagnostic{
				Code: diag.CodeUnknownZone, Summary: fmt.Sprintf("%q is not a time zone", p.Zone), At: z.Get("text").At(),
				Help: "write its name in the IANA database, such as \"America/New_York\" or \"Europe/London\"",
			})
			p.Zone = "UTC"
		}
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
	}
	p.Costs = costs(n.Line("costs"), h, diags)
	return p, whole
}

var vesselKinds = map[string]recipe.VesselKind{
	"cooker": recipe.Cooker, "fermenter": recipe.Fermenter, "still": recipe.Still,
}

// vessels reads one block that declares one vessel or several alike.
func vessels(p *recipe.Plant, n *tree.Node, kind recipe.VesselKind, seen map[string]diag.Span, diags *diag.List) (whole bool) {
	whole = tree.Missing(diags, n, fmt.Sprintf("the %s %q", n.Field.Name, n.Text("name"))) && n.Sound()
	v := recipe.Vessel{
		Kind:     kind,
		HoldsM3:  n.SI("holds"),
		HeatsW:   n.SI("heats"),
		CoolsW:   n.SI("cools"),
		Reflux:   n.SI("reflux"),
		MetalKg:  n.SI("metal"),
		LossW:    n.SI("loses"),
		FillMost: n.SI("fills"),
		Where:    make(map[string]diag.Span, len(n.Lines)),
	}
	for _, l := range n.Lines {
		v.Where[l.Field.Name] = l.At()
	}
	if n.Word("steam") == "direct" {
		v.Steam = recipe.Direct
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
