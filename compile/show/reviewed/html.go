package reviewed

import (
	_ "embed"
	"io"
	"strings"

	"newmake/compile/ask/review"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/compile/show/sheet"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/words"
)

//go:embed page.css
var css string

// breakRow is a balance that is out.
type breakRow struct {
	Head, Explains string
	Causes         []string
}

// HTML writes all of a review as one page that needs nothing else, in the look of the
// sheet: the pictures of the plan with the readings marked on them. p is the batch as
// planned for the day of the run.
func HTML(w io.Writer, a *review.Answer, p *plan.Plan) error {
	p = p.Strings(func(s string) string { return diag.Safe(s) })
	v := view{
		Run: diag.Safe(a.Run), Batch: diag.Safe(a.Batch), Plant: p.Plant.Name, Day: a.Day.Weekday().String() + ", " + a.Day.String(),
		Version: p.Source.String(), Verdict: verdict(a), Right: a.AsItShould(),
	}
	v.Look = sheet.Look(p, css)
	v.fill(a, p)
	var page markup.Page
	writePage(&page, &v)
	_, err := io.WriteString(w, page.String())
	return err
}

// view is a review in words.
type view struct {
	markup.Look
	Run, Batch, Plant, Day, Version string

	Verdict   []string
	Right     bool
	Gaps      [][]string
	Counted   string // at what temperature volumes are
	Breaks    []breakRow
	Checks    string
	Flows     [][]string
	Otherwise *otherwise
	Small     string
	Parts     []part
	From      string
	Ahead     []string
	Untold    []lacks
}

// otherwise is a table of what was done otherwise.
type otherwise struct {
	Heads []string
	Rows  [][]string
}

// part is one stage: its picture, and its readings.
type part struct {
	ID, Title string
	Chart     chart.Chart
	Lines     []line
	Marked    string
}

type line struct {
	When  string
	Cells []string
	Off   bool
}

func (v *view) fill(a *review.Answer, p *plan.Plan) {
	s := say{a.Units}
	v.Counted = s.counted()
	for _, g := range a.Gaps {
		v.Gaps = append(v.Gaps, []string{g.Words, s.value(g.Kind, g.Said, g.ABV), s.value(g.Kind, g.Plan, g.ABV), s.value(g.Kind, g.Made, g.ABV), s.difference(g.Kind, g.Said-g.Made, g.ABV)})
	}
	if b := a.Balance; b != nil {
		for i, f := range b.Gross {
			var all []string
			for _, c := range f.Causes {
				all = append(all, s.cause(c))
			}
			v.Breaks = append(v.Breaks, breakRow{strings.TrimSuffix(broken(i), "."), explains, all})
		}
		v.Checks = s.checks(b)
		for _, f := range b.Flows {
			from := "read"
			if f.Model {
				from = "the model"
			}
			v.Flows = append(v.Flows, []string{f.Words, s.flow(f.Unit, f.Said, f.ABV), s.flow(f.Unit, f.Best, f.ABV), from})
		}
	}
	v.otherwise(a, s)
	for _, stage := range record.StageNames {
		v.part(stage, a, p, s)
	}
	if a.Ahead != nil {
		v.From, v.Ahead = from(a.Ahead), s.ahead(a)
	}
	v.Untold = untold(a.Untold)
}

// outcomes are those that a page takes apart, beside what the house counts its hearts by.
var outcomes = []string{"washAbvPct", "lowWinesVolumeL", "heartsVolumeL", "heartsAbvPct"}

// otherwise is what was done otherwise, a row each, and what it was worth.
func (v *view) otherwise(a *review.Answer, s say) {
	if len(a.Small) > 0 {
		v.Small = small(a.Small, len(a.Small))
	}
	if a.Done == nil || a.Done.Same {
		return
	}
	w := &otherwise{Heads: []string{"what"}}
	v.Otherwise = w
	rows := map[string]int{}
	row := func(edit string) int {
		i, ok := rows[edit]
		if !ok {
			i = len(w.Rows)
			rows[edit], w.Rows = i, append(w.Rows, []string{diag.Safe(edit)})
		}
		return i
	}
	for _, e := range a.Done.Edits {
		if a.Done.Why == nil {
			row(e.What)
		}
	}
	if a.Done.Why == nil {
		return
	}
	total := []string{"all together"}
	for _, key := range append([]string{s.lived()}, outcomes...) {
		for _, o := range a.Done.Why.Each {
			if o.Key != key {
				continue
			}
			w.Heads = append(w.Heads, o.Name+", "+o.Unit)
			total = append(total, signed(o.Change, o.Places))
			for _, p := range o.Parts {
				i := row(p.Edit)
				w.Rows[i] = append(w.Rows[i], signed(p.Part, o.Places))
			}
			for i := range w.Rows {
				for len(w.Rows[i]) < len(w.Heads) {
					w.Rows[i] = append(w.Rows[i], "")
				}
			}
		}
	}
	w.Rows = append(w.Rows, total)
}

// titles of the stages, and what draws them.
var (
	titles = map[record.StageName]string{
		record.Mash: "Mash", record.Ferment: "Ferment", record.Strip: "Wash run", record.Spirit: "Spirit run", record.Fill: "Filling",
	}
	charts = map[record.StageName]func(*plan.Plan, measure.Units, ...chart.Taken) chart.Chart{
		record.Mash: chart.Mash, record.Ferment: chart.Ferment, record.Strip: chart.Strip, record.Spirit: chart.Spirit,
	}
)

// part is a stage, if anything was read of it.
func (v *view) part(stage record.StageName, a *review.Answer, p *plan.Plan, s say) {
	out := part{ID: string(stage), Title: titles[stage]}
	for _, l := range a.Lines {
		if l.Stage != stage {
			continue
		}
		x := line{Off: !l.Within(), Cells: []string{
			diag.Safe(l.Words), s.value(l.Kind, l.Said, l.ABV), s.value(l.Kind, l.Plan, l.ABV), s.value(l.Kind, l.Made, l.ABV), s.difference(l.Kind, l.Off(), l.ABV),
		}}
		if !l.When.IsZero() {
			x.When = l.When.Format("Mon 15:04")
		}
		out.Lines = append(out.Lines, x)
	}
	var taken []chart.Taken
	for _, m := range a.Marks {
		if m.Stage == stage {
			taken = append(taken, takenOf(m))
		}
	}
	if len(out.Lines) == 0 && len(taken) == 0 {
		return
	}
	if draw := charts[stage]; draw != nil {
		out.Chart = draw(p, s.u, taken...)
	}
	out.Marked = marked(stage, len(taken))
	v.Parts = append(v.Parts, out)
}

// marked says what is to be seen on a picture.
func marked(stage record.StageName, n int) string {
	plan := "The line and its dots are the plan"
	if stage == record.Strip || stage == record.Spirit {
		plan = "The line, its dots and the clock are the plan"
	}
	if n == 0 {
		return plan + "; no reading of the run has a place on it."
	}
	return plan + ", the crosses " + words.Count(n, "reading") + " of the run, where they were taken; what is not as it should be stands in a box."
}

// takenOf is a mark as a chart takes it.
func takenOf(m review.Mark) chart.Taken {
	t := chart.Taken{Of: string(m.What), Clock: m.When, Hours: m.AfterS / 3600, OverL: 1000 * m.OverM3, Value: m.Said, Off: m.Off}
	switch m.What {
	case record.Spout:
		t.Value *= 100
	case record.Flow:
		t.Value *= 1000 * 3600
	}
	return t
}
