package lsp

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"

	"newmake/lang"
	"newmake/lang/assist"
	"newmake/lang/diag"
)

// snapshot finds the file of a document in its house; nil where there is none.
func (s *server) snapshot(uri string) *assist.Snapshot {
	path, ok := pathOf(uri)
	if !ok {
		return nil
	}
	h := s.homeAt(uri, path)
	if h == nil {
		return nil
	}
	return assist.Of(h.house, path)
}

// homeAt is the house of a file, if it was loaded.
func (s *server) homeAt(uri, path string) *home {
	if d := s.docs[uri]; d != nil {
		return d.home
	}
	for _, h := range s.houses {
		if h.house != nil && assist.Of(h.house, path) != nil {
			return h
		}
	}
	return nil
}

// at reads where a request points.
func (s *server) at(raw json.RawMessage) (*assist.Snapshot, int, placeParams, error) {
	var p placeParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, 0, p, err
	}
	snap := s.snapshot(p.TextDocument.URI)
	if snap == nil {
		return nil, 0, p, nil
	}
	return snap, s.units.offset(snap.File.Source, s.marked(snap.File.Source.Name), p.Position), p, nil
}

// formatting lays a text out. One with a mistake in its text is left alone.
func (s *server) formatting(raw json.RawMessage) (any, error) {
	var p documentParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, err
	}
	d := s.docs[p.TextDocument.URI]
	if d == nil {
		return nil, fmt.Errorf("%s is not open", p.TextDocument.URI)
	}
	src := diag.NewSource(d.path, d.text)
	out, _ := lang.Format(src)
	switch {
	case out == nil:
		return nil, nil
	case string(out) == string(d.text):
		return []textEdit{}, nil
	}
	// The editor's first column may hold a byte order mark, which goes.
	return []textEdit{{span{End: s.units.position(src, d.marked(), len(src.Text))}, string(out)}}, nil
}

func (s *server) hover(raw json.RawMessage) (any, error) {
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	text, at := snap.Hover(offset)
	if text == "" {
		return nil, nil
	}
	return hover{markdown(text), s.span(at)}, nil
}

// kinds of completion items, as the protocol numbers them.
var itemKinds = map[assist.Sort]int{assist.Line: 15, assist.Word: 14, assist.Name: 18, assist.Unit: 11, assist.Value: 12}

func (s *server) completion(raw json.RawMessage) (any, error) {
	items := []completionItem{}
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return items, err
	}
	for i, p := range snap.Complete(offset) {
		it := completionItem{
			Label: p.Label, Kind: itemKinds[p.Sort], Detail: p.Detail, SortText: fmt.Sprintf("%04d", i), InsertTextFormat: 1,
			TextEdit: textEdit{s.span(p.At), p.Text},
		}
		if strings.HasPrefix(p.Text, `"`) {
			it.FilterText = p.Text
			if p.At.Text() == "" || p.At.Text()[0] != '"' {
				it.FilterText = p.Label
			}
		}
		if p.Doc != "" {
			doc := markdown(p.Doc)
			it.Documentation = &doc
		}
		switch {
		case p.Sort != assist.Line:
		case s.snippets:
			it.InsertTextFormat, it.TextEdit.NewText = 2, snippet(p.Text)
		default:
			it.TextEdit.NewText = p.Label
		}
		items = append(items, it)
	}
	return items, nil
}

