package racked

import (
	_ "embed"
	"fmt"
	"io"
	"strings"

	"newmake/compile/book/cellar"
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/lang/diag"
)

//go:embed page.css
var css string

// HTML writes a cellar as one page that needs nothing else: what is to be done, a picture
// of the wood, each cask, the totals.
func HTML(w io.Writer, c *cellar.Cellar) error {
	t := page{us: c.Units == "us"}
	v := view{
		Look: markup.LookOf(chart.Style + css),
		On:   c.On, Title: "Casks on " + c.On, Alcohol: t.alcoholName(), Attention: t.wanted(c), Notes: notesSay(c),
	}
	v.Chart = chart.Racks(t.racks(c))
	v.Key = "Each circle is the head of a cask as it lies, filled as high as it is full. Grey rests, slanted lines are past their rest, a dense mesh may leak."
	if len(c.Casks) > chart.MostHeads {
		v.Notes = append(v.Notes, fmt.Sprintf("More than %d casks are not drawn one by one.", chart.MostHeads))
	}
	for _, r := range c.Casks {
		v.Rows = append(v.Rows, t.row(r))
	}
	v.Lots = lotsSay(c)
	v.Totals, v.Kinds = t.sums(c.Totals), t.sums(c.Kinds)
	var out markup.Page
	writePage(&out, &v)
	_, err := io.WriteString(w, out.String())
	return err
}

// view is a cellar in words.
type view struct {
	markup.Look
	On, Title, Alcohol string
	Attention          []wanted
	Chart              chart.Chart
	Key                string
	Rows               []row
	Totals, Kinds      [][]string
	Notes, Lots        []string
}

// row is a cask in words.
type row struct {
	Serial, Place, Of, Filled, Volume, Strength, Now, NowRange, Lawful, LawfulOf, Over, OverOf, Then, Sample, Last string
	Leak                                                                                                           bool
}

func (t *page) row(r cellar.Row) row {
	out := row{Serial: diag.Safe(r.Serial), Place: diag.Safe(placeOf(r)), Of: diag.Safe(r.Batch), Filled: fmt.Sprintf("run %s, filled %s, %.1f years old", diag.Safe(r.Run), r.Filled, r.AgeYears), Volume: t.volume(r.Now), Strength: t.strength(r.Now), Now: t.alcohol(r.Now),
		NowRange: t.alcohol(r.Low) + " to " + t.alcohol(r.High), Sample: r.Sample, Leak: r.Leak != nil}
	if r.Target != nil {
		out.Over, out.Then = r.Target.On, fmt.Sprintf("%s to %s %s, %s", t.alcohol(r.Target.Low), t.alcohol(r.Target.High), t.alcoholName(), t.strength(r.Target.Then))
		if !r.Target.Kept {
			out.OverOf = "too weak for its bottle"
		} else if r.Target.Over {
			out.OverOf = "kept"
		}
	}
	if s := r.Standard; s != nil {
		out.Lawful, out.LawfulOf = s.From, diag.Safe(s.Of)
	}
	var last []string
	if r.Last != nil {
		last = append(last, fmt.Sprintf("%s, by %s: %s beside the forecast", r.Last.On, r.Last.By, t.signed(r.Last.OffL)))
	}
	if r.Verdict != "" {
		last = append(last, diag.Safe(r.Verdict))
	}
	if r.DrawnL > 0 {
		last = append(last, t.drawn(r)+" drawn")
	}
	if r.Assumed {
		last = append(last, "its fill was not gauged")
	}
	if out.Sample == "" {
		out.Sample = "by its lot"
	}
	out.Last = strings.Join(last, "; ")
	return out
}

// placeOf is where a cask lies, "" where nobody wrote it.
func placeOf(r cellar.Row) string {
	if r.Place == "" {
		return ""
	}
	return strings.Join(append([]string{r.Place}, r.Spot...), ", ")
}

// racks are the casks by the place and row in which they lie, in the order of the casks.
func (t *page) racks(c *cellar.Cellar) []chart.Rack {
	var out []chart.Rack
	at := map[string]int{}
	for _, r := range c.Casks {
		name := "no place written"
		if r.Place != "" {
			name = diag.Safe(r.Place)
			if len(r.Spot) > 1 { // by rows; what is left of the spot is the tier
				name += ", " + diag.Safe(r.Spot[0])
			}
		}
		i, is := at[name]
		if !is {
			i, at[name] = len(out), len(out)
			out = append(out, chart.Rack{Name: name})
		}
		h := chart.Head{Name: diag.Safe(r.Serial), Below: t.alcohol(r.Now) + " " + t.alcoholName()}
		if r.SizeL > 0 {
			h.Full = r.Now.VolumeL / r.SizeL
		}
		switch {
		case r.Leak != nil:
			h.State = chart.Leaking
		case r.Target != nil && r.Target.Over:
			h.State = chart.Ready
		}
		out[i].Heads = append(out[i].Heads, h)
	}
	return out
}
