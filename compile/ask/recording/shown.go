package recording

import (
	"slices"

	"newmake/compile/blank"
	"newmake/lang/diag"
	"newmake/lang/record"
)

// Shown is a run for a screen: what stands in it, and where something can be typed, by
// the blanks of its plan.
type Shown struct {
	Read map[string]Said
	Open map[string]Open
}

// Open is a blank that can be filled in.
type Open struct {
	Unit    string // of what is typed without one
	Sampled bool   // it means little without the temperature of its sample
}

// Said is a reading as it stands in the record.
type Said struct {
	Value   string // "76.1 % abv at 66 F", "none": what holds
	Was     string // what was written first, where it was corrected since; "" where not
	When    string // 09:33, "" if nobody said
	By      string
	Note    string
	Unit    string // of what is typed without one, to correct it; "" where it can't be corrected here
	Sampled bool   // the temperature of its sample stands there, and can be corrected
}

// Shown is the page for a screen.
func (p *Page) Shown() Shown {
	out := Shown{map[string]Said{}, map[string]Open{}}
	for _, l := range p.Lines() {
		for _, r := range l.Blanks {
			if r.Blank != nil {
				out.Open[r.Blank.ID] = Open{p.Unit(r), sampled[r.Blank.Kind]}
			}
		}
	}
	if p.Planned == nil {
		return out
	}
	filled := blank.Match(p.Planned, p.Run)
	for _, a := range slices.Concat(filled.Answers, filled.None) {
		s := p.said(a)
		if v := a.Visit; v != nil {
			s.When, s.By, s.Note = clockNow(v), v.By, v.Note
		}
		if u := a.Used; u != nil {
			s.By, s.Note = u.By, u.Note
		}
		out.Read[a.Blank.ID] = s
	}
	return out
}

// said is what a reading says, and what it said before it was corrected.
func (p *Page) said(a blank.Answer) Said {
	r := a.Reading
	s := Said{Value: textOf(r.Place)}
	value, held := r.Holds()
	sample, sampled := sampleOf(r)
	if r.Corrected != nil || r.AtCorrected != nil {
		s.Was, s.Value = s.Value, "none"
		if held {
			s.Value = value.String()
			if sampled {
				s.Value += " at " + sample.String()
			}
		}
	}
	if held && len(a.More) == 0 {
		s.Unit, s.Sampled = p.unitOf(value, a), sampled
	}
	return s
}

func textOf(s diag.Span) string {
	if s.Src == nil {
		return ""
	}
	return string(s.Src.Text[s.Start:s.End])
}

var sampled = map[record.What]bool{record.Gravity: true, record.Spout: true, record.Strength: true}
