package diff

import (
	_ "embed"
	"io"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/compile/show/markup"
	"newmake/lang/diag"
)

//go:embed page.css
var css string

// HTML writes the document as one page that needs nothing else: no script, no
// font, no image. All text is escaped.
func HTML(w io.Writer, d *compare.Document, o Options) error {
	v := view{Look: markup.LookOf(css), Title: "What changed"}
	shown, loose := parts(d)
	v.Loose = loose
	for _, c := range shown {
		v.Pairs = append(v.Pairs, viewOf(c, o))
	}
	if len(shown) == 1 {
		v.Title = v.Pairs[0].Title
	}
	var page markup.Page
	writePage(&page, &v)
	_, err := io.WriteString(w, page.String())
	return err
}

// view is the document in words, as the page shows it.
type view struct {
	markup.Look
	Title string
	Pairs []pairView
	Loose []string
}

type pairView struct {
	Title, Old, New, Same, Folded, Unpriced, Headline string

	Bill     []billView
	Edits    []editView
	Notes    []string
	Moments  [][]string
	Words    []editView
	Why      *whyView
	Outcomes []outcomeView
}

type billView struct{ Grain, Old, OldShare, New, NewShare, Points string }

type editView struct {
	Mark, Part, What string
	Lines            []string
}

type outcomeView struct{ Name, Old, New, Unit, Change, Class string }

type whyView struct {
	One   string
	Heads []string
	Rows  []whyRow
	How   string
}

type whyRow struct {
	Head  string
	Cells []cell
	Sum   bool
}

type cell struct{ Text, Class string }

// wanted are the outcomes of which more is better (1) or worse (-1). Of all others more
// is neither.
var wanted = map[string]float64{
	"conversionPct": 1, "heartsVolumeL": 1, "heartsProofGallons": 1, "pureAlcoholL": 1, "casksFilled": 1, "bottles": 1, "yieldLPAPerTonne": 1,
	"costTotal": -1, "costPerProofGallon": -1, "costPerLPA": -1, "costPerBottle": -1, "heatKWh": -1, "waterL": -1, "peopleHours": -1, "outOfShiftHours": -1,
}

// class colours a change by whether it is wanted; the sign says which way it goes.
func class(key string, change float64) string {
	switch x := wanted[key] * change; {
	case x > 0:
		return "better"
	case x < 0:
		return "worse"
	}
	return ""
}

func arrow(s string) string { return strings.ReplaceAll(s, "->", "→") }

func viewOf(c *compare.Comparison, o Options) pairView {
	v := pairView{
		Title: arrow(title(c)), Old: diag.Safe(c.Old.Label), New: diag.Safe(c.New.Label), Same: unchanged(c), Headline: arrow(headline(c)),
		Notes: c.Notes, Why: whyOf(c, o),
	}
	if len(changed(c)) == 0 {
		v.Same = ""
	}
	for _, r := range c.Bill {
		b := billView{Grain: diag.Safe(r.Grain), Old: grain(c.Units, r.OldKg), OldShare: share(r.OldPct), New: grain(c.Units, r.NewKg), NewShare: share(r.NewPct)}
		if measure.Number(r.Points, 2) != "0.00" {
			b.Points = signed(r.Points, 2)
		}
		v.Bill = append(v.Bill, b)
	}
	for _, e := range c.Edits {
		what, values := words(e)
		x := editView{Mark: marks[e.Kind], Part: string(e.Part), What: arrow(what)}
		for _, l := range values {
			x.Lines = append(x.Lines, arrow(l))
		}
		v.Edits = append(v.Edits, x)
	}
	for _, m := range moved(c) {
		v.Moments = append(v.Moments, []string{m.Name, clock(m.Old), clock(m.New), hours(m)})
	}
	for _, w := range c.Gained {
		v.Words = append(v.Words, editView{Mark: "+", Part: strings.TrimSpace(w.Severity + " " + w.Code), What: diag.Safe(w.Text)})
	}
	for _, w := range c.Lost {
		v.Words = append(v.Words, editView{Mark: "-", Part: strings.TrimSpace(w.Severity + " " + w.Code), What: diag.Safe(w.Text)})
	}
	for _, o := range told(c) {
		v.Outcomes = append(v.Outcomes, outcomeView{o.Name, number(o, o.Old), number(o, o.New), o.Unit, signed(o.Change, o.Places), class(o.Key, o.Change)})
	}
	v.Folded, v.Unpriced = folded(c), unpriced(c)
	return v
}

func whyOf(c *compare.Comparison, o Options) *whyView {
	w := c.Why
	if w == nil || len(w.Each) == 0 {
		return nil
	}
	if len(w.Edits) == 1 {
		return &whyView{One: diag.Safe(w.Edits[0])}
	}
	v := &whyView{How: howFar(w)}
	each := mainWhy(c, o.AllWhy)
	most := each[0]
	all, inter := whyRow{Head: "all together", Sum: true}, whyRow{Head: "of this, interaction"}
	for _, x := range each {
		v.Heads = append(v.Heads, strings.TrimSuffix(x.Name+", "+x.Unit, ", "))
		if len(x.Parts) > len(most.Parts) {
			most = x
		}
		all.Cells = append(all.Cells, cell{signed(x.Change, x.Places), class(x.Key, x.Change)})
		inter.Cells = append(inter.Cells, cell{signed(x.Interaction, x.Places), ""})
	}
	for i, p := range most.Parts {
		row := whyRow{Head: diag.Safe(p.Edit)}
		for _, x := range each {
			c := cell{}
			if i < len(x.Parts) {
				c = cell{signed(x.Parts[i].Part, x.Places), class(x.Key, x.Parts[i].Part)}
				if x.Parts[i].Error > 0 {
					c.Text += " ± " + measure.Number(x.Parts[i].Error, x.Places)
				}
			}
			row.Cells = append(row.Cells, c)
		}
		v.Rows = append(v.Rows, row)
	}
	v.Rows = append(v.Rows, all, inter)
	return v
}
