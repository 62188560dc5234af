package compile

import (
	"fmt"
	"math"

	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/gauge"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const (
	bottleUS  = 0.750e-3 // m3, usual bottles (27 CFR 5.203; Directive 2007/45/EC)
	bottleSI  = 0.700e-3
	monthYear = 12.0
	bottled   = 0.40 // volume fraction, where neither the batch nor its style says
)

// cask reduces the hearts and fills the wood.
func (c *compiler) cask() bool {
	k := c.b.Cask
	if c.hearts.MassKg() <= 0 {
		return true // the run has said why
	}
	if !c.inWood() {
		return c.unaged()
	}
	spirit, ok := c.reduce(k.Entry, "cask.entry")
	if !ok {
		return true
	}
	c.p.Cask.Entry = c.p.Card.Target
	in := cask.Input{
		SpiritEthanolKg: spirit.EthanolKg, SpiritWaterKg: spirit.WaterKg, SizeM3: c.sizeM3(spirit), Kind: k.Kind, Used: !k.New,
		Climate: k.Climate, RestS: k.RestS, BottleM3: c.bottleM3(), BottleABV: c.bottleABV(), Model: c.b.Models["cask"],
	}
	r, err := cask.Forecast(in)
	if err != nil {
		return c.fail(diag.CodeCaskFailed, "the cask", err, "cask")
	}
	c.p.Cask = c.caskPlan(r, in, spirit)
	c.caskTold(r)
	c.fillWork()
	return true
}

// inWood says if the batch goes into casks at all.
func (c *compiler) inWood() bool { return c.b.Cask.Kind != nil && c.b.Cask.SizeM3 > 0 }

// sizeM3 is what a cask takes of the spirit, counted at 20 C: the written size
// is that of the spirit as it is gauged, so that casks and what is left over
// come to the whole.
func (c *compiler) sizeM3(spirit stream.Stream) float64 {
	return c.b.Cask.SizeM3 * spirit.VolumeAtM3(referenceC) / spirit.VolumeAtM3(c.gaugeC())
}

// reduce brings the hearts to a strength that is written on a path.
func (c *compiler) reduce(strength recipe.Strength, path string) (stream.Stream, bool) {
	hearts := lotOf(c.hearts)
	to, err := massFrac(strength)
	if err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the reduction", err, path, "cask", "batch")
	}
	now := c.hearts.EthanolKg / (c.hearts.EthanolKg + c.hearts.WaterKg)
	target := strengthOf(to)
	if now < to {
		goes := "go into wood"
		if !c.inWood() {
			goes = "be bottled"
		}
		c.tell(diag.Diagnostic{
			Code: diag.CodeBelowEntry, At: c.where(path, "cask", "batch"),
			Summary: fmt.Sprintf("the hearts come at %s, and are to %s at %s", c.say.Strength(hearts.Strength()), goes, c.say.Strength(target)),
			Help:    "end the hearts earlier, or ask for a lower strength",
			Reason:  "water only weakens",
		})
		return stream.Stream{}, false
	}
	r, err := gauge.Reduce(c.hearts.EthanolKg, c.hearts.WaterKg, to, c.b.Plant.AmbientC)
	if err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the reduction", err, path, "cask", "batch")
	}
	spirit := c.hearts
	spirit.WaterKg += r.WaterKg
	p := &plan.Reduction{
		From: hearts, To: lotOf(spirit), WaterL: r.WaterM3 * litresPerM3, WaterKg: r.WaterKg,
		ContractionL: r.ContractionM3 * litresPerM3, TempRiseC: r.TempRiseC, WaterGallons: waterGal(r.WaterKg),
	}
	p.ContractionGallons = hearts.WineGallons + p.WaterGallons - p.To.WineGallons
	c.p.Reduction = p
	if c.p.Card, err = c.card(c.hearts, to, r); err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the proofing card", err, path, "cask", "batch")
	}
	return spirit, true
}

func (c *compiler) caskPlan(r cask.Result, in cask.Input, spirit stream.Stream) plan.Cask {
	k := c.b.Cask
	all := lotOf(spirit)
	lot := func(m3 float64) plan.Lot { return all.Times(m3 * litresPerM3 / all.VolumeL) }
	p := plan.Cask{
		Kind: k.Kind.Name, New: k.New, Char: k.Char, SizeL: k.SizeM3 * litresPerM3, Entry: c.p.Cask.Entry, Casks: r.Casks,
		Leftover: lot(r.LeftoverM3), LeftoverOf: 100 * r.LeftoverM3 / in.SizeM3,
		RestMonths: k.RestS / cask.YearS * monthYear, Climate: k.Climate.Named,
		BottleL: in.BottleM3 * litresPerM3, BottleAt: strengthAbv(r.BottledABV), BottleAssumed: k.BottleAt.Value == 0, Bottles: r.Bottles,
	}
	if r.BottledABV < in.BottleABV {
		asked := strengthAbv(in.BottleABV)
		p.BottleAsked = &asked
	}
	if r.Casks == 0 {
		return p
	}
	filledM3 := in.SizeM3
	if r.LastM3 > 0 {
		last := lot(r.LastM3)
		if p.LastFill = &last; r.Casks == 1 {
			filledM3 = r.LastM3
		}
	}
	fill := lot(filledM3)
	p.Fill = &fill
	for _, y := range r.Years {
		w := y.EthanolKg / (y.EthanolKg + y.WaterKg)
		p.Forecast = append(p.Forecast, plan.CaskYear{
			AgeYears: y.AgeYears, VolumeL: y.VolumeM3 * litresPerM3, AbvPct: 100 * y.ABV, Proof: y.Proof,
			PureL: y.VolumeM3 * litresPerM3 * y.ABV, ProofGallons: y.ProofGallons,
			WineGallons: y.VolumeM3 * fluid.Density(w, referenceC) / fluid.Density(w, fluid.SixtyF) / fluid.USGallonM3,
		})
	}
	last := r.Years[len(r.Years)-1]
	p.AngelsPct = 100 * (1 - last.VolumeM3/filledM3)
	return p
}

