package check

import (
	"fmt"
	"time"
	_ "time/tzdata" // zones are known wherever the program runs

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const dayShape = `("mon"|"tue"|"wed"|"thu"|"fri"|"sat"|"sun")`

var plantField = &Field{
	Name: "plant", Shape: "NAME", Repeat: true, Key: "name", Example: `plant "Lantern Hollow"`,
	Doc: "A distillery: what sets every boiling point, hour and limit.",
	Block: &Block{Fields: []*Field{
		{
			Name: "elevation", Shape: "LENGTH", Need: true, Example: "elevation 1,150 ft",
			Doc: "Height above the sea, which sets every boiling point.",
			Limits: []Limit{
				mustBe(-430, 5100, "from the shore of the Dead Sea to the highest town on earth"),
				usually(-430, 3000, "above this the models of boiling are less sure"),
			},
		},
		{
			Name: "water", Shape: `TEMP ["," "hardness" PPM]`, Example: "water 58 F, hardness 90 ppm",
			Default: "12 C, hardness 100 ppm",
			Doc:     "The supply: its temperature sets strike and cooling, its hardness (as CaCO3) the mash pH.",
			Limits: []Limit{
				mustBe(0, 60, "a supply of water is liquid, and not hot").of("temp"),
				usually(2, 30, "supplies run from about 2 C to 30 C (common practice)").of("temp"),
				mustBe(0, 2000, "harder water than this is brine").of("ppm"),
			},
		},
		{
			Name: "boiler", Shape: "POWER", Example: "boiler 500 kW", Default: "no limit",
			Doc: "The boiler that all jackets and stills share.", Limits: []Limit{mustBe(1, 1e8, "a boiler has some power")},
		},
		{
			Name: "shift", Shape: `from:CLOCK "to" end:CLOCK ["," ` + dayShape + ` ["to" ` + dayShape + `] ("," ` + dayShape + ` ["to" ` + dayShape + `])*]`, Example: "shift 07:00 to 17:00, tue to sat",
			Default: "07:00 to 17:00, mon to fri",
			Doc:     "When somebody is there: work that needs a person falls in these hours.",
		},
		{
			Name: "crew", Shape: "NUMBER", Example: "crew 2", Default: "1", Doc: "How many people are on a shift.",
			Limits: []Limit{mustBe(1, 500, "somebody has to be there")},
		},
		{
			Name: "zone", Shape: "TEXT", Example: `zone "America/New_York"`, Default: `"UTC"`,
			Doc: "The time zone, by its name in the IANA database.",
		},
		{
			Name: "ambient", Shape: "TEMP", Example: "ambient 70 F", Default: "20 C",
			Doc:    "The air around the vessels.",
			Limits: []Limit{mustBe(-30, 60, "people work in it"), usually(0, 45, "people work in it")},
		},
		climateField,
		{
			Name: "loss-first-year", Shape: "SHARE", Example: "loss-first-year 6 %", Default: "by climate",
			Doc:    "Share of a 200 L cask's volume that is gone after one year, soak apart.",
			Limits: []Limit{mustBe(0, 0.4, "more than this is a leak, not the angels")},
		},
		{
			Name: "loss", Shape: "PERYEAR", Example: "loss 4 %/year", Default: "by climate",
			Doc:    "Share of a 200 L cask's volume that goes in each later year.",
			Limits: []Limit{mustBe(0, 0.3, "more than this is a leak, not the angels")},
		},
		vesselField("cooker", "A cooker or mash tun: here the mash is made.", `cooker "Copper kettle"`),
		vesselField("fermenter", "A fermenter.", `fermenter "North", "South"`),
		vesselField("still", "A pot still.", `still "Wash still"`),
		costsField,
	}},
}

// vesselField is the table of a vessel; the three kinds share it.
func vesselField(kind, doc, example string) *Field {
	heats := &Field{
		Name: "heats", Shape: "POWER", Example: "heats 170 kW", Doc: "Greatest power of its heating.",
		Limits: []Limit{mustBe(0, 1e7, "more than a power station gives")},
	}
	cools := &Field{
		Name: "cools", Shape: "POWER", Example: "cools 120 kW", Doc: "Greatest power of its cooling.", Default: "none",
		Limits: []Limit{mustBe(0, 1e7, "more than any cooler takes away")},
	}
	if kind == "fermenter" {
		heats.Default = "none"
	} else {
		heats.Need = true
	}
	return &Field{
		Name: kind, Shape: `NAME ("," NAME)*`, Repeat: true, Key: "name", Doc: doc, Example: example,
		Block: &Block{Fields: []*Field{
			{
				Name: "holds", Shape: "VOLUME", Need: true, Example: "holds 520 gal", Doc: "Volume to the brim.",
				Limits: []Limit{mustBe(0.001, 2000, "from a litre to the largest vessels of the trade")},
			},
			heats,
			{Name: "steam", Shape: `"jacket"|"direct"`, Example: "steam jacket", Default: "jacket", Doc: "How the heat gets in: through the wall, or as live steam whose condensate stays."},
			cools,
			{
				Name: "reflux", Shape: "SHARE", Example: "reflux 10 %", Default: "0 %", Doc: "Share of the vapour condensed in the head and returned.",
				Limits: []Limit{
					mustBe(0, 0.95, "with all of it returned nothing comes over"),
					usually(0, 0.4, "heads of pot stills return 10 to 30 % (common practice)"),
				},
			},
			{
				Name: "fills", Shape: "SHARE", Example: "fills 75 %", Default: "cooker 95 %, fermenter 90 %, still 75 %", Doc: "Greatest fill, as a share of what it holds.",
				Limits: []Limit{mustBe(0.05, 1, "a vessel can't be fuller than full")},
			},
			{
				Name: "metal", Shape: "MASS", Example: "metal 1,400 lb", Default: "by size", Doc: "Weight of the vessel, which warms with its contents.",
				Limits: []Limit{mustBe(0, 1e6, "heavier than any vessel of the trade")},
			},
			{
				Name: "loses", Shape: "POWER", Example: "loses 4 kW", Default: "by size", Doc: "Heat lost to the room at the boil.",
				Limits: []Limit{mustBe(0, 1e6, "more than any wall loses")},
			},
		}},
	}
}

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
