package cellar

import (
	"cmp"

	"newmake/compile/matter/fluid"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// totals sums the casks by batch and year and all of them, and by kind and year.
func (c *Cellar) totals() {
	if len(c.Casks) == 0 {
		return
	}
	c.Totals = append(summed(c.Casks, func(r *Row) Total { return Total{Batch: r.Batch, Year: r.year()} }),
		summed(c.Casks, func(*Row) Total { return Total{} })...)
	c.Kinds = summed(c.Casks, func(r *Row) Total { return Total{Kind: r.kind, Year: r.year()} })
}

// year is that of the fill.
func (r *Row) year() int { return record.ReadDate(r.Filled).Year }

// summed sums the casks that are of one head, in the order of the heads.
func summed(casks []Row, head func(*Row) Total) []Total {
	at := map[Total]int{}
	var out []Total
	var putIn []float64
	for i := range casks {
		r := &casks[i]
		h := head(r)
		j, is := at[h]
		if !is {
			j, at[h] = len(out), len(out)
			out, putIn = append(out, h), append(putIn, 0)
		}
		t := &out[j]
		t.Casks++
		t.ProofGallons += r.Now.ProofGallons
		t.PureL += r.Now.PureL
		t.DrawnL += r.DrawnL
		putIn[j] += r.PutInL
	}
	for i := range out {
		out[i].ProofGallons, out[i].PureL = to(out[i].ProofGallons, 3), to(out[i].PureL, 3)
		if putIn[i] > 0 {
			out[i].LostPct = to(100*(1-(out[i].PureL+out[i].DrawnL)/putIn[i]), 2)
		}
		out[i].DrawnL = to(out[i].DrawnL, 3)
	}
	sorting.Stable(out, func(a, b Total) int {
		return cmp.Or(cmp.Compare(a.Batch, b.Batch), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Year, b.Year))
	})
	return out
}

// bottled says whether what the cask should hold then is strong enough for a bottle, by
// volume at 20 C.
func (t *Target) bottled(abv float64) {
	t.BottleAbvPct = to(100*abv, 3)
	if w, err := fluid.MassFracFromABV(abv); err == nil {
		t.BottleProof = to(fluid.ProofFromMassFrac(w), 2)
	}
	t.Kept = t.Then.AbvPct >= t.BottleAbvPct
}
