package sheet

import (
	"math"
	"unicode/utf8"
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
	lineMM    = 4.85 // of a sentence of what to do
	paddingMM = 1.5
	lineChars = 62 // of a sentence, over the whole width of the instruments
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
func (p *part) sizes(chartPx, facts int) {
	rows, used := 0.0, headMM+factsMM*float64(facts)+theadMM+figureHighMM(chartPx)
	for _, d := range p.Days {
		for _, s := range d.Steps {
			used += s.heightMM(p.Cells())
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

// heightMM is about how high the row is that says what to do.
func (s step) heightMM(cells int) float64 {
	if s.Bare {
		return 0
	}
	chars := float64(lineChars*s.Span) / float64(cells)
	least := 7.0
	if s.Alone != nil {
		least = denseMM
	}
	return max(math.Ceil(float64(s.chars())/chars)*lineMM+paddingMM, least)
}

// weighMM is about how high the page is on which the grain is weighed out: three lists,
// each with its heading, what is said of the mash, and of the feints.
func (v *view) weighMM() float64 {
	const heading, list, said, feints, longName = 9.0, 16.8, 10.5, 12.0, 36
	mm := heading + 3*list + said + listMM*float64(len(v.Bill.Lines)+1+len(v.Bill.Additions)+len(v.Schedule.Vessels))
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
