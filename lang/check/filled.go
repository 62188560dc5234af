package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// fullest is how much over its size a cask may take before nobody believes it: casks
// of one size differ by a few per cent (common practice).
const fullest = 1.03

// filling is a cask that a run filled.
type filling struct {
	run    *record.Run
	visit  *record.Visit
	volume *record.Reading // nil if it was not written down
	sizeM3 float64         // of the casks that the batch fills; 0: not known
}

// casks holds what all runs filled into each cask against what it holds. Nothing is
// known yet of a cask that was emptied: one that is filled twice is taken to be
// filled up.
func (h *House) casks(runs []*run) diag.List {
	var list diag.List
	filled := map[string][]filling{}
	var serials []string
	for _, r := range runs {
		size := 0.0
		if d := h.Find(r.decl.Of); d != nil {
			if b := h.batch(d).batch; b != nil {
				size = b.Cask.SizeM3
			}
		}
		for i := range r.run.Visits {
			v := &r.run.Visits[i]
			if v.Word != "into" {
				continue
			}
			f := filling{run: r.run, visit: v, sizeM3: size}
			for j := range v.Read {
				if v.Read[j].What == record.Volume {
					f.volume = &v.Read[j]
				}
			}
			key := tree.Key(v.To)
			if filled[key] == nil {
				serials = append(serials, key)
			}
			filled[key] = append(filled[key], f)
		}
	}
	for _, key := range serials {
		all := filled[key]
		slices.SortStableFunc(all, func(a, b filling) int { return a.visit.When.Date.Compare(b.visit.When.Date) })
		inM3 := 0.0
		for i, f := range all {
			if i > 0 {
				list.Add(diag.Diagnostic{Code: diag.CodeFilledAgain, Severity: diag.Note, At: f.visit.At,
					Summary: fmt.Sprintf("cask %s was filled before, by run %s", f.visit.To, all[i-1].run.Number),
					Related: []diag.Related{{At: all[i-1].visit.At, Text: "it was filled here"}},
					Help:    "that may be: it was filled up, or has been emptied since; if it is another cask, write its serial"})
			}
			if f.volume == nil {
				continue
			}
			v, ok := f.volume.Holds()
			if !ok {
				continue
			}
			if inM3 += v.SI; f.sizeM3 > 0 && inM3 > f.sizeM3*fullest {
				d := diag.Diagnostic{Code: diag.CodeOverfull, At: f.visit.At,
					Summary: fmt.Sprintf("cask %s has %s in it by now, and holds %s", f.visit.To, wording.In(inM3, v.Unit, quantity.Volume), wording.In(f.sizeM3, v.Unit, quantity.Volume)),
					Help:    "look at the volume and at the serial; a slip of the pen is put right beside it, with `corrected`"}
				if i > 0 {
					d.Related = []diag.Related{{At: all[i-1].visit.At, Text: "it was filled here"}}
				}
				list.Add(d)
			}
		}
	}
	return list
}
