package why

import (
	"strings"

	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/sorting"
)

// knob is an input that can be nudged.
type knob struct {
	name  string // "rest at 148 F"
	by    string // "+2 F"
	at    diag.Span
	stage stage // the first that feels it
	order int   // see orderOf
	money bool  // it moves nothing but costs
	turn  func(*recipe.Batch)
}

// How far inputs are nudged.
const (
	point   = 0.01 // of a share, or of a strength
	tenth   = 1.1  // times a time, a volume, a power or a constant
	nudgeK  = 1.0  // in SI; 2 F in US units
	nudgePH = 0.1
	feet    = 304.8
	metres  = 300.0
)

const (
	byPoint = "+1 point"
	byTenth = "+10 %"
)

// knobs are all those of a batch: each value that the recipe's table says is
// nudged, the steps of the mash by what they do, and the vessels by their use.
func (a *asked) knobs() []knob {
	var out []knob
	for _, v := range a.b.Values() {
		if v.Input == "" || isVessel(v) {
			continue
		}
		if l, ok := a.billLine(v); ok {
			if len(a.b.Bill.Lines) > 1 {
				out = append(out, knob{name: v.Of, by: byPoint + " of the bill", at: v.At, turn: func(b *recipe.Batch) { moreOf(b, l) }})
			}
			continue
		}
		out = a.nudged(out, v, v.Input, func(b *recipe.Batch) recipe.Value {
			w, _ := b.Value(v.Key())
			return w
		})
	}
	out = append(append(out, a.stepKnobs()...), a.vesselKnobs()...)
	sorting.Stable(out, func(x, y knob) int { return x.order - y.order })
	return out
}

// orderOf is the place of a value among the knobs, which tells what comes first of
// two that move a number by as much: in the order of the work, and then the plant,
// the models and the prices.
func orderOf(p recipe.Path) int {
	switch {
	case p.Within(recipe.PathCosts):
		return int(inCask) + 3
	case p.Within(recipe.PathLibrary.Child("model")):
		return int(inCask) + 2
	case p.Within(recipe.PathPlant):
		return int(inCask) + 1
	}
	return int(stageOf(p))
}

func isVessel(v recipe.Value) bool { return v.Of != "" && v.Path.Within(recipe.PathPlant) }

// nudged adds the knob of a value, if there is something to nudge. find finds the
// value in another batch.
func (a inUnits) nudged(out []knob, v recipe.Value, name string, find func(*recipe.Batch) recipe.Value) []knob {
	k := knob{name: name, at: v.At, stage: stageOf(v.Path), order: orderOf(v.Path), money: v.Path.Within(recipe.PathCosts)}
	some := false
	for _, c := range v.Cells {
		n, ok := a.nudgeOf(v, c)
		if !ok {
			continue
		}
		some = some || n.moves && (!v.Maybe || n.given)
		if k.by == "" {
			k.by = n.by
			if n.said != "" {
				k.name += " " + n.said
			}
		}
	}
	if !some {
		return out
	}
	k.turn = func(b *recipe.Batch) {
		w := find(b)
		for _, c := range w.Cells {
			if n, ok := a.nudgeOf(w, c); ok {
				c.Set(n.to)
			}
		}
	}
	return append(out, k)
}

// nudge is a datum a little higher.
type nudge struct {
	to    any
	by    string // "+2 F"
	said  string // what it is now, where its name does not tell it from others
	given bool   // it is not nothing
	moves bool   // it is not what it was
}

