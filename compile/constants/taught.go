package constants

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// Models is the edition of the models that batches are computed with. It is raised when
// their numbers move by more than a house's readings could hide, so that constants that
// were learned with the old ones are not used with the new.
const Models = 1

// sameBase is how near a figure must be to the one that stood there when it was learned: what
// is written has so many digits.
const sameBase = 1e-4

// Taught is a batch with what was learned of its plant put in, and what is to be said of
// that. The batch stays as it is. What it has is kept in Learned, and Of gives those
// constants the uncertainty that is left of them.
func Taught(b *recipe.Batch, l *recipe.Learned) (*recipe.Batch, diag.List) {
	var list diag.List
	if l.Model != Models {
		list.Add(diag.Diagnostic{
			Code: diag.CodeLearnedStale, Severity: diag.Warning, At: l.At,
			Summary: fmt.Sprintf("what was learned of %q was held against models of edition %d, and these are of edition %d: nothing of it is used", l.Plant, l.Model, Models),
			Help:    "`newmake learn --write` learns it anew from the same runs",
		})
		return b, list
	}
	had := *l
	had.Constants = nil
	var use []Constant
	var x []float64
	for _, c := range Of(b) {
		line, ok := l.Of(c.Key())
		if !ok || c.Owner != House {
			continue
		}
		if math.Abs(line.BaseSI-c.AsWritten) > sameBase*max(math.Abs(c.AsWritten), math.Abs(line.BaseSI)) {
			list.Add(diag.Diagnostic{
				Code: diag.CodeLearnedStale, Severity: diag.Warning, At: line.At,
				Summary: fmt.Sprintf("%s was learned over %s, and now there stands %s: it is not used", c.Words, figure(line.BaseSI, c.Kind), figure(c.AsWritten, c.Kind)),
				Help:    "`newmake learn --write` learns it anew from the same runs",
			})
			continue
		}
		if !c.Prior.Holds(line.SI) {
			list.Add(diag.Diagnostic{
				Code: diag.CodeLearnedStale, Severity: diag.Warning, At: line.At,
				Summary: fmt.Sprintf("%s cannot be %s: it is %s to %s, so it is not used", c.Words, figure(line.SI, c.Kind), figure(c.Low, c.Kind), figure(c.High, c.Kind)),
				Help:    "`learned.batch` is written by `newmake learn --write`, and not by hand",
			})
			continue
		}
		had.Constants = append(had.Constants, line)
		use, x = append(use, c), append(x, line.SI)
	}
	if len(use) == 0 {
		return b, list
	}
	out := Set(b, use, x)
	out.Learned = &had
	var said []string
	for i, c := range use {
		said = append(said, c.Words+" "+figure(x[i], c.Kind))
	}
	list.Add(diag.Diagnostic{
		Code: diag.CodeLearned, Severity: diag.Note, At: l.At,
		Summary: fmt.Sprintf("%s from %s, learned on %s: %s", words.Count(len(use), "constant"), words.Count(len(l.From), "run"), l.On, strings.Join(said, "; ")),
		Help:    "`--no-learned` leaves them out",
	})
	return out, list
}

// narrowed gives a constant that was learned the uncertainty that is left of it.
func (c Constant) narrowed(l *recipe.Learned) Constant {
	line, ok := l.Of(c.Key())
	if !ok || c.Owner != House {
		return c
	}
	mean, sd := line.SI, (line.HighSI-line.LowSI)/(2*NineInTen)
	if c.Form == Times { // what the batch has already is the middle
		sd /= mean
		c.Low, c.High = c.Low/mean, c.High/mean
		mean = 1
	}
	c.Prior = Prior{Shape: Normal, Mean: mean, SD: sd, Low: c.Low, High: c.High}
	c.Why = "learned from runs of the house"
	return c
}

// Unit is the unit in which a figure of a kind is written.
func Unit(k quantity.Kind) string {
	switch k {
	case quantity.Duration:
		return "h"
	case quantity.Gravity:
		return "SG"
	case quantity.Strength:
		return "% abv"
	case quantity.TempDifference:
		return "K"
	}
	return "%"
}

// digits is the significant figures that a constant is written with.
const digits = 4

// Number is a figure in the unit that it is written in, to so many figures.
func Number(si float64, k quantity.Kind) string {
	v := si
	switch k {
	case quantity.Duration:
		v /= 3600
	case quantity.Gravity, quantity.TempDifference:
	default:
		v *= 100
	}
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', digits, 64), 64)
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func figure(si float64, k quantity.Kind) string { return Number(si, k) + " " + Unit(k) }
