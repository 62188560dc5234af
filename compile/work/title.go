package work

import (
	"strings"

	"newmake/compile/lot"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// titles are those of work that is alike in every batch, by the last part of its key;
// by the whole key where that is not enough.
var titles = map[string]string{
	"mash.liquor": "Heat the liquor", "mash.mill": "Weigh out and mill", "mash.treat": "Treat the liquor",
	"mash.draff": "Dig out the draff", "mash.clean": "Clean the cooker",
	"ferment.fill": "Pump to the fermenter", "ferment.pitch": "Pitch", "ferment.run": "Ferment", "ferment.clean": "Clean the fermenter",
	"clean": "Clean the still", "fill.gauge": "Gauge the hearts", "fill.reduce": "Reduce", "fill.soak": "Soak the casks",
	"fill.settle": "Settle", "fill.cask": "Fill", "fill.keep": "Put into a tank", "fill.bottle": "Bottle", "cask.rest": "In wood",
}

// InWords is a job in a few words.
func (j *Job) InWords() plan.Phrase { return j.titled() }

// titled is a job in a few words.
func (j *Job) titled() plan.Phrase {
	if j.Title.Text != "" {
		return j.Title
	}
	if t, ok := titles[j.Key]; ok {
		return plan.Say(t)
	}
	return plan.Say(titles[j.Key[strings.LastIndexByte(j.Key, '.')+1:]])
}

func mark(text string, values ...plan.Quantity) *plan.Phrase {
	p := plan.Say(text, values...)
	return &p
}

// mashTitle is a step of the mash in a few words.
func mashTitle(bill recipe.Bill, s recipe.MashStep, st mash.Step) plan.Phrase {
	end := plan.Of(st.EndC, plan.Celsius)
	switch s.Verb {
	case recipe.MashWater:
		return plan.Say("Water in")
	case recipe.MashBackset:
		return plan.Say("Backset in")
	case recipe.MashAdd:
		var names []string
		for _, l := range s.Grains {
			names = append(names, bill.Lines[l].Grain.Name)
		}
		return plan.Say("Stir in " + words.And(names))
	case recipe.MashDose:
		return plan.Say("Stir in " + s.Enzyme.Name)
	case recipe.MashHeat:
		return plan.Say("Heat to {}", end)
	case recipe.MashBoil:
		return plan.Say("Boil")
	case recipe.MashCool:
		return plan.Say("Cool to {}", end)
	case recipe.MashRecirculate:
		return plan.Say("Return the first runnings")
	case recipe.MashDrain:
		return plan.Say("Drain")
	case recipe.MashSparge:
		return plan.Say("Sparge")
	default:
		return plan.Say("Rest at {}", end)
	}
}

// markRests marks the rests that decide a mash: the hottest, where the corn is cooked,
// and the one at which the mash is converted.
func markRests(n *numbers.Batch, jobs []Job) {
	hottest, converts := -1, -1
	for i, s := range n.Mash.Steps {
		if i >= len(n.Mashed.Steps) || s.Verb != recipe.MashRest && s.Verb != recipe.MashBoil {
			continue
		}
		if hottest < 0 || n.Mashed.Steps[i].StartC > n.Mashed.Steps[hottest].StartC {
			hottest = i
		}
		if isLastRest(n.Mash.Steps, i) {
			converts = i
		}
	}
	for k := range jobs {
		for _, i := range []int{hottest, converts} {
			if i >= 0 && jobs[k].Key == plan.MashStepID(i) {
				jobs[k].Mark = mark("{}", plan.Of(n.Mashed.Steps[i].StartC, plan.Celsius))
			}
		}
	}
}

// stillNames are what the stills are called by their use.
var stillNames = map[string]string{"strip": "wash still", "spirit": "spirit still"}

// fractionTitle is a fraction in a few words, and how the cut that begins it is marked.
func (c charge) fractionTitle(f still.Fraction) (plan.Phrase, *plan.Phrase) {
	cut := func(name string, at recipe.Cut) (plan.Phrase, *plan.Phrase) {
		if at.By != recipe.ByStrength {
			return plan.Say(name), mark(strings.ToLower(name))
		}
		abv := lot.AtABV(f.StartABV).ByVolume()
		return plan.Say(name+" at {}", abv), mark(strings.ToLower(name)+" at {}", abv)
	}
	switch f.Name {
	case still.LowWines:
		return plan.Say("First drop"), mark("first drop")
	case still.Hearts:
		return cut("Hearts", c.cuts.HeartsFrom)
	case still.Tails:
		return cut("Tails", c.cuts.HeartsTo)
	case still.Foreshots:
		return plan.Say("Foreshots"), nil
	default:
		return plan.Say("Heads"), nil
	}
}

// workWord is what a step is called among the work of its day; none of what comes with
// other work.
func workWord(id string) string {
	switch stage, what, _ := strings.Cut(id, "."); {
	case strings.HasSuffix(id, ".clean"):
		return ""
	case id == "ferment.fill", id == "ferment.pitch":
		return "pitch"
	case stage == "ferment":
		return "read ferment"
	case id == "fill.gauge": // to reduce, or to put away
		return ""
	case id == "fill.cask":
		return "fill"
	case stage == "fill":
		return what
	default:
		return stage
	}
}
