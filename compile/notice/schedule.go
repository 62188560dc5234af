package notice

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"newmake/compile/lot"
	"newmake/compile/measure"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
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
	}
	standsLong(w, slots)
	standsDirty(w, slots)
	for _, stage := range stages {
		w.add(diag.Diagnostic{
			Code: diag.CodeOutOfShift, At: w.at(recipe.PathOf(stage), recipe.PathStart),
			Summary: fmt.Sprintf("%s of the %s lie outside the shift", measure.Duration(over[stage].Minutes()), stage),
			Help:    "a longer shift that day, more heat or cooling, or a smaller batch",
			Reason:  "the work cannot be left half done",
		})
	}
	// One batch asks for one vessel after another, and its heat goes by the boiler: only
	// its people can be too few (TestOneBatchSharesNothing).
	for _, k := range schedule.Conflicts(slots, b.Plant.Crew, 0) {
		if k.Kind == schedule.Crew {
			crewShort(w, k)
		}
	}
	return w.list
}

// standsLong says if the wash, or the last of it, stands long before it is run: from when its
// first charge could have gone into the still.
func standsLong(w *writer, slots []schedule.Slot) {
	charges := washCharges(slots)
	if len(charges) == 0 {
		return
	}
	last := charges[len(charges)-1]
	stands := last.Start.Sub(charges[0].Start.Add(-charges[0].Wait))
	if stands.Seconds() <= standsLongS {
		return
	}
	what, why := "the wash stands for "+measure.Hours(stands.Hours())+" before it is run", longest(charges).WaitWhy
	help := "change the start or the time of the ferment"
	if n := len(charges); n > 1 {
		what = fmt.Sprintf("the last of the wash stands for %s before it is run, in %s", measure.Hours(stands.Hours()), words.Count(n, "charge"))
		help += ", or run it in fewer charges"
	}
	if why != "" {
		what += ": " + why
	}
	w.add(diag.Diagnostic{
		Code: diag.CodeStandsLong, At: w.at(recipe.PathFermentFor), Summary: what,
		Help: help, Reason: "it goes on souring, and loses alcohol to the air",
	})
}

// washCharges are the charges of the wash still, in their order.
func washCharges(slots []schedule.Slot) []schedule.Slot {
	var out []schedule.Slot
	for _, s := range slots {
		if s.Stage == "strip" && strings.HasSuffix(s.Key, ".charge") {
			out = append(out, s)
		}
	}
	return out
}

// longest is the charge that waits longest by itself, the first of several.
func longest(charges []schedule.Slot) schedule.Slot {
	return slices.MaxFunc(charges, func(a, b schedule.Slot) int { return cmp.Compare(a.Wait, b.Wait) })
}

// dirtyLongS is how long an emptied fermenter may wait for its cleaning, unsaid: a night
// and the hours about it (from memory).
const dirtyLongS = 24 * lot.SecondsPerHour

// standsDirty says if the fermenter is cleaned long after the last of the wash has left
// it.
func standsDirty(w *writer, slots []schedule.Slot) {
	var emptied, cleaned schedule.Slot
	for _, s := range slots {
		switch {
		case s.Stage == "strip" && strings.HasSuffix(s.Key, ".charge"):
			emptied = s
		case s.Key == "ferment.clean":
			cleaned = s
		}
	}
	stands := cleaned.Start.Sub(emptied.End)
	if emptied.Key == "" || cleaned.Key == "" || stands.Seconds() <= dirtyLongS {
		return
	}
	const day = "Mon 15:04"
	w.add(diag.Diagnostic{
		Code: diag.CodeStandsDirty, At: w.at(recipe.PathStart),
		Summary: fmt.Sprintf("the fermenter %q is empty from %s and cleaned from %s: it stands dirty for %s", cleaned.Vessel, emptied.End.Format(day), cleaned.Start.Format(day), measure.Hours(stands.Hours())),
		Help:    "rinse it with hot water at least, as soon as it is empty; or run the wash on a day that leaves the time",
		Reason:  "yeast and gums dry on within hours, and what grows in them sours the next wash (common practice)",
	})
}

// overWeekendS is a wait that is longer than a night and a day between: a day off, or a
// weekend.
const overWeekendS = 36 * lot.SecondsPerHour

// OtherStart offers the day on which to begin, of those of the week after, so that the
// wash does not stand over a weekend; low wines keep. shifted is the work as it falls if
// it is begun so many days later.
func OtherStart(b *recipe.Batch, slots []schedule.Slot, shifted func(days int) []schedule.Slot) diag.List {
	worst := washWaits(slots)
	if worst.Wait.Seconds() <= overWeekendS {
		return nil
	}
	var best []schedule.Slot
	least := worst.Wait - 12*time.Hour // less is not worth a word
	for days := 1; days < 7; days++ {
		s := shifted(days)
		if wait := washWaits(s).Wait; s[0].Wait == 0 && wait < least {
			best, least = s, wait
		}
	}
	if best == nil {
		return nil
	}
	w := about(b)
	start := best[0].Start
	waits := "waits for " + measure.Hours(least.Hours())
	if least < time.Hour {
		waits = "hardly waits"
	}
	help := fmt.Sprintf("begun on a %s it %s: `start %s`", start.Weekday(), waits, start.Format("2006-01-02 15:04"))
	w.add(diag.Diagnostic{
		Code: diag.CodeOtherStart, At: w.at(recipe.PathStart), Help: help,
		Summary: fmt.Sprintf("%s waits for its run for %s: %s", waiting(worst), measure.Hours(worst.Wait.Hours()), worst.WaitWhy),
	})
	return w.list
}

// washWaits is the charge of the wash still that waits longest; none waits where there is none.
func washWaits(slots []schedule.Slot) schedule.Slot {
	charges := washCharges(slots)
	if len(charges) == 0 {
		return schedule.Slot{}
	}
	return longest(charges)
}

// waiting is what waits with a charge of the wash still: all of the wash, or what is left of it.
func waiting(charge schedule.Slot) string {
	nth := 0
	if _, err := fmt.Sscanf(charge.Key, "strip.%d.charge", &nth); err == nil && nth > 1 {
		return fmt.Sprintf("the wash of charge %d", nth)
	}
	return "the wash"
}

func crewShort(w *writer, k schedule.Conflict) {
	w.add(diag.Diagnostic{
		Code: diag.CodeCrewShort, At: w.at(recipe.PathStart),
		Summary: fmt.Sprintf("%s: %s: %.0f people are wanted, and the crew is %.0f", k.From.Format("Mon 2 Jan 15:04"), work.Names(k.Keys), k.Need, k.Have),
		Help:    "have somebody in that day",
	})
}
