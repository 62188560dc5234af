package page

import (
	"strings"

	"newmake/compile/ask/recording"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
)

// shown is what the template sees.
type shown struct {
	View
	P     *plan.Plan // harmless; empty where there is none
	Weigh []visit
	Parts []part
}

// part is the work of one kind, with its picture.
type part struct {
	ID, Title string
	Chart     chart.Chart
	Steps     []step
}

// step is a step with its readings by the time at which they are due.
type step struct {
	plan.Step
	Day    string // said where it begins another day than the step before
	Visits []visit
}

// visit is what is read at one time, and typed together.
type visit struct {
	ID    string // unique on the page
	Due   string // RFC 3339; "" of what is weighed out
	Timed bool   // the record takes a time for it
	Open  bool   // something can be typed
	Rooms []room
}

// room is one reading: what it should be, and what it is or where it is typed.
type room struct {
	Blank     plan.Blank
	Tolerance plan.Quantity
	Open      bool
	Unit      string
	Sampled   bool
	Said      *recording.Said
}

var titles = []struct{ id, title string }{
	{"mash", "Mash"}, {"ferment", "Ferment"}, {"strip", "Stripping run"}, {"spirit", "Spirit run"}, {"fill", "Reduce and fill"}, {"cask", "In wood"},
}

func (s *shown) fill() {
	if s.Plan == nil {
		return
	}
	u := s.Units
	charts := map[string]chart.Chart{
		"mash": chart.Mash(s.P, u), "ferment": chart.Ferment(s.P, u), "strip": chart.Strip(s.P, u), "spirit": chart.Spirit(s.P, u), "cask": chart.Cask(s.P, u),
	}
	blanks := s.P.Blanks()
	tolerances := map[string]plan.Quantity{}
	for _, st := range s.P.Schedule.Steps {
		for _, r := range st.Read {
			tolerances[r.ID] = r.Tolerance
		}
	}
	of := map[string][]plan.Blank{}
	for _, b := range blanks {
		if b.Stage == plan.Used {
			s.Weigh = append(s.Weigh, s.visit(b.ID, "", []plan.Blank{b}, tolerances))
		} else {
			of[b.Step] = append(of[b.Step], b)
		}
	}
	day := ""
	for _, t := range titles {
		p := part{ID: t.id, Title: t.title, Chart: charts[t.id]}
		for _, st := range s.P.Schedule.Steps {
			if st.Stage != t.id {
				continue
			}
			one := step{Step: st, Visits: s.visits(of[st.ID], tolerances)}
			if d := measure.LongDate(st.Start); d != day || len(p.Steps) == 0 {
				one.Day, day = d, d
			}
			p.Steps = append(p.Steps, one)
		}
		if len(p.Steps) > 0 {
			s.Parts = append(s.Parts, p)
		}
	}
}

// visits parts the blanks of a step by the time at which they are due.
func (s *shown) visits(blanks []plan.Blank, tolerances map[string]plan.Quantity) []visit {
	var out []visit
	for from := 0; from < len(blanks); {
		to := from + 1
		for to < len(blanks) && blanks[to].Due == blanks[from].Due {
			to++
		}
		out = append(out, s.visit(blanks[from].ID, blanks[from].Due, blanks[from:to], tolerances))
		from = to
	}
	return out
}

func (s *shown) visit(id, due string, blanks []plan.Blank, tolerances map[string]plan.Quantity) visit {
	v := visit{ID: id, Due: due, Timed: due != ""}
	for _, b := range blanks {
		r := room{Blank: b, Tolerance: tolerances[b.ID]}
		if s.Record != nil {
			if said, ok := s.Record.Read[b.ID]; ok {
				r.Said = &said
			} else if open, ok := s.Record.Open[b.ID]; ok {
				r.Open, r.Unit, r.Sampled, v.Open = true, open.Unit, open.Sampled, true
			}
		}
		v.Rooms = append(v.Rooms, r)
	}
	return v
}

// Problem is the first line of what is wrong.
func (s *shown) Problem() string {
	first, _, _ := strings.Cut(strings.TrimSpace(s.Problems), "\n")
	return first
}

// Hearts are the hearts of the spirit run.
func (s *shown) Hearts() plan.Fraction { return s.P.Spirit.Fraction("hearts") }

// Stopping are the notices that are more than notes.
func (s *shown) Stopping() []plan.Notice {
	var out []plan.Notice
	for _, n := range s.P.Notices {
		if n.Severity != "note" {
			out = append(out, n)
		}
	}
	return out
}
