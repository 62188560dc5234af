// Package mend puts into texts the fixes that a check offers, as far as they leave
// no doubt about what was meant. It writes nothing.
package mend

import (
	"bytes"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"

	"newmake/cmd/newmake/internal/layout"
	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/sorting"
)

// Text is one file, as it is and as it would be.
type Text struct {
	Name    string // as the check names it
	Before  []byte // as it was read
	After   []byte
	Changes []Change // in the order in which they were made
}

// Diff is the unified difference of the two.
func (t *Text) Diff() string {
	l := layout.Text{Name: t.Name, Before: t.Before, After: t.After}
	return l.Diff()
}

// Change is one fix that was put in.
type Change struct {
	File string    `json:"filename"`
	Line int       `json:"line"` // from 1, in the text as it stood when the fix was put in
	Code diag.Code `json:"code"` // of what was mended
	Was  string    `json:"was"`
	Now  string    `json:"now"`
}

// String says it on one line.
func (c Change) String() string {
	was, now := oneLine(c.Was), oneLine(c.Now)
	did := fmt.Sprintf("`%s` is now `%s`", was, now)
	switch {
	case was == "":
		did = fmt.Sprintf("put in `%s`", now)
	case now == "":
		did = fmt.Sprintf("took out `%s`", was)
	}
	return fmt.Sprintf("%s:%d: %s", c.File, c.Line, did)
}

// oneLine joins the lines of a text, as a message quotes them.
func oneLine(text string) string {
	lines := strings.Split(strings.TrimSpace(text), "\n")
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return strings.Join(lines, "`, `")
}

// mostRounds is how often the texts are looked at anew: one slip may hide
// another, and a slip in a slip is rare.
const mostRounds = 8

// Texts checks some places and gives the files that their fixes would change, in
// the order in which the check spoke of them.
func Texts(places []front.Place) ([]*Text, error) {
	var all []*Text
	for range mostRounds {
		now := slices.Clone(places)
		for i := range now {
			laid := maps.Clone(now[i].Overlay)
			if laid == nil && len(all) > 0 {
				laid = map[string][]byte{}
			}
			for _, t := range all {
				laid[t.Name] = t.After
			}
			now[i].Overlay = laid
		}
		work, err := front.NewCheck(now)
		if err != nil {
			return nil, err
		}
		bySource := map[string][]diag.Diagnostic{}
		var order []*diag.Source
		for _, d := range work.Run() {
			if d.Fix == nil || d.Fix.Guess {
				continue
			}
			src := d.Fix.At.Src
			if _, seen := bySource[src.Name]; !seen {
				order = append(order, src)
			}
			bySource[src.Name] = append(bySource[src.Name], d)
		}
		put := false
		for _, src := range order {
			t := find(all, src.Name)
			if t == nil {
				before, err := original(src, now)
				if err != nil {
					continue // no file of the person's: what newmake brings along is not theirs to mend
				}
				t = &Text{Name: src.Name, Before: before, After: before}
				all = append(all, t)
			}
			put = t.put(src, bySource[src.Name]) || put
		}
		if !put {
			break
		}
	}
	return slices.DeleteFunc(all, func(t *Text) bool { return bytes.Equal(t.Before, t.After) }), nil
}

func find(all []*Text, name string) *Text {
	for _, t := range all {
		if t.Name == name {
			return t
		}
	}
	return nil
}

// original is the file of a source as it is on the disk, or as it came on standard
// input, a byte order mark included. It gives an error if that is not what was
// checked.
func original(src *diag.Source, places []front.Place) ([]byte, error) {
	for _, p := range places {
		if text, ok := p.Overlay[src.Name]; ok && bytes.HasSuffix(text, src.Text) {
			return text, nil
		}
	}
	text, err := os.ReadFile(src.Name)
	if err == nil && !bytes.Equal(diag.NewSource("", text).Text, src.Text) {
		err = fmt.Errorf("%s was changed meanwhile", src.Name)
	}
	return text, err
}

// around gives what stands against a place without a space, so that a change is
// told in whole words: `76-87` is now `76..87`. Where nothing is replaced there
// is none.
func around(at diag.Span) (before, after string) {
	if at.Start == at.End {
		return "", ""
	}
	text := at.Src.Text
	start, end := at.Start, at.End
	for start > 0 && !isSpace(text[start-1]) {
		start--
	}
	for end < len(text) && !isSpace(text[end]) {
		end++
	}
	return string(text[start:at.Start]), string(text[at.End:end])
}

func isSpace(b byte) bool { return strings.IndexByte(" \t\r\n", b) >= 0 }

// put makes the edits that do not touch one another, the first of those that do,
// and says if it made any.
func (t *Text) put(src *diag.Source, list []diag.Diagnostic) bool {
	sorting.Stable(list, func(a, b diag.Diagnostic) int { return a.Fix.At.Start - b.Fix.At.Start })
	mark := t.After[:len(t.After)-len(src.Text)] // a byte order mark, or nothing
	out := append([]byte(nil), mark...)
	end, last := 0, -1
	for _, d := range list {
		f := d.Fix
		if f.At.Start < end || f.At.Start == last {
			continue
		}
		text := f.Text
		if bytes.Contains(src.Text, []byte("\r\n")) {
			text = strings.ReplaceAll(text, "\n", "\r\n")
		}
		out = append(append(out, src.Text[end:f.At.Start]...), text...)
		end, last = f.At.End, f.At.Start
		line, _ := f.At.Position()
		before, after := around(f.At)
		t.Changes = append(t.Changes, Change{File: t.Name, Line: line, Code: d.Code, Was: before + f.At.Text() + after, Now: before + strings.TrimSpace(f.Text) + after})
	}
	out = append(out, src.Text[end:]...)
	put := !bytes.Equal(out, t.After)
	t.After = out
	return put
}
