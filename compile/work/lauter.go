package work

import (
	"slices"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/lang/recipe"
)

// runOffWords is what a drain or a sparge asks for, and what is then read.
func runOffWords(n *numbers.Batch, i int, st mash.Step) (plan.Phrase, []Reading) {
	s, before := n.Mash.Steps[i], n.Mash.Steps[:i]
	litres, to := plan.Of(s.VolumeM3*lot.LitresPerM3, plan.Litre), plan.Of(s.TempC, plan.Celsius)
	text, values := "Drain the worts off the grain", []plan.Quantity{}
	switch {
	case s.Verb == recipe.MashSparge:
		text, values = "Sparge: let {} of water at {} over the bed as the worts run off", []plan.Quantity{litres, to}
	case s.NextMash:
		text = "Drain the last water off the grain"
	case !slices.ContainsFunc(before, func(s recipe.MashStep) bool {
		return s.Verb == recipe.MashDrain || s.Verb == recipe.MashSparge || s.Verb == recipe.MashRecirculate
	}):
		// The minutes are common practice; they are within the time of the step.
		text = "Return the first runnings over the bed until they run bright, 5 to 15 min; then drain the worts off the grain"
	}
	where, read := ", slowly, without sucking air.", volume("worts so far", st.VolumeM3*lot.LitresPerM3, MashVolume)
	switch {
	case s.NextMash:
		where, read = " into the tank for the next mash.", volume("kept", st.VolumeM3*lot.LitresPerM3, MashVolume)
	case s.CooledC > 0 && n.Mashed.InFermenter:
		where = " by the wort cooler into " + quoted(n) + ", at {}: slowly, without sucking air."
		values = append(values, plan.Of(st.EndC, plan.Celsius))
	case n.Plant.WortCooler.AreaM2 > 0 || len(n.Plant.TanksFor(recipe.OfWorts)) > 0:
		where = " into the underback, slowly, without sucking air."
	}
	out := []Reading{read}
	if s.CooledC > 0 {
		out = append(out, temperature(st.EndC, MashC))
	}
	return plan.Say(text+where, values...), out
}

// quoted is the fermenter's name as words take it.
func quoted(n *numbers.Batch) string {
	if n.Fermented.Vessel == nil {
		return "the fermenter"
	}
	return "fermenter " + n.Fermented.Vessel.Name
}

// firstOfFill is the share of the wort that is in when the yeast goes in with it: a
// tenth to a fifth (common practice).
const firstOfFill = 0.1

// intoFermenter sees to the yeast where the wort runs cold into the fermenter from the
// tun: it is wetted as the first of it runs, and goes in then if it is to.
func intoFermenter(n *numbers.Batch, jobs []Job) {
	i := slices.IndexFunc(n.Mash.Steps, func(s recipe.MashStep) bool {
		return s.CooledC > 0 || s.Verb == recipe.MashCool && n.Mashed.InFermenter
	})
	if !n.Mashed.InFermenter || i < 0 {
		return
	}
	at := slices.IndexFunc(jobs, func(j Job) bool { return j.Key == plan.MashStepID(i) })
	if at < 0 {
		return
	}
	j := &jobs[at]
	rehydrated(n, j)
	if !n.Ferm.AsItFills {
		return
	}
	words, values, measured := yeastWords(n, j.Key)
	first := plan.Of(firstOfFill*n.Fermented.WortM3*lot.LitresPerM3, plan.Litre)
	j.Do = plan.Say(j.Do.Text+" When {} are in, pitch "+words+", and fill on.", append(append(j.Do.Values, first), values...)...)
	j.Measured = append(j.Measured, measured...)
	j.Cautions = append(j.Cautions, "co2")
}
