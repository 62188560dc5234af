// Package sheet makes the run sheet that a distiller prints in the morning and
// writes on with wet hands: one HTML file that needs no network and no script.
//
// Everything comes from a Plan and nothing is computed here but places on paper.
// The parts follow the work: a cover, what to weigh out, then a part for each
// day with its picture and its steps, the proofing card, the years in wood, and
// the warnings, the law and the cautions in full. Each part begins a new page,
// by the page rules of CSS in sheet.css; no paper is named there, so that the
// sheet takes the size that the printer holds, US Letter or A4.
//
// A step is a group of rows that stays on one page: a box to tick, the clock,
// what to do, who must be there and the cautions, then a row for each reading
// with what the instrument should say, and when, beside the room to write what
// it said, when, and who read it. The blanks stand in the order in which a run
// record wants them.
//
// The short sheet (short.go) is the whole batch on two pages instead.
//
// Text of the recipe is shown and never obeyed: controls are replaced in the
// whole plan first (diag.Safe), all of it is escaped (package markup), and the page
// forbids everything but its own style sheet, by a hash.
//
// The tests here need nothing but Go. That the sheet prints well is checked by
// .ci/sheet, which CI runs and `go test` does not: Chromium prints every example
// in both sizes of paper (no step split, headings repeated, nothing too wide, no
// page nearly empty), axe-core and html-validate check that everybody can read
// it, and the served copy is loaded anew when its recipe is saved.
package sheet

import (
	"io"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/markup"
	"newmake/lang/diag"
)

// Options is how a sheet is made.
type Options struct {
	Units measure.Units
	// Stale says that the text has errors since: this is the last sheet that could be
	// made. It is marked so on each page, for a sheet outlives the screen that it came from.
	Stale bool
	// Short is two pages for the whole batch instead of a page for each day's work.
	Short bool
}

// HTML writes the sheet.
func HTML(w io.Writer, p *plan.Plan, o Options) error {
	v, f := viewOf(p, o)
	var out markup.Page
	writeSheet(&out, f, v)
	_, err := io.WriteString(w, out.String())
	return err
}

// viewOf is what the templates see, and what they say it with. The style is made first,
// for its hash stands above it in the page.
func viewOf(p *plan.Plan, o Options) (*view, says) {
	p = p.Strings(func(s string) string { return diag.Safe(s) })
	v, f := &view{Plan: p, Units: o.Units, Stale: o.Stale, Short: o.Short}, says{o.Units, p}
	if !v.Short {
		v.fill()
	}
	var style markup.Page
	writeStyle(&style, f, v)
	v.Style = markup.HTML(style.String())
	v.Policy = markup.Policy(inner(style.String()))
	return v, f
}

// inner is the text of an element, without its tags.
func inner(element string) string {
	_, rest, _ := strings.Cut(element, ">")
	return rest[:strings.LastIndex(rest, "<")]
}
