package why

import (
	"newmake/compile/measure"
	"newmake/lang/recipe"
)

func (a *asked) stillKnobs() []knob {
	s, p := a.b.Strip, a.b.Spirit
	out := []knob{
		strengthKnob("wash run to "+said(s.StopAt), s.StopAt, a.where("strip.stop", "strip"), inStrip, func(b *recipe.Batch) *recipe.Strength { return &b.Strip.StopAt }),
	}
	if p.ForeshotsM3 > 0 {
		out = append(out, knob{name: "foreshots", by: byTenth, at: a.where("spirit.foreshots", "spirit"), stage: inSpirit, turn: func(b *recipe.Batch) { b.Spirit.ForeshotsM3 *= tenth }})
	}
	return append(out,
		a.cutKnob("hearts from ", p.HeartsFrom, func(b *recipe.Batch) *recipe.Cut { return &b.Spirit.HeartsFrom }),
		a.cutKnob("hearts to ", p.HeartsTo, func(b *recipe.Batch) *recipe.Cut { return &b.Spirit.HeartsTo }),
		strengthKnob("spirit run to "+said(p.Stop), p.Stop, a.where("spirit.stop", "spirit"), inSpirit, func(b *recipe.Batch) *recipe.Strength { return &b.Spirit.Stop }))
}

func (a *asked) cutKnob(name string, c recipe.Cut, of func(*recipe.Batch) *recipe.Cut) knob {
	k := knob{at: c.At, stage: inSpirit}
	switch c.By {
	case recipe.ByStrength:
		return strengthKnob(name+said(c.Strength), c.Strength, c.At, inSpirit, func(b *recipe.Batch) *recipe.Strength { return &of(b).Strength })
	case recipe.ByVolume:
		k.name, k.by, k.turn = name+a.u.Litres(1000*c.VolumeM3), byTenth, func(b *recipe.Batch) { of(b).VolumeM3 *= tenth }
	case recipe.ByVapourTemp:
		deg, by := a.degrees()
		k.name, k.by, k.turn = name+a.temp(c.TempC), by, func(b *recipe.Batch) { of(b).TempC += deg }
	default:
		k.name, k.by, k.turn = name+measure.Number(100*c.Share, 0)+" % of the charge", byPoint, func(b *recipe.Batch) { of(b).Share += point }
	}
	return k
}

func (a *asked) caskKnobs() []knob {
	c := a.b.Cask
	out := []knob{
		strengthKnob("entry at "+said(c.Entry), c.Entry, a.where("cask.entry", "cask"), inCask, func(b *recipe.Batch) *recipe.Strength { return &b.Cask.Entry }),
		{name: "size of the cask", by: byTenth, at: a.where("cask.fill", "cask"), stage: inCask, turn: func(b *recipe.Batch) { b.Cask.SizeM3 *= tenth }},
		{name: "rest in wood", by: byTenth, at: a.where("cask.rest", "cask"), stage: inCask, turn: func(b *recipe.Batch) { b.Cask.RestS *= tenth }},
	}
	if k := c.Kind; k != nil {
		out = append(out, knob{name: "soak of the wood", by: byPoint, at: k.Where["soak"], stage: inCask, turn: func(b *recipe.Batch) { b.Cask.Kind.SoakFrac += point }})
	}
	if c.BottleAt.Value > 0 {
		out = append(out, strengthKnob("bottled at "+said(c.BottleAt), c.BottleAt, a.where("cask.bottle.at", "cask"), inCask, func(b *recipe.Batch) *recipe.Strength { return &b.Cask.BottleAt }))
	}
	for _, loss := range []struct {
		field, name, path string
		of                func(*recipe.Climate) *float64
	}{
		{"loss-first-year", "loss of the first year", "plant.loss-first-year", func(c *recipe.Climate) *float64 { return &c.LossFirstYear }},
		{"loss", "loss of a later year", "plant.loss", func(c *recipe.Climate) *float64 { return &c.LossYearly }},
	} {
		k := knob{name: loss.name, by: byPoint, stage: inCask}
		field := c.Climate.Named + "-" + loss.field
		m := a.b.Models["cask"]
		switch {
		case *loss.of(&c.Climate) > 0:
			k.at, k.turn = a.where(loss.path, "cask.climate", "plant.climate"), func(b *recipe.Batch) { *loss.of(&b.Cask.Climate) += point }
		case m != nil && m.Values[field] > 0:
			k.at, k.turn = m.Where[field], func(b *recipe.Batch) { constant(b, "cask", field, func(v float64) float64 { return v + point }) }
		default:
			continue
		}
		out = append(out, k)
	}
	return out
}
