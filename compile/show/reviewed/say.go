package reviewed

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// say is what every form of a review says, in the reader's units.
type say struct{ u measure.Units }

// verdict says in a sentence or two how it went.
func verdict(a *review.Answer) []string {
	off := 0
	for _, l := range a.Lines {
		if !l.Within() {
			off++
		}
	}
	out := []string{""}
	switch {
	case len(a.Lines) == 0:
		out[0] = "Nothing that a plan speaks of was read yet."
	case off == 0:
		out[0] = words.Count(len(a.Lines), "reading") + ", all as they should be."
	default:
		out[0] = fmt.Sprintf("%s, %d of them not as they should be, for what was done.", words.Count(len(a.Lines), "reading"), off)
	}
	switch b := a.Balance; {
	case b == nil:
		out = append(out, "The alcohol cannot be balanced: too little was gauged.")
	case b.Balanced():
		out = append(out, "The alcohol balances.")
	default:
		out = append(out, "The alcohol does not balance.")
	}
	if a.Note != "" {
		out = append(out, "The recipe: "+diag.Safe(a.Note)+".")
	}
	return out
}

// broken says that a balance is out, of all that are.
func broken(i int) string {
	if i == 0 {
		return "The alcohol is out of balance."
	}
	return "With that put right, it is out of balance still."
}

// explains stands above the causes of a break.
const explains = "What would explain it about as well:"

// cause says one thing that would explain a break.
func (s say) cause(c review.Cause) string {
	if c.Flow != "" {
		way := "high"
		if c.By < 0 {
			way = "low"
		}
		if c.Model {
			way = map[string]string{"high": "less", "low": "more"}[way]
			return fmt.Sprintf("%s was %s %s than the model has it", c.Words, s.flow(c.Unit, math.Abs(c.By), c.ABV), way)
		}
		return fmt.Sprintf("%s was read %s too %s", c.Words, s.flow(c.Unit, math.Abs(c.By), c.ABV), way)
	}
	if c.By < 0 {
		return fmt.Sprintf("%s more than was written down came in %s", s.lost(c), strings.TrimPrefix(c.Place, "in "))
	}
	return fmt.Sprintf("%s were lost, or not written down, %s", s.lost(c), c.Place)
}

func (s say) lost(c review.Cause) string {
	if c.Litres == 0 {
		return s.flow(review.LPA, math.Abs(c.By), 0) + map[bool]string{true: " alcohol"}[s.u == measure.SI]
	}
	return "about " + s.u.Counted(math.Abs(c.Litres), c.ABV) + " of " + c.Of
}

// lived is the outcome by which a house counts its hearts.
func (s say) lived() string {
	if s.u == measure.SI {
		return "pureAlcoholL"
	}
	return "heartsProofGallons"
}

// value is a number in the reader's units; abv is that of what a volume is of.
func (s say) value(k review.Kind, v, abv float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case k == review.Temperature:
		return s.u.Temp(v)
	case k == review.Gravity:
		return measure.Gravity(v)
	case k == review.PH:
		return measure.Number(v, 1)
	case k == review.Volume:
		return s.u.Counted(1000*v, abv)
	case k == review.Strength:
		return s.u.Abv(100 * v)
	case k == review.Alcohol:
		return s.u.Alcohol(1000 * v)
	case k == review.Rate:
		return s.u.Litres(1000*3600*v) + "/h"
	}
	return measure.Duration(v / 60)
}

// difference is a difference of two numbers, with its sign.
func (s say) difference(k review.Kind, v, abv float64) string {
	text := s.size(k, math.Abs(v), abv)
	if math.IsNaN(v) || !strings.ContainsAny(text, "123456789") {
		return text
	}
	return sign(v) + text
}

func (s say) size(k review.Kind, v, abv float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case k == review.Temperature:
		return s.u.TempDiff(v)
	case k == review.Gravity:
		return measure.Number(v, 3)
	case k == review.Duration:
		return measure.Duration(math.Round(v / 60))
	}
	return s.value(k, v, abv)
}

