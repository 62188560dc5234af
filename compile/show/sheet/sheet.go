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
// whole plan first (diag.Safe), html/template escapes all of it, and the page
// forbids everything but its own style sheet, by a hash.
//
// The tests here need nothing but Go. That the sheet prints well is checked by
// .ci/sheet, which CI runs and `go test` does not: Chromium prints every example
// in both sizes of paper (no step split, headings repeated, nothing too wide, no
// page nearly empty), axe-core and html-validate check that everybody can read
// it, and the served copy is loaded anew when its recipe is saved.
package sheet

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"html/template"
	"io"
	"strings"
	"sync"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
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

//go:embed *.tmpl *.css
var files embed.FS

// parsed is the template, read when the first sheet is written.
var parsed = sync.OnceValue(func() *template.Template {
	return template.Must(chart.AddTo(template.Must(
		template.New("").Funcs(funcs(measure.US, nil)).ParseFS(files, "*.tmpl", "*.css"))))
})

// HTML writes the sheet.
func HTML(w io.Writer, p *plan.Plan, o Options) error {
	p = p.Strings(func(s string) string { return diag.Safe(s, false) })
	t, err := parsed().Clone()
	if err != nil {
		return err
	}
	t.Funcs(funcs(o.Units, p))
	v := view{Plan: p, Units: o.Units, Stale: o.Stale, Short: o.Short}
	if !v.Short {
		v.fill()
	}
	return v.write(w, t)
}

// write makes the style first, for its hash stands above it in the page.
func (v *view) write(w io.Writer, t *template.Template) error {
	var style, out bytes.Buffer
	if err := t.ExecuteTemplate(&style, "style", v); err != nil {
		return err
	}
	// What html/template made may stand in what it makes.
	v.Style = template.HTML(style.String())
	v.Policy = "default-src 'none'; base-uri 'none'; form-action 'none'; style-src " + hashOf(inner(style.String()))
	if err := t.ExecuteTemplate(&out, "sheet", v); err != nil {
		return err
	}
	_, err := w.Write(out.Bytes())
	return err
}

// inner is the text of an element, without its tags.
func inner(element string) string {
	_, rest, _ := strings.Cut(element, ">")
	return rest[:strings.LastIndex(rest, "<")]
}

func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}
