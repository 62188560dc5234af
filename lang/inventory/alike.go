//go:build !js

package inventory

import (
	"fmt"
	"strings"

	"newmake/lang/diag"
)

// likeDigits are letters that are taken for digits where they stand on a cask head.
var likeDigits = strings.NewReplacer("O", "0", "o", "0", "I", "1", "i", "1", "l", "1", "L", "1")

// alike notes serials that differ only in letters and digits that look the same.
func alike(all []*serial, diags *diag.List) {
	seen := map[string]*serial{}
	for _, s := range all {
		k := strings.ToUpper(likeDigits.Replace(s.name))
		other := seen[k]
		if other == nil {
			seen[k] = s
			continue
		}
		diags.Add(diag.Diagnostic{Code: diag.CodeAlike, Severity: diag.Note, At: s.at(), Summary: fmt.Sprintf("casks %s and %s look the same on a head", other.name, s.name),
			Related: []diag.Related{{At: other.at(), Text: "the other is here"}},
			Help:    "if they are one cask, write its serial as it is painted; if they are two, renumber one when it is emptied"})
	}
}

// at is where a serial is declared, or first filled or read.
func (s *serial) at() diag.Span {
	if s.cask != nil {
		return s.cask.At
	}
	for _, f := range s.facts {
		switch {
		case f.fill != nil:
			return f.fill.Visit.At
		case f.event != nil:
			return f.event.At
		case f.end != nil:
			return f.end.Visit.At
		}
	}
	return diag.Span{}
}
