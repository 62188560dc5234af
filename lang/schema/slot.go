package schema

import (
	"newmake/lang"
	"newmake/lang/quantity"
)

// SlotType is what an upper-case word in a shape stands for.
type SlotType struct {
	Name    string
	Item    lang.ItemKind
	Kind    quantity.Kind // of a Number or Range
	Say     string        // "a volume", "the name of a grain"
	Example string
	Names   string // the sort of thing it names, "" if none
}

// SlotTypes is the table of what may stand in a shape.
var SlotTypes = []SlotType{
	quantitySlot("MASS", quantity.Mass, "640 lb"),
	quantitySlot("VOLUME", quantity.Volume, "330 gal"),
	quantitySlot("TEMP", quantity.Temperature, "158 F"),
	quantitySlot("TEMPDIFF", quantity.TempDifference, "4 F"),
	quantitySlot("DURATION", quantity.Duration, "45 min"),
	quantitySlot("LENGTH", quantity.Length, "1,150 ft"),
	quantitySlot("POWER", quantity.Power, "170 kW"),
	quantitySlot("AREA", quantity.Area, "40 sqft"),
	quantitySlot("FLOW", quantity.Flow, "12 gal/min"),
	quantitySlot("MASSFLOW", quantity.MassFlow, "66 lb/min"),
	quantitySlot("TRANSFER", quantity.HeatTransfer, "300 W/m2/K"),
	quantitySlot("WARMING", quantity.HeatingRate, "2 F/min"),
	quantitySlot("STRENGTH", quantity.Strength, "63 % abv"),
	quantitySlot("GRAVITY", quantity.Gravity, "1.062"),
	quantitySlot("SHARE", quantity.Share, "15 %"),
	quantitySlot("CONC", quantity.Concentration, "0.6 g/L"),
	quantitySlot("DOSE", quantity.Dose, "0.5 g/kg"),
	quantitySlot("RATE", quantity.Rate, "0.4 /h"),
	quantitySlot("PRESSURE", quantity.Pressure, "98 kPa"),
	quantitySlot("MOLARENERGY", quantity.MolarEnergy, "178 kJ/mol"),
	quantitySlot("LINTNER", quantity.DiastaticPower, "120 lintner"),
	quantitySlot("DU", quantity.DextrinizingUnit, "50 DU"),
	quantitySlot("PPM", quantity.PartsPerMillion, "90 ppm"),
	quantitySlot("TESTWEIGHT", quantity.TestWeight, "56 lb/bushel"),
	quantitySlot("BUSHELS", quantity.Bushel, "12 bushel"),
	quantitySlot("PH", quantity.PH, "5.4 pH"),
	quantitySlot("PROOFGAL", quantity.ProofGallons, "52 proof-gal"),
	quantitySlot("PERYEAR", quantity.PerYear, "4 %/year"),
	quantitySlot("PROOFPERYEAR", quantity.StrengthPerYear, "1 proof/year"),
	quantitySlot("MONEY", quantity.Money, "310 USD"),
	quantitySlot("PRICE", quantity.UnitPrice, "0.18 USD/lb"),
	quantitySlot("NUMBER", quantity.Number, "2"),

	{Name: "QUANTITY", Item: lang.Number, Kind: quantity.None, Say: "a number with its unit", Example: "34.6 kJ/mol"},
	{Name: "DATE", Item: lang.Date, Say: "a date", Example: "2026-03-03"},
	{Name: "CLOCK", Item: lang.Clock, Say: "a time of day", Example: "07:00"},
	{Name: "TEXT", Item: lang.String, Say: "a text in quotes", Example: `"America/New_York"`},
	{Name: "WORD", Item: lang.Word, Say: "a word", Example: "oak"},

	nameSlot("NAME", "", "a name", `"Ferry Landing"`),
	nameSlot("PLANT", "plant", "the name of a plant", `"Lantern Hollow"`),
	nameSlot("VESSEL", "vessel", "the name of a vessel", `"Copper kettle"`),
	nameSlot("BATCH", "batch", "the name of a batch", `"Ferry Landing"`),
	nameSlot("GRAIN", "grain", "the name of a grain", "corn"),
	nameSlot("YEAST", "yeast", "the name of a yeast", "distillers-yeast"),
	nameSlot("ENZYME", "enzyme", "the name of an enzyme", "alpha-amylase"),
	nameSlot("WOOD", "wood", "the name of a wood", "charred-oak"),
	nameSlot("CASK", "cask", "the serial of a cask", `"LH-0012"`),
	nameSlot("STANDARD", "standard", "the name of a standard of identity", "bourbon"),
}

func quantitySlot(name string, k quantity.Kind, example string) SlotType {
	return SlotType{Name: name, Item: lang.Number, Kind: k, Say: k.String(), Example: example}
}

// nameSlot is a slot for a bare word or a quoted text; its Item is not looked at.
func nameSlot(name, of, say, example string) SlotType {
	if of == "" {
		of = "name"
	}
	return SlotType{Name: name, Names: of, Say: say, Example: example}
}

var slotByName = func() map[string]*SlotType {
	m := make(map[string]*SlotType, len(SlotTypes))
	for i := range SlotTypes {
		m[SlotTypes[i].Name] = &SlotTypes[i]
	}
	return m
}()

// IsQuantity reports whether the slot holds a number.
func (t *SlotType) IsQuantity() bool { return t.Names == "" && t.Item == lang.Number }