// nudgeOf nudges one datum of a value; false for one that has no higher or lower.
func (a inUnits) nudgeOf(v recipe.Value, c recipe.Cell) (nudge, bool) {
	switch x := c.Is().(type) {
	case float64:
		to, by := a.higher(x, c.Kind, v.Down)
		return nudge{to: to, by: by, given: x != 0, moves: to != x}, true
	case recipe.Strength:
		n := nudge{by: a.byVolume(strengthBy[x.Basis]), said: a.byVolume(said(x)), given: x.Value != 0, moves: x.Value != 0}
		x.Value += point
		n.to = x
		return n, true
	case recipe.FractionPace: // a longer time, or a greater flow or heat
		n := nudge{by: byTenth, given: x.OverS+x.FlowM3S+x.PowerW > 0}
		n.moves = n.given
		x.OverS, x.FlowM3S, x.PowerW = x.OverS*tenth, x.FlowM3S*tenth, x.PowerW*tenth
		n.to = x
		return n, true
	case recipe.HeatUp: // a longer time, or a greater rate or heat
		n := nudge{by: byTenth, given: x != recipe.HeatUp{}}
		n.moves = n.given
		x.OverS, x.RateKS, x.PowerW = x.OverS*tenth, x.RateKS*tenth, x.PowerW*tenth
		n.to = x
		return n, true
	case recipe.Cut:
		n := nudge{given: true, moves: true}
		switch x.By {
		case recipe.ByStrength:
			n.by, n.said = a.byVolume(strengthBy[x.Strength.Basis]), a.byVolume(said(x.Strength))
			x.Strength.Value += point
		case recipe.ByVolume:
			n.said = a.u.Litres(1000 * x.VolumeM3)
			x.VolumeM3, n.by = a.higher(x.VolumeM3, quantity.Volume, false)
		case recipe.ByVapourTemp:
			n.said = a.temp(x.TempC)
			x.TempC, n.by = a.higher(x.TempC, quantity.Temperature, false)
		case recipe.ByTime:
			n.said = measure.Number(x.TimeS/60, 0) + " min"
			x.TimeS, n.by = x.TimeS*tenth, byTenth
		default:
			n.said = measure.Number(100*x.Share, 0) + " % of the charge"
			x.Share, n.by = a.higher(x.Share, quantity.Share, false)
		}
		n.to = x
		return n, true
	}
	return nudge{}, false
}

// higher is a number a little higher, and the words for by how much.
func (a inUnits) higher(x float64, k quantity.Kind, down bool) (float64, string) {
	switch {
	case k == quantity.Temperature:
		deg, by := a.degrees()
		return x + deg, by
	case k == quantity.Share && down:
		return x - point, "-1 point"
	case k == quantity.Share:
		return max(x, min(1, x+point)), byPoint
	case k == quantity.PH:
		return x + nudgePH, "+0.1 pH"
	case k == quantity.Length && a.us():
		return x + feet, "+1,000 ft"
	case k == quantity.Length:
		return x + metres, "+300 m"
	}
	return x * tenth, byTenth
}

// stageOf is the first stage that may feel a value. The plant, the grain and what
// is not known better may be felt from the first on.
func stageOf(p recipe.Path) stage {
	parts := p.Parts()
	if parts[0] == "library" {
		parts = parts[1:]
		if parts[0] == "model" {
			parts = parts[1:]
		}
	}
	if p.Within(recipe.PathCosts) {
		return inCask
	}
	return stages[parts[0]]
}

var stages = map[string]stage{
	"mash": inMash, "enzyme": inMash, "ferment": inFerment, "yeast": inFerment, "strip": inStrip, "spirit": inSpirit, "cask": inCask,
}

// billLine finds the line of the bill that a value is of.
func (a *asked) billLine(v recipe.Value) (int, bool) {
	for i, l := range a.b.Bill.Lines {
		if v.Path == recipe.PathBill.Child(l.Grain.Name) {
			return i, true
		}
	}
	return 0, false
}

// moreOf gives line i of the bill a point more; the total stays, and the others
// give way in proportion.
func moreOf(b *recipe.Batch, i int) {
	total, was := b.Bill.TotalKg, b.Bill.Lines[i].MassKg
	now := min(was+point*total, total)
	for j := range b.Bill.Lines {
		if j != i && total > was {
			b.Bill.Lines[j].MassKg *= (total - now) / (total - was)
		}
	}
	b.Bill.Lines[i].MassKg = now
}

