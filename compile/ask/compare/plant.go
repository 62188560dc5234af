package compare

import (
	"fmt"
	"maps"
	"slices"

	"newmake/lang/recipe"
)

// plantField is one figure of the plant.
type plantField struct {
	name string
	get  func(p *recipe.Plant) any
	say  func(s say, p *recipe.Plant) string
	set  func(to *recipe.Batch, from *recipe.Plant)
}

var plantFields = []plantField{
	{"elevation", func(p *recipe.Plant) any { return p.ElevationM }, func(s say, p *recipe.Plant) string { return s.length(p.ElevationM) },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.ElevationM = from.ElevationM }},
	{"water", func(p *recipe.Plant) any { return p.WaterC }, func(s say, p *recipe.Plant) string { return s.temp(p.WaterC) },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.WaterC = from.WaterC }},
	{"hardness", func(p *recipe.Plant) any { return p.HardnessPPM }, func(_ say, p *recipe.Plant) string { return number(p.HardnessPPM) + " ppm" },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.HardnessPPM = from.HardnessPPM }},
	{"ambient", func(p *recipe.Plant) any { return p.AmbientC }, func(s say, p *recipe.Plant) string { return s.temp(p.AmbientC) },
		func(to *recipe.Batch, from *recipe.Plant) {
			to.Plant.AmbientC, to.Ferm.AmbientC = from.AmbientC, from.AmbientC
		}},
	{"boiler", func(p *recipe.Plant) any { return p.BoilerW }, func(s say, p *recipe.Plant) string { return s.power(p.BoilerW) },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.BoilerW = from.BoilerW }},
	{"shift", func(p *recipe.Plant) any { return p.Shift }, func(_ say, p *recipe.Plant) string { return shiftWords(p.Shift) },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.Shift = from.Shift }},
	{"crew", func(p *recipe.Plant) any { return p.Crew }, func(_ say, p *recipe.Plant) string { return number(float64(p.Crew)) },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.Crew = from.Crew }},
	{"zone", func(p *recipe.Plant) any { return p.Zone }, func(_ say, p *recipe.Plant) string { return p.Zone },
		func(to *recipe.Batch, from *recipe.Plant) { to.Plant.Zone = from.Zone }},
}

func shiftWords(s recipe.Shift) string {
	days := ""
	for i := 1; i <= 7; i++ { // Monday first
		if s.Days[i%7] {
			days += " " + [...]string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}[i%7]
		}
	}
	clock := func(m int) string { return fmt.Sprintf("%02d:%02d", m/60, m%60) }
	return clock(s.FromMinute) + " to " + clock(s.ToMinute) + days
}

// vesselFields are the figures of one vessel.
var vesselFields = []struct {
	name string
	get  func(v *recipe.Vessel) any
	say  func(s say, v *recipe.Vessel) string
	set  func(to, from *recipe.Vessel)
}{
	{"holds", func(v *recipe.Vessel) any { return v.HoldsM3 }, func(s say, v *recipe.Vessel) string { return s.volume(v.HoldsM3) }, func(to, from *recipe.Vessel) { to.HoldsM3 = from.HoldsM3 }},
	{"heats", func(v *recipe.Vessel) any { return v.HeatsW }, func(s say, v *recipe.Vessel) string { return s.power(v.HeatsW) }, func(to, from *recipe.Vessel) { to.HeatsW = from.HeatsW }},
	{"steam", func(v *recipe.Vessel) any { return v.Steam }, func(_ say, v *recipe.Vessel) string { return [...]string{"jacket", "direct"}[v.Steam] }, func(to, from *recipe.Vessel) { to.Steam = from.Steam }},
	{"cools", func(v *recipe.Vessel) any { return v.CoolsW }, func(s say, v *recipe.Vessel) string { return s.power(v.CoolsW) }, func(to, from *recipe.Vessel) { to.CoolsW = from.CoolsW }},
	{"reflux", func(v *recipe.Vessel) any { return v.Reflux }, func(s say, v *recipe.Vessel) string { return s.share(v.Reflux) }, func(to, from *recipe.Vessel) { to.Reflux = from.Reflux }},
	{"metal", func(v *recipe.Vessel) any { return v.MetalKg }, func(s say, v *recipe.Vessel) string { return s.mass(v.MetalKg) }, func(to, from *recipe.Vessel) { to.MetalKg = from.MetalKg }},
	{"loses", func(v *recipe.Vessel) any { return v.LossW }, func(s say, v *recipe.Vessel) string { return s.power(v.LossW) }, func(to, from *recipe.Vessel) { to.LossW = from.LossW }},
	{"fills", func(v *recipe.Vessel) any { return v.FillMost }, func(s say, v *recipe.Vessel) string { return s.share(v.FillMost) }, func(to, from *recipe.Vessel) { to.FillMost = from.FillMost }},
}

