package diag

import (
	"encoding/json"
	"slices"
	"strings"
	"unicode/utf8"
)

// Report is a diagnostic as JSON. Keys are sorted; lines, columns and bytes are
// those of Source: line and column from 1, column in characters, byte from 0, a
// byte order mark not counted.
type Report struct {
	Batches     []string        `json:"batches,omitempty"` // in which it was found, the varied before what varies it
	Code        Code            `json:"code"`
	Fingerprint string          `json:"fingerprint"` // the same while the line says the same, wherever it moves
	Fix         *ReportFix      `json:"fix,omitempty"`
	Help        string          `json:"help,omitempty"`
	Range       *Range          `json:"range,omitempty"`
	Reason      string          `json:"reason,omitempty"`
	Related     []ReportRelated `json:"related,omitempty"`
	Severity    string          `json:"severity"`
	Snippet     *Snippet        `json:"snippet,omitempty"`
	Summary     string          `json:"summary"`
}

// Range is a place in a file, half-open.
type Range struct {
	End   Place  `json:"end"`
	File  string `json:"filename"`
	Start Place  `json:"start"`
}

// Place is one point of a file.
type Place struct {
	Byte   int `json:"byte"`
	Column int `json:"column"`
	Line   int `json:"line"`
}

// Snippet is the line that a range begins in; of a very long line, what is around
// that. The highlight is in bytes of Code.
type Snippet struct {
	Code           string `json:"code"`
	HighlightEnd   int    `json:"highlight_end_offset"`
	HighlightStart int    `json:"highlight_start_offset"`
	StartLine      int    `json:"start_line"`
}

// ReportRelated is another place that bears on the diagnostic.
type ReportRelated struct {
	Range *Range `json:"range,omitempty"`
	Text  string `json:"text"`
}

// ReportFix is an edit that is safe to make, or else a guess, to be asked about.
type ReportFix struct {
	Guess bool   `json:"guess,omitempty"`
	Label string `json:"label"`
	Range *Range `json:"range,omitempty"`
	Text  string `json:"text"`
}

// Reports gives the list in its JSON form, in its order. It is never nil.
func (l List) Reports() []Report {
	out := make([]Report, 0, len(l))
	prints := l.Fingerprints()
	for i, d := range l {
		r := Report{
			Batches: named(d.Batches), Fingerprint: prints[i],
			Code: d.Code, Severity: d.Severity.String(), Summary: d.Summary,
			Help: d.Help, Reason: d.Reason, Range: rangeOf(d.At), Snippet: snippetOf(d.At),
		}
		for _, rel := range d.Related {
			r.Related = append(r.Related, ReportRelated{Text: rel.Text, Range: rangeOf(rel.At)})
		}
		if d.Fix != nil {
			r.Fix = &ReportFix{Guess: d.Fix.Guess, Label: d.Fix.Label, Text: d.Fix.Text, Range: rangeOf(d.Fix.At)}
		}
		out = append(out, r)
	}
	return out
}

// longestName is how many bytes of a batch's name are given: far more than a name may
// have, so only those are cut that are an error themselves.
const longestName = 1000

// named are the names of batches as they are given.
func named(batches []string) []string {
	out := slices.Clone(batches)
	for i, name := range out {
		if len(name) > longestName {
			out[i] = strings.ToValidUTF8(name[:longestName], "") + "…"
		}
	}
	return out
}

// MarshalJSON gives the list as an array of Reports.
func (l List) MarshalJSON() ([]byte, error) { return json.Marshal(l.Reports()) }

func rangeOf(at Span) *Range {
	if at.IsZero() {
		return nil
	}
	return &Range{File: at.Src.Name, Start: placeOf(at.Src, at.Start), End: placeOf(at.Src, at.End)}
}

func placeOf(src *Source, offset int) Place {
	line, col := src.Position(offset)
	return Place{Line: line, Column: col, Byte: offset}
}

func snippetOf(at Span) *Snippet {
	if at.IsZero() || len(at.Src.Text) == 0 {
		return nil
	}
	number, _ := at.Position()
	line := at.Src.LineSpan(number)
	if line.End-line.Start > longestSnippet {
		line = around(line, min(at.Start, line.End))
	}
	return &Snippet{
		Code: line.Text(), StartLine: number,
		HighlightStart: min(at.Start, line.End) - line.Start,
		HighlightEnd:   min(at.End, line.End) - line.Start,
	}
}

// longestSnippet is how many bytes of a line are given.
const longestSnippet = 1000

// around is the part of a long line around a place, between whole characters.
func around(line Span, at int) Span {
	text := line.Src.Text
	start := max(line.Start, at-longestSnippet/4)
	end := min(line.End, start+longestSnippet)
	for start > line.Start && !utf8.RuneStart(text[start]) {
		start--
	}
	for end > start && end < line.End && !utf8.RuneStart(text[end]) {
		end--
	}
	return Span{Src: line.Src, Start: start, End: end}
}
