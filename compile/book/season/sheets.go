package season

import (
	"time"

	"newmake/compile"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Sheet is the plan of one run as the season has it: with what flows into it, in the
// fermenter and in the hours that the season gives it.
type Sheet struct {
	Run    string
	Done   bool // it was begun
	Recipe *recipe.Batch
	Plan   *plan.Plan
	Diags  diag.List // what it shows
}

// Sheets plans a season, and gives with it the plans of its runs, in their order. One that
// cannot be computed has none. The error is as Plan's.
func Sheets(p *Problem) (*Season, []Sheet, error) {
	s, err := newSolver(p)
	if err != nil {
		return nil, nil, err
	}
	s.solve()
	out := s.answer()
	var sheets []Sheet
	for i, j := range s.present() {
		f := s.flows.runs[i]
		if f.err != nil {
			continue
		}
		b := *s.Batches[s.list[j].course.batch.Name]
		b.Start, b.Today = f.n.Batch.Start, f.n.Batch.Today
		b.Today.Spirit.Run = out.Runs[i].SpiritFrom
		for _, v := range s.Plant.Vessels {
			if v.Name == out.Runs[i].Fermenter {
				b.Ferm.Vessels = []*recipe.Vessel{v}
			}
		}
		if made, list := compile.CompileIn(&b, hoursOf(out.Runs[i])); made != nil {
			sheets = append(sheets, Sheet{out.Runs[i].Number, out.Runs[i].Done, &b, made, list})
		}
	}
	return out, sheets, nil
}

// hoursOf are those in which a run's tasks are done.
func hoursOf(r Run) work.Hours {
	out := map[string]work.Done{}
	for _, t := range r.Tasks {
		out[t.Key] = work.Done{From: moment(t.Start), To: moment(t.End), Wait: minutes(t.WaitMin), OutOfShift: minutes(t.OutOfShift)}
	}
	// What was left before makes a cask of what alone is put away: either is done in the hours
	// of the other.
	fill, filled := out["fill.cask"]
	keep, kept := out["fill.keep"]
	switch {
	case filled && !kept:
		out["fill.keep"] = fill
	case kept && !filled:
		out["fill.cask"] = keep
	}
	return work.Hours{Done: out}
}

func minutes(n float64) time.Duration { return time.Duration(n * float64(time.Minute)) }
