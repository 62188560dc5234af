package tasted

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"newmake/compile/book/taste"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// Found writes what was found among the tastings.
func Found(w io.Writer, f *taste.Found, o Options) error {
	t := columns.Writer{Bold: o.Bold}
	if len(f.Rows) == 0 {
		t.Para(0, 0, fmt.Sprintf("Nothing of the kind stands in %s.", words.Count(f.All, "tasting")))
		_, err := io.WriteString(w, t.String())
		return err
	}
	last := ""
	for _, r := range f.Rows {
		if head := head(r); head != last {
			t.Gap()
			t.Strong(diag.Safe(head))
			last = head
		}
		t.Item("  "+diag.Safe(columns.Cut(label(r), 22)), 26, diag.Safe(strings.Join(slices.DeleteFunc([]string{score(r), r.Words}, func(s string) bool { return s == "" }), ": ")))
	}
	courses(&t, f)
	pointed(&t, f)
	if len(f.Means) > 0 {
		t.Heading("SCORES")
		for _, m := range f.Means {
			t.Item("  "+diag.Safe(columns.Cut(m.What, 22)), 26, diag.Safe(fmt.Sprintf("%.1f of %s (%s to %s), %s of %s: %s",
				m.Mean, scaleEnd(m.Low, m.High), number(m.Least), number(m.Most), words.Count(m.N, "score"), people(m.Tasters), kinds[m.Of]+batchOf(m.Batch))))
		}
	}
	for _, a := range f.Apart {
		t.Heading(diag.Safe(strings.ToUpper("what differs") + ": " + a.First + " / " + a.Second))
		if len(a.Edits) == 0 {
			t.Para(2, 2, "Nothing in the text.")
		}
		for _, e := range a.Edits {
			t.Para(2, 4, diag.Safe(e))
		}
	}
	congeners(&t, f)
	if len(f.Cautions) > 0 {
		t.Gap()
		for _, c := range f.Cautions {
			t.Para(0, 2, c)
		}
	}
	_, err := io.WriteString(w, strings.TrimLeft(t.String(), "\n"))
	return err
}

// kinds are words before a batch, for what of it was tasted.
var kinds = map[string]string{"cask": "casks of ", "hearts": "hearts of ", "new-make": "new make of ", "bottling": "bottles of "}

func people(n int) string {
	if n == 1 {
		return "one person"
	}
	return fmt.Sprintf("%d people", n)
}

// scaleEnd names a scale: 5, or 1 to 5.
func scaleEnd(low, high float64) string {
	if low == 0 {
		return number(high)
	}
	return number(low) + " to " + number(high)
}

// sample names what was tasted, with the run and the batch that it is of.
func sample(of, run, batch string) string {
	switch {
	case run != "" && !strings.HasSuffix(of, run):
		return of + ", run " + run + " of " + batch
	case batch != "":
		return of + ", " + batch
	}
	return of
}

func head(r taste.Row) string {
	s := r.On + "  " + sample(r.Of, r.Run, r.Batch)
	if r.Nosed != "" {
		s += ", at " + r.Nosed
	}
	return s
}

func label(r taste.Row) string {
	if r.By == "" {
		return r.What
	}
	return r.What + " · " + r.By
}

func score(r taste.Row) string {
	if r.Score == nil {
		return ""
	}
	s := number(*r.Score) + " of " + scaleEnd(r.Low, r.High)
	if r.LowSays != "" {
		s += fmt.Sprintf(" (%s %s, %s %s)", number(r.Low), r.LowSays, number(r.High), r.HighSays)
	}
	return s
}

// What is said of what the hearts carry.
const (
	carriedAlike = "The same, within what the models leave open: what was tasted comes from the grain, the ferment or the wood, or from what no model here knows."
	carriedSays  = "To a litre of alcohol, where the charge of the still holds 1. The others are the same within what the models leave open."
)

// congeners sets what the hearts of the batches carry side by side, as far as it is not
// the same within what the models leave open.
func congeners(t *columns.Writer, f *taste.Found) {
	if len(f.Carried) == 0 {
		return
	}
	t.Heading("WHAT THE HEARTS CARRY BESIDE ALCOHOL, AS PLANNED")
	alike := true
	for _, c := range f.Carried {
		if !c.Differs {
			continue
		}
		alike = false
		for i, b := range c.Batches {
			name := ""
			if i == 0 {
				name = "  " + c.Name
			}
			t.Item(diag.Safe(name), 26, diag.Safe(fmt.Sprintf("%.2f (%.2f to %.2f)  %s", b.Relative, b.Low, b.High, b.Batch)))
		}
	}
	if alike {
		t.Para(2, 2, carriedAlike)
		return
	}
	t.Para(2, 2, carriedSays)
}
