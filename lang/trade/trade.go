// Package trade holds a recipe against the rules of the trade and of the law. It
// looks at the recipe alone and at the places in it (recipe.Batch.Where). What
// needs a computed plan is for package compile to say.
package trade

import (
	"fmt"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
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
	checkTrade(r)
	checkLaw(r)
	return list
}

// checkTrade holds the recipe against the rules of the trade.
func checkTrade(r *rules) {
	if r.can.Mash {
		w := walkThrough(r)
		checkSteps(r, w)
		checkGrain(r, w)
		checkStarch(r, w)
		checkEnzymes(r, w)
		if converts(r, w) {
			checkCook(r, w)
		}
		checkGums(r, w)
		checkThickness(r, w)
		checkDoses(r, w)
		checkVolumes(r, w)
		if r.can.Ferment {
			checkSet(r, w)
			checkPitch(r, w.outM3())
		}
	}
	if r.can.Ferment {
		checkFerment(r)
	}
	if r.can.Spirit {
		checkSpirit(r)
	}
	if r.can.Cask {
		checkCask(r)
	}
}

// rules holds one recipe against the rules, and gathers what they say.
type rules struct {
	batch *recipe.Batch
	can   Parts
	diags *diag.List
}

func (r *rules) add(d diag.Diagnostic) { r.diags.Add(d) }

func (r *rules) at(path recipe.Path) diag.Span { return r.batch.At(path) }

// tenth is a temperature that a whole degree would round to what it is held against.
func (r *rules) tenth(c float64) string {
	if r.batch.Units == recipe.US {
		return fmt.Sprintf("%.1f F", c*9/5+32)
	}
	return fmt.Sprintf("%.1f C", c)
}

// temp writes a temperature in the reader's units.
func (r *rules) temp(c float64) string {
	if r.batch.Units == recipe.US {
		return wording.Decimal(float64(int(c*9/5+32+0.5))) + " F"
	}
	return wording.Decimal(float64(int(c*10+0.5))/10) + " C"
}

// volume writes a volume in the reader's units.
func (r *rules) volume(m3 float64) string {
	if r.batch.Units == recipe.US {
		return wording.Decimal(m3/quantity.USGallonM3) + " gal"
	}
	return wording.Decimal(m3*1000) + " L"
}

// percent writes a share.
func percent(share float64) string { return wording.Decimal(share*100) + " %" }

// otherScale helps where a temperature that stands at a path makes sense only on
// the other scale.
func (r *rules) otherScale(d *diag.Diagnostic, path recipe.Path, low, high float64) {
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
				wording.OtherScale(d, it, unit, low, high)
				return
			}
		}
	}
}
