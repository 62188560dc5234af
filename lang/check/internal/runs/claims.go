package runs

import (
	"cmp"
	"fmt"
	"time"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
)

// claim is a run in a vessel, from the first to the last that was read or done there.
type claim struct {
	plant, vessel string
	run           *record.Run
	stage         int
	from, to      time.Time
}

// claims are those of all runs, by vessel and by time. A vessel that no line names is
// the recipe's, where that has one.
func claims(all []*record.Run, a Around) []claim {
	var out []claim
	for _, r := range all {
		var b *recipe.Batch
		if d := a.House.Find(r.Batch); d != nil {
			b = a.Batch(d)
		}
		plant := ""
		if b != nil && b.Plant != nil {
			plant = b.Plant.Name
		} else if p := a.Plant(); p != nil {
			plant = p.Name
		}
		for i := range r.Stages {
			c := claim{plant: plant, vessel: r.Stages[i].Vessel, run: r, stage: i}
			if c.vessel == "" {
				c.vessel = planned(b, r.Stages[i].Name)
			}
			if c.vessel != "" && c.span() {
				out = append(out, c)
			}
		}
	}
	sorting.Stable(out, func(a, b claim) int {
		return cmp.Or(cmp.Compare(a.plant, b.plant), cmp.Compare(a.vessel, b.vessel), a.from.Compare(b.from))
	})
	return out
}

// planned is the one vessel that the recipe has for a stage, "" if it leaves a choice.
func planned(b *recipe.Batch, stage record.StageName) string {
	if b == nil {
		return ""
	}
	var v *recipe.Vessel
	switch stage {
	case record.Mash:
		v = b.Mash.Cooker
	case record.Ferment:
		if len(b.Ferm.Vessels) == 1 {
			v = b.Ferm.Vessels[0]
		}
	case record.Strip:
		v = b.Strip.Still
	case record.Spirit:
		v = b.Spirit.Still
	}
	if v == nil {
		return ""
	}
	return v.Name
}

// span finds from when to when a run was in the vessel, false where no clock tells. A
// wash stays in its fermenter until the last of it is in the still: a plant has nothing
// else that it could wait in.
func (c *claim) span() bool {
	see := func(t time.Time) {
		if c.from.IsZero() || t.Before(c.from) {
			c.from = t
		}
		if t.After(c.to) {
			c.to = t
		}
	}
	of := c.run.Stages[c.stage].Name
	for i := range c.run.Visits {
		if v := &c.run.Visits[i]; v.Stage == c.stage && v.When.Known() {
			see(v.When.Time)
		}
	}
	if c.from.IsZero() || of != record.Ferment {
		return !c.from.IsZero()
	}
	for i := range c.run.Visits {
		if v := &c.run.Visits[i]; c.run.Stages[v.Stage].Name == record.Strip && v.Word == "charge" && v.When.Known() && v.When.Time.After(c.from) {
			see(v.When.Time)
		}
	}
	return true
}

// AtOnce reports two runs that were in one vessel at one time. One may begin at the moment
// at which the other ends. The report stands at the later run, or at the earlier if only
// that one is in the files that are checked.
func AtOnce(all []*record.Run, a Around, in map[*house.File]bool) diag.List {
	looked := map[*diag.Source]bool{}
	for f := range in {
		looked[f.Source] = true
	}
	var list diag.List
	clashes(claims(all, a), func(c, last *claim) { list.Add(c.against(last, looked)) })
	return list
}

// KeysAtOnce are the runs that were in a vessel together with another, by their keys: one of
// the two is not as it is written, and nobody knows which.
func KeysAtOnce(all []*record.Run, a Around) map[string]bool {
	out := map[string]bool{}
	clashes(claims(all, a), func(c, last *claim) {
		out[tree.Key(c.run.Number)], out[tree.Key(last.run.Number)] = true, true
	})
	return out
}

// clashes goes through what is claimed, in the order of claims, and gives each claim of a
// vessel with the one that still holds it.
func clashes(all []claim, found func(c, last *claim)) {
	var last *claim // of the vessel, that which ends last
	for i := range all {
		c := &all[i]
		if last == nil || tree.Key(last.vessel) != tree.Key(c.vessel) || last.plant != c.plant {
			last = c
			continue
		}
		if last.run != c.run && c.from.Before(last.to) && last.from.Before(c.to) {
			found(c, last)
		}
		if c.to.After(last.to) {
			last = c
		}
	}
}

// place is where a run says that it was in the vessel.
func (c *claim) place() diag.Span { return c.run.Stages[c.stage].At }

// against says that a run claims the vessel in which an earlier one is.
func (c *claim) against(o *claim, looked map[*diag.Source]bool) diag.Diagnostic {
	to := c.to
	if o.to.Before(to) {
		to = o.to
	}
	here, other := c, o
	if !looked[c.place().Src] && looked[o.place().Src] {
		here, other = o, c
	}
	clock := func(t time.Time) string { return t.In(c.run.Zone).Format("2006-01-02 15:04") }
	return diag.Diagnostic{
		Code: diag.CodeClaim, At: here.place(),
		Summary: fmt.Sprintf("runs %s and %s are both in %q from %s to %s", o.run.Number, c.run.Number, c.vessel, clock(c.from), clock(to)),
		Related: []diag.Related{{At: other.place(), Text: fmt.Sprintf("run %s is in it from %s to %s", other.run.Number, clock(other.from), clock(other.to))}},
		Help:    fmt.Sprintf("one vessel holds one run at a time: write the vessel in which it really was, `%s in \"...\"`, or put a wrong clock right beside it, with `corrected`", here.run.Stages[here.stage].Name),
	}
}
