package recipe

import "newmake/lang/quantity"

// plantRows are the values of the plant that a batch is made in, apart from its
// vessels and its prices.
var plantRows = []row[Batch]{
	{Row{Path: PathElevation, Vary: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.ElevationM)) }},
	{Row{Path: PathWater, As: "supply of water"}, func(b *Batch) []Cell { return cells(number(&b.Plant.WaterC)) }},
	{Row{Path: PathWater, Name: "warmest water", Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.WarmestC).from("warm")) }},
	{Row{Path: PathWater, Name: "warmest month"}, func(b *Batch) []Cell { return cells(datum(&b.Plant.WarmestIn)) }},
	{Row{Path: PathWater, Name: "hardness", As: "hardness of the water"}, func(b *Batch) []Cell { return cells(number(&b.Plant.HardnessPPM).from("ppm")) }},
	{Row{Path: PathAmbient, As: "air of the house"}, func(b *Batch) []Cell {
		return cells(number(&b.Plant.AmbientC), temperature(&b.Ferm.AmbientC).apart())
	}},
	{Row{Path: PathBoiler, Vary: true, Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.BoilerW)) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's surface"}, func(b *Batch) []Cell { return cells(datum(&b.Plant.WortCooler.Surface)) }},
	{Row{Path: PathWortCooler, Name: "wort cooler", As: "area of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.WortCooler.AreaM2).from("area")) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's heat transfer", As: "heat transfer of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.WortCooler.WM2K).from("transfer")) }},
	{Row{Path: PathWortCooler, Name: "wort cooler's water", As: "water of the wort cooler", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.WortCooler.WaterM3S).from("flow")) }},
	{Row{Path: PathRates.Child("mill"), As: "pace of the mill", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.Rates.MillKgS)) }},
	{Row{Path: PathRates.Child("grain-in"), As: "pace of the grain", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.Rates.GrainInKgS)) }},
	{Row{Path: PathRates.Child("water-in"), As: "pace of the water", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.Rates.WaterInM3S)) }},
	{Row{Path: PathRates.Child("pump"), As: "pace of the pump", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.Rates.PumpM3S)) }},
	{Row{Path: PathRates.Child("dig"), As: "pace of digging", Maybe: true}, func(b *Batch) []Cell { return cells(number(&b.Plant.Rates.DigKgS)) }},
	{Row{Path: PathShift}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Shift)) }},
	{Row{Path: PathCrew}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Crew)) }},
	{Row{Path: PathCountry}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Country)) }},
	{Row{Path: PathZone}, func(b *Batch) []Cell { return cells(datum(&b.Plant.Zone)) }},
}

