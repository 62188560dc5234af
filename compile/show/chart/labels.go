package chart

import "unicode/utf8"

// glyphW is about how wide a character of a label is, in pixels: a label is
// never nearer to another than that lets it be.
const glyphW = 7.4

func wide(s string) float64 { return glyphW * float64(utf8.RuneCountInString(s)) }

// flag is a label over a place on the x axis.
type flag struct {
	x    float64
	text string
}

// rows sets flags, which come in the order of their places, into as few rows as
// keep them apart: each flag's row, counted up from the plot, and where its text
// begins. Text runs to the right of its place, so an earlier flag goes above a
// later one: its leader then passes by the later one's text.
func rows(flags []flag, left, right float64) (row []int, start []float64, n int) {
	row, start = make([]int, len(flags)), make([]float64, len(flags))
	var free []float64 // each row's room ends here
	for i := len(flags) - 1; i >= 0; i-- {
		w := wide(flags[i].text)
		at := min(max(flags[i].x-3, left), max(right-w, left))
		r := 0
		for r < len(free) && at+w+8 > free[r] {
			r++
		}
		if r == len(free) {
			free = append(free, right+8)
		}
		free[r] = at
		row[i], start[i] = r, at
	}
	return row, start, len(free)
}

// shorten cuts a name that would not fit a label.
func shorten(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most-1]) + "…"
}
