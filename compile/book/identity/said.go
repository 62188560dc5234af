package identity

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/book/trace"
	"newmake/compile/law"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Said speaks of the bottlings that are not what they are sold as, by their records: those
// that are wanted. Where nobody wrote what one is sold as, its batches say it, and it is a
// warning.
func Said(h House, wanted func(*trace.Blend) bool) (said diag.List) {
	j := &judging{House: h}
	for _, b := range trace.Blends(h.Texts, h.Amount) {
		if b.Bottling == nil || !wanted(&b) {
			continue
		}
		is := j.of(b)
		for _, c := range is.Claims {
			if c.Met == law.NotMet {
				said.Add(soldAs(b, is, c))
			}
		}
	}
	return said
}

func soldAs(b trace.Blend, is Identity, c Verdict) diag.Diagnostic {
	var wants []string
	for _, k := range c.Missing {
		s := k.Asks + ": " + k.Found
		if c.OldEnough != "" && strings.HasPrefix(k.Asks, "in wood at least") {
			s += ", would have been on " + c.OldEnough
		}
		wants = append(wants, s)
	}
	d := diag.Diagnostic{Code: diag.CodeSoldAs, At: b.Bottling.SoldAs, Reason: c.Law,
		Summary: fmt.Sprintf("bottling %s is sold as %s, and is not: %s", b.Name, c.Title, strings.Join(wants, "; ")),
		Help:    "look at the dates, the casks and the label"}
	if is.ByBatches {
		d.Severity, d.At = diag.Warning, b.At
		d.Summary = fmt.Sprintf("bottling %s is %s by its batches, and is not by its records: %s", b.Name, c.Title, strings.Join(wants, "; "))
	}
	if n := slices.Clone(is.also); len(n) > 0 {
		for i := range n {
			n[i] = "`standard " + n[i] + "`"
		}
		d.Help += "; by what is written it is " + words.Or(n)
	}
	return d
}