// stepKnobs are those of the mash.
func (a *asked) stepKnobs() []knob {
	var out []knob
	steps := a.b.Mash.Steps
	for i, s := range steps {
		for k, v := range a.b.Mash.Steps[i].Values() {
			name := stepWords(s)
			switch v.Name {
			case "to":
				switch {
				case (s.Verb == recipe.MashWater || s.Verb == recipe.MashSparge) && s.TempC > a.b.SupplyC()+5:
					name = "water at " + a.temp(s.TempC)
				case s.Verb != recipe.MashHeat && s.Verb != recipe.MashCool:
					continue
				case rests(steps, i):
					name = "rest at " + a.temp(s.TempC)
				}
			case "for":
				if s.Verb != recipe.MashRest && s.Verb != recipe.MashBoil {
					continue
				}
			case "kept":
				name = "kept water"
			case "cooled":
				name = "wort run at " + a.temp(s.CooledC)
			case "volume", "mass":
				if s.Share > 0 {
					continue // worked out of the share
				}
			}
			out = a.nudged(out, v, name, func(b *recipe.Batch) recipe.Value { return b.Mash.Steps[i].Values()[k] })
		}
	}
	return out
}

// rests reports whether the mash rests where step i brings it.
func rests(steps []recipe.MashStep, i int) bool {
	for _, s := range steps[i+1:] {
		switch s.Verb {
		case recipe.MashRest:
			return true
		case recipe.MashHeat, recipe.MashCool, recipe.MashBoil:
			return false
		}
	}
	return false
}

// uses are what a batch uses vessels for.
var uses = []struct {
	word, name string
	stage      stage
	of         func(a *asked, b *recipe.Batch) *recipe.Vessel
}{
	{"cooker", "the cooker", inMash, func(_ *asked, b *recipe.Batch) *recipe.Vessel { return b.Mash.Cooker }},
	{"fermenter", "the fermenter", inFerment, (*asked).fermenter},
	{"wash-still", "the wash still", inStrip, func(_ *asked, b *recipe.Batch) *recipe.Vessel { return b.Strip.Still }},
	{"spirit-still", "the spirit still", inSpirit, func(_ *asked, b *recipe.Batch) *recipe.Vessel { return b.Spirit.Still }},
}

// vesselKnobs are those of the vessels, each by what it is used for.
func (a *asked) vesselKnobs() []knob {
	var out []knob
	for _, use := range uses {
		v := use.of(a, a.b)
		if v == nil {
			continue
		}
		for i, x := range v.Values() {
			if x.Input == "" || v.Kind != recipe.Still && x.Cells[0].Is() == 0.0 {
				continue
			}
			n := len(out)
			out = a.nudged(out, x, x.Input+" of "+use.name, func(b *recipe.Batch) recipe.Value { return use.of(a, b).Values()[i] })
			for ; n < len(out); n++ {
				out[n].stage = use.stage
			}
		}
	}
	return out
}

// degrees is a nudge of a temperature, and its word.
func (a inUnits) degrees() (k float64, by string) {
	if a.us() {
		return 2 / 1.8, "+2 F"
	}
	return nudgeK, "+1 C"
}

func (a inUnits) temp(c float64) string { return a.u.Temp(c) }

// strengthBy is how a strength's nudge of a point is said, in the basis in which
// it is written.
var strengthBy = map[recipe.StrengthBasis]string{recipe.ABV: "+1 % abv", recipe.Proof: "+2 proof", recipe.ABW: "+1 % abw"}

// byVolume is a strength as the reader's trade says it: % vol where litres are counted.
func (a inUnits) byVolume(text string) string {
	if a.u == measure.SI {
		return strings.Replace(text, "% abv", "% vol", 1)
	}
	return text
}

// said is a strength as it is written.
func said(s recipe.Strength) string {
	switch s.Basis {
	case recipe.Proof:
		return measure.Number(200*s.Value, 0) + " proof"
	case recipe.ABW:
		return measure.Number(100*s.Value, 0) + " % abw"
	default:
		return measure.Number(100*s.Value, 0) + " % abv"
	}
}
