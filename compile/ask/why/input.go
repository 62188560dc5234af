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
	Source string `json:"source,omitempty"` // of a figure of the stock
}

// inputs finds what stands in the texts under some paths. A path is one of the
// batch's own (recipe.Batch.Where), or names a figure of the stock or of the
// plant: grain.starch, yeast.growth, model.mash.branched,
func (a *asked) inputs(paths []string) []Input {
	out := []Input{}
	seen := map[Input]bool{}
	for _, p := range paths {
		for _, in := range a.input(p) {
			if !seen[in] {
				seen[in] = true
				out = append(out, in)
			}
		}
	}
	return out
}

func (a *asked) input(path string) []Input {
	if at, ok := a.b.Where[path]; ok {
		return []Input{place("", at)}
	}
	first, rest, _ := strings.Cut(path, ".")
	switch first {
	case "bill":
		return a.billLines()
	case "steps":
		return a.steps(rest)
	case "grain":
		var out []Input
		for _, l := range a.b.Bill.Lines {
			out = append(out, figure(l.Grain.Entry, rest)...)
		}
		return out
	case "yeast":
		if a.b.Ferm.Yeast != nil {
			return figure(a.b.Ferm.Yeast.Entry, rest)
		}
	case "wood":
		if a.b.Cask.Kind != nil {
			return figure(a.b.Cask.Kind.Entry, rest)
		}
	case "doses":
		var out []Input
		for _, d := range a.b.Ferm.Doses {
			out = append(out, place("", d.At))
		}
		return out
	case "model":
		name, field, _ := strings.Cut(rest, ".")
		if m := a.b.Models[name]; m != nil {
			e := m.Entry
			e.Name = "model " + e.Name
			return figure(e, field)
		}
	case "backset-acidity", "backset-solids":
		return a.backset(first)
	case "price":
		if at, ok := a.b.Costs.Where[rest]; ok {
			return []Input{place("", at)}
		}
	case "cooker", "fermenter", "wash-still", "spirit-still":
		for _, use := range uses {
			if v := use.of(a, a.b); v != nil && use.word == first {
				if at, ok := v.Where[rest]; ok {
					return []Input{place(v.Name, at)}
				}
			}
		}
	}
	return nil
}

func (a *asked) billLines() []Input {
	var out []Input
	if at, ok := a.b.Where["bill"]; ok && strings.ContainsAny(at.Text(), "0123456789") {
		out = append(out, place("", at))
	}
	for _, l := range a.b.Bill.Lines {
		if at, ok := a.b.Where["bill."+l.Grain.Name]; ok {
			out = append(out, place("", at))
		}
	}
	return out
}

// steps are the lines of the mash, those of one verb or all.
func (a *asked) steps(verb string) []Input {
	var out []Input
	for _, s := range a.b.Mash.Steps {
		if verb == "" || strings.HasPrefix(s.At.Text(), verb) {
			out = append(out, place("", s.At))
		}
	}
	return out
}

// fermenter is the one of a batch's fermenters that the plan is made for.
func (a *asked) fermenter(b *recipe.Batch) *recipe.Vessel {
	for _, used := range a.p.House.Vessels {
		for _, v := range b.Ferm.Vessels {
			if used.Use == "ferment" && v.Name == used.Name {
				return v
			}
		}
	}
	return nil
}

// backset is a figure of the backset: the batch's own or the language's default,
// or the model's where neither says. It has no place of its own in the text.
func (a *asked) backset(field string) []Input {
	if a.p.Stream(plan.StreamBackset).MassKg == 0 {
		return nil
	}
	text := ""
	switch m := a.b.Mash; {
	case field == "backset-acidity" && m.BacksetPH > 0:
		text = fixed("", m.BacksetPH, "pH", "").Text()
	case field == "backset-solids" && m.BacksetSolidsFrac > 0:
		text = fixed("", 100*m.BacksetSolidsFrac, "%", "").Text()
	default:
		return a.input("model.mash." + field)
	}
	return []Input{{Text: field + " " + text, Source: "the batch's own, or the default of the language"}}
}

// figure is one figure of a stock entry.
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
