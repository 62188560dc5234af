package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// The short sheet: the whole batch on two pages, to fold into a pocket or to hang up.
// What is weighed out, each step with its trigger and its cautions, the two readings at
// its end that decide whether to go on, and the cautions in full at the foot of the page
// that names them. What it leaves out (pictures, readings between, the proofing card, the
// wood, the law) is on the sheet in full.

// shortPage is one of the two.
type shortPage struct {
	ID, What string
	Weigh    bool // it begins with what is weighed out
	Size     shortSize
	Stages   []shortStage
	Cautions []shortCaution
}

// shortStage is the steps of a stage.
type shortStage struct {
	Name  string
	Use   string // of its vessel; empty where it has none of its own
	Begin *begin
	Steps []shortStep
}

// shortStep is a step with what is read at its end.
type shortStep struct {
	plan.Step
	Day  string // its day, where that is another than that of the step before
	Care []care
	Read []cell
	Jug  bool
	// AfterJug: it begins when the jug is filled.
	AfterJug bool
}

// Span is how many columns the words take: those of the readings that it has not.
func (s shortStep) Span() int { return 1 + 2*(shortReadings-len(s.Read)) }

// shortCaution is a danger in full, with its number.
type shortCaution struct {
	Number int
	plan.Caution
}

// shortReadings is how many readings decide at the end of a step.
const shortReadings = 2

// decide is the order in which the instruments of a stage's columns decide. What is not
// named is only on the sheet in full.
var decide = map[string][]int{
	"mash": {3, 0, 2, 1}, "ferment": {0, 2, 1}, "strip": {0, 1, 2, 3}, "spirit": {0, 1, 2, 3}, "fill": {0, 1, 2},
}

// shortSize is how small the words of a short sheet are, so that two pages hold it: the
// largest that fits is taken.
type shortSize struct {
	Name    string
	WordsPt float64 // of what to do
	RowMM   float64 // the least height of a row
	CarePt  float64 // of the cautions in full
}

// The sizes, as sheet.css has them.
var shortSizes = []shortSize{
	{"a", 11, 9, 10}, {"b", 10.5, 8, 9}, {"c", 10, 7, 9}, {"d", 9.5, 6.5, 8.5}, {"e", 9, 6, 8.5},
	{"f", 9, 5.5, 8}, {"g", 8.5, 5.5, 8}, {"h", 8.5, 5.5, 7.5},
}

// ShortSizes are the sizes, for the style sheet of a short sheet.
func (v *view) ShortSizes() []shortSize {
	if !v.Short {
		return nil
	}
	return shortSizes
}

// shortStages are the steps of the plan by stage, without cautions: those hang on what
// else is on the page.
func (v *view) shortStages() []shortStage {
	var out []shortStage
	for _, s := range v.Schedule.Steps {
		stage := s.Stage
		switch {
		case stage == "cask": // years in wood
			continue
		case setting(s):
			stage = "mash"
		case emptied(s):
			stage = "strip"
		}
		at := slices.IndexFunc(out, func(g shortStage) bool { return g.Use == stage })
		if at < 0 {
			out, at = append(out, shortStage{Name: shortNames[stage], Use: stage}), len(out)
		}
		g := &out[at]
		if what, id := shortBegins(stage); g.Begin == nil && (s.ID == id || strings.HasSuffix(s.ID, ".heat")) {
			g.Begin = &begin{what, measure.Clock(s.Start)}
		}
		one := shortStep{Step: s, Jug: jug(s), Read: deciding(s, columnsOf(stage, v.Units), decide[stage])}
		if n := len(g.Steps); n == 0 || !measure.SameDay(g.Steps[n-1].Start, s.Start) {
			one.Day = plan.Moment(s.Start).Format("Mon 2 Jan")
		}
		if n := len(g.Steps); n > 0 {
			one.AfterJug = jug(g.Steps[n-1].Step)
		}
		g.Steps = append(g.Steps, one)
	}
	return out
}

var shortNames = map[string]string{
	"mash": "Mash", "ferment": "Ferment", "strip": "Stripping run", "spirit": "Spirit run", "fill": "Reduce and fill",
}

// shortBegins is what the clocks of a stage count from, and the step that it is.
func shortBegins(stage string) (what, id string) {
	switch stage {
	case "mash":
		return "first water", "mash.1"
	case "ferment":
		return "pitched", fermentRun
	}
	return "heat on", stage + ".heat"
}

const fermentRun = "ferment.run"

