package layout

import (
	"strings"

	"github.com/pmezard/go-difflib/difflib"

	"newmake/lang/diag"
)

// Diff is the unified difference between the text as it was and as it is laid
// out.
func (t *Text) Diff() string {
	out, _ := difflib.GetUnifiedDiffString(difflib.UnifiedDiff{ // it fails only where it writes
		A: lines(t.Before), B: lines(t.After), FromFile: diag.Safe(t.Name), ToFile: diag.Safe(t.Name), Context: 3,
	})
	return out
}

// lines cuts a text after each line. A last line without an end says so, as diff
// does.
func lines(text []byte) []string {
	all := strings.SplitAfter(string(text), "\n")
	last := len(all) - 1
	if all[last] == "" {
		return all[:last]
	}
	all[last] += "\n\\ No newline at end of file\n"
	return all
}
