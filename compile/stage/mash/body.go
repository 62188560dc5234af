package mash

import (
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/starch"
	"newmake/compile/matter/stream"
	"newmake/lang/recipe"
)

// body is liquor with what is in it: the mash in the cooker, or the worts drawn
// from it.
//
// Its heat capacity counts what went in, water and dry matter, and not what has
// become of it: so hydrolysis, which binds water, changes no temperature.
type body struct {
	starch  starch.State
	enzymes starch.Enzymes

	solublesKg   float64
	insolublesKg float64
	backsetKg    float64 // its dissolved solids
	grainKg      float64 // as it was weighed

	waterInKg float64 // all water that went in, bound since or not
	dryJK     float64 // heat capacity of all else
	tempC     float64
}

func (b *body) empty() bool { return !(b.starch.WaterKg > 0) && b.grainKg == 0 }

func (b *body) heatCapacityJK() float64 { return b.waterInKg*waterJKgK + b.dryJK }

// dissolvedDryKg and dryKg are masses without the water bound by hydrolysis.
func (b *body) dissolvedDryKg() float64 {
	return b.starch.StarchKg() - b.starch.RawKg() + b.solublesKg + b.backsetKg
}

func (b *body) dryKg() float64 {
	return b.starch.StarchKg() + b.solublesKg + b.backsetKg + b.insolublesKg
}

// addGrain puts the parts of a grain in. Temperature is the caller's.
func (b *body) addGrain(k *starch.Constants, g *recipe.Grain, massKg float64) {
	access, measuredIn := k.AccessRaw, 0.0
	if g.Malted {
		access, measuredIn = k.AccessMalt, k.GelExtract
	}
	water, dry := massKg*g.Moisture, massKg*(1-g.Moisture)
	total := dry * g.Starch
	reached := total * access
	b.starch.Raw = append(b.starch.Raw, starch.Granules{
		LowC: g.GelLowC, HighC: g.GelHighC, Extract: measuredIn,
		TotalKg: reached, RawKg: reached, HeldKg: total - reached,
	})
	b.starch.WaterKg += water
	b.starch.GlucoseKg += dry * g.Sugars
	b.solublesKg += dry * g.Solubles
	b.insolublesKg += max(0, dry*(1-g.Starch-g.Sugars-g.Solubles))
	b.enzymes.AddMalt(k, g, massKg)
	b.grainKg += massKg
	b.waterInKg += water
	b.dryJK += grainJK(g, massKg) - water*waterJKgK
}

func grainJK(g *recipe.Grain, massKg float64) float64 {
	return massKg * fluid.GrainHeatCapacity(g.Moisture)
}

// takeLiquid moves the share f of the liquid, and all dissolved in it, to o.
// Granules and husk stay.
func (b *body) takeLiquid(o *body, f float64) {
	dryMoved := f * b.dissolvedDryKg()
	jk := 0.0
	if dry := b.dryKg(); dry > 0 {
		jk = b.dryJK * dryMoved / dry
	}
	waterIn := f * b.waterInKg
	o.tempC = mixC(o.heatCapacityJK(), o.tempC, waterIn*waterJKgK+jk, b.tempC, 0)
	b.dryJK, o.dryJK = b.dryJK-jk, o.dryJK+jk

	move := func(from, to *float64) {
		x := f * *from
		*from -= x
		*to += x
	}
	s, t := &b.starch, &o.starch
	move(&s.WaterKg, &t.WaterKg)
	move(&s.GelKg, &t.GelKg)
	move(&s.DextrinKg, &t.DextrinKg)
	move(&s.LimitDextrinKg, &t.LimitDextrinKg)
	move(&s.ClosedKg, &t.ClosedKg)
	move(&s.MaltotrioseKg, &t.MaltotrioseKg)
	move(&s.MaltoseKg, &t.MaltoseKg)
	move(&s.GlucoseKg, &t.GlucoseKg)
	move(&b.solublesKg, &o.solublesKg)
	move(&b.backsetKg, &o.backsetKg)
	move(&b.waterInKg, &o.waterInKg)
	move(&b.enzymes.Alpha, &o.enzymes.Alpha)
	move(&b.enzymes.Beta, &o.enzymes.Beta)
	move(&b.enzymes.BetaTail, &o.enzymes.BetaTail)
	move(&b.enzymes.Limit, &o.enzymes.Limit)
	move(&b.enzymes.LimitBound, &o.enzymes.LimitBound)
	for i := range b.enzymes.Added {
		a := &b.enzymes.Added[i]
		if i == len(o.enzymes.Added) {
			o.enzymes.Added = append(o.enzymes.Added, starch.Added{Name: a.Name, Enzyme: a.Enzyme})
		}
		move(&a.Activity, &o.enzymes.Added[i].Activity)
		move(&a.Dosed, &o.enzymes.Added[i].Dosed)
	}
}

// stream is the body as what flows on.
func (b *body) stream() stream.Stream {
	w := stream.Stream{
		SolublesKg: b.solublesKg, BacksetKg: b.backsetKg,
		InsolublesKg: b.insolublesKg, TempC: b.tempC,
	}
	b.starch.Into(&w, &b.enzymes)
	return w
}

// mixC is the temperature of two heat capacities mixed, with heat given out.
func mixC(aJK, aC, bJK, bC, heatJ float64) float64 {
	if aJK+bJK == 0 {
		return aC
	}
	return (aJK*aC + bJK*bC + heatJ) / (aJK + bJK)
}