// flow is a number of the balance.
func (s say) flow(u review.Unit, v, abv float64) string {
	switch {
	case math.IsNaN(v):
		return "-"
	case u == review.Litres:
		return s.u.Counted(v, abv)
	case u == review.AbvPct:
		return s.u.Abv(v)
	case u == review.LPA:
		return s.u.Alcohol(v)
	case u == review.SG:
		return measure.Number(v, 4)
	case math.Abs(v) >= 10:
		return measure.Number(v, 1)
	}
	return measure.Number(v, 3)
}

// small names what was done otherwise and does too little to be told apart, so many of it.
func small(all []string, shown int) string {
	var parts []string
	for _, what := range all[:min(shown, len(all))] {
		parts = append(parts, diag.Safe(what))
	}
	if more := len(all) - len(parts); more > 0 {
		parts = append(parts, words.Count(more, "thing")+" more")
	}
	return "Done otherwise, and too little to be gauged in the hearts: " + words.And(parts)
}

func signed(v float64, places int) string {
	if v >= 0 {
		return "+" + measure.Number(v, places)
	}
	return measure.Number(v, places)
}

func sign(v float64) string {
	if v < 0 {
		return "-"
	}
	return "+"
}

// counted says at what temperature volumes are counted.
func (s say) counted() string {
	at := "20 C"
	if s.u == measure.US {
		at = "60 F"
	}
	return "Volumes are counted at " + at + ", as the plan's."
}

// from says from when on a run is foretold.
func from(h *review.Ahead) string {
	if h.From.IsZero() {
		return "From here on, as no clock is written yet:"
	}
	return "From here on, after " + h.From.Format("Mon 2 Jan 15:04") + ":"
}

// ahead is what is to come, a line each.
func (s say) ahead(a *review.Answer) []string {
	var out []string
	h := a.Ahead
	for _, c := range h.Coming {
		out = append(out, fmt.Sprintf("%s about %s, give or take %s", c.Words, c.At.Format("Mon 15:04"), measure.Duration(math.Max(1, math.Round(c.SD/60)))))
	}
	hearts, more, unit := h.HeartsLPA, h.SD, "L of pure alcohol"
	if s.u == measure.US && hearts > 0 {
		more *= h.HeartsPG / hearts
		hearts, unit = h.HeartsPG, "proof gallons"
	}
	known := fmt.Sprintf("%s %s, give or take %s", measure.Number(hearts, 1), unit, measure.Number(more, 1))
	if a.Hearts != nil { // the books go by what was gauged, whatever else is known
		out = append(out, "hearts of "+s.value(review.Alcohol, a.Hearts.Said, 0)+" by their gauge, by which the books go")
		return append(out, fmt.Sprintf("all the readings together say %s; %s filled", known, words.Count(h.Casks, "cask")))
	}
	return append(out, fmt.Sprintf("hearts of %s; %s filled", known, words.Count(h.Casks, "cask")))
}

// lacks is what was not written down, under its heading: what is past, and what is
// still to be read.
type lacks struct {
	Head  string
	Parts []string
}

// untold says what the readings that a run lacks would tell, each beside those before it.
func untold(all []review.Untold) []lacks {
	out := []lacks{{Head: "Not written down, and it would have told most of the hearts"}, {Head: "Still to be read, and it tells most of the hearts"}}
	for _, u := range all {
		at, share := &out[0], fmt.Sprintf("%d %%", int(math.Round(100*u.Part)))
		if u.ToCome {
			at = &out[1]
		}
		if u == all[0] {
			share += " of what is not known"
		} else {
			share += " more"
		}
		at.Parts = append(at.Parts, u.Words+" ("+share+")")
	}
	return slices.DeleteFunc(out, func(l lacks) bool { return len(l.Parts) == 0 })
}

// checks says how well what was read balances.
func (s say) checks(b *review.Balance) string {
	return fmt.Sprintf("Of %s. How far they are off together (chi-square): %s, where one run in twenty has more than %s.", words.Count(b.Checks, "balance"), measure.Number(b.Scatter, 1), measure.Number(b.Limit, 1))
}
