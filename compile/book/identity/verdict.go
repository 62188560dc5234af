package identity

import (
	"slices"
	"strings"

	"newmake/compile/law"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/recipe"
	"newmake/lang/record"
	"newmake/lang/tree"
)

// partsOf are the names of the standards that a batch names.
func partsOf(s *recipe.Standard) []string {
	if len(s.Parts) > 0 {
		return s.Parts
	}
	return []string{s.Name}
}

// standard finds one by its name, nil where there is none.
func (j *judging) standard(name string) *recipe.Standard {
	for _, s := range j.Standards {
		if tree.Key(s.Name) == tree.Key(name) {
			return s
		}
	}
	return nil
}

// family is the law that a standard is of, by the beginning of its citation: 27 CFR, Scotch
// Whisky, Regulation (EU).
func family(s *recipe.Standard) string {
	f := strings.Fields(s.Law)
	return strings.Join(f[:min(2, len(f))], " ")
}

// verdict holds a mixture against one standard: each spirit in it must do what is asked, and
// the days and the bottle are those of the whole.
func (j *judging) verdict(s *recipe.Standard, in []spirit, shares bool) Verdict {
	v := Verdict{Name: s.Name, Title: s.Title, Law: s.Law, Met: law.Met, Missing: []plan.Condition{}, NotTold: []string{}, Conditions: []plan.Condition{}, near: true}
	for i := range s.Conditions {
		k := &s.Conditions[i]
		p := j.condition(k, in, shares)
		v.Conditions = append(v.Conditions, p)
		switch {
		case p.Met == law.NotMet:
			v.Met = law.NotMet
			v.Missing = append(v.Missing, p)
			v.near = v.near && (k.Test == recipe.AgeLeast || k.Test == recipe.BottledAt || k.Test == recipe.BottledLeast || k.Test == recipe.OneSeason)
		case p.Met == law.Stated && (p.Found == law.Unwritten || !j.bottle.vat && isBottled(k.Test)):
			v.NotTold = append(v.NotTold, p.Asks)
		}
		if k.Test == recipe.AgeLeast {
			v.OldEnough = oldEnough(in, k.AgeS)
		}
	}
	v.near = v.near && v.Met == law.NotMet
	if v.Met == law.Met && slices.ContainsFunc(in, func(x spirit) bool { return x.batch == nil }) {
		v.Met = law.Stated
	}
	return v
}

func isBottled(t recipe.Test) bool { return t == recipe.BottledAt || t == recipe.BottledLeast }

// condition is one condition of a standard, held against all that is in it: the first spirit
// that does not do what it asks speaks for all.
func (j *judging) condition(k *recipe.Condition, in []spirit, shares bool) plan.Condition {
	switch k.Test {
	case recipe.OneSeason:
		return j.oneSeason(k, in)
	case recipe.PartsLeast:
		return j.parts(k, in, shares)
	}
	var worst *plan.Condition
	for n := range in {
		x := &in[n]
		if x.batch == nil {
			continue
		}
		for _, at := range x.stays {
			b := *x.batch
			b.Cask = at
			if j.bottle.at.Weaker(k.Strength) || !j.bottle.vat { // what is in a vat can still be reduced
				b.Cask.BottleAt = j.bottle.at
			}
			p := law.One(&b, k, x.off, x.days, plan.Cask{})
			if k.Test == recipe.AgeLeast {
				p.Found = x.age.Words
			}
			if worst == nil || graver(p.Met) > graver(worst.Met) {
				if len(in) > 1 && p.Met == law.NotMet {
					p.Found += " (" + x.name() + ")"
				}
				worst = &p
			}
		}
	}
	if worst == nil {
		return plan.Condition{Asks: string(k.Test), Found: law.Unwritten, Met: law.Stated, Section: k.Law}
	}
	return *worst
}

// parts is the share of a mixture that meets one of some standards, each spirit by itself;
// its bottle is that of the whole.
func (j *judging) parts(k *recipe.Condition, in []spirit, shares bool) plan.Condition {
	share, some, all := 0.0, false, true
	for i := range in {
		one := in[i : i+1]
		meets := one[0].batch != nil && slices.ContainsFunc(k.Others, func(name string) bool {
			o := j.standard(name)
			if o == nil {
				return false
			}
			for n := range o.Conditions {
				if !isBottled(o.Conditions[n].Test) && j.condition(&o.Conditions[n], one, shares).Met == law.NotMet {
					return false
				}
			}
			return true
		})
		if meets {
			share += one[0].Share
		}
		some, all = some || meets, all && meets
	}
	switch {
	case all:
		return law.Parts(k, 1)
	case !some:
		return law.Parts(k, 0)
	case !shares:
		return plan.Condition{Asks: law.PartsAsk(k), Found: law.Unwritten, Met: law.Stated, Section: k.Law}
	}
	return law.Parts(k, share)
}

