package sheet

import (
	"bytes"
	"html/template"

	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/lang/diag"
)

// Style is the style sheet of the run sheet, for another page about the same plan: an
// element, and the policy that lets it in and nothing else. more is added at its end.
func Style(p *plan.Plan, more string) (style template.HTML, policy string, err error) {
	v := &view{Plan: p.Strings(func(s string) string { return diag.Safe(s, false) })}
	var css bytes.Buffer
	if err := parsed().ExecuteTemplate(&css, "sheet.css", v); err != nil {
		return "", "", err
	}
	text := css.String() + chart.Style + more
	return template.HTML("<style>" + text + "</style>"), "default-src 'none'; base-uri 'none'; form-action 'none'; style-src " + hashOf(text), nil
}
