package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"newmake/compile/front"
	"newmake/lang/diag"
)

// changed reads the house of a path again, and says what is to be said of it: of the
// texts at once, of what computing shows when that is done.
func (s *server) changed(path string) {
	if path == "" {
		return
	}
	left := map[*home]bool{}
	h := s.homeOf(path)
	for _, d := range s.docs {
		if d.path == "" {
			continue
		}
		if d.home != nil && d.home.at != h.at && filepath.Clean(d.path) != path && filepath.Base(path) != "house.batch" {
			continue
		}
		if to := s.homeOf(d.path); to != d.home { // a house began or ended
			if d.home != nil && d.home != h {
				left[d.home] = true
			}
			d.home = to
		}
	}
	for was := range left {
		s.clear(was)
		if was.house != nil {
			s.read(was, "")
		}
	}
	s.read(h, path)
}

// clear takes back what was said of a house.
func (s *server) clear(h *home) {
	h.turn++
	for path := range h.published {
		s.publish(path, nil)
	}
	h.published = map[string]bool{}
	delete(s.houses, h.at)
}

// manyFiles is from how many files on a house is checked beside the conversation, and
// only the file that is typed in at once.
const manyFiles = 50

// read loads a house with the texts that the editor holds, of which one has changed.
func (s *server) read(h *home, changed string) {
	h.turn++
	before := h.house
	work, err := front.NewCheck([]front.Place{{Path: h.at, Overlay: s.overlay(), NoLearned: s.NoLearned}})
	if err != nil { // it cannot be read at all, as after it was deleted
		s.clear(h)
		return
	}
	was := h.said
	h.drawn = nil
	h.work, h.house, h.said = work, nil, nil
	if houses := work.Houses(); len(houses) > 0 {
		h.house = houses[0]
		carried := func(list diag.List) diag.List {
			if before == nil {
				return nil
			}
			return moved(list, func(was *diag.Source) *diag.Source { return sourceNow(h, was) })
		}
		if len(h.house.Files) < manyFiles || changed == "" {
			h.said = h.house.Check()
		} else {
			h.said = h.house.CheckIn(changed)
			rest := carried(was)
			h.said = append(h.said, slices.DeleteFunc(rest, func(d diag.Diagnostic) bool {
				return d.At.IsZero() || filepath.Clean(d.At.Src.Name) == changed
			})...)
		}
		h.computed = carried(h.computed)
		s.tell(h, append(slices.Clone(h.said), h.computed.Beyond(h.said)...))
		s.compute(h)
		return
	}
	s.tell(h, work.Run())
}

func sourceNow(h *home, was *diag.Source) *diag.Source {
	for _, f := range h.house.Files {
		if f.Source.Name == was.Name {
			return f.Source
		}
	}
	return nil
}

// pause is how long nothing is typed before batches are computed.
const pause = 100 * time.Millisecond

// compute computes the batches of a house beside the conversation. While it is at
// work, another change waits: the newest is computed then.
func (s *server) compute(h *home) {
	if h.busy {
		return
	}
	h.busy = true
	work, turn, said := h.work, h.turn, h.said
	go func() {
		defer s.recovered()
		for still := false; !still; { // somebody is typing: the processors are theirs
			time.Sleep(pause)
			s.mu.Lock()
			still = h.turn == turn
			work, turn, said = h.work, h.turn, h.said
			s.mu.Unlock()
		}
		var all diag.List
		var drawn tried
		done := false
		defer func() {
			s.mu.Lock()
			defer s.mu.Unlock()
			h.busy = false
			switch {
			case s.exited || s.shut || s.houses[h.at] != h:
			case h.turn != turn:
				s.compute(h)
			case done:
				h.computed, h.drawn = all.Beyond(said), drawn
				s.tell(h, all)
				s.again(s.refresh, "inlayHint")
				s.again(s.lenses, "codeLens")
				s.again(s.pulls, "diagnostic")
			}
		}()
		if at := work.Houses(); len(at) == 1 && len(at[0].Files) >= manyFiles {
			whole := at[0].Check()
			s.mu.Lock()
			if h.turn == turn {
				h.said, said = whole, whole
				s.tell(h, append(slices.Clone(whole), h.computed.Beyond(whole)...))
			}
			s.mu.Unlock()
		}
		all = work.Run()
		if at := work.Houses(); len(at) == 1 {
			drawn = draw(at[0], s.open(h, turn))
		}
		done = true
	}()
}

// open are the files of a house that the editor holds; none if it has changed meanwhile.
func (s *server) open(h *home, turn int) []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	var out []string
	for _, d := range s.docs {
		if d.home == h && h.turn == turn {
			out = append(out, d.path)
		}
	}
	return out
}

// again tells an editor that can be told to fetch something anew.
func (s *server) again(can bool, what string) {
	if can {
		_, _ = s.conn.DispatchCall(context.Background(), "workspace/"+what+"/refresh", nil)
	}
}

