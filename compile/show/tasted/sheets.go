package tasted

import (
	_ "embed"
	"io"

	"newmake/compile/book/taste"
	"newmake/compile/show/markup"
)

//go:embed sheets.css
var sheetsCSS string

// says is what the template counts with.
type says struct{}

// Roman is the number of a sample: no letter, which may be a taster's.
func (says) Roman(i int) string {
	return []string{"I", "II", "III", "IV", "V", "VI", "VII", "VIII"}[i]
}

func (says) Inc(i int) int { return i + 1 }

// view is a trial as its pages show it.
type view struct {
	markup.Look
	*taste.Judged
	Pages    []page
	Ask      string
	Cautions []string
	Verdict  string
}

// page is what one taster gets.
type page struct {
	Taster string
	Sets   []taste.Set
}

// Sheets writes the pages that a trial is served from: one a taster, with codes alone,
// and last the key, for the one who pours.
func Sheets(w io.Writer, j *taste.Judged) error {
	pages := make([]page, len(j.Tasters))
	for i, name := range j.Tasters {
		pages[i].Taster = name
	}
	for _, s := range j.Serving {
		pages[s.Taster].Sets = append(pages[s.Taster].Sets, s)
	}
	var out markup.Page
	writeSheets(&out, says{}, &view{markup.LookOf(sheetsCSS), j, pages, asks[j.Method], cautions(j), verdict(j)})
	_, err := io.WriteString(w, out.String())
	return err
}

// cautions are those of every page, and how many sittings the cups want.
func cautions(j *taste.Judged) []string {
	if j.Sitting == nil {
		return tastingCautions
	}
	return append([]string{sittings(j.Sitting)}, tastingCautions...)
}

// asks is what a taster is asked.
var asks = map[taste.Method]string{
	taste.Triangle: "Two cups of each set are the same. Nose and taste them from left to right, and mark the odd one. If you cannot tell, guess, and say so.",
	taste.DuoTrio:  "The first cup has a name. One of the other two is the same. Nose and taste them from left to right, and mark the one that is the same. If you cannot tell, guess, and say so.",
	taste.Paired:   "Nose and taste both cups from left to right, and mark the one that has more of what was asked, or that you like better.",
	taste.Ranking:  "Nose and taste the cups from left to right, then write 1 below the first, 2 below the next, and so on. Two that you cannot part get the same mean rank, such as 1.5 and 1.5.",
}
