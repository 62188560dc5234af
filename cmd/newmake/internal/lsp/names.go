package lsp

import (
	"encoding/json"
	"fmt"
	"path/filepath"

	"newmake/compile/front"
	"newmake/lang/assist"
	"newmake/lang/diag"
)

func (s *server) prepareRename(raw json.RawMessage) (any, error) {
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	at, name, err := snap.Renameable(offset)
	if err != nil || name == "" {
		return nil, err
	}
	return renameable{s.span(at), name}, nil
}

// rename gives the edits that call something otherwise in the whole house. The house is
// read with them first: what would have more errors than before is refused.
func (s *server) rename(raw json.RawMessage) (any, error) {
	var p renameParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, err
	}
	snap, offset, _, err := s.at(raw)
	if snap == nil {
		return nil, err
	}
	edits, err := snap.Rename(offset, p.NewName)
	if err != nil {
		return nil, err
	}
	h := s.homeAt(p.TextDocument.URI, snap.File.Source.Name)
	if first := s.would(h, edits); first != "" {
		return nil, fmt.Errorf("renamed, the house would have an error that it has not now: %s", first)
	}
	out := workspaceEdit{map[string][]textEdit{}}
	for _, e := range edits {
		at := s.location(e.At)
		out.Changes[at.URI] = append(out.Changes[at.URI], textEdit{at.Range, e.Text})
	}
	return out, nil
}

// would is the first error that a house has with some edits made and has not without
// them, "" if there is none.
func (s *server) would(h *home, edits []assist.Edit) string {
	texts := s.overlay()
	for i := len(edits) - 1; i >= 0; i-- { // from the end, so that places stay
		e := edits[i]
		path := filepath.Clean(e.At.Src.Name)
		text := texts[path]
		if i == len(edits)-1 || edits[i+1].At.Src != e.At.Src {
			text = e.At.Src.Text
		}
		texts[path] = append(append([]byte(string(text[:e.At.Start])), e.Text...), text[e.At.End:]...)
	}
	work, err := front.NewCheck([]front.Place{{Path: h.at, Overlay: texts, NoLearned: s.NoLearned}})
	if err != nil {
		return err.Error()
	}
	houses := work.Houses()
	if len(houses) == 0 {
		return "it can no longer be read"
	}
	had := map[string]int{}
	for _, d := range h.said {
		had[string(d.Code)]++
	}
	for _, d := range houses[0].Check() {
		if had[string(d.Code)]--; had[string(d.Code)] < 0 && d.Severity == diag.Error {
			return d.Summary
		}
	}
	return ""
}

func (s *server) links(raw json.RawMessage) (any, error) {
	out := []documentLink{}
	snap, _, _, err := s.at(raw)
	if snap == nil {
		return out, err
	}
	for _, l := range snap.Links() {
		to := s.location(l.To)
		out = append(out, documentLink{s.span(l.At), fmt.Sprintf("%s#L%d", to.URI, to.Range.Start.Line+1)})
	}
	return out, nil
}
