package recipe

import "newmake/lang/quantity"

// plantRows are the values of the plant that a batch is made in, apart from its
// vessels and its prices.
var plantRows = []row[Batch]{
	{Row{Path: PathElevation, Vary: "elevation"}, func(b *Batch) []Cell { return cells(length(&b.Plant.ElevationM)) }},
	{Row{Path: PathWater, Vary: "supply of water"}, func(b *Batch) []Cell { return cells(temperature(&b.Plant.WaterC)) }},
	{Row{Path: PathWater, Name: "warmest water", Vary: "warmest water", Maybe: true}, func(b *Batch) []Cell { return cells(temperature(&b.Plant.WarmestC).from("warm")) }},
	{Row{Path: PathWater, Name: "warmest month"}, func(b *Batch) []Cell { return cells(datum(&b.Plant.WarmestIn)) }},
	{Row{Path: PathWater, Name: "hardness", Vary: "hardness of the water"}, func(b *Batch) []Cell { return cells(ppm(&b.Plant.HardnessPPM).from("ppm")) }},
	{Row{Path: PathAmbient, Vary: "air of the house"}, func(b *Batch) []Cell {
		return cells(temperature(&b.Plant.AmbientC), temperature(&b.Ferm.AmbientC).apart())
	}},
	{Row{Path: PathBoiler, Vary: "boiler", Maybe: true}, func(b *Batch) []Cell { return cells(power(&b.Plant.BoilerW)) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's surface"}, func(b *Batch) []Cell { return cells(datum(&b.Plant.WortCooler.Surface)) }},
	{Row{Path: PathWortCooler, Name: "wort cooler", Vary: "area of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(area(&b.Plant.WortCooler.AreaM2).from("area")) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's heat transfer", Vary: "heat transfer of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(transfer(&b.Plant.WortCooler.WM2K).from("transfer")) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's water", Vary: "water of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(flow(&b.Plant.WortCooler.WaterM3S).from("flow")) }},
	{Row{Path: PathRates.Child("mill"), Vary: "pace of the mill", Maybe: true}, func(b *Batch) []Cell { return cells(massFlow(&b.Plant.Rates.MillKgS)) }},
	{Row{Path: PathRates.Child("grain-in"), Vary: "pace of the grain", Maybe: true}, func(b *Batch) []Cell { return cells(massFlow(&b.Plant.Rates.GrainInKgS)) }},
	{Row{Path: PathRates.Child("water-in"), Vary: "pace of the water", Maybe: true}, func(b *Batch) []Cell { return cells(flow(&b.Plant.Rates.WaterInM3S)) }},
	{Row{Path: PathRates.Child("pump"), Vary: "pace of the pump", Maybe: true}, func(b *Batch) []Cell { return cells(flow(&b.Plant.Rates.PumpM3S)) }},
	{Row{Path: PathRates.Child("dig"), Vary: "pace of digging", Maybe: true}, func(b *Batch) []Cell { return cells(massFlow(&b.Plant.Rates.DigKgS)) }},
	{Row{Path: PathShift}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Shift)) }},
	{Row{Path: PathCrew}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Crew)) }},
	{Row{Path: PathCountry}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Country)) }},
	{Row{Path: PathZone}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Zone)) }},
}

