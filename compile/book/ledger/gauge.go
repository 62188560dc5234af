package ledger

import (
	"fmt"

	"newmake/compile/made"
	"newmake/compile/matter/fluid"
	"newmake/lang/record"
)

// gauge is spirit that was measured: how, and what it comes to.
type gauge struct {
	of      string // a run, a cask, a vat
	what    string // production, fill, dump, ...
	on      record.Date
	visit   *record.Visit
	serial  int
	ethanol float64 // kg
	amount  cents

	tareKg, grossKg, netKg float64
	volumeM3, atC          float64 // as it was read; where nobody took its temperature, at that of the units
	abv                    float64 // at 20 C
	wineGal                float64 // at 60 F
	readProof, readC       float64 // as the hydrometer read, where it was one of proof
	byWeight               bool
	off                    float64 // of a gauge by weight that was dipped as well: the dip's alcohol over the weight's, less 1
}

// azeotrope is the strongest that a still makes at about the pressure of the air: 95.6 %
// of ethanol by mass (CRC Handbook of Chemistry and Physics, 97th edition, table of
// azeotropic data), here as a share by volume at 20 C.
var azeotrope = fluid.ABVFromMassFrac(0.956)

// read is a reading of a visit as it was known, nil if it has none.
func (f *fold) read(v *record.Visit, what ...record.What) *record.Reading {
	for i := range v.Read {
		for _, w := range what {
			if v.Read[i].What != w {
				continue
			}
			r := v.Read[i].AsOf(f.known)
			if _, ok := r.Holds(); ok {
				return &r
			}
		}
	}
	return nil
}

// strength is the strength that was read on a visit, by volume at 20 C; 0 if none was.
func (f *fold) strength(v *record.Visit) float64 {
	r := f.read(v, record.Strength)
	if r == nil {
		return 0
	}
	c, ok := made.Strength(r)
	switch {
	case !ok:
		f.want(Missing{What: fmt.Sprintf("no spirit reads %s at that temperature", r.Value), Mend: f.correcting(v, r), In: "below it, if it was a slip of the pen", at: v.At, wrong: true})
		return 0
	case c.SI > azeotrope:
		f.want(Missing{What: fmt.Sprintf("%s is stronger than any still makes: %.1f %% vol, 95.6 %% by mass", r.Value, 100*azeotrope), Mend: f.correcting(v, r), In: "below it, if it was a slip of the pen", at: v.At, wrong: true})
		return 0
	}
	return c.SI
}

// volume is a volume that was read on a visit, in m3, and how warm it was: by what stands
// with it, by its sample, or by what its unit is meant at.
func (f *fold) volume(v *record.Visit, what ...record.What) (m3, atC float64, ok bool) {
	r := f.read(v, what...)
	if r == nil {
		return 0, 0, false
	}
	now, _ := r.Holds()
	if at, said := r.Sample(); said {
		return now.SI, at, true
	}
	if s := f.read(v, record.Strength); s != nil {
		if at, said := s.Sample(); said {
			return now.SI, at, true
		}
	}
	return now.SI, made.MeantAt(now.Unit), true
}

const referenceC = 20

// mass is a weight that was read on a visit, in kg as a scale weighs.
func (f *fold) mass(v *record.Visit, what record.What) (kg float64, ok bool) {
	r := f.read(v, what)
	if r == nil {
		return 0, false
	}
	now, _ := r.Holds()
	return now.SI, true
}

// measured is what a visit measured: by weight, where the gross and a tare are known, else
// by volume. abv and tareKg are those of before, 0 if not known: what is read on the line
// goes before. It is not ok where the line does not say how much, or how strong.
func (f *fold) measured(v *record.Visit, what, of string, abv, tareKg float64, volumes ...record.What) (g gauge, ok bool) {
	g = gauge{of: of, what: what, on: f.today, visit: v, abv: abv}
	if s := f.strength(v); s > 0 {
		g.abv = s
	}
	if r := f.read(v, record.Strength); r != nil {
		now, _ := r.Holds()
		if at, said := r.Sample(); said && now.Unit == "proof" {
			g.readProof, g.readC = now.Number, at
		}
	}
	if g.abv == 0 {
		return g, false
	}
	w, err := fluid.MassFracFromABV(g.abv)
	if err != nil {
		return g, false
	}
	own, said := f.mass(v, record.Tare)
	if said {
		tareKg = own
	}
	gross, weighed := f.mass(v, record.Gross)
	m3, atC, dipped := f.volume(v, volumes...)
	byVolume := 0.0
	if dipped {
		g.volumeM3, g.atC = m3, atC
		byVolume = m3 * fluid.Density(w, atC) * w
	}
	switch {
	case weighed && tareKg > 0 && gross >= tareKg:
		g.tareKg, g.grossKg, g.netKg, g.byWeight = tareKg, gross, gross-tareKg, true
		kg := g.netKg / fluid.MassInAirKg(1, fluid.Density(w, fluid.SixtyF))
		g.ethanol = kg * w
		if dipped && g.ethanol > 0 {
			g.off = byVolume/g.ethanol - 1
		}
	case dipped:
		g.ethanol = byVolume
		g.tareKg = tareKg
	default:
		return g, false
	}
	g.wineGal = fluid.WineGallons(g.ethanol/w, w)
	g.amount = alcohol(g.ethanol)
	return g, true
}

// part is what a volume of a strength holds: a sample, a leak.
func (f *fold) part(v *record.Visit, what record.What, abv float64) (cents, bool) {
	if s := f.strength(v); s > 0 {
		abv = s
	}
	m3, atC, ok := f.volume(v, what)
	if !ok || abv == 0 {
		return cents{}, false
	}
	w, err := fluid.MassFracFromABV(abv)
	if err != nil {
		return cents{}, false
	}
	return alcohol(m3 * fluid.Density(w, atC) * w), true
}

// gauged keeps a gauge for the record.
func (f *fold) gauged(g gauge) {
	n := 1
	for i := len(f.gauges) - 1; i >= 0; i-- {
		if o := f.gauges[i]; o.on.Year == g.on.Year {
			n = o.serial + 1
			break
		}
	}
	g.serial = n
	f.gauges = append(f.gauges, g)
	if g.byWeight && (g.off > gaugesDiffer || g.off < -gaugesDiffer) {
		f.odd = append(f.odd, Check{What: "weight and volume agree", Of: g.of, Says: fmt.Sprintf("by volume it holds %+.1f %% beside its weight", 100*g.off), day: f.today, at: g.visit.At})
	}
}

// gaugesDiffer is how far a gauge by volume and one by weight of the same spirit may be
// apart: a dip of a cask is read to about a gallon in fifty (common practice).
const gaugesDiffer = 0.02

// inBottles is the ethanol of bottles, in kg.
func (b *books) inBottles(n int, eachM3, abv float64) float64 {
	w, err := fluid.MassFracFromABV(abv)
	if err != nil {
		return 0
	}
	return float64(n) * eachM3 * fluid.Density(w, b.bottleC) * w
}

// proof is the true proof of what was measured.
func (g *gauge) proof() float64 {
	w, _ := fluid.MassFracFromABV(g.abv)
	return fluid.ProofFromMassFrac(w)
}

// litres is its volume at 20 C.
func (g *gauge) litres() float64 {
	w, err := fluid.MassFracFromABV(g.abv)
	if err != nil || w == 0 {
		return 0
	}
	return 1000 * g.ethanol / w / fluid.Density(w, referenceC)
}
