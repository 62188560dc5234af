package compare

import (
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Word is something that a plan says of itself: a warning, a condition of the
// law, a promise.
type Word struct {
	Code     string `json:"code,omitempty"`
	Severity string `json:"severity"` // error, warning, note; law, promise
	Text     string `json:"text"`
}

// words of a plan with what was found wrong with it, which a plan itself does not
// keep.
func wordsOf(p *plan.Plan, list diag.List) []Word {
	var out []Word
	for _, x := range list {
		out = append(out, Word{Code: string(x.Code), Severity: x.Severity.String(), Text: x.Summary})
	}
	if p.Law != nil {
		for _, k := range p.Law.Conditions {
			if k.Met == "NOT met" {
				out = append(out, Word{Severity: "law", Text: k.Asks + ": " + k.Found})
			}
		}
	}
	return out
}

// gainedAndLost holds what two plans say against one another. The same code is
// the same word, though its numbers may have changed.
func gainedAndLost(old, new []Word) (gained, lost []Word) {
	same := func(a, b Word) bool {
		if a.Code != "" {
			return a.Code == b.Code
		}
		return a.Code == b.Code && asks(a.Text) == asks(b.Text)
	}
	left := func(from, take []Word) []Word {
		var out []Word
		used := make([]bool, len(take))
	next:
		for _, x := range from {
			for i, y := range take {
				if !used[i] && same(x, y) {
					used[i] = true
					continue next
				}
			}
			out = append(out, x)
		}
		return out
	}
	return left(new, old), left(old, new)
}

// asks is what a condition asks, without what was found.
func asks(text string) string {
	for i := range text {
		if text[i] == ':' {
			return text[:i]
		}
	}
	return text
}
