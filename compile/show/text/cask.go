package text

import (
	"fmt"

	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// cask is what becomes of the hearts: reduced, and filled into wood, bottled or
// kept.
func (t *text) cask() {
	p := t.p
	if r := p.Reduction; r != nil {
		t.Heading("REDUCTION")
		t.fact("hearts", t.Volume(r.From), "at "+t.Strength(r.From.Strength()))
		t.fact("water to add", t.Quantity(r.Water()), t.Mass(r.WaterScaleKg)+" on the scale, to "+t.Strength(r.To.Strength()))
		t.fact("gives", t.Volume(r.To), t.Quantity(r.Contraction())+" less than spirit and water; warms by "+t.TempDiff(r.TempRiseC))
	}
	c := p.Cask
	if c.SizeL == 0 {
		t.unaged()
		return
	}
	t.Heading("CASK: " + t.caskWords())
	if c.Before != nil {
		of := "a run before it"
		if c.BeforeOf != "" {
			of = "run " + diag.Safe(c.BeforeOf)
		}
		t.fact("mingled with", t.Volume(*c.Before), "at entry strength, left by "+of)
	}
	if c.Fill != nil {
		each := "each "
		if c.Casks == 1 {
			each = ""
		}
		note := fmt.Sprintf("%s%s at %s, %s", each, t.Volume(*c.Fill), t.Strength(c.Fill.Strength()), pure(t.Units, *c.Fill))
		if c.LastFill != nil && c.Casks > 1 {
			note += "; the last one " + t.Volume(*c.LastFill)
		}
		t.fact("filled", words.Count(c.Casks, "cask"), note)
		tare := "the empty cask, within a tenth"
		if c.TareSaid {
			tare = "the empty cask, as the batch says"
		}
		t.fact("weighs", t.Mass(c.GrossKg), "gross: "+t.Mass(c.NetKg)+" net, "+t.Mass(c.TareKg)+" "+tare)
	} else {
		t.fact("filled", "none", "there is not enough for one")
	}
	if c.Leftover.VolumeL > 0 {
		t.fact("left over", t.Volume(c.Leftover), fmt.Sprintf("at entry strength, %s of a cask", pct(c.LeftoverOf, 0)))
	}
}

// unaged is a batch that goes into no wood.
func (t *text) unaged() {
	hearts := t.fraction("hearts")
	switch c := t.p.Cask; {
	case hearts.VolumeL == 0:
	case c.Bottles > 0:
		t.Heading("BOTTLED: unaged, in no wood")
		t.fact("bottles", measure.Number(float64(c.Bottles), 0), fmt.Sprintf("of %s mL at %s", measure.Number(c.BottleL*1000, 0), t.Strength(c.BottleAt)))
	default:
		t.Heading("KEPT: unaged, in no wood")
		t.fact("spirit", t.hearts(), "at "+t.Strength(c.BottleAt)+", as it comes from the still; no bottling strength is stated")
	}
}

func (t *text) caskWords() string {
	c := t.p.Cask
	words := t.Litres(c.SizeL)
	if c.New {
		words += " new "
	} else {
		words += " used "
	}
	words += diag.Safe(c.Kind)
	if c.Char > 0 {
		words += fmt.Sprintf(", char %d", c.Char)
	}
	return words
}

func (t *text) forecast() {
	c := t.p.Cask
	if len(c.Forecast) == 0 {
		return
	}
	t.Heading(fmt.Sprintf("FORECAST: one cask of %s, %s rack house", t.Litres(c.SizeL), diag.Safe(c.Climate)))
	tab := columns.Table{}
	us := t.Units == measure.US
	if us {
		tab.Row("age", "volume", "strength", "proof gallons")
	} else {
		tab.Row("age", "volume", "strength", "pure alcohol")
	}
	for _, y := range c.Forecast {
		strength, pure := measure.Number(y.AbvPct, 1)+" % vol", measure.Number(y.PureL, 1)+" L"
		if us {
			strength, pure = measure.Number(y.Proof, 1)+" proof", measure.Number(y.ProofGallons, 1)
		}
		tab.Row(measure.Years(y.AgeYears), t.Quantity(y.Volume()), strength, pure)
	}
	tab.Write(&t.page)
	if c.Bottles > 0 {
		t.Para(2, 4, fmt.Sprintf("About %s from %s after %s%s.",
			t.bottles(), words.Count(c.Casks, "cask"), measure.Years(c.RestMonths/12), t.bottledAs()))
	}
	t.Para(2, 4, "A forecast from published averages: each cask goes its own way.")
}

// bottles is how many, of what, at what strength.
func (t *text) bottles() string {
	c := t.p.Cask
	return fmt.Sprintf("%s of %s mL at %s", words.Count(c.Bottles, "bottle"), measure.Number(c.BottleL*1000, 0), t.Strength(c.BottleAt))
}

// bottledAs says where the bottling strength comes from, if not from the batch.
func (t *text) bottledAs() string {
	switch c := t.p.Cask; {
	case c.BottleAsked != nil:
		return fmt.Sprintf(", as it comes from the cask: it is weaker than the %s asked for", t.Strength(*c.BottleAsked))
	case c.BottleAssumed:
		return "; the batch states no bottling strength"
	default:
		return ""
	}
}

// version says from which text the plan was made.
func (t *text) version() {
	if words := t.p.Source.String(); words != "" {
		t.Gap()
		t.Para(2, 4, "Made from "+diag.Safe(words)+".")
	}
}