func graver(met string) int {
	switch met {
	case law.NotMet:
		return 2
	case law.Stated:
		return 1
	}
	return 0
}

// oneSeason holds all runs together against one kind, one distilling season, one distiller and
// one plant (27 CFR 5.88(a)(1) and (2)). Where the days of a run are only bounded, and not in one
// season, nothing is said.
func (j *judging) oneSeason(k *recipe.Condition, in []spirit) plan.Condition {
	p := plan.Condition{Asks: "of one kind, distilled by one distiller at one distillery in one season, January to June or July to December", Section: k.Law, Met: law.Met}
	var all law.Days
	loose := false
	plants := map[string]bool{}
	for _, x := range in {
		if x.batch == nil || x.days.From.IsZero() {
			loose = true
			continue
		}
		plants[x.batch.Plant.Name] = true
		if all.From.IsZero() || x.days.From.Before(all.From) {
			all.From = x.days.From
		}
		if x.days.To.After(all.To) {
			all.To = x.days.To
		}
		loose = loose || x.loose && !x.days.OneSeason()
	}
	switch {
	case len(plants) > 1:
		p.Met, p.Found = law.NotMet, "of several plants"
	case j.severalKinds(in):
		p.Met, p.Found = law.NotMet, "of several kinds"
	case all.From.IsZero() || loose:
		p.Met, p.Found = law.Stated, law.Unwritten
	case !all.OneSeason():
		p.Met, p.Found = law.NotMet, all.Words()
	default:
		p.Found = all.Words()
	}
	return p
}

// severalKinds says that the batches were made as kinds that have no name in common. Straight or
// not is of their age and their bottle, not of their kind.
func (j *judging) severalKinds(in []spirit) bool {
	var common []string
	for n, x := range in {
		if x.batch == nil || x.batch.Standard == nil {
			return false
		}
		var own []string
		for _, name := range partsOf(x.batch.Standard) {
			s := j.standard(name)
			if s == nil || !slices.ContainsFunc(s.Conditions, func(k recipe.Condition) bool { return k.Test == recipe.OneSeason }) {
				own = append(own, strings.TrimPrefix(tree.Key(name), "straight-"))
			}
		}
		switch {
		case len(own) == 0:
			return false
		case n == 0:
			common = own
		default:
			common = slices.DeleteFunc(common, func(s string) bool { return !slices.Contains(own, s) })
		}
	}
	return len(in) > 0 && len(common) == 0
}

// oldEnough is the day on which the last of the spirits was in wood for so long, or would
// have been; "" where one was never in wood, or nobody knows.
func oldEnough(in []spirit, ageS float64) string {
	var last record.Date
	for _, x := range in {
		if x.Since().IsZero() {
			return ""
		}
		if on := cask.RestOver(x.Since(), ageS); on.Compare(last) > 0 {
			last = on
		}
	}
	return last.String()
}

// labels are what a standard wants on the label of what is so old, or of such wood.
func labels(s *recipe.Standard, in []spirit) []string {
	var out []string
	add := func(l string) {
		if !slices.Contains(out, l) {
			out = append(out, l)
		}
	}
	y := youngest(in)
	for i := range s.Conditions {
		k := &s.Conditions[i]
		switch {
		case k.Test == recipe.LabelUnder && y != nil && !k.Rested(y.restS):
			add(k.Text + ": " + y.Words)
		case k.Test == recipe.LabelUsed:
			for _, x := range in {
				if slices.ContainsFunc(x.stays, func(c recipe.Cask) bool { return c.Kind != nil && !c.New }) {
					add(k.Text)
				}
			}
		}
	}
	return out
}

// isBlend says that a standard is of mixtures.
func isBlend(s *recipe.Standard) bool {
	return slices.ContainsFunc(s.Conditions, func(k recipe.Condition) bool { return k.Test == recipe.PartsLeast })
}