// deciding are the readings at the end of a step, in the order in which they decide.
func deciding(s plan.Step, cols []column, order []int) []cell {
	rows := rowsOf(s, cols)
	from := 0
	for i, r := range rows {
		if r.Due != "" {
			from = i
		}
	}
	var out []cell
	for _, row := range rows[from:] {
		for _, at := range order {
			c := row.Cells[at]
			if c.Reading == nil || len(out) == shortReadings {
				continue
			}
			switch {
			case c.Name == "" && c.Kind == record.Strength:
				c.Name = "strength"
			case c.Name == "" && !c.told():
				c.Name = c.Head
			}
			c.Unit = "" // it stands with the value: there is no head that says it
			out = append(out, c)
		}
	}
	return out
}

// told reports whether the unit of a reading tells what it is: then there is no need to name it.
func (c cell) told() bool {
	switch c.Kind {
	case record.Gravity, record.PH, record.Temperature, record.Volume:
		return true
	}
	return false
}

// ShortPages are the two pages: the steps are divided between them, and the cautions
// that the second names, so that the words may be as large as they can. Where no words are
// small enough, each of the two goes over to another.
func (v *view) ShortPages() []shortPage {
	if v.shortPages == nil {
		v.shortPages, _ = v.divided()
	}
	return v.shortPages
}

// TwoPages reports whether the short sheet of a plan is two pages, as it should be.
func TwoPages(p *plan.Plan, u measure.Units) bool {
	v := &view{Plan: p, Units: u, Short: true}
	_, fits := v.divided()
	return fits
}

// divided are the pages, and whether their words fit on them. What is too long has the number
// alone of a danger that the page has named at the same vessel on another day.
func (v *view) divided() (pages []shortPage, fits bool) {
	long, fits := v.dividedWith(false)
	if fits {
		return long, true
	}
	if pages, fits = v.dividedWith(true); fits {
		return pages, true
	}
	return long, false
}

func (v *view) dividedWith(brief bool) (pages []shortPage, fits bool) {
	stages := v.shortStages()
	count := 0
	for _, g := range stages {
		count += len(g.Steps)
	}
	var best, legible []shortPage
	for _, size := range shortSizes {
		least := math.Inf(1)
		for at := range count + 1 {
			inFull := map[string]bool{}
			head, tail := divide(stages, at)
			first := v.shortPage("first", size, head, true, brief, inFull)
			second := v.shortPage("second", size, tail, false, brief, inFull)
			steps := [2]heights{v.stepHeights(first), v.stepHeights(second)}
			for {
				if full := max(steps[0].over(first), steps[1].over(second)); full < least {
					least, best = full, []shortPage{first, second}
				}
				if len(second.Cautions) == 0 {
					break
				}
				first.Cautions = append(slices.Clone(first.Cautions), second.Cautions[0])
				second.Cautions = second.Cautions[1:]
			}
		}
		if least <= -shortSpareMM {
			return best, true
		}
		if size.WordsPt >= longPt {
			legible = best
		}
	}
	return legible, false
}

// longPt is how small the words are of a batch that is too long for two pages in the
// smallest: two charges to each still, or ten days of ferment. It takes four.
const longPt = 10

// shortSpareMM is what is left free for what is reckoned too low.
const shortSpareMM = 2.0

// divide cuts stages after so many steps. What goes on on the next page says so.
func divide(stages []shortStage, at int) (head, tail []shortStage) {
	for _, g := range stages {
		n := min(at, len(g.Steps))
		at -= n
		if n > 0 {
			h := g
			h.Steps = g.Steps[:n]
			head = append(head, h)
		}
		if n < len(g.Steps) {
			t := g
			t.Steps = slices.Clone(g.Steps[n:])
			if n > 0 {
				t.Name, t.Begin = g.Name+", continued", nil
				t.Steps[0].Day = plan.Moment(t.Steps[0].Start).Format("Mon 2 Jan")
			}
			tail = append(tail, t)
		}
	}
	return head, tail
}

// paperMM is the room for text on a paper, as sheet.css has its margins.
type paperMM struct{ wide, high float64 }

var papers = []paperMM{{215.9 - 13 - 11, pageMM}, {210 - 13 - 11, 297 - 11.5 - 9.5}}

// heights are how high a page is, without the cautions at its foot, on each of the papers.
type heights []float64

// over is by how many mm a page with its cautions is too long, on the paper where it is
// longest; less than 0 where it fits.
func (h heights) over(p shortPage) float64 {
	over := math.Inf(-1)
	for i, paper := range papers {
		over = max(over, h[i]+p.cautionsMM(paper.wide)-paper.high)
	}
	return over
}

