package lsp

import (
	"encoding/json"

	"newmake/lang/assist"
)

// tokenTypes are the protocol's names for what tokens are.
var tokenTypes = []string{"keyword", "modifier", "variable", "number", "type", "comment"}

var tokenTypeOf = map[assist.Paint]int{
	assist.Opener: 0, assist.Joint: 1, assist.Called: 2, assist.Calls: 2, assist.Figure: 3, assist.Measure: 4, assist.Remark: 5,
}

// paints gives the coloured tokens of a text, each by its distance from the one before, as
// the protocol asks for.
func (s *server) paints(raw json.RawMessage) (any, error) {
	out := semanticTokens{Data: []int{}}
	snap, _, _, err := s.at(raw)
	if snap == nil {
		return out, err
	}
	src := snap.File.Source
	marked := s.marked(src.Name)
	last := position{}
	// Columns are counted on from the token before, so that a long line is scanned once.
	line, offset, column := 0, 0, 0
	for _, t := range snap.Paints() {
		if l := src.LineOf(t.At.Start); l != line {
			line, offset = l, src.LineSpan(l).Start
			column = s.units.position(src, marked, offset).Character
		}
		column += s.units.width(src.Text[offset:t.At.Start])
		wide := s.units.width(src.Text[t.At.Start:t.At.End])
		offset = t.At.Start
		if line-1 != last.Line {
			last.Character = 0
		}
		declares := 0
		if t.Is == assist.Calls {
			declares = 1
		}
		out.Data = append(out.Data, line-1-last.Line, column-last.Character, wide, tokenTypeOf[t.Is], declares)
		last = position{line - 1, column}
	}
	return out, nil
}

func (s *server) signature(raw json.RawMessage) (any, error) {
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	sig, ok := snap.Signature(offset)
	if !ok {
		return nil, nil
	}
	doc := markdown(sig.Doc)
	out := signature{Label: sig.Form, Documentation: &doc, Parameters: []parameter{}}
	for _, at := range sig.Slots { // a form is of ASCII: bytes are UTF-16 units
		out.Parameters = append(out.Parameters, parameter{at})
	}
	next := sig.Next
	if next < 0 {
		next = len(sig.Slots) // none is shown as the next
	}
	return signatureHelp{[]signature{out}, 0, next}, nil
}
