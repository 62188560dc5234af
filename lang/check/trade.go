package check

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// trade holds the recipe against the rules of the trade and the law. Each part
// speaks only if all that it reasons about could be read.
func (b *builder) trade() {
	if b.whole["mash"] {
		w := b.walk()
		b.tradeSteps(w)
		b.tradeGrain(w)
		b.tradeStarch(w)
		b.tradeEnzymes(w)
		if b.converts(w) {
			b.tradeCook(w)
		}
		b.tradeThickness(w)
		b.tradeDoses(w)
		b.tradeVolumes(w)
		if b.whole["ferment"] {
			b.tradeSet(w)
			b.tradePitch(w.outM3())
		}
	}
	if b.whole["ferment"] {
		b.tradeFerment()
	}
	if b.whole["spirit"] {
		b.tradeSpirit()
	}
	if b.whole["cask"] {
		b.tradeCask()
	}
	b.law()
}

// at is the place of a value, or of the nearest thing around it that has one.
func (b *builder) at(path string) diag.Span {
	for p := path; p != ""; {
		if at, ok := b.batch.Where[p]; ok {
			return at
		}
		cut := len(p) - 1
		for cut > 0 && p[cut] != '.' {
			cut--
		}
		p = p[:cut]
	}
	return b.batch.Where["batch"]
}

// temp writes a temperature in the reader's units.
func (b *builder) temp(c float64) string {
	if b.batch.Units == recipe.US {
		return decimal(float64(int(c*9/5+32+0.5))) + " F"
	}
	return decimal(float64(int(c*10+0.5))/10) + " C"
}

// volume writes a volume in the reader's units.
func (b *builder) volume(m3 float64) string {
	if b.batch.Units == recipe.US {
		return decimal(m3/galM3) + " gal"
	}
	return decimal(m3*1000) + " L"
}

// percent writes a share.
func percent(share float64) string { return decimal(share*100) + " %" }

// otherScale helps where a temperature makes sense only on the other scale: 190 C
// for 190 F. It fits if the number as written, on the other scale, lies within.
func otherScale(d *diag.Diagnostic, c *capture, low, high float64) {
	v, unit, other := c.item.Value, c.item.Unit, "F"
	si := tempC(v)
	if unit == "F" || unit == "°F" || unit == "ºF" {
		other, si = "C", v
	}
	if si < low || si > high || c.item.UnitAt().IsZero() {
		return
	}
	d.Help = fmt.Sprintf("did you mean `%s %s`? %s", c.item.Num, other, d.Help)
	d.Fix = &diag.Fix{At: c.item.UnitAt(), Text: other, Label: fmt.Sprintf("write `%s %s`", c.item.Num, other)}
}
