package logbook

import (
	"fmt"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/record"
)

// Rewritten holds a run against an older text of it, and speaks of what was written down
// then and stands there no more: a reading, a time or a weight is corrected beside it, and
// stays as it was read. What was added since is right. now is nil where the run is gone.
func Rewritten(was, now *record.Run) diag.List {
	var said diag.List
	put := func(at diag.Span, summary string) {
		said.Add(diag.Diagnostic{Code: diag.CodeRewritten, Severity: diag.Warning, At: at, Summary: summary,
			Help: "what was read stays as it was written: put it back, and correct it beside with `corrected`, or add a line with `written` and the day"})
	}
	if now == nil {
		put(diag.Span{}, fmt.Sprintf("run %q was committed, and is gone", was.Number))
		return said
	}
	left := map[string]int{}
	after := raws(now)
	for _, r := range after {
		left[r.whole]++
	}
	var lost []raw
	for _, r := range raws(was) {
		if left[r.whole]--; left[r.whole] < 0 {
			lost = append(lost, r)
		}
	}
	// What is not of the old text may stand where something of it stood.
	new := map[string][]raw{}
	spare := map[string]int{}
	for k, n := range left {
		spare[k] = max(n, 0)
	}
	for i := len(after) - 1; i >= 0; i-- {
		if r := after[i]; spare[r.whole] > 0 {
			spare[r.whole]--
			new[r.place] = append([]raw{r}, new[r.place]...)
		}
	}
	for _, r := range lost {
		if in := new[r.place]; len(in) > 0 {
			new[r.place] = in[1:]
			put(in[0].at, fmt.Sprintf("`%s` was committed, and `%s` stands in its place", r.words, in[0].words))
			continue
		}
		put(now.At, fmt.Sprintf("run %q: `%s` was committed, and is gone", was.Number, r.words))
	}
	return said
}

// raw is one thing that was written down.
type raw struct {
	place string // what it is of, whatever it says
	whole string // with what it says
	words string // for people
	at    diag.Span
}

// raws are the readings, times, weights and corrections of a run, in its order.
func raws(run *record.Run) []raw {
	var out []raw
	put := func(place, label, says string, at diag.Span) {
		out = append(out, raw{place, place + "\x00" + says, strings.TrimSpace(label + " " + says), at})
	}
	for _, u := range run.Used {
		if says, ok := written(&u.Amount); ok {
			if u.Lot != "" {
				says += " lot " + u.Lot
			}
			put("used\x00"+u.What, u.What, says, u.At)
		}
	}
	for _, v := range run.Visits {
		stage := run.Stages[v.Stage].Name
		label := strings.Join(strings.Fields(strings.Join(append([]string{v.Word, v.Of}, v.Names...), " ")), " ")
		if v.Word == "into" {
			label += " " + v.To
		}
		place := string(stage) + "\x00" + label
		if v.When.Clock != "" {
			put(place+"\x00clock", strings.TrimSpace(string(stage)+" "+label), "at "+v.When.Date.String()+" "+v.When.Clock, v.At)
		}
		if v.None {
			put(place+"\x00none", strings.TrimSpace(string(stage)+" "+label), "none", v.At)
		}
		if v.LastS > 0 {
			put(place+"\x00last", string(stage)+" stopped", fmt.Sprintf("%.0f s", v.LastS), v.At)
		}
		for i := range v.Read {
			o := &v.Read[i]
			says, ok := written(o)
			if !ok {
				continue
			}
			at := o.Place
			if at.Src == nil {
				at = v.At
			}
			put(place+"\x00"+string(o.What), strings.TrimSpace(label+" "+string(o.What)), says, at)
		}
	}
	for _, c := range run.Corrections {
		old, to := c.Old.String()+c.OldClock, c.New.String()+c.NewClock
		if c.Withdrawn {
			to = "none"
		}
		put("corrected\x00"+old, "corrected "+old, "to "+to+" on "+c.On.String(), c.Place)
	}
	return out
}

// written is a reading as it was written; false where its blank waits.
func written(o *record.Reading) (string, bool) {
	switch o.State {
	case record.Blank:
		return "", false
	case record.None:
		return "none", true
	}
	says := o.Value.String()
	if o.About {
		says = "about " + says
	}
	if o.At != nil {
		says += " at " + o.At.String()
	}
	if o.True != nil {
		says += ", true " + o.True.String()
	}
	return says, true
}
