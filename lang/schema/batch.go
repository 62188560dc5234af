package schema

// Batch is the declaration of a batch.
var Batch = &Field{
	Name: "batch", Shape: `NAME ["from" parent:NAME]`, Repeat: true, Key: "name", Example: `batch "Ferry Landing"`,
	Doc: "One batch from grain to cask, or a variant of another that states only what differs.",
	Block: &Block{Fields: []*Field{
		{Name: "at", Shape: "PLANT", Default: "the house's plant, if it has one", Example: `at "Lantern Hollow"`, Doc: "The plant."},
		{Name: "standard", Shape: `STANDARD ("," STANDARD)*`, Default: "none", Example: "standard bourbon", Doc: "The standard of identity against which the batch is held, or several: `bottled-in-bond, straight-rye`."},
		{Name: "start", Shape: "DATE [CLOCK]", Default: "a plan is asked for with its day, `newmake plan --on 2026-03-03`", Example: "start 2026-03-03 07:00", Doc: "When mash day begins, on the clock of the plant's zone; without a time, when the shift does."},
		{Name: "units", Shape: `"us"|"si"`, Default: "those in which most of the file is written; of a variant, most of it and of what it varies", Example: "units us", Doc: "The units in which the plan is printed."},
		feintsToday, backsetToday, keptToday, potAleToday, Bill, Mash, Ferment, Strip, Spirit, Cask, Bottle, PromiseLine, Remove,
	}},
}
