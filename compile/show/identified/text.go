// Package identified shows what a vat or a bottling is. It computes nothing.
package identified

import (
	"fmt"
	"strings"

	"newmake/compile/book/identity"
	"newmake/compile/book/trace"
	"newmake/compile/law"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Write writes what a vat or a bottling is, a paragraph each, indented.
func Write(p *columns.Writer, i identity.Identity, indent int) {
	for _, s := range lines(i) {
		p.Para(indent, indent+2, diag.Safe(s))
	}
}

// lines are what a vat or a bottling is, in sentences.
func lines(i identity.Identity) []string {
	out := []string{age(i)}
	for _, c := range i.Claims {
		out = append(out, claim(i, c))
	}
	if len(i.Claims) == 0 {
		out = append(out, "Nothing says what it is sold as, and its batches do not agree in it: `standard` in the bottling does.")
	}
	if len(i.Also) > 0 {
		out = append(out, "As far as the records tell it is "+words.And(i.Also)+" as well.")
	}
	for _, c := range i.Near {
		out = append(out, "Not "+c.Title+": "+missing(c)+".")
	}
	if len(i.Label) > 0 {
		out = append(out, "The label: "+strings.Join(i.Label, "; ")+".")
	}
	return out
}

func age(i identity.Identity) string {
	switch y := i.Youngest; {
	case len(i.Unwritten) > 0:
		return "How old the youngest in it is cannot be said: " + strings.Join(i.Unwritten, "; ") + "."
	case y == nil:
		return "How old the youngest in it is cannot be said: nothing leads on to a run."
	case len(y.Casks) == 0:
		return fmt.Sprintf("The youngest in it was never in wood: run %s%s.", y.Run, share(i, y))
	default:
		return fmt.Sprintf("The youngest in it was in wood %s: run %s, cask %s%s.", y.Words, y.Run, words.And(y.Casks), share(i, y))
	}
}

// share is how much the youngest is of all of it, where it is not all.
func share(i identity.Identity, y *identity.Age) string {
	if len(i.Spirits) < 2 {
		return ""
	}
	for _, s := range i.Spirits {
		if s.Run == y.Run && strings.Join(s.Casks, "\x00") == strings.Join(y.Casks, "\x00") && s.SharePct > 0 {
			digits := 0
			if s.SharePct < 10 {
				digits = 1
			}
			return fmt.Sprintf(", %.*f %% of the alcohol", digits, s.SharePct)
		}
	}
	return ""
}

func claim(i identity.Identity, c identity.Verdict) string {
	said := "Sold as " + c.Title
	switch {
	case i.Kind == trace.Vat:
		said = "Made as " + c.Title
	case i.ByBatches:
		said = "Sold as " + c.Title + ", as its batches have it"
	}
	switch c.Met {
	case law.Met:
		said += ": it is that"
	case law.NotMet:
		said += ": it is NOT: " + missing(c)
	default:
		said += ": nobody can say"
	}
	if len(c.NotTold) > 0 {
		said += "; the records do not tell: " + strings.Join(c.NotTold, "; ")
	}
	return said + " (" + c.Law + ")."
}

// missing are the conditions that are not met, each with what was found.
func missing(c identity.Verdict) string {
	var out []string
	for _, k := range c.Missing {
		out = append(out, condition(c, k))
	}
	return strings.Join(out, "; ")
}

func condition(c identity.Verdict, k plan.Condition) string {
	s := k.Asks + ": " + k.Found
	if c.OldEnough != "" && strings.HasPrefix(k.Asks, "in wood at least") {
		s += ", would have been on " + c.OldEnough
	}
	return s
}
