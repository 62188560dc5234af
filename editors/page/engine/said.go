package engine

import (
	"fmt"
	"path/filepath"
	"strings"

	"newmake/compile/show/inlay"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/sorting"
)

// Said is a diagnostic.
type Said struct {
	From     int      `json:"from"`
	To       int      `json:"to"`
	Line     int      `json:"line"`
	Severity string   `json:"severity"` // error, warning, note
	Code     string   `json:"code"`
	Summary  string   `json:"summary"`
	Help     string   `json:"help,omitempty"`
	Reason   string   `json:"reason,omitempty"`
	Related  []string `json:"related,omitempty"`
	Fix      *Fix     `json:"fix,omitempty"`
}

// Fix is an edit that mends a text, or may.
type Fix struct {
	File  string `json:"file"`
	From  int    `json:"from"`
	To    int    `json:"to"`
	Text  string `json:"text"`
	Label string `json:"label"`
	Guess bool   `json:"guess,omitempty"` // it is for the person to say if that was meant
}

// Token is a part of a text that has a colour.
type Token struct {
	From int    `json:"from"`
	To   int    `json:"to"`
	Sort string `json:"sort"`
}

// Hint is a prediction that stands behind a place.
type Hint struct {
	At   int    `json:"at"`
	Text string `json:"text"`
	More string `json:"more"`
}

// check says what is to be said of the texts alone, with what the last plan showed
// where the line is as it was, and colours the file that is looked at.
func (e *Engine) check(q Question) Answer {
	work, h, err := e.load(q.Files)
	a := Answer{Tokens: tokens(q.Files[q.File])}
	switch {
	case err != nil:
		a.Problem = harmless(err.Error())
		return a
	case h == nil:
		a.Said = told(q.Files, work.Run())
	default:
		a.Said = told(q.Files, h.Check())
	}
	return a
}

// told sorts diagnostics by file. Those of the house as a whole are told of its main
// file.
func told(files map[string]string, list diag.List) map[string][]Said {
	out := map[string][]Said{}
	at := map[string]*places{}
	of := func(name string) *places {
		if at[name] == nil {
			at[name] = placesOf(files[name])
		}
		return at[name]
	}
	for _, d := range list.Cap() {
		s := Said{Severity: d.Severity.String(), Code: string(d.Code), Summary: harmless(d.Summary), Help: harmless(d.Help), Reason: harmless(d.Reason)}
		file := house.FileName
		if !d.At.IsZero() {
			file = nameOf(d.At)
			s.Line, _ = d.At.Position()
			s.From, s.To = of(file).unit(d.At.Start), of(file).unit(d.At.End)
		}
		for _, r := range d.Related {
			if !r.At.IsZero() && r.Text != "" {
				s.Related = append(s.Related, placeOf(r.At)+": "+harmless(r.Text))
			}
		}
		if f := d.Fix; f != nil && !f.At.IsZero() {
			in := nameOf(f.At)
			if _, ok := files[in]; ok {
				s.Fix = &Fix{File: in, From: of(in).unit(f.At.Start), To: of(in).unit(f.At.End), Text: f.Text, Label: f.Label, Guess: f.Guess}
			}
		}
		out[file] = append(out[file], s)
	}
	return out
}

// harmless is a text as it is shown: nothing in it moves what stands around it.
func harmless(text string) string {
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		lines[i] = diag.Safe(l)
	}
	return strings.Join(lines, "\n")
}

// placeOf is a place as a person reads it.
func placeOf(at diag.Span) string {
	line, _ := at.Position()
	return fmt.Sprintf("%s:%d", nameOf(at), line)
}

func nameOf(at diag.Span) string { return filepath.ToSlash(filepath.Clean(at.Src.Name)) }

// sorts are the colours of the tokens; one that has none is not told.
var sorts = map[lang.TokenKind]string{
	lang.TokComment: "comment", lang.TokString: "string", lang.TokUnclosed: "wrong", lang.TokBad: "wrong",
	lang.TokDate: "number", lang.TokClock: "number", lang.TokNumber: "number", lang.TokRange: "number", lang.TokUnit: "unit",
}

// tokens colours a text: what opens a line is a keyword, a word behind a number is its
// unit.
func tokens(text string) []Token {
	p := placesOf(text)
	out := []Token{}
	first, number := true, false
	for _, t := range lang.Tokens([]byte(p.text)) {
		sort := sorts[t.Kind]
		if t.Kind == lang.TokWord {
			switch {
			case first:
				sort = "keyword"
			case number:
				sort = "unit"
			}
		}
		if sort != "" {
			out = append(out, Token{p.unit(int(t.Start)), p.unit(int(t.End)), sort})
		}
		first = t.Kind == lang.TokNewline || t.Kind == lang.TokOpen || t.Kind == lang.TokClose || first && t.Kind == lang.TokComment
		number = t.Kind == lang.TokNumber
	}
	return out
}

// foretold says what a prediction is, by the parts of the page.
const foretold = "predicted; the run sheet beside the text has the whole plan"

// hints are the predictions of batches as places of a text.
func hints(h *check.House, text string, of map[string][]inlay.Hint) []Hint {
	p := placesOf(text)
	out := []Hint{}
	for _, name := range h.Batches() {
		for _, hint := range of[name] {
			out = append(out, Hint{p.unit(hint.At.End), hint.Text, foretold})
		}
	}
	sorting.Stable(out, func(a, b Hint) int { return a.At - b.At })
	return out
}
