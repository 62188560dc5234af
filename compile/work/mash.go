package work

import (
	"strings"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/schedule"
	"newmake/lang/recipe"
)

// mashJobs is the mash day up to the fermenter, one chain without a wait.
func mashJobs(n *numbers.Batch) []Job {
	cooker := n.Mash.Cooker
	var jobs []Job
	millS := weighS + n.Bill.TotalKg/numbers.Rates(n.Batch).MillKgS
	if hot, ok := hotLiquor(n, millS); ok {
		jobs = append(jobs, hot)
	}
	jobs = append(jobs, Job{
		Task: schedule.Task{Key: "mash.mill", Stage: "mash", Chain: "mash", Attend: schedule.Throughout,
			DurationS: millS, MayWait: true},
		Do:       plan.Say("Weigh out {} of grain by the bill, and mill it.", plan.Of(n.Bill.TotalKg, plan.Kilogram)),
		Cautions: []string{"dust"}, Path: recipe.PathBill,
	})
	hot, treated := false, false
	for i, s := range n.Mash.Steps {
		if i >= len(n.Mashed.Steps) {
			break
		}
		st := n.Mashed.Steps[i]
		w := Job{
			Task: schedule.Task{Key: plan.MashStepID(i), Stage: "mash", Vessel: cooker.Name, Chain: "mash",
				Attend: schedule.Throughout, DurationS: st.EndS - st.StartS},
			Path: s.Path, Title: mashTitle(n.Bill, s, st),
		}
		if s.Verb == recipe.MashHeat || s.Verb == recipe.MashBoil {
			w.Power = heatW(cooker, n.Plant)
		}
		w.When = whenStep(n, i)
		w.Do, w.Read = mashWords(n, i, st)
		w.Measured = mashMeasures(i, s)
		fired := s.Verb == recipe.MashHeat || s.Verb == recipe.MashBoil
		if st.EndC > hotC && (fired || !hot) {
			hot = true
			w.Cautions = append(w.Cautions, "hot-mash")
		}
		if fired {
			w.Cautions = append(w.Cautions, heatCaution(n.Batch))
		}
		if s.Verb == recipe.MashAdd && cooker.Agitator {
			w.Cautions = append(w.Cautions, "lockout")
		}
		jobs = append(jobs, w)
		if t, ok := treatment(n); ok && s.Verb == recipe.MashWater && !treated {
			treated = true
			jobs = append(jobs, t)
		}
	}
	markRests(n, jobs)
	intoFermenter(n, jobs)
	after := "ferment.pitch"
	if kg := n.Mashed.Draff.MassKg(); kg > 0 {
		jobs = append(jobs, Job{
			Task: schedule.Task{Key: "mash.draff", Stage: "mash", Vessel: cooker.Name, Attend: schedule.Throughout, DurationS: kg / numbers.Rates(n.Batch).DigKgS, Now: true},
			Do:   plan.Say("Dig out {} of wet draff, hot and heavy.", plan.Of(kg, plan.Kilogram)), Cautions: driven(cooker, "oxygen", inside(cooker), "hot-mash"), After: after,
		})
		after = "mash.draff"
	}
	return append(jobs, Job{
		Task: schedule.Task{Key: "mash.clean", Stage: "mash", Vessel: cooker.Name, Attend: schedule.Throughout, DurationS: cleaningS(cooker), MayWait: true},
		Do:   cleaning("Rinse and clean the cooker", cooker), Cautions: driven(cooker, "caustic", inside(cooker)), After: after,
	})
}

// driven are the dangers of a vessel, and that of its drive if it has one.
func driven(v *recipe.Vessel, dangers ...string) []string {
	if v.Agitator {
		return append(dangers, "lockout")
	}
	return dangers
}