// vesselRows are the values of a vessel.
var vesselRows = []row[Vessel]{
	{Row{Path: PathOf("holds")}, func(v *Vessel) []Cell { return cells(number(&v.HoldsM3)) }},
	{Row{Path: PathOf("heats"), As: "heating"}, func(v *Vessel) []Cell { return cells(number(&v.HeatsW)) }},
	{Row{Path: PathOf("agitator")}, func(v *Vessel) []Cell { return cells(datum(&v.Agitator)) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's area", As: "area of the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Preheater.AreaM2).from("area")) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's heat transfer", As: "heat transfer of the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Preheater.WM2K).from("transfer")) }},
	{Row{Path: PathOf("preheater"), Name: "time through the preheater", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Preheater.OverS).from("duration")) }},
	{Row{Path: PathOf("preheater"), Name: "preheater's pot ale", As: "pot ale for the preheater", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Preheater.PotAleC).from("ale")) }},
	{Row{Path: PathOf("preheater"), Name: "preheated wash", As: "wash preheated to", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Preheater.WashC).from("most")) }},
	{Row{Path: PathOf("heated")}, func(v *Vessel) []Cell { return cells(datum(&v.HeatedBy)) }},
	{Row{Path: PathOf("cools"), As: "cooling"}, func(v *Vessel) []Cell { return cells(number(&v.CoolsW).from("power")) }},
	{Row{Path: PathOf("cools"), Name: "cooling surface"}, func(v *Vessel) []Cell { return cells(datum(&v.Cooler.Surface)) }},
	{Row{Path: PathOf("cools"), Name: "cooling area", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Cooler.AreaM2).from("area")) }},
	{Row{Path: PathOf("cools"), Name: "heat transfer", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Cooler.WM2K).from("transfer")) }},
	{Row{Path: PathOf("cools"), Name: "cooling water", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Cooler.WaterM3S).from("flow")) }},
	{Row{Path: PathOf("condenser"), Name: "condenser water", As: "condenser water to", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Condenser.WaterOutC).from("out")) }},
	{Row{Path: PathOf("condenser"), Name: "distillate", As: "distillate at", Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Condenser.DistillateC).from("temp")) }},
	{Row{Path: PathOf("reflux"), Vary: true}, func(v *Vessel) []Cell { return cells(number(&v.Reflux)) }},
	{Row{Path: PathOf("alcohol-lost"), Name: "alcohol lost", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.LostFrac)) }},
	{Row{Path: PathOf("heating-surface"), Name: "heating surface covered by"}, func(v *Vessel) []Cell { return cells(number(&v.CoveredM3)) }},
	{Row{Path: PathOf("clean"), Name: "cleaning", Vary: true, Maybe: true}, func(v *Vessel) []Cell { return cells(number(&v.Clean.DurationS).from("duration")) }},
	{Row{Path: PathOf("clean"), Name: "cleaned with"}, func(v *Vessel) []Cell { return cells(datum(&v.Clean.With).from("text")) }},
	{Row{Path: PathOf("clean"), Name: "cleaned besides"}, func(v *Vessel) []Cell {
		return cells(number(&v.Clean.DeepS).from("deep"), datum(&v.Clean.Deep).from("agent"), datum(&v.Clean.Every).from("number"))
	}},
	{Row{Path: PathOf("metal"), Vary: true}, func(v *Vessel) []Cell { return cells(number(&v.MetalKg)) }},
	{Row{Path: PathOf("loses")}, func(v *Vessel) []Cell { return cells(number(&v.LossW)) }},
	{Row{Path: PathOf("fills")}, func(v *Vessel) []Cell { return cells(number(&v.FillMost)) }},
}

// Values are those of a vessel.
func (x *Vessel) Values() []Value {
	v := &values{}
	gather(v, owner{path: PathPlant.Child(x.Name), name: x.Name, words: x.Name, where: in(x.Where)}, vesselKinds, vesselRows, x)
	return v.out
}

// costRows are the prices of the house that go by no grain, yeast or enzyme.
var costRows = []row[Costs]{
	{Row{Path: PathOf("energy"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerKWh, quantity.Energy)) }},
	{Row{Path: PathOf("water"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerM3Water, quantity.Volume)) }},
	{Row{Path: PathOf("cask"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerCask, quantity.None)) }},
	{Row{Path: PathOf("used-cask"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerUsedCask, quantity.None)) }},
	{Row{Path: PathOf("bottle"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerBottle, quantity.None)) }},
	{Row{Path: PathOf("work"), Vary: true}, func(c *Costs) []Cell { return cells(price(&c.PerHour, quantity.Duration)) }},
	{Row{Path: PathOf("carrying")}, func(c *Costs) []Cell { return cells(Cell{Kind: quantity.PerYear, ref: &c.CarryingPerYear}) }},
	{Row{Path: PathOf("currency")}, func(c *Costs) []Cell { return cells(datum(&c.Currency)) }},
}

// prices gathers what the house says things cost.
func (v *values) prices() {
	c := &v.batch.Costs
	o := owner{path: PathCosts, called: "price of ", where: in(c.Where)}
	for _, name := range sortedKeys(c.PerKg) {
		one := []row[Costs]{{Row{Path: PathOf(name), Vary: true}, func(c *Costs) []Cell {
			return cells(Cell{Kind: quantity.UnitPrice, Per: quantity.Mass, ref: c.PerKg, key: name})
		}}}
		gather(v, o, nil, one, c)
	}
	gather(v, o, nil, costRows, c)
}
