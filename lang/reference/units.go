package reference

import (
	"newmake/lang/explain"
	"newmake/lang/quantity"
	"newmake/lang/schema"
)

// values lists what the words in capitals stand for.
func (d *document) values() {
	d.text("## Values")
	d.printf("| in a form | stands for | for example | units |\n|---|---|---|---|\n")
	for _, t := range schema.SlotTypes {
		units := ""
		if t.Kind != quantity.None {
			units = list(quantity.Units(t.Kind))
		}
		if units == "" && quantity.AllowsBare(t.Kind) {
			units = "none"
		}
		d.printf("| %s | %s | `%s`%s | %s |\n", t.Name, t.Say, t.Example, inLitres(t.Example), units)
	}
	d.printf("| DAY | a day of the week | `tue` | |\n| STEP | which step of the mash | `cool to 148 F` | |\n\n")
	d.text("A price is a currency of three capitals and a unit, as `0.16 USD/lb`; which\ncurrency it is stays the house's business. `£`, `€` and `¥` are read for GBP, EUR\nand JPY, behind the amount or before it: `540 £`, `£540`, `£0.48/kg`.")
}

// units lists every unit by what it measures.
func (d *document) units() {
	d.text("Both US customary and metric units are read, and a plan is printed in those in\nwhich most of its file is written, or in those that `units` names.")
	d.printf("| unit | also read | measures | worth | source |\n|---|---|---|---|---|\n")
	for _, u := range quantity.All() {
		measures, worth := "", ""
		for i, m := range u.Measures {
			if i > 0 {
				measures += "; "
			}
			measures += m.Kind.String()
			if w := explain.Worth(u.Name, m); w != "" && worth == "" {
				worth = w
			}
		}
		d.printf("| `%s` | %s | %s | %s | %s |\n", u.Name, list(u.Aliases), measures, worth, u.Source)
	}
	d.printf("\n")
}