// shortPage is a page of some stages. inFull are the dangers that stand in full on the page
// before; those of this one are added.
func (v *view) shortPage(id string, size shortSize, stages []shortStage, weigh, brief bool, inFull map[string]bool) shortPage {
	p := shortPage{ID: id, Size: size, Weigh: weigh}
	numbers, said := v.numbers(), named{map[danger]bool{}, brief}
	var names []string
	if weigh {
		names = append(names, "weigh out")
	}
	for _, g := range stages {
		names = append(names, strings.ToLower(g.Name))
		steps := make([]shortStep, len(g.Steps))
		for i, s := range g.Steps {
			s.Care = said.of(s.Step, numbers)
			steps[i] = s
		}
		g.Steps = steps
		p.Stages = append(p.Stages, g)
	}
	p.What = strings.Join(names, ", ")
	has := map[string]bool{}
	for at := range said.at {
		has[at.key] = true
	}
	for i, c := range v.Plan.Cautions {
		if has[c.Key] && !inFull[c.Key] {
			inFull[c.Key] = true
			p.Cautions = append(p.Cautions, shortCaution{i + 1, c})
		}
	}
	return p
}

// Widths of the columns of a short page, as sheet.css has them, in mm.
const (
	shortFixMM  = 17.5 + 11.0 // clock and time
	shortReadMM = 20.0 + 15.0 // what a reading should say, and says
)

// stepHeights are about how high a page's steps are with what stands above them.
func (v *view) stepHeights(p shortPage) heights {
	const thead, foot, stage, weighPt = 5.0, 8.0, 6.8, 10.5
	out := make(heights, len(papers))
	for i, paper := range papers {
		mm, wide := 0.0, paper.wide
		if p.Weigh {
			mm += 9 + 10 // name and chain
			for _, n := range v.FirstWarnings() {
				mm += lines(utf8.RuneCountInString(n.Summary)+4, 10, wide-8)*10*lineOf + 0.8
			}
			if len(v.Warnings()) > 0 {
				mm += 9
			}
			for _, chars := range v.weighChars() {
				mm += lines(chars, weighPt, wide-6)*weighPt*0.3528*1.35 + 1
			}
		} else {
			mm += foot
		}
		if len(p.Stages) > 0 {
			mm += thead
		}
		mm += stage * float64(len(p.Stages))
		out[i] = mm
	}
	for _, g := range p.Stages {
		for _, s := range g.Steps {
			words := step{Step: s.Step, Care: s.Care}
			chars := words.chars()
			for i, paper := range papers {
				out[i] += s.heightMM(chars, p.Size, paper.wide)
			}
		}
	}
	return out
}

// cautionsMM is about how high the cautions at the foot of a page are.
func (p shortPage) cautionsMM(wide float64) float64 {
	chars := 0
	for _, c := range p.Cautions {
		chars += utf8.RuneCountInString(c.Title) + utf8.RuneCountInString(c.Text) + 7
	}
	if chars == 0 {
		return 0
	}
	return math.Ceil(lines(chars, p.Size.CarePt, (wide-5)/2)/2+0.5)*p.Size.CarePt*lineOf + 1
}

// weighChars are about how long the three paragraphs of what is made ready are.
func (v *view) weighChars() []int {
	const more = 14 // a box, a space and an amount
	grain, all, vessels := 22, 14, 24
	for _, g := range v.Bill.Lines {
		grain += utf8.RuneCountInString(g.Name) + more
	}
	for _, a := range v.Bill.Additions {
		all += utf8.RuneCountInString(a.Name) + more
		if a.At != nil {
			all += 8
		}
	}
	for _, o := range v.Schedule.Vessels {
		vessels += utf8.RuneCountInString(o.Vessel) + more
	}
	return []int{grain, all, vessels}
}

// lineOf is the height of a line of a point of type, in mm, as sheet.css has it.
const lineOf = 0.3528 * 1.16

// lines is about how many lines so many characters of a size take in a width: a
// character is about half as wide as it is high (Arial, from measuring).
func lines(chars int, pt, mm float64) float64 {
	return math.Ceil(float64(chars) * pt * 0.3528 * 0.485 / mm)
}

// heightMM is about how high the row of a short step of so many characters is.
func (s shortStep) heightMM(chars int, size shortSize, wide float64) float64 {
	width := wide - shortFixMM - float64(len(s.Read))*shortReadMM
	least := size.RowMM
	if s.Day != "" {
		least = max(least, 8)
	}
	for _, c := range s.Read {
		if c.Name != "" || needsTemp(c.Should) {
			least = max(least, 7.5)
		}
	}
	return max(lines(chars, size.WordsPt, width-2)*size.WordsPt*lineOf+0.9, least)
}

// shortSections are the pages as their heads have them.
func (v *view) shortSections() []section {
	var out []section
	from, to := plan.Moment(v.Schedule.Start), plan.Moment(v.Schedule.End)
	dates := fmt.Sprintf("%s to %s", from.Format("2 Jan"), to.Format("2 Jan 2006"))
	for _, p := range v.ShortPages() {
		out = append(out, section{p.ID, "short sheet", dates})
	}
	return out
}
