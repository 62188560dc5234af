package trade

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// checkSteps looks at each step by itself: can it be done at all.
func checkSteps(r *rules, w *walkthrough) {
	checkTreatment(r)
	cooker := r.batch.Mash.Cooker
	for i := range w.moments {
		m := &w.moments[i]
		s := m.step
		hotterThanBoil(r, s, w.boilC)
		switch s.Verb {
		case recipe.MashHeat, recipe.MashBoil:
			if cooker.HeatsW == 0 {
				unable(r, s, diag.CodeNoHeating, "heat", cooker)
			}
		case recipe.MashCool:
			if !cooker.HasCooling() && !(w.firstDrain < i && r.batch.Plant.WortCooler.AreaM2 > 0) {
				unable(r, s, diag.CodeNoCooling, "cool", cooker)
			}
		}
		if s.CooledC > 0 && r.batch.Plant.WortCooler.AreaM2 == 0 {
			r.add(diag.Diagnostic{
				Code: diag.CodeNoCooling, At: r.at(s.Path.Child("cooled")),
				Summary: "worts can't run cold into the fermenter: the plant has no `wort-cooler`",
				Help:    "say in the plant what it is, for example " + wording.Example(r.at(s.Path.Child("cooled")), "wort-cooler 40 sqft, water 20 gal/min") + ", or take `cooled` out",
			})
		}
		switch s.Verb {
		case recipe.MashHeat, recipe.MashRest, recipe.MashCool, recipe.MashBoil, recipe.MashDrain, recipe.MashRecirculate:
			if m.wasEmpty {
				r.add(diag.Diagnostic{
					Code: diag.CodeNothingIn, Summary: fmt.Sprintf("`%s` stands before anything is in the cooker", s.Verb.Word()), At: s.At,
					Help: "put a `water` line before it: the order of the lines is the order of work",
				})
				continue
			}
		}
		switch {
		case s.Verb == recipe.MashRest && m.noGrain:
			r.add(diag.Diagnostic{
				Code: diag.CodeNothingIn, Severity: diag.Warning, Summary: "this rest stands before its grain is in", At: s.At,
				Help: "put the `add` line before it, or take the rest out: water alone needs none",
			})
		case (s.Verb == recipe.MashDrain || s.Verb == recipe.MashSparge || s.Verb == recipe.MashRecirculate) && m.noGrain:
			r.add(diag.Diagnostic{
				Code: diag.CodeNothingIn, Summary: fmt.Sprintf("`%s` stands before any grain is in", s.Verb.Word()), At: s.At,
				Help: "put the `add` lines before it",
			})
		}
		wrongWay(r, m)
	}
}

func unable(r *rules, s *recipe.MashStep, code diag.Code, verb string, v *recipe.Vessel) {
	r.add(diag.Diagnostic{
		Code: code, Summary: fmt.Sprintf("%q can't %s: it has no `%ss` line", v.Name, verb, verb), At: s.At,
		Help:    fmt.Sprintf("say in the plant how much power it has, for example `%ss 120 kW`, or take the step out", verb),
		Related: []diag.Related{{At: v.At, Text: "the cooker is declared here"}},
	})
}

// hotterThanBoil says that a step asks for more than the boil of the place.
func hotterThanBoil(r *rules, s *recipe.MashStep, boil float64) {
	if s.TempC <= boil+boilMargin || s.Verb == recipe.MashBoil {
		return
	}
	p := r.batch.Plant
	at := r.at(s.Path.Child("to"))
	d := diag.Diagnostic{
		Code: diag.CodeAboveBoil, At: at,
		Summary: fmt.Sprintf("%s is above the boil: at the plant's elevation water boils at %s", r.temp(s.TempC), r.tenth(boil)),
		Help:    fmt.Sprintf("ask for less than %s, or write `boil` with its time", r.tenth(boil)),
		Reason:  "in an open vessel a mash never gets hotter than its boil, however long it is heated",
		Related: []diag.Related{{At: r.at(recipe.PathElevation), Text: fmt.Sprintf("the elevation of %q stands here", p.Name)}},
	}
	if at, ok := r.batch.Where[s.Path.Child("to")]; ok {
		d.Summary = strings.Replace(d.Summary, r.temp(s.TempC), "`"+at.Text()+"`", 1)
		r.otherScale(&d, s.Path.Child("to"), 0, boil)
	}
	r.add(d)
}

// wrongWay says that a step heats to where it is colder, or cools to where it is
// hotter. Where the temperature is only an estimate, five degrees are let pass.
func wrongWay(r *rules, m *moment) {
	s, margin := m.step, 0.1
	if !m.sure {
		margin = 5
	}
	d := diag.Diagnostic{At: r.at(s.Path.Child("to"))}
	now := r.temp(m.beforeC)
	if !m.sure {
		now = "about " + now
	}
	switch {
	case s.Verb == recipe.MashHeat && s.TempC < m.beforeC-margin:
		d.Code, d.Summary = diag.CodeHeatDown, fmt.Sprintf("`heat to %s`: the mash is at %s by then", r.temp(s.TempC), now)
		d.Help = "write `cool to`, or a higher temperature; steps may stand in the wrong order"
	case s.Verb == recipe.MashCool && s.TempC > m.beforeC+margin:
		d.Code, d.Summary = diag.CodeCoolUp, fmt.Sprintf("`cool to %s`: the mash is at %s by then", r.temp(s.TempC), now)
		d.Help = "write `heat to`, or a lower temperature; steps may stand in the wrong order"
	default:
		return
	}
	r.add(d)
}

// checkTreatment says where acid, gypsum or lime goes that is written between the
// grain and a later step. The order of the lines is the order of work, and of these
// alone it is not.
func checkTreatment(r *rules) {
	steps := r.batch.Mash.Steps
	first := slices.IndexFunc(steps, func(s recipe.MashStep) bool { return s.Verb == recipe.MashAdd })
	if first < 0 {
		return
	}
	grain, last := steps[first].At, steps[len(steps)-1].At
	for _, path := range []recipe.Path{recipe.PathAcid, recipe.PathGypsum, recipe.PathLime} {
		at, written := r.batch.Where[path]
		if !written || at.Src != grain.Src || at.Src != last.Src || at.Start < grain.Start || at.Start > last.Start {
			continue
		}
		r.add(diag.Diagnostic{
			Code: diag.CodeIntoLiquor, Severity: diag.Note, At: at,
			Summary: fmt.Sprintf("`%s` goes into the first liquor, before the grain, and stands among later steps", path.Last()),
			Help:    "write it after the first `water`, where it is done",
		})
	}
}
