package diag

import (
	"fmt"
	"unicode/utf8"
)

// MostSaid is how many errors are kept of one list, and how many warnings and
// notes beside them.
const MostSaid = 1000

// mostAdvised is how many of a list get advice that has to be searched for.
const mostAdvised = 200

// The longest summary and help in bytes: what quotes a long text ends there.
const (
	longestSummary = 500
	longestHelp    = 4000
)

// Cap gives the list ready to be shown. Of more than MostSaid errors it keeps the
// first, and of warnings and notes too; one more diagnostic says how many the rest
// are, and Count still counts them.
func (l List) Cap() List {
	if len(l) == 0 {
		return l
	}
	kept := make(List, 0, min(len(l), 2*MostSaid+1))
	rest := Diagnostic{Code: CodeTooManySaid, Severity: Note, Help: "mend the first of them, and look again"}
	errors, others := 0, 0
	for _, d := range l {
		count := &others
		if d.Severity == Error {
			count = &errors
		}
		if !d.standsForMore() && *count < MostSaid {
			*count++
			kept = append(kept, d)
			continue
		}
		if rest.At.IsZero() {
			rest.At = d.At
		}
		rest.Severity = min(rest.Severity, d.Severity)
		if d.standsForMore() {
			for s, n := range d.stands {
				rest.stands[s] += n
			}
		} else {
			rest.stands[d.Severity]++
		}
	}
	if rest.standsForMore() {
		rest.Summary = fmt.Sprintf("and %s more: no more than %d are shown", List{rest}.Counted(), MostSaid)
		kept = append(kept, rest)
	}
	kept.advise()
	return kept
}

// standsForMore reports whether a diagnostic is the one that Cap adds.
func (d *Diagnostic) standsForMore() bool { return d.stands != [Note + 1]int{} }

// advise asks for the advice of a list's diagnostics.
func (l List) advise() {
	asked := 0
	for i := range l {
		if ask := l[i].Advise; ask != nil {
			l[i].Help, l[i].Fix = ask(asked < mostAdvised)
			l[i].Advise = nil
			asked++
		}
		l[i].Summary, l[i].Help = clipped(l[i].Summary, longestSummary), clipped(l[i].Help, longestHelp)
	}
}

// clipped is a text of at most so many bytes.
func clipped(text string, most int) string {
	if len(text) <= most {
		return text
	}
	for most > 0 && !utf8.RuneStart(text[most]) {
		most--
	}
	return text[:most] + " ..."
}
