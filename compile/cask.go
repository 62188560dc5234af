package compile

import (
	"fmt"
	"math"

	"newmake/compile/cask"
	"newmake/compile/fluid"
	"newmake/compile/gauge"
	"newmake/compile/plan"
	"newmake/compile/stream"
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
	spirit, ok := c.reduce()
	if !ok {
		return true
	}
	in := cask.Input{
		SpiritEthanolKg: spirit.EthanolKg, SpiritWaterKg: spirit.WaterKg, SizeM3: k.SizeM3, Kind: k.Kind, Used: !k.New,
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

// reduce brings the hearts to entry strength.
func (c *compiler) reduce() (stream.Stream, bool) {
	k := c.b.Cask
	hearts := lotOf(c.hearts)
	to, err := massFrac(k.Entry)
	if err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the entry strength", err, "cask.entry", "cask")
	}
	now := c.hearts.EthanolKg / (c.hearts.EthanolKg + c.hearts.WaterKg)
	entry := strengthOf(to)
	c.p.Cask.Entry = entry
	if now < to {
		c.tell(diag.Diagnostic{
			Code: diag.CodeBelowEntry, At: c.where("cask.entry", "cask"),
			Summary: fmt.Sprintf("the hearts come at %s, and are to go into wood at %s", c.say.Strength(hearts.Strength()), c.say.Strength(entry)),
			Help:    "end the hearts earlier, or fill at a lower strength",
			Reason:  "water only weakens",
		})
		return stream.Stream{}, false
	}
	r, err := gauge.Reduce(c.hearts.EthanolKg, c.hearts.WaterKg, to, c.b.Plant.AmbientC)
	if err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the reduction", err, "cask.entry", "cask")
	}
	spirit := c.hearts
	spirit.WaterKg += r.WaterKg
	c.p.Reduction = &plan.Reduction{
		From: hearts, To: lotOf(spirit), WaterL: r.WaterM3 * litresPerM3, WaterKg: r.WaterKg,
		ContractionL: r.ContractionM3 * litresPerM3, TempRiseC: r.TempRiseC,
	}
	if c.p.Card, err = c.card(c.hearts, to, r); err != nil {
		return stream.Stream{}, c.fail(diag.CodeCaskFailed, "the proofing card", err, "cask.entry", "cask")
	}
	return spirit, true
}

func (c *compiler) caskPlan(r cask.Result, in cask.Input, spirit stream.Stream) plan.Cask {
	k := c.b.Cask
	all := lotOf(spirit)
	p := plan.Cask{
		Kind: k.Kind.Name, New: k.New, Char: k.Char, SizeL: k.SizeM3 * litresPerM3, Entry: c.p.Cask.Entry, Casks: r.Casks,
		Leftover: scaleLot(all, r.LeftoverM3*litresPerM3/all.VolumeL), LeftoverOf: 100 * r.LeftoverM3 / k.SizeM3,
		RestMonths: k.RestS / cask.YearS * monthYear, Climate: k.Climate.Named,
		BottleL: in.BottleM3 * litresPerM3, BottleAt: strengthAbv(in.BottleABV), Bottles: r.Bottles,
	}
	if r.Casks == 0 {
		return p
	}
	fill := scaleLot(all, k.SizeM3*litresPerM3/all.VolumeL)
	p.Fill = &fill
	for _, y := range r.Years {
		p.Forecast = append(p.Forecast, plan.CaskYear{
			AgeYears: y.AgeYears, VolumeL: y.VolumeM3 * litresPerM3, AbvPct: 100 * y.ABV, Proof: y.Proof,
			PureL: y.VolumeM3 * litresPerM3 * y.ABV, ProofGallons: y.ProofGallons,
		})
	}
	last := r.Years[len(r.Years)-1]
	p.AngelsPct = 100 * (1 - last.VolumeM3/k.SizeM3)
	return p
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
	if w, err := massFrac(s); err == nil && s.Value > 0 {
		return fluid.ABVFromMassFrac(w)
	}
	return bottled
}

// leftoverSmall is the share of a cask below which what is left over is not
// worth a word: the sheet shows it, and it goes into the next batch's cask.
const leftoverSmall = 0.30

func (c *compiler) caskTold(r cask.Result) {
	k := c.b.Cask
	size := c.say.Litres(k.SizeM3 * litresPerM3)
	for _, p := range r.Problems {
		switch p {
		case cask.ProblemNotOneCask:
			short := (k.SizeM3 - r.LeftoverM3) * litresPerM3
			c.tell(diag.Diagnostic{
				Code: diag.CodeCaskNotFilled, At: c.where("cask.fill", "cask"),
				Summary: fmt.Sprintf("%s at entry strength does not fill a cask of %s: %s short", c.say.Litres(r.LeftoverM3*litresPerM3), size, c.say.Litres(short)),
				Help:    "a larger bill, wider hearts, a lower entry strength, or a smaller cask",
				Reason:  "an ullaged cask oxidizes and leaks, and its head dries out",
			})
			return
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
	if over := r.LeftoverM3 / k.SizeM3; over > leftoverSmall {
		c.tell(diag.Diagnostic{
			Code: diag.CodeLeftover, At: c.where("cask.fill", "cask"),
			Summary: fmt.Sprintf("%s is left over at entry strength, %.0f %% of a cask", c.say.Litres(r.LeftoverM3*litresPerM3), math.Floor(100*over)),
			Help:    "keep it for the next batch's cask, or fit the batch to whole casks",
		})
	}
}
