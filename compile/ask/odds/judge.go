package odds

import (
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Judge tries a plan's promises of so many runs, and writes into the plan how they
// stand. A plan without such promises stays as it is, and costs nothing.
func Judge(p *plan.Plan, b *recipe.Batch) {
	if !slices.ContainsFunc(p.Promises, func(e plan.Promise) bool { return e.Times != nil }) {
		return
	}
	t, err := Try(b, UsualDraws, measure.US)
	if err != nil {
		return // the plan says so
	}
	for i, e := range t.promises() {
		if e.Asked != nil {
			p.Promises[i].Tried = &plan.Tried{Draws: len(t.Runs), Share: plan.RoundTo(e.Odds.Share, 3), Words: e.Odds.Words, Verdict: e.Verdict}
		}
	}
	p.Notices = slices.DeleteFunc(p.Notices, func(n plan.Notice) bool { return n.Code == string(diag.CodePromiseUntried) })
}