// unaged is a batch that goes into no wood: reduced to its bottling strength and
// bottled, or kept as it comes if it asks for none.
func (c *compiler) unaged() bool {
	k := c.b.Cask
	kept := c.hearts
	if k.BottleAt.Value > 0 {
		spirit, ok := c.reduce(k.BottleAt, "cask.bottle.at")
		if !ok {
			return true
		}
		kept = spirit
		c.p.Cask.BottleL = c.bottleM3() * litresPerM3
		c.p.Cask.Bottles = int(math.Floor(lotOf(kept).VolumeL/c.p.Cask.BottleL + 1e-9))
	}
	c.p.Cask.BottleAt, c.p.Cask.BottleAssumed = lotOf(kept).Strength(), k.BottleAt.Value == 0
	c.keepWork(kept)
	return true
}

// bottleM3 is the bottle that is counted, the usual one if none is written.
func (c *compiler) bottleM3() float64 {
	switch {
	case c.b.Cask.BottleM3 > 0:
		return c.b.Cask.BottleM3
	case c.b.Units == recipe.SI:
		return bottleSI
	default:
		return bottleUS
	}
}

// bottleABV is the bottling strength, by volume at 20 C: as written, or the
// least that the style allows, or 40 %.
func (c *compiler) bottleABV() float64 {
	s := c.b.Cask.BottleAt
	if s.Value == 0 && c.b.Style != nil {
		for _, k := range c.b.Style.Conditions {
			if k.Test == recipe.BottledLeast {
				s = k.Strength
			}
		}
	}
	if s.Value == 0 {
		s.Value = bottled
		if c.b.Gauge == recipe.US {
			s.Basis = recipe.Proof
		}
	}
	w, err := massFrac(s)
	if err != nil {
		return bottled
	}
	return fluid.ABVFromMassFrac(w)
}

// leftoverSmall is the share of a cask below which what is left over is not
// worth a word: the sheet shows it, and it goes into the next batch's cask.
const leftoverSmall = 0.30

func (c *compiler) caskTold(r cask.Result) {
	k, p := c.b.Cask, c.p.Cask
	size := c.say.Litres(p.SizeL)
	for _, problem := range r.Problems {
		switch problem {
		case cask.ProblemNotOneCask:
			c.tell(diag.Diagnostic{
				Code: diag.CodeCaskNotFilled, At: c.where("cask.fill", "cask"),
				Summary: fmt.Sprintf("%s at entry strength does not fill a cask of %s: %s short", c.say.Volume(p.Leftover), size, c.short(p.Leftover)),
				Help:    "a larger bill, wider hearts, a lower entry strength, or a smaller cask",
				Reason:  "an ullaged cask oxidizes and leaks, and its head dries out",
			})
			return
		case cask.ProblemShort:
			which := "the cask"
			if p.Casks > 1 {
				which = "the last cask"
			}
			c.tell(diag.Diagnostic{
				Code: diag.CodeCaskNotFilled, At: c.where("cask.fill", "cask"),
				Summary: fmt.Sprintf("%s takes %s of its %s: it is filled %s short", which, c.say.Volume(*p.LastFill), size, c.short(*p.LastFill)),
				Help:    "top it up with spirit of the same kind that is left over; a larger bill or wider hearts fill it",
				Reason:  "from 97 % full a cask is as good as full (common practice)",
			})
		case cask.ProblemWeak:
			c.tell(diag.Diagnostic{
				Code: diag.CodeBelowBottling, At: c.where("cask.bottle", "cask.rest", "cask"),
				Summary: fmt.Sprintf("after its rest the cask is at %s, weaker than the bottling strength of %s",
					c.say.Strength(strengthAbv(r.Years[len(r.Years)-1].ABV)), c.say.Strength(strengthAbv(c.bottleABV()))),
				Help: "a higher entry strength, a shorter rest, or a lower bottling strength",
			})
		case cask.ProblemDry:
			c.tellAs(diag.Warning, diag.Diagnostic{
				Code: diag.CodeBelowBottling, At: c.where("cask.rest", "cask"),
				Summary: "the cask runs dry before its rest ends", Help: "a shorter rest, or a larger cask",
			})
		case cask.ProblemClimate:
			c.tellAs(diag.Warning, diag.Diagnostic{
				Code: diag.CodeCaskFailed, At: c.where("cask.climate", "cask"),
				Summary: "the losses and the change of proof that are stated cannot both be; the change of proof gives way",
				Help:    "mend the climate's figures",
			})
		}
	}
	if over := c.volumeOf(p.Leftover) / k.SizeM3; over > leftoverSmall {
		c.tell(diag.Diagnostic{
			Code: diag.CodeLeftover, At: c.where("cask.fill", "cask"),
			Summary: fmt.Sprintf("%s is left over at entry strength, %.0f %% of a cask", c.say.Volume(p.Leftover), math.Floor(100*over)),
			Help:    "keep it for the next batch's cask, or fit the batch to whole casks",
		})
	}
}

// short is how much a lot lacks to fill a cask.
func (c *compiler) short(l plan.Lot) string {
	m3 := c.b.Cask.SizeM3 - c.volumeOf(l)
	return c.say.Quantity(c.ofLot(m3, l))
}
