package sheet

import (
	"math"
)

// A page for each day's work: how high its rows may be is reckoned from what stands on
// it. The paper is the shorter of the two, US Letter; what A4 has more goes to the rows.
// All in mm, as sheet.css has them.
const (
	pageMM    = 279.4 - 11.5 - 9.5 // of text, between head and foot
	headMM    = 7.0                // a part's heading
	factsMM   = 5.5
	theadMM   = 9.5
	lineMM    = 4.85 // of a sentence of what to do
	paddingMM = 1.5
	lineChars = 62 // of a sentence, over the whole width of the instruments
	pxMM      = 186.0 / 700
	figureMM  = 2.0
	notesMM   = 23.0
)

// The heights of a row that is written in.
const (
	denseMM = 7.4 // the least that a pencil wants
	lowMM   = 8.4
	midMM   = 11.0
	tallMM  = 15.0 // wet hands
)

// sizes says how high the rows of a part are: its class in the style sheet. chartPx is the
// height of its picture.
func (p *part) sizes(chartPx int) {
	rows, used := 0, headMM+factsMM+theadMM
	if chartPx > 0 {
		used += figureMM + pxMM*float64(chartPx)
	}
	for _, d := range p.Days {
		for _, s := range d.Steps {
			used += s.heightMM(p.Cells())
			rows += len(s.Rows)
			if s.Alone != nil {
				used -= denseMM
				rows++
			}
		}
	}
	each := (pageMM - used) / float64(max(rows, 1))
	switch {
	case each-notesMM/float64(max(rows, 1)) >= tallMM:
		p.Size = "tall"
	case each >= midMM:
		p.Size, p.Notes = "mid", 0
	case each >= lowMM:
		p.Size, p.Notes = "low", 0
	default:
		p.Size, p.Notes = "dense", 0
	}
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
