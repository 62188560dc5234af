package engine

import (
	"strings"

	"newmake/lang"
	"newmake/lang/assist"
	"newmake/lang/diag"
)

// Proposal is something that may be written at a place.
type Proposal struct {
	Label  string `json:"label"`
	Text   string `json:"text"`
	Sort   string `json:"sort"` // line, word, name, unit, value
	Detail string `json:"detail,omitempty"`
	Doc    string `json:"doc,omitempty"` // in Markdown
}

var proposalSorts = map[assist.Sort]string{assist.Line: "line", assist.Word: "word", assist.Name: "name", assist.Unit: "unit", assist.Value: "value"}

// snapshot is the file of a question, with the byte that is pointed at; nil where the
// house cannot be read at all.
func (e *Engine) snapshot(q Question) (s *assist.Snapshot, offset int, p *places) {
	_, h, err := e.load(q.Files)
	if err != nil || h == nil {
		return nil, 0, nil
	}
	p = placesOf(q.Files[q.File])
	return assist.Of(h, q.File), p.byteAt(q.At), p
}

func (e *Engine) complete(q Question) Answer {
	s, offset, p := e.snapshot(q)
	a := Answer{From: q.At, To: q.At}
	if s == nil {
		return a
	}
	for i, one := range s.Complete(offset) {
		if i == 0 {
			a.From, a.To = p.unit(one.At.Start), p.unit(one.At.End)
		}
		a.Proposals = append(a.Proposals, Proposal{one.Label, one.Text, proposalSorts[one.Sort], one.Detail, one.Doc})
	}
	return a
}

func (e *Engine) hover(q Question) Answer {
	s, offset, p := e.snapshot(q)
	if s == nil {
		return Answer{}
	}
	words, at := s.Hover(offset)
	if words == "" {
		return Answer{}
	}
	return Answer{Words: harmless(words), From: p.unit(at.Start), To: p.unit(at.End)}
}

// definition finds where a name is declared, if that is in a text of the house.
func (e *Engine) definition(q Question) Answer {
	s, offset, _ := e.snapshot(q)
	if s == nil {
		return Answer{}
	}
	for _, at := range s.Definition(offset) {
		name := nameOf(at)
		if text, ok := q.Files[name]; ok && !at.IsZero() {
			p := placesOf(text)
			return Answer{File: name, From: p.unit(at.Start), To: p.unit(at.End)}
		}
	}
	return Answer{}
}

// Slider is the number at a place, and all that may stand there instead.
type Slider struct {
	Label  string     `json:"label"`
	Unit   string     `json:"unit,omitempty"`
	Now    int        `json:"now"`
	Places []Part     `json:"places"` // the number, then others that follow it
	Texts  [][]string `json:"texts"`  // by position, low to high: what stands at each place
}

// Part is a part of a text.
type Part struct {
	From int `json:"from"`
	To   int `json:"to"`
}

// slide gives the slider of the number at a place, none if no number stands there.
func (e *Engine) slide(q Question) Answer {
	s, offset, p := e.snapshot(q)
	if s == nil {
		return Answer{}
	}
	slider, ok := s.Slide(offset)
	if !ok {
		return Answer{}
	}
	out := &Slider{Label: harmless(slider.Label), Unit: slider.Unit, Now: slider.Now, Texts: slider.Texts}
	for _, at := range slider.Places {
		out.Places = append(out.Places, Part{p.unit(at.Start), p.unit(at.End)})
	}
	return Answer{Slider: out}
}

// format lays a text out. One with a mistake in it is left alone.
func format(q Question) Answer {
	text, _ := strings.CutPrefix(q.Files[q.File], mark)
	out, _ := lang.Format(diag.NewSource(q.File, []byte(text)))
	if out == nil {
		return Answer{Problem: "the text has a mistake in it, so it is left as it is: mend the line that is marked first"}
	}
	return Answer{Text: string(out)}
}