// treatment is what goes into the first liquor to set the mash's pH. It is weighed:
// acid by weight is surer than by a measuring cup.
func treatment(n *numbers.Batch) (Job, bool) {
	t := n.Mash.Treatment
	j := Job{Task: schedule.Task{Key: "mash.treat", Stage: "mash", Vessel: n.Mash.Cooker.Name, Chain: "mash", Attend: schedule.Throughout}, Path: recipe.PathMash}
	var words []string
	var values []plan.Quantity
	add := func(what string, kg float64) {
		if kg > 0 {
			q := plan.Of(kg, plan.Kilogram)
			words, values = append(words, "{} of "+what), append(values, q)
			j.Measured = append(j.Measured, plan.Addition{Name: what, Amount: q, Step: j.Key})
		}
	}
	add("gypsum", t.GypsumKg)
	add("slaked lime", t.LimeKg)
	add(t.Acid.Bought(), n.Mashed.AcidKg)
	if len(words) == 0 {
		return j, false
	}
	if n.Mashed.AcidKg > 0 || t.LimeKg > 0 {
		j.Cautions = []string{"acid"}
	}
	j.Do = plan.Say("Weigh out "+strings.Join(words, ", ")+" and stir into the liquor.", values...)
	return j, true
}

// hotLiquor has the hot water ready, if any is wanted. It heats while the grain is weighed and
// milled; if that is too short for the first water it starts so much sooner.
func hotLiquor(n *numbers.Batch, millS float64) (Job, bool) {
	firstJ := 0.0
	text, values := "Set the hot liquor to heat:", []plan.Quantity{}
	heatJ := 0.0
	for i, s := range n.Mash.Steps {
		if s.Verb != recipe.MashWater && s.Verb != recipe.MashSparge || s.TempC < n.SupplyC()+numbers.HotLiquorK || i >= len(n.Mashed.Steps) {
			continue
		}
		j := n.Mashed.Steps[i].HeatJ
		if heatJ == 0 && i == 0 {
			firstJ = j
		}
		if heatJ > 0 {
			text += ", then"
		}
		heatJ += j
		text, values = text+" {} at {}", append(values, plan.Of(s.VolumeM3*lot.LitresPerM3, plan.Litre), plan.Of(s.TempC, plan.Celsius))
	}
	if heatJ == 0 {
		return Job{}, false
	}
	t := schedule.Task{Key: "mash.liquor", Stage: "mash", Chain: "mash", Attend: schedule.Begin, MayWait: true}
	text, values = text+". It takes {} of heat", append(values, plan.Of(heatJ/lot.JoulesPerKWh, plan.KilowattH))
	if w := liquorW(n.Batch); w > 0 {
		of := "heating"
		if hasSteam(n.Batch) {
			of = "steam"
		}
		text, values = text+", {} of "+of+" at full power", append(values, plan.Of(heatJ/w/60, plan.Minute))
		t.DurationS, t.Power = max(0, firstJ/w-millS), w
	}
	return Job{Task: t, Do: plan.Say(text+".", values...), Cautions: []string{heatCaution(n.Batch)}, Path: recipe.PathMashWater}, true
}

// liquorW is the power that heats the liquor: the boiler's, or what the cooker
// takes if the house states no boiler.
func liquorW(b *recipe.Batch) float64 {
	if w := b.Plant.BoilerW; w > 0 {
		return w
	}
	return b.Mash.Cooker.HeatsW
}

