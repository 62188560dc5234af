package why

import (
	"strings"

	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Input is something that is written in a text and bears on a number.
type Input struct {
	Text   string `json:"text"`             // as it stands in the text
	Of     string `json:"of,omitempty"`     // whose it is: "corn", "Wash still"
	File   string `json:"file,omitempty"`   // as the reader knows it
	Line   int    `json:"line,omitempty"`   // in it, from 1
	Source string `json:"source,omitempty"` // of a figure of the library
}

// source finds inputs of one sort in the texts of a batch; none where nothing of
// it is written.
type source func(*asked) []Input

// inputs are what some sources find, each once.
func (a *asked) inputs(sources []source) []Input {
	out := []Input{}
	seen := map[Input]bool{}
	for _, find := range sources {
		for _, in := range find(a) {
			if !seen[in] {
				seen[in] = true
				out = append(out, in)
			}
		}
	}
	return out
}

// eachOf is what some sources of one sort find, one after the other.
func eachOf[K any](of func(*asked, K) []Input) func(...K) source {
	return func(keys ...K) source {
		return func(a *asked) []Input {
			var out []Input
			for _, k := range keys {
				out = append(out, of(a, k)...)
			}
			return out
		}
	}
}

// at are values of the batch or of its plant.
var at = eachOf(func(a *asked, p recipe.Path) []Input {
	if at, ok := a.b.Where[p]; ok {
		return []Input{place("", at)}
	}
	return nil
})

// rate is the line of the house's rate of filling the cooker, or what the model
// takes in its place.
func rate(name string) source {
	stated, usual := at(recipe.PathRates.Child(name)), constant("mash", name)
	return func(a *asked) []Input {
		if in := stated(a); len(in) > 0 {
			return in
		}
		return usual(a)
	}
}

// stepLines are the lines of the mash, those of a verb or all.
var stepLines = eachOf(func(a *asked, verb string) []Input {
	var out []Input
	for _, s := range a.b.Mash.Steps {
		if strings.HasPrefix(s.At.Text(), verb) {
			out = append(out, place("", s.At))
		}
	}
	return out
})

// doseLines are the enzymes that go into the fermenter.
func doseLines(a *asked) []Input {
	var out []Input
	for _, d := range a.b.Ferm.Doses {
		out = append(out, place("", d.At))
	}
	return out
}

// grainFigure are figures, each of every grain of the bill.
var grainFigure = eachOf(func(a *asked, name string) []Input {
	var out []Input
	for _, l := range a.b.Bill.Lines {
		out = append(out, figure(l.Grain.Entry, name)...)
	}
	return out
})

var yeastFigure = eachOf(func(a *asked, name string) []Input {
	if a.b.Ferm.Yeast == nil {
		return nil
	}
	return figure(a.b.Ferm.Yeast.Entry, name)
})

var woodFigure = eachOf(func(a *asked, name string) []Input {
	if a.b.Cask.Kind == nil {
		return nil
	}
	return figure(a.b.Cask.Kind.Entry, name)
})

// constant are constants of a model.
func constant(model string, names ...string) source {
	return eachOf(func(a *asked, name string) []Input {
		m := a.b.Models[model]
		if m == nil {
			return nil
		}
		e := m.Entry
		e.Name = "model " + e.Name
		return figure(e, name)
	})(names...)
}

// climateFigures are what the model of the cask has of the climate, where neither the
// batch nor the plant states its loss.
func climateFigures(a *asked) []Input {
	c := a.b.Cask.Climate
	var out []Input
	if c.LossFirstYear == 0 {
		out = append(out, constant("cask", c.Named+"-"+recipe.PathLossFirst.Last())(a)...)
	}
	if c.LossYearly == 0 {
		out = append(out, constant("cask", c.Named+"-"+recipe.PathLoss.Last())(a)...)
	}
	return out
}

// pricesUsed are the prices of the house that the cost is made of, in its order.
func pricesUsed(a *asked) []Input {
	var out []Input
	for _, l := range a.p.Cost.Lines {
		word, ok := priceWords[l.What]
		if !ok {
			word = l.What // a material, by its name
		}
		if at, ok := a.b.Costs.Where[word]; ok {
			out = append(out, place("", at))
		}
	}
	return out
}

// priceWords are the words of prices that are not the name of what is paid for.
var priceWords = map[string]string{"heat": "energy", "casks": "cask", "used casks": "used-cask"}

// vesselFigure are figures of the vessel of one use: see uses.
func vesselFigure(use string, names ...string) source {
	return eachOf(func(a *asked, name string) []Input {
		for _, u := range uses {
			if u.word != use {
				continue
			}
			if v := u.of(a, a.b); v != nil {
				if at, ok := v.Where[name]; ok {
					return []Input{place(v.Name, at)}
				}
			}
		}
		return nil
	})(names...)
}

// backsetFigure is a figure of the backset: the batch's own or the language's
// default, or the model's where neither says. A default has no place in the text.
func backsetFigure(p recipe.Path) source {
	return func(a *asked) []Input {
		if a.p.Stream(plan.StreamBackset).MassKg == 0 {
			return nil
		}
		if in := at(p)(a); in != nil {
			return in
		}
		text := ""
		switch m := a.b.Mash; {
		case p == recipe.PathBacksetPH && m.BacksetPH > 0:
			text = fixed("", m.BacksetPH, "pH", "").Text()
		case p == recipe.PathBacksetSolids && m.BacksetSolidsFrac > 0:
			text = fixed("", 100*m.BacksetSolidsFrac, "%", "").Text()
		default:
			return constant("mash", p.Last())(a)
		}
		return []Input{{Text: p.Last() + " " + text, Source: "the default of the language"}}
	}
}

// fermenter is the one of a batch's fermenters that the plan is made for.
func (a *asked) fermenter(b *recipe.Batch) *recipe.Vessel {
	for _, used := range a.p.Plant.Vessels {
		for _, v := range b.Ferm.Vessels {
			if used.Use == "ferment" && v.Name == used.Name {
				return v
			}
		}
	}
	return nil
}

// figure is one figure of a library entry.
func figure(e recipe.Entry, field string) []Input {
	at, ok := e.Where[field]
	if !ok {
		return nil
	}
	in := place(e.Name, at)
	in.Source = e.Source[field]
	return []Input{in}
}

// place is the input that stands at a place, its spaces drawn together.
func place(of string, at diag.Span) Input {
	in := Input{Of: of, Text: strings.Join(strings.Fields(at.Text()), " ")}
	if at.Src != nil {
		in.File = at.Src.Name
		in.Line, _ = at.Position()
	}
	return in
}
