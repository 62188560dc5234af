package check

import (
	"fmt"
	"time"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// plant reads one plant. whole says that nothing it needs is missing.
func (h *House) plant(n *node, diags *diag.List) (p *recipe.Plant, whole bool) {
	if n.bad {
		diags = new(diag.List) // what is wrong with it is said
	}
	p = &recipe.Plant{
		Name:        n.text("name"),
		ElevationM:  n.si("elevation"),
		WaterC:      n.siOr("water", 12),
		HardnessPPM: 100,
		BoilerW:     n.si("boiler"),
		Shift:       h.shift(n.line("shift"), diags),
		Crew:        int(n.siOr("crew", 1)),
		Zone:        "UTC",
		AmbientC:    n.siOr("ambient", 20),
		Climate:     climate(n.word("climate")),
		At:          n.at(),
	}
	whole = missing(diags, n, fmt.Sprintf("the plant %q", p.Name))
	if c := n.line("water").get("ppm"); c != nil {
		p.HardnessPPM = c.si
	}
	if z := n.line("zone"); z != nil {
		p.Zone = z.text("text")
		if _, err := time.LoadLocation(p.Zone); err != nil || p.Zone == "Local" {
			diags.Add(diag.Diagnostic{
				Code: diag.CodeUnknownZone, Summary: fmt.Sprintf("%q is not a time zone", p.Zone), At: z.get("text").at(),
				Help: "write its name in the IANA database, such as \"America/New_York\" or \"Europe/London\"",
			})
			p.Zone = "UTC"
		}
	}
	if l := n.line("loss-first-year"); l != nil {
		p.Climate.LossFirstYear = l.num("share")
	}
	if l := n.line("loss"); l != nil {
		p.Climate.LossYearly = l.num("peryear")
	}
	seen := make(map[string]diag.Span)
	for _, l := range n.lines {
		if kind, ok := vesselKinds[l.field.Name]; ok {
			whole = h.vessels(p, l, kind, seen, diags) && whole
		}
	}
	p.Costs = costs(n.line("costs"), h.Stock, diags)
	return p, whole
}

var vesselKinds = map[string]recipe.VesselKind{
	"cooker": recipe.Cooker, "fermenter": recipe.Fermenter, "still": recipe.Still,
}

// vessels reads one block that declares one vessel or several alike.
func (h *House) vessels(p *recipe.Plant, n *node, kind recipe.VesselKind, seen map[string]diag.Span, diags *diag.List) (whole bool) {
	whole = missing(diags, n, fmt.Sprintf("the %s %q", n.field.Name, n.text("name"))) && n.sound()
	v := recipe.Vessel{
		Kind:     kind,
		HoldsM3:  n.si("holds"),
		HeatsW:   n.si("heats"),
		CoolsW:   n.si("cools"),
		Reflux:   n.si("reflux"),
		MetalKg:  n.si("metal"),
		LossW:    n.si("loses"),
		FillMost: n.si("fills"),
		Where:    make(map[string]diag.Span, len(n.lines)),
	}
	for _, l := range n.lines {
		v.Where[l.field.Name] = l.at()
	}
	if n.word("steam") == "direct" {
		v.Steam = recipe.Direct
	}
	for _, c := range n.m.all("name") {
		one := v
		one.Name, one.At = c.text(), c.at()
		if at, twice := seen[nameKey(one.Name)]; twice {
			diags.Add(duplicate("vessel", one.Name, one.At, at))
			continue
		}
		seen[nameKey(one.Name)] = one.At
		p.Vessels = append(p.Vessels, &one)
	}
	return whole
}

// duplicate says that a name is taken.
func duplicate(sort, name string, at, before diag.Span) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeDuplicate, Summary: fmt.Sprintf("the name %q is taken: it is another %s's", name, sort), At: at,
		Help:    "give one of them another name: names are unique in a house, whatever file they stand in",
		Related: []diag.Related{{At: before, Text: "the first one is here"}},
	}
}