// moved carries diagnostics over to the texts as they are now: what stands before the
// change stays, what stands after it moves with its line, and what it touched is dropped.
func moved(list diag.List, now func(*diag.Source) *diag.Source) diag.List {
	type shift struct {
		to          *diag.Source
		begin, tail int // alike at the beginning, and at the end
	}
	shifts := map[*diag.Source]*shift{}
	move := func(at diag.Span) (diag.Span, bool) {
		if at.IsZero() {
			return at, true
		}
		c := shifts[at.Src]
		if c == nil {
			c = &shift{to: now(at.Src)}
			if c.to != nil {
				a, b := at.Src.Text, c.to.Text
				for c.begin < min(len(a), len(b)) && a[c.begin] == b[c.begin] {
					c.begin++
				}
				for c.tail < min(len(a), len(b))-c.begin && a[len(a)-1-c.tail] == b[len(b)-1-c.tail] {
					c.tail++
				}
			}
			shifts[at.Src] = c
		}
		by := 0
		switch {
		case c.to == nil:
			return at, false
		case at.End <= c.begin:
		case at.Start >= len(at.Src.Text)-c.tail:
			by = len(c.to.Text) - len(at.Src.Text)
		default:
			return at, false
		}
		return c.to.Span(at.Start+by, at.End+by), true
	}
	var out diag.List
	for _, d := range list {
		at, ok := move(d.At)
		if !ok {
			continue
		}
		d.At = at
		if d.Fix != nil {
			fix := *d.Fix
			if fix.At, ok = move(fix.At); ok {
				d.Fix = &fix
			} else {
				d.Fix = nil
			}
		}
		related := d.Related
		d.Related = nil
		for _, r := range related {
			if r.At, ok = move(r.At); ok {
				d.Related = append(d.Related, r)
			}
		}
		out.Add(d)
	}
	return out
}

// tell publishes what is said of a house, file by file; of files of which nothing is
// said any more, nothing.
func (s *server) tell(h *home, list diag.List) {
	by := h.byFile(list)
	for path := range h.published {
		if by[path] == nil {
			by[path] = diag.List{}
		}
	}
	for _, d := range s.docs {
		if d.home == h && by[d.path] == nil {
			by[d.path] = diag.List{}
		}
	}
	paths := make([]string, 0, len(by))
	for path := range by {
		paths = append(paths, path)
	}
	slices.Sort(paths)
	for _, path := range paths {
		s.publish(path, by[path])
		if len(by[path]) > 0 {
			h.published[path] = true
		} else {
			delete(h.published, path)
		}
	}
}

// byFile parts a list by the files that it speaks of.
func (h *home) byFile(list diag.List) map[string]diag.List {
	by := map[string]diag.List{}
	main := h.at
	if h.house != nil {
		main = filepath.Join(h.at, "house.batch")
	}
	for _, d := range list {
		path := main // of the house as a whole
		if !d.At.IsZero() {
			path = filepath.Clean(d.At.Src.Name)
		}
		by[path] = append(by[path], d)
	}
	return by
}

// pull answers an editor that fetches what is said of a file.
func (s *server) pull(raw json.RawMessage) (any, error) {
	var p pullParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, err
	}
	out := report{Kind: "full", Items: []diagnostic{}}
	path, ok := pathOf(p.TextDocument.URI)
	h := s.homeAt(p.TextDocument.URI, path)
	if !ok || h == nil {
		return out, nil
	}
	// Turns count changes of the texts; what computing shows comes after them.
	out.ResultID = fmt.Sprintf("%d.%d", h.turn, len(h.computed))
	if out.ResultID == p.PreviousResultID {
		return report{Kind: "unchanged", ResultID: out.ResultID}, nil
	}
	for _, d := range h.byFile(append(slices.Clone(h.said), h.computed.Beyond(h.said)...))[path] {
		out.Items = append(out.Items, s.diagnostic(d))
	}
	return out, nil
}

// publish sends what is said of a file.
func (s *server) publish(path string, list diag.List) {
	p := publishParams{URI: uriOf(path), Diagnostics: []diagnostic{}}
	if d := s.held(path); d != nil {
		p.URI, p.Version = d.uri, &d.version
		if s.pulls { // it fetches them; what it was told before it held the file goes
			list = nil
		}
	}
	for _, d := range list {
		p.Diagnostics = append(p.Diagnostics, s.diagnostic(d))
	}
	_ = s.conn.Notify(context.Background(), "textDocument/publishDiagnostics", p)
}

// held is the text that the editor holds of a path, nil if it holds none.
func (s *server) held(path string) *doc {
	for _, d := range s.docs {
		if d.path == path {
			return d
		}
	}
	return nil
}

// marked reports whether the editor's text of a file begins with a byte order mark.
func (s *server) marked(path string) bool {
	d := s.held(filepath.Clean(path))
	return d != nil && d.marked()
}

// span is a place as the editor counts.
func (s *server) span(at diag.Span) span {
	if at.IsZero() {
		return span{}
	}
	return s.units.span(at, s.marked(at.Src.Name))
}

// location is a place with its file.
func (s *server) location(at diag.Span) location {
	path := filepath.Clean(at.Src.Name)
	uri := uriOf(path)
	if d := s.held(path); d != nil {
		uri = d.uri
	}
	return location{uri, s.span(at)}
}

// severities as the protocol numbers them.
var severities = map[diag.Severity]int{diag.Error: 1, diag.Warning: 2, diag.Note: 3}

func (s *server) diagnostic(d diag.Diagnostic) diagnostic {
	out := diagnostic{Range: s.span(d.At), Severity: severities[d.Severity], Code: string(d.Code), Source: "newmake", Message: message(d)}
	for _, r := range d.Related {
		if !r.At.IsZero() && !strings.HasPrefix(r.At.Src.Name, "stdlib/") {
			out.RelatedInformation = append(out.RelatedInformation, relatedInformation{s.location(r.At), r.Text})
		}
	}
	return out
}

// message is all that is to be read of a diagnostic.
func message(d diag.Diagnostic) string {
	parts := []string{d.Summary}
	if d.Help != "" {
		parts = append(parts, d.Help)
	}
	if d.Reason != "" {
		parts = append(parts, "why: "+d.Reason)
	}
	parts = append(parts, fmt.Sprintf("(newmake explain %s)", d.Code))
	return strings.Join(parts, "\n")
}
