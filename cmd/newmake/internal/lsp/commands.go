package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/ask/bands"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/show/inlay"
	"newmake/compile/show/sheet"
	"newmake/compile/show/text"
	"newmake/lang/check"
	"newmake/lang/explain"
	"newmake/lang/quantity"
)

// commands are what an editor may also ask for: each takes a file and a name, and
// gives a text. Nothing of the house is changed.
var commands = map[string]struct {
	ending string
	give   func(s *server, h *check.House, path, name string) (string, error)
}{
	"newmake.plan":  {".txt", planText},
	"newmake.sheet": {".html", sheetHTML},
	"newmake.explain": {".txt", func(_ *server, h *check.House, _, word string) (string, error) {
		reader := quantity.Both
		if h != nil {
			reader = h.Units()
		}
		return explain.Ask(word, reader).Text(), nil
	}},
}

func commandNames() []string {
	var out []string
	for name := range commands {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// planned computes a batch of a file.
func planned(h *check.House, path, name string) (*front.Plan, error) {
	if h == nil {
		return nil, fmt.Errorf("there is no house")
	}
	made, err := (&front.Source{House: h, Path: path, Label: path}).Plan(name, nil)
	switch {
	case err != nil:
		return nil, err
	case !made.Sound():
		return nil, fmt.Errorf("%s has errors and cannot be planned", name)
	}
	return made, nil
}

func planText(_ *server, h *check.House, path, name string) (string, error) {
	made, err := planned(h, path, name)
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	err = text.Write(&b, made.Plan, text.Options{Units: measure.UnitsOf(made.Recipe.Units)})
	return b.String(), err
}

func sheetHTML(_ *server, h *check.House, path, name string) (string, error) {
	made, err := planned(h, path, name)
	if err != nil {
		return "", err
	}
	bands.Put(made.Plan, made.Recipe)
	var b bytes.Buffer
	err = sheet.HTML(&b, made.Plan, sheet.Options{Units: measure.UnitsOf(made.Recipe.Units)})
	return b.String(), err
}

// execute runs a command. Its text is the answer; an editor that does not show answers
// is asked to open a file of it.
func (s *server) execute(raw json.RawMessage) (func() any, *home, error) {
	var p executeParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, nil, err
	}
	do, ok := commands[p.Command]
	if !ok {
		return nil, nil, fmt.Errorf("newmake has no command %q", p.Command)
	}
	var args [2]string
	for i := range min(len(args), len(p.Arguments)) {
		if err := json.Unmarshal(p.Arguments[i], &args[i]); err != nil {
			return nil, nil, err
		}
	}
	path, _ := pathOf(args[0])
	h := s.homeAt(args[0], path)
	var at *check.House
	if h != nil {
		at = h.house
	}
	return func() any {
		given, err := do.give(s, at, path, args[1])
		if err != nil {
			s.message(err.Error())
			return nil
		}
		s.show(p.Command+"-"+front.FileName(args[1])+do.ending, given)
		return given
	}, h, nil
}

// show asks an editor to open a text, unless it shows answers itself.
func (s *server) show(name, given string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.results || s.exited {
		return
	}
	if s.scratch == "" {
		dir, err := os.MkdirTemp("", "newmake-")
		if err != nil {
			return
		}
		s.scratch = dir
	}
	file := filepath.Join(s.scratch, name)
	if os.WriteFile(file, []byte(given), 0o600) != nil {
		return
	}
	if !s.shows {
		s.messageLocked("it is at " + file + " until the editor ends")
		return
	}
	_, _ = s.conn.DispatchCall(context.Background(), "window/showDocument", map[string]any{
		"uri": uriOf(file), "external": strings.HasSuffix(name, ".html"), "takeFocus": true,
	})
}

func (s *server) message(text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.messageLocked(text)
}

func (s *server) messageLocked(text string) {
	_ = s.conn.Notify(context.Background(), "window/showMessage", map[string]any{"type": 3, "message": text})
}

// codeLenses stand above each batch of a file: its plan, its sheet, and what has changed
// since the last commit.
func (s *server) codeLenses(raw json.RawMessage) (func() any, *home, error) {
	nothing := func() any { return []codeLens{} }
	var p documentParams
	if err := json.Unmarshal(raw, &p); err != nil {
		return nil, nil, err
	}
	uri := p.TextDocument.URI
	path, ok := pathOf(uri)
	h := s.homeAt(uri, path)
	if !ok || h == nil || h.house == nil {
		return nothing, nil, nil
	}
	at, units, marked := h.house, s.units, s.marked(path)
	return func() any {
		out := []codeLens{}
		committed := h.committed.Of(at)
		for _, name := range at.BatchesIn(path) {
			d := at.Find(name)
			if d == nil {
				continue
			}
			where := units.span(d.At, marked)
			made, err := planned(at, path, name)
			if err != nil {
				continue
			}
			out = append(out,
				codeLens{where, command{"plan", "newmake.plan", []any{uri, name}}},
				codeLens{where, command{"print", "newmake.sheet", []any{uri, name}}})
			if committed == nil {
				continue
			}
			if was, err := planned(committed, path, name); err == nil {
				said := inlay.Since(was.Plan, made.Plan, measure.UnitsOf(made.Recipe.Units))
				out = append(out, codeLens{where, command{"since the last commit: " + said, "newmake.plan", []any{uri, name}}})
			}
		}
		return out
	}, h, nil
}
