package sheet

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"newmake/compile/plan"
)

// A page for each day's work: whether its rows may all be high, with room for notes
// below, is reckoned from what stands on it. The paper is the shorter of the two, US
// Letter. Where they may not be, the rows share what the page has left (sheet.css).
// All in mm, as sheet.css has them.
const (
	pageMM    = 279.4 - 11.5 - 9.5 // of text, between head and foot
	headMM    = 7.0                // a part's heading
	factsMM   = 5.5
	theadMM   = 9.5
	wordsPt   = 12.0 // of a sentence of what to do
	lineMM    = wordsPt * ptMM * 1.14
	waitMM    = 10.5 * ptMM * 1.28
	paddingMM = 1.5
	cellPad   = 2.0             // left and right in a cell
	leastWide = 210.0 - 13 - 11 // of text on the narrower paper, A4, where words take more lines
	pxMM      = (215.9 - 13 - 11) / 700
	figureMM  = 5.0 // below a picture: what it means
	listMM    = 7.3 // a row of what is weighed out
	notesMM   = 23.0
	slackMM   = 2.0 // left free for what is reckoned too low
)

// The heights of a row that is written in.
const (
	denseMM = 7.4  // the least that a pencil wants
	tallMM  = 15.0 // wet hands
)

// figureHighMM is a picture with what it means below it; 0 where there is none.
func figureHighMM(chartPx int) float64 {
	if chartPx == 0 {
		return 0
	}
	return figureMM + pxMM*float64(chartPx)
}

// sizes says how high the rows of a part are: high, or what fills the page. chartPx is the
// height of its picture, facts the lines of what stands under its heading.
func (v *view) sizes(p *part, chartPx, facts int) {
	rows, used := 0.0, headMM+factsMM*float64(facts)+theadMM+figureHighMM(chartPx)
	for _, d := range p.Days {
		for _, s := range d.Steps {
			used += v.heightMM(s, p.Columns)
			rows += float64(len(s.Rows))
			if s.Alone != nil {
				used -= denseMM
				rows++
			}
		}
	}
	p.Rows, p.FixedMM, p.Size = rows, math.Ceil(used+slackMM), "tall"
	if used+rows*tallMM+notesMM > pageMM {
		p.Size, p.Notes = "fill", 0
		p.FixedMM += 1.5 // for rows that take all of the rest
	}
}

// leftMM is about what the page of a part has free below its rows.
func (p *part) leftMM() float64 { return pageMM - p.FixedMM - p.Rows*tallMM }

// Fills are the parts whose rows share what their page has left, for the style sheet: each
// row alike, for a browser alone gives most to a row that stands alone.
func (v *view) Fills() []part {
	var out []part
	for _, parts := range [][]part{{v.MashDay, v.FermentLog}, v.StripDays, v.SpiritDays, {v.Filling}} {
		for _, p := range parts {
			if p.Size == "fill" && p.Rows > 0 {
				out = append(out, p)
			}
		}
	}
	return out
}

// Shares of the width that columns of the steps take, as sheet.css has them.
const (
	clockShare, timeShare, byShare = 0.112, 0.099, 0.046
	shouldShare, atShare           = 0.093, 0.062
)

// heightMM is about how high the row is that says what to do.
func (v *view) heightMM(s step, cols []column) float64 {
	if s.Bare {
		return 0
	}
	const bold = 0.97 // of the width: triggers are bold
	const free = 1 - clockShare - timeShare - byShare
	says := free / float64(len(cols))
	for _, c := range cols {
		says -= shouldShare / float64(len(cols))
		if c.Temp {
			says -= atShare / float64(len(cols))
		}
	}
	share, least := free, 7.0
	for _, c := range s.Alone {
		share -= shouldShare + says
		if c.Temp {
			share -= atShare
		}
		least = denseMM
	}
	mm := linesOf(v.stepWords(s.Step, s.Care, s.Jug), wordsPt, (leastWide*share-cellPad)*bold)*lineMM + paddingMM
	if s.WaitMin > 0 {
		mm += linesOf("Stands 12 h 30 min before this: "+s.WaitWhy, 10.5, leastWide*share-cellPad) * waitMM
	}
	return max(mm, least)
}

// stepWords are the words of what to do, with what stands before and after them.
func (v *view) stepWords(s plan.Step, dangers []care, jug bool) string {
	var text strings.Builder
	for _, c := range dangers {
		fmt.Fprintf(&text, "(%2d) %s  ", c.Number, c.Title)
	}
	if s.OutOfShift > 0 {
		text.WriteString("(!) 10 h 10 min of this lies outside the shift  ")
	}
	if s.When != nil {
		text.WriteString(v.Units.Phrase(*s.When) + ":  ")
	}
	if jug {
		text.WriteString(v.Units.JugPhrase(s.Do))
	} else {
		text.WriteString(v.Units.Phrase(s.Do))
	}
	if s.People > 1 {
		text.WriteString(" 2 people.")
	}
	switch s.Attend {
	case plan.Alone:
		text.WriteString(" It needs nobody.")
	case plan.Start:
		text.WriteString(" Start it; then it needs nobody.")
	}
	return text.String()
}

// weighMM is about how high the page is on which the grain is weighed out: three lists,
// each with its heading, what is said of the mash, and of the feints.
func (v *view) weighMM() float64 {
	const heading, list, said, feints, longName = 9.0, 16.8, 10.5, 12.0, 36
	mm := heading + 3*list + said + listMM*float64(len(v.Bill.Lines)+1+len(v.Bill.Additions)+len(v.Schedule.Vessels))
	for _, g := range v.Bill.Lines {
		if utf8.RuneCountInString(g.Name)+utf8.RuneCountInString(v.Units.Lots(g)) > longName {
			mm += lineMM
		}
	}
	for _, a := range v.Bill.Additions {
		if utf8.RuneCountInString(a.Name) > longName { // two lines
			mm += lineMM
		}
	}
	if v.Spirit.FeintsFrom == "steady" {
		mm += feints
	}
	return mm
}
