package logbook

import (
	"fmt"
	"slices"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// corrected reads a correction and finds the one value that it is of, among the
// lines above it in its block.
func (r *reader) corrected(l *tree.Node, visits []record.Visit, used []record.Used) {
	c := record.Correction{On: record.ReadDate(l.Text("date")), By: l.Text("who"), Note: l.Text("remark"), Withdrawn: l.Has("none"), Place: l.At()}
	which := l.At()
	if o := l.Get("before"); o != nil {
		c.OldClock, c.NewClock, which = o.Text(), l.Text("after"), o.At()
		if d := l.Get("moved"); d != nil {
			c.NewDate = record.ReadDate(d.Text())
		}
	}
	if o := l.Get("old"); o != nil {
		c.Old, which = valueOf(o), o.At()
	}
	if o := l.Get("new"); o != nil {
		c.New = valueOf(o)
		r.amount(o)
	}
	d := diag.Diagnostic{Code: diag.CodeCorrection, At: which,
		Help: "name the line as it begins, and write the value as it stands there: " + wording.Example(which, "corrected 10:04 heat 119 F to 191 F on 2026-03-05")}
	var found []func(*record.Correction)
	if visits != nil || used == nil {
		found = r.ofVisits(l, &c, visits)
	}
	for i := range used {
		if u := &used[i]; slices.ContainsFunc(l.Match.All("what"), func(w *tree.Capture) bool { return w.Text() == u.What }) && holds(&u.Amount, c.Old) {
			found = append(found, func(c *record.Correction) { c.Before, u.Amount.Corrected = u.Amount.Corrected, c })
		}
	}
	switch said := c.Old.String() + c.OldClock; {
	case len(found) == 0:
		d.Summary = fmt.Sprintf("no line above in this block has `%s` for this to correct", said)
	case len(found) > 1:
		d.Summary = fmt.Sprintf("%d values above could be the `%s` that this corrects", len(found), said)
	case c.New.Unit != "" && c.New.Kind != c.Old.Kind:
		d.Code, d.Summary = diag.CodeWrongKind, fmt.Sprintf("`%s` is %s, and `%s` is %s", c.Old, c.Old.Kind, c.New, c.New.Kind)
	default:
		r.run.Corrections = append(r.run.Corrections, &c)
		found[0](&c)
		return
	}
	r.diags.Add(d)
}

// holds reports whether a reading shows a value: what was written, or what that was last
// corrected to.
func holds(o *record.Reading, v record.Value) bool {
	now, ok := o.Holds()
	return ok && now.Same(v)
}

// ofVisits finds the values that a correction may be of, and gives what corrects
// each.
func (r *reader) ofVisits(l *tree.Node, c *record.Correction, visits []record.Visit) []func(*record.Correction) {
	var found []func(*record.Correction)
	for i := range visits {
		v := &visits[i]
		label, ok := isCalled(l, v)
		if !ok {
			continue
		}
		if c.IsClock() {
			if v.When.Clock == c.OldClock {
				found = append(found, func(c *record.Correction) { r.otherClock(v, r.times[i], c) })
			}
			continue
		}
		shared := map[*record.Value]bool{} // the sample of several readings is one value
		for j := range v.Read {
			o := &v.Read[j]
			if label != "" && o.What != label {
				continue
			}
			if holds(o, c.Old) {
				found = append(found, func(c *record.Correction) { c.Before, o.Corrected = o.Corrected, c })
			}
			if at := o.At; at != nil && at.Same(c.Old) && !shared[at] {
				shared[at] = true
				found = append(found, func(c *record.Correction) {
					for k := range v.Read {
						if v.Read[k].At == at {
							c.Before, v.Read[k].AtCorrected = v.Read[k].AtCorrected, c
						}
					}
				})
			}
		}
	}
	return found
}

// isCalled says that a correction names a line as it begins: by its time, its word
// and its names, as far as it says them. A last word may name the reading.
func isCalled(l *tree.Node, v *record.Visit) (label record.What, ok bool) {
	if c := l.Get("clock"); c != nil && c.Text() != v.When.Clock {
		return "", false
	}
	if c := l.Get("seen"); c != nil && c.Text() != v.When.Date.String() {
		return "", false
	}
	for i, day := range lang.Days {
		if l.Has(day) && int(v.When.Date.Weekday()) != i {
			return "", false
		}
	}
	words := l.Match.All("what")
	if v.Word != "" {
		if len(words) > 0 && words[0].Text() == v.Word {
			words = words[1:]
		} else if len(words) > 0 || l.Get("clock") == nil {
			return "", false
		}
	}
	for i, w := range words {
		text := w.Text()
		switch {
		case text == v.Of || text == v.To || text == v.From || text == "on" || text == v.Why || slices.Contains(v.Names, text):
		case i == len(words)-1:
			label = record.What(text)
		default:
			return "", false
		}
	}
	return label, true
}

// otherClock corrects the time of a line. The day stays, unless the correction says it.
func (r *reader) otherClock(v *record.Visit, line *timed, c *record.Correction) {
	day := v.When.Date
	if !c.NewDate.IsZero() {
		day = c.NewDate
	}
	hour, minute, second := parseClock(c.NewClock)
	all := moments(day, hour, minute, second, r.Zone)
	if len(all) == 0 {
		r.diags.Add(diag.Diagnostic{Code: diag.CodeNoHour, At: c.Place, Summary: fmt.Sprintf("there is no %s %s on the clocks of %s: they were put forward over it", day, c.NewClock, r.Zone),
			Help: "write the time that the clock on the wall showed"})
		return
	}
	v.When.Corrected, v.When.Date, v.When.Time = c, day, all[0]
	if line == nil { // what was written was no time of that day
		return
	}
	line.time, line.corrected, line.day = all[0], c, day
	if at := slices.Index(r.clock.lines, line); len(all) > 1 && at > 0 && all[0].Before(r.clock.lines[at-1].time) {
		v.When.Time, line.time = all[1], all[1] // the hour comes twice, and the line above lies in the first
	}
}
