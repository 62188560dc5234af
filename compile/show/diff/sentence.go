package diff

import (
	"fmt"
	spoken "newmake/lang/words"
	"slices"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/lang/diag"
)

// howFar says how the parts were found.
func howFar(w *compare.Why) string {
	s := "Each edit's part is what it adds on the mean over every order in which the edits can be made (its Shapley value); the parts add up to the whole. Interaction is what the edits do together beyond what each does alone: the parts share it."
	if w.Exact {
		s += fmt.Sprintf(" Exact, from %d plans.", w.Plans)
	} else {
		s += fmt.Sprintf(" From %d of all orders, %d plans; +/- is the standard error; a part without one is exact to its last figure.", w.Orders, w.Plans)
	}
	if w.Joined != "" {
		s += " " + strings.ToUpper(w.Joined[:1]) + w.Joined[1:] + "."
	}
	return s
}

// reader is the system of units that a comparison is told in.
func reader(c *compare.Comparison) measure.Units {
	if c.Units == "si" {
		return measure.SI
	}
	return measure.US
}

// changed lists the outcomes that changed and that the reader counts in.
func changed(c *compare.Comparison) []compare.Outcome {
	return slices.DeleteFunc(c.Changed(), func(o compare.Outcome) bool { return !reader(c).Counts(o.Key) })
}

// told are the outcomes that changed by more than the models leave open.
func told(c *compare.Comparison) []compare.Outcome {
	return slices.DeleteFunc(changed(c), compare.Outcome.IsWithin)
}

// folded says which outcomes changed by less.
func folded(c *compare.Comparison) string {
	var names []string
	for _, o := range changed(c) {
		name := o.Name
		if slices.Contains(names, name) { // in another measure
			name += " in " + o.Unit
		}
		if o.IsWithin() {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	head := "And"
	if len(names) == len(changed(c)) {
		head = "Only"
	}
	verb := "that are"
	if len(names) == 1 {
		verb = "that is"
	}
	return fmt.Sprintf("%s %d %s within what the models leave open: %s.", head, len(names), verb, strings.Join(names, ", "))
}

// unchanged lists the outcomes that stayed the same.
func unchanged(c *compare.Comparison) string {
	var names []string
	for _, o := range c.Outcomes {
		if !o.Changed() && reader(c).Counts(o.Key) && (o.Old != 0 || o.Key == "outOfShiftHours") {
			names = append(names, o.Name+" "+withUnit(number(o, o.Old), o.Unit))
		}
	}
	return strings.Join(names, ", ")
}

// headline is the change in outcome in one sentence.
func headline(c *compare.Comparison) string {
	if c.Same {
		return "No change in meaning."
	}
	if c.Missing != "" {
		return capital(c.Missing) + "."
	}
	if len(c.Changed()) == 0 {
		return "No change in any outcome."
	}
	var parts []string
	say := func(key, name string, always bool) {
		o, ok := c.Find(key)
		if !ok || !o.Changed() && (!always || o.New == 0) {
			return
		}
		if !o.Changed() {
			parts = append(parts, name+" "+withUnit(number(o, o.New), o.Unit)+" as before")
			return
		}
		parts = append(parts, fmt.Sprintf("%s %s -> %s (%s)", name, number(o, o.Old), withUnit(number(o, o.New), o.Unit), signed(o.Change, o.Places)))
	}
	say("heartsVolumeL", "hearts", true)
	say("heartsAbvPct", "at", true)
	if o, ok := c.Find("casksFilled"); ok {
		casks := func(n float64) string {
			if n == 1 {
				return "1 cask"
			}
			return measure.Number(n, 0) + " casks"
		}
		if o.Changed() {
			parts = append(parts, casks(o.Old)+" -> "+casks(o.New))
		} else {
			parts = append(parts, casks(o.New)+" as before")
		}
	}
	say("costTotal", "cost", false)
	if n := len(c.Gained); n > 0 {
		parts = append(parts, many(n)+" more")
	}
	if n := len(c.Lost); n > 0 {
		parts = append(parts, many(n)+" fewer")
	}
	return strings.TrimSpace(capital(strings.Join(parts, ", ")) + ". " + incomparable(c))
}

// many counts warnings and notes.
func many(n int) string {
	if n == 1 {
		return "1 warning or note"
	}
	return fmt.Sprintf("%d warnings or notes", n)
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// parts of a document: the comparisons that have something to show, and the rest
// in a sentence each.
func parts(d *compare.Document) (shown []*compare.Comparison, loose []string) {
	var same []string
	for _, c := range d.Pairs {
		if len(d.Pairs) > 1 && c.Same && len(c.Edits)+len(c.Notes) == 0 {
			same = append(same, diag.Safe(c.New.Batch))
		} else {
			shown = append(shown, c)
		}
	}
	if len(same) > 0 {
		loose = append(loose, "No change in meaning: "+strings.Join(same, "; ")+".")
	}
	for _, b := range d.Removed {
		loose = append(loose, fmt.Sprintf("%q is gone.", diag.Safe(b)))
	}
	for _, b := range d.Added {
		loose = append(loose, fmt.Sprintf("%q is new.", diag.Safe(b)))
	}
	for _, b := range d.Broken {
		s := diag.Safe(b.Label)
		if b.Batch != "" {
			s += fmt.Sprintf(", %q", diag.Safe(b.Batch))
		}
		loose = append(loose, s+": cannot be compared: "+diag.Safe(b.Why)+".")
	}
	if len(d.Pairs)+len(loose) == 0 {
		loose = append(loose, "There is no batch to compare.")
	}
	return shown, loose
}

// title names the two sides.
func title(c *compare.Comparison) string {
	if c.Old.Batch == c.New.Batch {
		return diag.Safe(c.New.Batch)
	}
	return diag.Safe(c.Old.Batch) + " -> " + diag.Safe(c.New.Batch)
}

// unpriced says what the money leaves out of both sides, loud where they leave out other
// things.
func unpriced(c *compare.Comparison) string {
	if c.Unpriced == nil {
		return ""
	}
	said := incomparable(c)
	if both := c.Unpriced.Both; len(both) > 0 {
		said = strings.TrimSpace(said + " Neither side has a price for " + spoken.And(both) + ", counted as nothing.")
	}
	return said
}

// incomparable says for what one side alone has no price.
func incomparable(c *compare.Comparison) string {
	if c.Unpriced == nil {
		return ""
	}
	var said []string
	one := func(side string, what []string) {
		if len(what) > 0 {
			said = append(said, side+" has no price for "+spoken.And(what))
		}
	}
	one("old", c.Unpriced.Old)
	one("new", c.Unpriced.New)
	if len(said) == 0 {
		return ""
	}
	return "The money does not compare: " + strings.Join(said, ", and ") + ", counted as nothing."
}
