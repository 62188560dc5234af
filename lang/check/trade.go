package check

import (
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Parts says which parts of a batch could be read whole, so that rules can reason
// about them.
type Parts struct {
	Bill, Mash, Ferment, Strip, Spirit, Cask bool
	Unaged                                   bool // it goes into no wood
}

// Check holds a recipe against the rules of the trade and the law. Each rule
// speaks only if all that it reasons about could be read.
func Check(b *recipe.Batch, can Parts) diag.List {
	var list diag.List
	r := &rules{batch: b, can: can, diags: &list}
	r.trade()
	r.law()
	return list
}

// trade holds the recipe against the rules of the trade.
func (r *rules) trade() {
	if r.can.Mash {
		w := r.walk()
		r.tradeSteps(w)
		r.tradeGrain(w)
		r.tradeStarch(w)
		r.tradeEnzymes(w)
		if r.converts(w) {
			r.tradeCook(w)
		}
		r.tradeThickness(w)
		r.tradeDoses(w)
		r.tradeVolumes(w)
		if r.can.Ferment {
			r.tradeSet(w)
			r.tradePitch(w.outM3())
		}
	}
	if r.can.Ferment {
		r.tradeFerment()
	}
	if r.can.Spirit {
		r.tradeSpirit()
	}
	if r.can.Cask {
		r.tradeCask()
	}
}

// rules holds one recipe against the rules, and gathers what they say.
type rules struct {
	batch *recipe.Batch
	can   Parts
	diags *diag.List
}

func (r *rules) add(d diag.Diagnostic) { r.diags.Add(d) }

func (r *rules) at(path string) diag.Span { return r.batch.At(path) }

// temp writes a temperature in the reader's units.
func (r *rules) temp(c float64) string {
	if r.batch.Units == recipe.US {
		return decimal(float64(int(c*9/5+32+0.5))) + " F"
	}
	return decimal(float64(int(c*10+0.5))/10) + " C"
}

// volume writes a volume in the reader's units.
func (r *rules) volume(m3 float64) string {
	if r.batch.Units == recipe.US {
		return decimal(m3/galM3) + " gal"
	}
	return decimal(m3*1000) + " L"
}

// percent writes a share.
func percent(share float64) string { return decimal(share*100) + " %" }

// otherScale helps where a temperature that stands at a path makes sense only on
// the other scale.
func (r *rules) otherScale(d *diag.Diagnostic, path string, low, high float64) {
	at, ok := r.batch.Where[path]
	if !ok {
		return
	}
	file, _ := lang.Parse(diag.NewSource("", []byte(at.Text())))
	for _, st := range file.Stmts {
		for i := range st.Items {
			if it := &st.Items[i]; it.Kind == lang.Number || it.Kind == lang.Range {
				unit := it.UnitAt()
				if unit.IsZero() {
					return
				}
				unit = at.Src.Span(at.Start+unit.Start, at.Start+unit.End)
				otherScale(d, it, unit, low, high)
				return
			}
		}
	}
}
