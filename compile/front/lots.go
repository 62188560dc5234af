package front

import (
	"time"

	"newmake/compile/plan"
	"newmake/lang/record"
)

// putLots puts into a plan of which lots its grain is. Which lot is next hangs on what was bought
// and used since the recipe was written: so it is said beside the plan, and only a lot that the
// bill names is planned by its certificate.
func (s *Source) putLots(p *Plan) {
	day := record.Date{Year: p.Recipe.Start.Year, Month: time.Month(p.Recipe.Start.Month), Day: p.Recipe.Start.Day}
	for i := range p.Recipe.Bill.Lines {
		l := &p.Recipe.Bill.Lines[i]
		if i >= len(p.Plan.Bill.Lines) {
			return
		}
		to := &p.Plan.Bill.Lines[i]
		if l.Lot != "" {
			to.Lots = []plan.GrainLot{{Lot: l.Lot, MassKg: to.MassKg, Named: true, MoisturePct: to.MoisturePct}}
			continue
		}
		rest := l.MassKg
		for _, o := range s.House.Stores.FirstIn(l.Grain.Name, l.MassKg, day) {
			moisture, starch := l.Grain.Moisture, l.Grain.Starch
			g := plan.GrainLot{Lot: o.Lot, MassKg: plan.RoundTo(o.Kg, 3)}
			if o.Moisture != nil {
				moisture, g.MoisturePct = *o.Moisture, plan.RoundTo(100**o.Moisture, 1)
			}
			if o.Starch != nil {
				starch, g.StarchPct = *o.Starch, plan.RoundTo(100**o.Starch, 1)
			}
			g.StarchKg = plan.RoundTo(o.Kg*((1-moisture)*starch-(1-l.Grain.Moisture)*l.Grain.Starch), 3)
			to.Lots = append(to.Lots, g)
			rest -= o.Kg
		}
		if len(to.Lots) > 0 && rest > 0.001*l.MassKg {
			to.NoLotKg = plan.RoundTo(rest, 3)
		}
	}
}
