// Package page makes the screen that a batch is worked from: what `newmake plan --open`
// serves. It shows the plan's steps with room to type what was read, what is to come as
// readings come in, what the last save changed, and the pictures.
//
// It is HTML without a script of its own making: page.js, which never changes, puts
// what is typed to the server, keeps it until it is taken, and takes over what is new
// in the page without loading it anew. It computes nothing but the time of day: all
// numbers come with the page or from the server, as words.
//
// Text of the house is shown and never obeyed: controls are replaced first (diag.Safe),
// the rest is escaped (package markup), and the server's policy allows no script and no style
// but those two files.
package page

import (
	_ "embed"
	"io"
	"strings"
	"time"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/recording"
	"newmake/compile/ask/review"
	"newmake/compile/ask/size"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/lang/diag"
)

// View is what stands on the page.
type View struct {
	Plan     *plan.Plan // nil: there was no good one yet
	Units    measure.Units
	Problems string  // diagnostics as text, where the text has errors since
	Record   *Record // nil: the run is not opened
	NoRecord string  // why nothing can be typed, beside that
	Saved    *Saved  // nil: nothing was saved since the page was made
	Ahead    *review.Ahead
	Slide    *size.Slide // nil: the cut can't be moved
	NoSlide  string      // why
	Exposed  bool        // it is served on a network
	Version  string      // of the page, by which it knows whether the server has another
}

// Record is the run that readings are typed into.
type Record struct {
	Number string
	File   string
	Seen   string // a mark of its text
	recording.Shown
}

// Saved is what the last save changed.
type Saved struct {
	At   time.Time
	What *compare.Comparison
}

//go:embed page.css
var style string

//go:embed page.js
var script []byte

// Files are those that the page is made of beside itself, by name.
func Files(name string) (kind string, content []byte, known bool) {
	switch name {
	case "page.css":
		return "text/css; charset=utf-8", []byte(style + chart.Style + onScreen), true
	case "page.js":
		return "text/javascript; charset=utf-8", script, true
	}
	return "", nil, false
}

// onScreen turns the pictures, which are black on white, where the screen is dark.
const onScreen = `
@media screen and (prefers-color-scheme: dark) { .chart { filter: invert(0.9); } }
`

// HTML writes the page.
func HTML(w io.Writer, v View) error {
	var page markup.Page
	writePage(&page, says{v.Units}, shownOf(v))
	_, err := io.WriteString(w, page.String())
	return err
}

// shownOf is what the template sees.
func shownOf(v View) *shown {
	p := v.Plan
	if p == nil {
		p = &plan.Plan{}
	}
	p = p.Strings(func(s string) string { return diag.Safe(s) })
	v.Problems = lines(v.Problems)
	shown := &shown{View: v, P: p}
	shown.fill()
	return shown
}

// lines makes a text of several lines harmless, line by line.
func lines(text string) string {
	all := strings.Split(text, "\n")
	for i := range all {
		all[i] = diag.Safe(all[i])
	}
	return strings.Join(all, "\n")
}