// snippet is a line as a snippet: what follows its word is to be typed over, and a
// block has a place inside.
func snippet(line string) string {
	escape := strings.NewReplacer(`\`, `\\`, `$`, `\$`, `}`, `\}`).Replace
	text, block, _ := strings.Cut(line, " {")
	word, rest, more := strings.Cut(text, " ")
	out := escape(word)
	if more {
		out += " ${1:" + escape(rest) + "}"
	}
	if block != "" {
		out += " {\n\t$0\n\\}"
	}
	return out
}

func (s *server) definition(raw json.RawMessage) (any, error) {
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	return s.locations(snap.Definition(offset)), nil
}

func (s *server) references(raw json.RawMessage) (any, error) {
	snap, offset, p, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	return s.locations(snap.References(offset, p.Context.IncludeDeclaration)), nil
}

func (s *server) locations(places []assist.Place) []location {
	out := []location{}
	for _, at := range places {
		if filepath.IsAbs(at.Src.Name) {
			out = append(out, s.location(at))
		}
	}
	return out
}

// symbolKinds are the kinds of symbols, as the protocol numbers them.
func symbolKind(word string) int {
	const class, function, object = 5, 12, 19
	switch word {
	case "batch":
		return class
	case "plant":
		return 2 // module
	case "mash", "ferment", "strip", "spirit", "cask", "bill":
		return function
	}
	return object
}

func (s *server) symbols(raw json.RawMessage) (any, error) {
	snap, _, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	return s.documentSymbols(snap.Symbols()), nil
}

func (s *server) documentSymbols(list []assist.Symbol) []documentSymbol {
	out := []documentSymbol{}
	for _, y := range list {
		out = append(out, documentSymbol{y.Name, y.Detail, symbolKind(y.Word), s.span(y.Whole), s.span(y.At), s.documentSymbols(y.Below)})
	}
	return out
}

func (s *server) folds(raw json.RawMessage) (any, error) {
	out := []foldingRange{}
	snap, _, _, err := s.at(raw)
	if snap == nil {
		return out, err
	}
	for _, f := range snap.Folds() {
		kind := ""
		if f.Comment {
			kind = "comment"
		}
		out = append(out, foldingRange{f.First - 1, f.Last - 1, kind})
	}
	return out, nil
}

// actions offers the fixes of what is said at a place. A fix that leaves no doubt is
// preferred; a guess is offered, and nobody makes it unasked.
func (s *server) actions(raw json.RawMessage) (any, error) {
	var p rangeParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, err
	}
	out := []codeAction{}
	path, ok := pathOf(p.TextDocument.URI)
	h := s.homeAt(p.TextDocument.URI, path)
	if !ok || h == nil {
		return out, nil
	}
	for _, d := range append(append(diag.List{}, h.said...), h.computed.Beyond(h.said)...) {
		if d.Fix == nil || d.At.IsZero() || filepath.Clean(d.At.Src.Name) != path {
			continue
		}
		said := s.diagnostic(d)
		if before(said.Range.End, p.Range.Start) || before(p.Range.End, said.Range.Start) {
			continue
		}
		at := s.location(d.Fix.At)
		out = append(out, codeAction{
			Title: d.Fix.Label, Kind: "quickfix", Diagnostics: []diagnostic{said}, IsPreferred: !d.Fix.Guess,
			Edit: workspaceEdit{map[string][]textEdit{at.URI: {{at.Range, d.Fix.Text}}}},
		})
	}
	if snap := assist.Of(h.house, path); snap != nil {
		if label, e, ok := snap.Declare(s.units.offset(snap.File.Source, s.marked(path), p.Range.Start)); ok {
			at := s.location(e.At)
			out = append(out, codeAction{Title: label, Kind: "quickfix", Edit: workspaceEdit{map[string][]textEdit{at.URI: {{at.Range, e.Text}}}}})
		}
	}
	return out, nil
}

func before(a, b position) bool {
	return a.Line < b.Line || a.Line == b.Line && a.Character < b.Character
}

// hints are the predictions beside the lines of a text.
func (s *server) hints(raw json.RawMessage) (func() any, *home, error) {
	nothing := func() any { return []inlayHint{} }
	var p rangeParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, nil, err
	}
	path, ok := pathOf(p.TextDocument.URI)
	h := s.homeAt(p.TextDocument.URI, path)
	if !ok || h == nil || h.house == nil {
		return nothing, nil, nil
	}
	at, units, marked, drawn := h.house, s.units, s.marked(path), h.drawn
	return func() any {
		out := []inlayHint{}
		for _, hint := range predictions(at, path, drawn) {
			where := units.position(hint.At.Src, marked, hint.At.End)
			if !before(where, p.Range.Start) && !before(p.Range.End, where) {
				out = append(out, inlayHint{Position: where, Label: hint.Text, PaddingLeft: true, Tooltip: fmt.Sprintf("predicted; `newmake plan %s` has the plan, `newmake why` where a number comes from", hint.At.Src.Name)})
			}
		}
		return out
	}, h, nil
}
