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

// paints gives each token by its distance from the one before, as the protocol has it.
func (s *server) paints(raw json.RawMessage) (any, error) {
	out := semanticTokens{Data: []int{}}
	snap, _, _, err := s.at(raw)
	if snap == nil {
		return out, err
	}
	last := position{}
	for _, t := range snap.Paints() {
		at := s.span(t.At)
		if at.Start.Line != last.Line {
			last.Character = 0
		}
		declares := 0
		if t.Is == assist.Calls {
			declares = 1
		}
		out.Data = append(out.Data, at.Start.Line-last.Line, at.Start.Character-last.Character, at.End.Character-at.Start.Character, tokenTypeOf[t.Is], declares)
		last = at.Start
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
