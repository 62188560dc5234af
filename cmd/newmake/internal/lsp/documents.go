package lsp

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"

	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
)

// doc is a text that the editor holds.
type doc struct {
	uri     string
	path    string // "" if it is no file
	version int
	text    []byte
	home    *home // nil if it is no file
}

// marked reports whether the text begins with a byte order mark.
func (d *doc) marked() bool { return strings.HasPrefix(string(d.text[:min(3, len(d.text))]), "\uFEFF") }

// home is a house, as it was last loaded with the texts that the editor holds.
type home struct {
	at    string // its folder; of a file without a house, the file
	turn  int    // counts the changes
	house *check.House
	work  *front.Check

	said      diag.List          // of the texts alone
	computed  diag.List          // what computing has shown beyond that, of the turn before or this one
	published map[string]bool    // files that have diagnostics in the editor
	busy      bool               // computing
	committed revision.Committed // used by what computes, one at a time
	drawn     tried              // of the texts as they are; empty until they are drawn
}

// overlay are the texts that the editor holds.
func (s *server) overlay() map[string][]byte {
	out := map[string][]byte{}
	for _, d := range s.docs {
		if d.path != "" {
			out[d.path] = d.text
		}
	}
	return out
}

// homeOf finds the house of a path.
func (s *server) homeOf(path string) *home {
	held := s.overlay()
	at, ok := house.Above(path, func(p string) bool {
		info, err := os.Stat(p)
		return err == nil && !info.IsDir() || held[p] != nil
	})
	if !ok {
		at = path
	}
	h := s.houses[at]
	if h == nil {
		h = &home{at: at, published: map[string]bool{}}
		s.houses[at] = h
	}
	return h
}

func (s *server) didOpen(raw json.RawMessage) {
	var p didOpenParams
	if json.Unmarshal(raw, &p) != nil {
		return
	}
	d := &doc{uri: p.TextDocument.URI, version: p.TextDocument.Version, text: []byte(p.TextDocument.Text)}
	if path, ok := pathOf(d.uri); ok && filepath.Ext(path) == front.Ending {
		d.path = path
	}
	s.docs[d.uri] = d
	s.changed(d.path)
}

func (s *server) didChange(raw json.RawMessage) {
	var p didChangeParams
	if json.Unmarshal(raw, &p) != nil {
		return
	}
	d := s.docs[p.TextDocument.URI]
	if d == nil {
		return
	}
	e := newEditing(s.units, d.text)
	for _, c := range p.ContentChanges {
		e.change(c.Range, c.Text)
	}
	d.text = e.whole()
	d.version = p.TextDocument.Version
	s.changed(d.path)
}

// didSave reads the house again: what the editor did not hold may have changed.
func (s *server) didSave(raw json.RawMessage) {
	var p documentParams
	if json.Unmarshal(raw, &p) != nil {
		return
	}
	if d := s.docs[p.TextDocument.URI]; d != nil {
		s.changed(d.path)
	}
}

func (s *server) didClose(raw json.RawMessage) {
	var p documentParams
	if json.Unmarshal(raw, &p) != nil {
		return
	}
	d := s.docs[p.TextDocument.URI]
	if d == nil {
		return
	}
	delete(s.docs, p.TextDocument.URI)
	if d.path == "" {
		return
	}
	if d.home != nil && d.home.house == nil { // nobody holds it any more, and no house does
		s.clear(d.home)
		return
	}
	s.changed(d.path)
}

func (s *server) didChangeWatched(raw json.RawMessage) {
	var p watchedParams
	if json.Unmarshal(raw, &p) != nil {
		return
	}
	seen := map[*home]bool{}
	for _, c := range p.Changes {
		if path, ok := pathOf(c.URI); ok {
			if h := s.homeOf(path); !seen[h] {
				seen[h] = true
				s.changed(path)
			}
		}
	}
}