// mashWords is what a step of the mash asks for, and what should then be read.
func mashWords(n *numbers.Batch, i int, st mash.Step) (plan.Phrase, []Reading) {
	s := n.Mash.Steps[i]
	litres := plan.Of(s.VolumeM3*lot.LitresPerM3, plan.Litre)
	to := plan.Of(s.TempC, plan.Celsius)
	after := []Reading{temperature(st.EndC, MashC)}
	switch s.Verb {
	case recipe.MashWater:
		text := "Run in {} of water at {}."
		if s.KeptM3 > 0 {
			return plan.Say("Run in {} of water at {}, {} of it what was kept of the last mash.", litres, to, plan.Of(s.KeptM3*lot.LitresPerM3, plan.Litre)), append(after, volume("in the cooker", st.VolumeM3*lot.LitresPerM3, MashVolume))
		}
		if s.ForWant {
			text = "Run in {} of water at {}, in place of backset: there is none yet."
		}
		return plan.Say(text, litres, to), append(after, volume("in the cooker", st.VolumeM3*lot.LitresPerM3, MashVolume))
	case recipe.MashBackset:
		return plan.Say("Run in {} of backset at {}.", litres, to), after
	case recipe.MashAdd:
		return grainWords(n.Bill, s), after
	case recipe.MashDose:
		return plan.Say("Stir in {} of "+s.Enzyme.Name+".", plan.Of(s.MassKg, plan.Kilogram)), nil
	case recipe.MashHeat:
		if n.Mash.Cooker.HeatedBy == recipe.Direct { // what condenses makes the mash more
			return plan.Say("Blow in steam until it stands at {}.", plan.Of(st.EndC, plan.Celsius)), append(after, volume("in the cooker", st.VolumeM3*lot.LitresPerM3, MashVolume))
		}
		return plan.Say("Heat to {}.", plan.Of(st.EndC, plan.Celsius)), after
	case recipe.MashBoil:
		return plan.Say("Boil at {} for {}.", plan.Of(st.EndC, plan.Celsius), plan.Of(s.DurationS/60, plan.Minute)), nil
	case recipe.MashCool:
		if n.Mashed.InFermenter {
			return plan.Say("Run the worts from the underback by the wort cooler into "+quoted(n)+", at {}.", plan.Of(st.EndC, plan.Celsius)), after
		}
		return plan.Say("Cool to {}.", plan.Of(st.EndC, plan.Celsius)), after
	case recipe.MashRecirculate:
		return plan.Say("Return the first runnings over the bed until they run bright: about {}.", plan.Of(s.DurationS/60, plan.Minute)), after
	case recipe.MashDrain, recipe.MashSparge:
		return runOffWords(n, i, st)
	default:
		if isLastRest(n.Mash.Steps, i) {
			return plan.Say("Rest for {}, stirring. Iodine on a drop stays yellow when it is done.", plan.Of(s.DurationS/60, plan.Minute)),
				append(after, pH(st.PH))
		}
		return plan.Say("Rest for {}, stirring.", plan.Of(s.DurationS/60, plan.Minute)), after
	}
}

// mashMeasures is what a step of the mash has one measure out, besides grain.
func mashMeasures(i int, s recipe.MashStep) []plan.Addition {
	a := plan.Addition{Step: plan.MashStepID(i)}
	switch s.Verb {
	case recipe.MashWater, recipe.MashBackset, recipe.MashSparge:
		to := plan.Of(s.TempC, plan.Celsius)
		a.Name, a.Amount, a.At = s.Verb.Word(), plan.Of(s.VolumeM3*lot.LitresPerM3, plan.Litre), &to
	case recipe.MashDose:
		a.Name, a.Amount = s.Enzyme.Name, plan.Of(s.MassKg, plan.Kilogram)
	default:
		return nil
	}
	return []plan.Addition{a}
}

// grainWords names the grains of a step with their weights.
func grainWords(bill recipe.Bill, s recipe.MashStep) plan.Phrase {
	var words []string
	var amounts []plan.Quantity
	for _, l := range s.Grains {
		line := bill.Lines[l]
		words = append(words, "{} of "+line.Grain.Name)
		amounts = append(amounts, plan.Of(line.MassKg, plan.Kilogram))
	}
	return plan.Say("Stir in "+strings.Join(words, ", ")+".", amounts...)
}

// isLastRest reports whether a step is the first rest with all the grain in, at which the
// mash is converted.
func isLastRest(steps []recipe.MashStep, i int) bool {
	last := -1
	for j, s := range steps {
		if s.Verb == recipe.MashAdd {
			last = j
		}
	}
	for j := last + 1; j < i; j++ {
		if steps[j].Verb == recipe.MashRest {
			return false
		}
	}
	return i > last
}

// heatW is what a vessel draws from the boiler.
func heatW(v *recipe.Vessel, p *recipe.Plant) float64 {
	if p.BoilerW > 0 {
		return min(v.HeatsW, p.BoilerW)
	}
	return v.HeatsW
}
