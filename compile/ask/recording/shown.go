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
	Value string // "76.1 % abv at 66 F", "none"
	When  string // 09:33, "" if nobody said
	By    string
	Note  string
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
		s := Said{Value: textOf(a.Reading.Place)}
		if v := a.Visit; v != nil {
			s.When, s.By, s.Note = v.When.Clock, v.By, v.Note
		}
		if u := a.Used; u != nil {
			s.By, s.Note = u.By, u.Note
		}
		out.Read[a.Blank.ID] = s
	}
	return out
}

func textOf(s diag.Span) string {
	if s.Src == nil {
		return ""
	}
	return string(s.Src.Text[s.Start:s.End])
}

var sampled = map[record.What]bool{record.Gravity: true, record.Spout: true, record.Strength: true}
