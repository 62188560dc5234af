package sheet

import "strings"

// How wide words are on paper: the widths of Helvetica's letters, which Arial and
// Liberation Sans have too (Adobe Core 14 AFM, Helvetica.afm), in thousandths of the
// letters' size.
const others = 600 // of a letter that is not listed

var letterWidths = func() (w [128]float64) {
	for i := range w {
		w[i] = others
	}
	for letters, width := range map[string]float64{
		"ijl'|": 222, " !,./:;I\\[]ft": 278, "r()-`": 333, "\"": 355, "*": 389, "^": 469,
		"Jckvsxyz": 500, "0123456789abdeghnopqu_?L#$": 556, "+=<>~": 584, "FTZ": 611,
		"&ABEKPSVXY": 667, "wCDHNRU": 722, "GOQ": 778, "mM": 833, "%": 889, "W": 944, "@": 1015,
	} {
		for _, r := range letters {
			w[r] = width
		}
	}
	return w
}()

const ptMM = 25.4 / 72

// wideMM is how wide a text is in letters of a size, in one line.
func wideMM(text string, pt float64) float64 {
	sum := 0.0
	for _, r := range text {
		if r < 128 {
			sum += letterWidths[r]
		} else {
			sum += others
		}
	}
	return sum / 1000 * pt * ptMM
}

// linesOf is how many lines a text takes in a width, broken between words and after
// hyphens.
func linesOf(text string, pt, mm float64) float64 {
	space := wideMM(" ", pt)
	lines, at := 1.0, 0.0
	for _, word := range strings.Fields(text) {
		gap := space
		if at == 0 {
			gap = 0
		}
		for _, piece := range strings.SplitAfter(word, "-") {
			w := wideMM(piece, pt)
			if at > 0 && at+gap+w > mm {
				lines, at, gap = lines+1, 0, 0
			}
			at += gap + w
			gap = 0
		}
	}
	return lines
}
