package notice

import (
	"errors"
	"fmt"
	"time"

	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// standsLongS is how long a wash may stand before it is run, unsaid.
const standsLongS = 72 * lot.SecondsPerHour

// Start says why the work cannot be put on the clock.
func Start(b *recipe.Batch, err error) diag.List {
	w := about(b)
	if errors.Is(err, work.ErrZone) {
		w.add(diag.Diagnostic{
			Code: diag.CodeUnknownZone, At: b.Plant.At, Summary: fmt.Sprintf("the zone %q is not known", b.Plant.Zone),
			Help: `write a name like "America/New_York" or "Europe/London"`,
		})
		return w.list
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeNoSuchStart, At: w.at(recipe.PathStart), Summary: fmt.Sprintf("the start is not one moment in %s: %v", b.Plant.Zone, err),
		Help: "start an hour earlier or later",
	})
	return w.list
}

// Schedule is what of the work does not fall as one would like.
func Schedule(b *recipe.Batch, slots []schedule.Slot) diag.List {
	w := about(b)
	if first := slots[0]; first.Wait > 0 {
		w.add(diag.Diagnostic{
			Code: diag.CodeStartWaits, At: w.at(recipe.PathStart),
			Summary: fmt.Sprintf("work begins at %s, not as written: %s", first.Start.Format("Mon 2 Jan 15:04"), first.WaitWhy),
			Help:    "start on a working day, early enough for the whole mash day",
		})
	}
	over := map[string]time.Duration{}
	var stages []string
	for _, s := range slots {
		if s.OutOfShift > 0 {
			if over[s.Stage] == 0 {
				stages = append(stages, s.Stage)
			}
			over[s.Stage] += s.OutOfShift
		}
		if s.Key == "strip.charge" && s.Wait.Seconds() > standsLongS {
			w.add(diag.Diagnostic{
				Code: diag.CodeStandsLong, At: w.at(recipe.PathFermentFor),
				Summary: fmt.Sprintf("the wash stands for %s before it is run: %s", measure.Hours(s.Wait.Hours()), s.WaitWhy),
				Help:    "change the start or the time of the ferment", Reason: "it goes on souring, and loses alcohol to the air",
			})
		}
	}
	for _, stage := range stages {
		w.add(diag.Diagnostic{
			Code: diag.CodeOutOfShift, At: w.at(recipe.PathOf(stage), recipe.PathStart),
			Summary: fmt.Sprintf("%s of the %s lie outside the shift", measure.Duration(over[stage].Minutes()), stage),
			Help:    "a longer shift that day, more heat or cooling, or a smaller batch",
			Reason:  "the work cannot be left half done",
		})
	}
	for _, k := range schedule.Conflicts(slots, b.Plant.Crew, b.Plant.BoilerW) {
		conflict(w, k)
	}
	return w.list
}

func conflict(w *writer, k schedule.Conflict) {
	at := k.From.Format("Mon 2 Jan 15:04")
	what := work.Names(k.Keys)
	switch k.Kind {
	case schedule.Crew:
		w.add(diag.Diagnostic{
			Code: diag.CodeCrewShort, At: w.at(recipe.PathStart),
			Summary: fmt.Sprintf("%s: %s: %.0f people are wanted, and the crew is %.0f", at, what, k.Need, k.Have),
			Help:    "have somebody in that day",
		})
	case schedule.Boiler:
		w.add(diag.Diagnostic{
			Code: diag.CodeBoilerShared, At: w.at(recipe.PathStart),
			Summary: fmt.Sprintf("%s: %s: %s are wanted together, and the boiler gives %s", at, what, w.say.Power(k.Need/1000), w.say.Power(k.Have/1000)),
			Help:    "run them one after the other",
		})
	case schedule.Vessel:
		w.add(diag.Diagnostic{
			Code: diag.CodeVesselTaken, At: w.at(recipe.PathStart), Summary: fmt.Sprintf("%s: %q is wanted by %s at once", at, k.Vessel, what),
			Help: "use another vessel",
		})
	}
}