// vesselRows are the values of a vessel.
var vesselRows = []row[Vessel]{
	{Row{Path: PathOf("holds")}, func(v *Vessel) []Cell { return cells(volume(&v.HoldsM3)) }},
	{Row{Path: PathOf("heats"), Vary: "heating"}, func(v *Vessel) []Cell { return cells(power(&v.HeatsW)) }},
	{Row{Path: PathOf("agitator")}, func(v *Vessel) []Cell { return cells(datum(&v.Agitator)) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's area", Vary: "area of the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(area(&v.Preheater.AreaM2).from("area")) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's heat transfer", Vary: "heat transfer of the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(transfer(&v.Preheater.WM2K).from("transfer")) }},
	{Row{Path: PathOf("preheater"), Name: "time through the preheater", Vary: "time through the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(duration(&v.Preheater.OverS).from("duration")) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's pot ale", Vary: "pot ale for the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(temperature(&v.Preheater.PotAleC).from("ale")) }},
	{Row{Path: PathOf("preheater"), Name: "preheated wash", Vary: "wash preheated to", Maybe: true}, func(v *Vessel) []Cell { return cells(temperature(&v.Preheater.WashC).from("most")) }},
	{Row{Path: PathOf("heated")}, func(v *Vessel) []Cell { return cells(datum(&v.HeatedBy)) }},
	{Row{Path: PathOf("cools"), Vary: "cooling"}, func(v *Vessel) []Cell { return cells(power(&v.CoolsW).from("power")) }},
	{Row{Path: PathOf("cools"), Name: "cooling surface"}, func(v *Vessel) []Cell { return cells(datum(&v.Cooler.Surface)) }},
	{Row{Path: PathOf("cools"), Name: "cooling area", Vary: "cooling area", Maybe: true}, func(v *Vessel) []Cell { return cells(area(&v.Cooler.AreaM2).from("area")) }},
	{Row{Path: PathOf("cools"), Name: "heat transfer", Vary: "heat transfer", Maybe: true}, func(v *Vessel) []Cell { return cells(transfer(&v.Cooler.WM2K).from("transfer")) }},
	{Row{Path: PathOf("cools"), Name: "cooling water", Vary: "cooling water", Maybe: true}, func(v *Vessel) []Cell { return cells(flow(&v.Cooler.WaterM3S).from("flow")) }},
	{Row{Path: PathOf("condenser"), Name: "condenser water", Vary: "condenser water to", Maybe: true}, func(v *Vessel) []Cell { return cells(temperature(&v.Condenser.WaterOutC).from("out")) }},
	{Row{Path: PathOf("condenser"), Name: "distillate", Vary: "distillate at", Maybe: true}, func(v *Vessel) []Cell { return cells(temperature(&v.Condenser.DistillateC).from("temp")) }},
	{Row{Path: PathOf("reflux"), Vary: "reflux"}, func(v *Vessel) []Cell { return cells(share(&v.Reflux)) }},
	{Row{Path: PathOf("alcohol-lost"), Name: "alcohol lost", Vary: "alcohol lost", Maybe: true}, func(v *Vessel) []Cell { return cells(share(&v.LostFrac)) }},
	{Row{Path: PathOf("heating-surface"), Name: "heating surface covered by"}, func(v *Vessel) []Cell { return cells(volume(&v.CoveredM3)) }},
	{Row{Path: PathOf("clean"), Name: "cleaning", Vary: "cleaning", Maybe: true}, func(v *Vessel) []Cell { return cells(duration(&v.Clean.DurationS).from("duration")) }},
	{Row{Path: PathOf("clean"), Name: "cleaned with"}, func(v *Vessel) []Cell { return cells(datum(&v.Clean.With).from("text")) }},
	{Row{Path: PathOf("clean"), Name: "cleaned besides"}, func(v *Vessel) []Cell {
		return cells(duration(&v.Clean.DeepS).from("deep"), datum(&v.Clean.Deep).from("agent"), datum(&v.Clean.Every).from("number"))
	}},
	{Row{Path: PathOf("metal"), Vary: "metal"}, func(v *Vessel) []Cell { return cells(mass(&v.MetalKg)) }},
	{Row{Path: PathOf("loses")}, func(v *Vessel) []Cell { return cells(power(&v.LossW)) }},
	{Row{Path: PathOf("fills")}, func(v *Vessel) []Cell { return cells(share(&v.FillMost)) }},
}

// Values are those of a vessel.
func (x *Vessel) Values() []Value {
	v := &values{}
	gather(v, owner{path: PathPlant.Child(x.Name), name: x.Name, words: x.Name, where: in(x.Where)}, vesselRows, x)
	return v.out
}

// costRows are the prices of the house that go by no grain, yeast or enzyme.
var costRows = []row[Costs]{
	{Row{Path: PathOf("energy"), Vary: "price of energy"}, func(c *Costs) []Cell { return cells(price(&c.PerKWh, quantity.Energy)) }},
	{Row{Path: PathOf("water"), Vary: "price of water"}, func(c *Costs) []Cell { return cells(price(&c.PerM3Water, quantity.Volume)) }},
	{Row{Path: PathOf("cask"), Vary: "price of cask"}, func(c *Costs) []Cell { return cells(price(&c.PerCask, quantity.None)) }},
	{Row{Path: PathOf("used-cask"), Vary: "price of used-cask"}, func(c *Costs) []Cell { return cells(price(&c.PerUsedCask, quantity.None)) }},
	{Row{Path: PathOf("work"), Vary: "price of work"}, func(c *Costs) []Cell { return cells(price(&c.PerHour, quantity.Duration)) }},
	{Row{Path: PathOf("carrying")}, func(c *Costs) []Cell { return cells(Cell{Kind: quantity.PerYear, ref: &c.CarryingPerYear}) }},
	{Row{Path: PathOf("currency")}, func(c *Costs) []Cell { return cells(datum(&c.Currency)) }},
}

// prices gathers what the house says things cost.
func (v *values) prices() {
	c := &v.batch.Costs
	o := owner{path: PathCosts, where: in(c.Where)}
	for _, name := range sortedKeys(c.PerKg) {
		rows := []row[Costs]{{Row{Path: PathOf(name), Name: name, Vary: "price of " + name}, func(c *Costs) []Cell {
			return cells(Cell{Kind: quantity.UnitPrice, Per: quantity.Mass, ref: c.PerKg, key: name})
		}}}
		gather(v, o, rows, c)
	}
	gather(v, o, costRows, c)
}