// plant finds the edits of the house: its place, its people, the vessels that
// the batch uses, its prices.
func (d *Difference) plant() {
	o, n := d.Old.Plant, d.New.Plant
	for _, f := range plantFields {
		if f.get(o) == f.get(n) {
			continue
		}
		d.add(Edit{Part: OfPlant, Kind: Changed, Path: "plant." + f.name, Counts: true, What: "plant's " + f.name + " " + f.say(d.say, n),
			Lines: []Line{{Name: "plant's " + f.name, Old: f.say(d.say, o), New: f.say(d.say, n)}},
			apply: func(b *recipe.Batch) { f.set(b, n) }})
	}
	for _, v := range used(d.Old) {
		if w := vessel(n, v.Name); w != nil {
			d.vessel(v, w)
		}
	}
	renamed := d.renamed()
	for _, old := range slices.Sorted(maps.Keys(renamed)) {
		d.add(Edit{Part: OfPlant, Kind: Renamed, Path: "plant", What: "a vessel's name", Lines: []Line{{Name: "vessel", Old: old, New: renamed[old]}}})
	}
	d.prices()
}

func (d *Difference) vessel(v, w *recipe.Vessel) {
	for _, f := range vesselFields {
		if f.get(v) == f.get(w) {
			continue
		}
		d.add(Edit{Part: OfPlant, Kind: Changed, Path: fmt.Sprintf("plant.%q.%s", v.Name, f.name), Counts: true,
			What:  v.Name + " " + f.name + " " + f.say(d.say, w),
			Lines: []Line{{Name: v.Name + " " + f.name, Old: f.say(d.say, v), New: f.say(d.say, w)}},
			apply: func(b *recipe.Batch) {
				if x := vessel(b.Plant, v.Name); x != nil {
					f.set(x, w)
				}
			}})
	}
}

// used lists the vessels of a batch, each once.
func used(b *recipe.Batch) []*recipe.Vessel {
	all := append([]*recipe.Vessel{b.Mash.Cooker}, b.Ferm.Vessels...)
	all = append(all, b.Strip.Still, b.Spirit.Still)
	var out []*recipe.Vessel
	for _, v := range all {
		if !slices.Contains(out, v) {
			out = append(out, v)
		}
	}
	return out
}

func vessel(p *recipe.Plant, name string) *recipe.Vessel {
	for _, v := range p.Vessels {
		if v.Name == name {
			return v
		}
	}
	return nil
}

// renamed finds vessels that are the same under another name.
func (d *Difference) renamed() map[string]string {
	out := map[string]string{}
	taken := map[string]bool{}
	for _, v := range used(d.Old) {
		if vessel(d.New.Plant, v.Name) != nil {
			continue
		}
		for _, w := range used(d.New) {
			if vessel(d.Old.Plant, w.Name) == nil && !taken[w.Name] && v.Kind == w.Kind && sameVessel(v, w) {
				out[v.Name], taken[w.Name] = w.Name, true
				break
			}
		}
	}
	return out
}

func sameVessel(v, w *recipe.Vessel) bool {
	for _, f := range vesselFields {
		if f.get(v) != f.get(w) {
			return false
		}
	}
	return true
}

// renamedVessel says that a field which names vessels differs by their names
// alone.
func (d *Difference) renamedVessel(f field) bool {
	names := d.renamed()
	if len(names) == 0 {
		return false
	}
	to := func(v *recipe.Vessel) string {
		if n, ok := names[v.Name]; ok {
			return n
		}
		return v.Name
	}
	switch f.path {
	case "mash":
		return to(d.Old.Mash.Cooker) == d.New.Mash.Cooker.Name
	case "strip":
		return to(d.Old.Strip.Still) == d.New.Strip.Still.Name
	case "spirit":
		return to(d.Old.Spirit.Still) == d.New.Spirit.Still.Name
	case "ferment":
		return slices.EqualFunc(d.Old.Ferm.Vessels, d.New.Ferm.Vessels, func(v, w *recipe.Vessel) bool { return to(v) == w.Name })
	}
	return false
}

// prices is one edit, however many of them changed.
func (d *Difference) prices() {
	o, n := d.Old.Costs, d.New.Costs
	e := Edit{Part: OfPlant, Kind: Changed, Path: "plant.costs", Counts: true, What: "prices",
		apply: func(b *recipe.Batch) { b.Costs = n }}
	add := func(name, unit string, old, new float64) {
		if old != new {
			say := func(x float64) string {
				if x == 0 {
					return ""
				}
				return number(x) + " " + unit
			}
			e.Lines = append(e.Lines, Line{Name: name, Old: say(old), New: say(new)})
		}
	}
	perKg, mass := d.say.or("lb", "kg"), 1.0
	perM3, volume := d.say.or("gal", "m3"), 1.0
	if perKg == "lb" {
		mass, volume = kgPerPound, m3PerGallon
	}
	names := slices.Sorted(maps.Keys(n.PerKg))
	for _, name := range slices.Sorted(maps.Keys(o.PerKg)) {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for _, name := range names {
		add(name, n.Currency+"/"+perKg, o.PerKg[name]*mass, n.PerKg[name]*mass)
	}
	add("energy", n.Currency+"/kWh", o.PerKWh, n.PerKWh)
	add("water", n.Currency+"/"+perM3, o.PerM3Water*volume, n.PerM3Water*volume)
	add("cask", n.Currency, o.PerCask, n.PerCask)
	add("used-cask", n.Currency, o.PerUsedCask, n.PerUsedCask)
	add("work", n.Currency+"/h", o.PerHour, n.PerHour)
	if o.Currency != n.Currency {
		e.Lines = append(e.Lines, Line{Name: "currency", Old: o.Currency, New: n.Currency})
	}
	if len(e.Lines) > 0 {
		d.add(e)
	}
}
