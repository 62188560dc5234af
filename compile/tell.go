package compile

import (
	"fmt"
	"slices"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// where finds the place in the text of a value, by its path; the nearest block
// that has one, if it has none of its own.
func (c *compiler) where(paths ...string) diag.Span {
	for _, p := range paths {
		if at, ok := c.b.Where[p]; ok {
			return at
		}
	}
	return diag.Span{}
}

// tell adds a diagnostic with the severity that its code has in the table.
func (c *compiler) tell(d diag.Diagnostic) {
	for _, i := range diag.Computed {
		if i.Code == d.Code {
			d.Severity = i.Severity
		}
	}
	c.diags.Add(d)
}

// tellAs adds a diagnostic with a severity of its own.
func (c *compiler) tellAs(s diag.Severity, d diag.Diagnostic) {
	d.Severity = s
	c.diags.Add(d)
}

// fail says that a stage could not be computed, in the stage's own words.
func (c *compiler) fail(code diag.Code, what string, err error, paths ...string) bool {
	c.tell(diag.Diagnostic{
		Code: code, Summary: fmt.Sprintf("%s cannot be computed: %v", what, err), At: c.where(paths...),
		Help: "mend what it names; the numbers before it stand",
	})
	return false
}

// Notices is a list as a plan keeps it. Of errors a plan that is worked from has
// none but promises that are not kept.
func Notices(list diag.List) []plan.Notice {
	out := []plan.Notice{}
	for _, d := range list {
		line, _ := d.At.Position()
		out = append(out, plan.Notice{
			Code: string(d.Code), Severity: d.Severity.String(),
			Summary: d.Summary, Help: d.Help, Reason: d.Reason, Line: line,
		})
	}
	return out
}

// line is the line of the text that a path stands on, 0 if it has none.
func (c *compiler) line(paths ...string) int {
	n, _ := c.where(paths...).Position()
	return n
}

// sooner names, for what computing shows, the checker's codes that say the same
// from the text alone.
var sooner = map[diag.Code][]diag.Code{
	diag.CodePitchHot:    {diag.CodeSetTemperature},
	diag.CodePitchCold:   {diag.CodeSetTemperature},
	diag.CodeNotCooked:   {diag.CodeRawStarch},
	diag.CodeEnzymesDead: {diag.CodeEnzymesDie},
	diag.CodeUnconverted: {diag.CodeWeakEnzymes, diag.CodeNoEnzymes, diag.CodeEnzymeWindow},
}

// Together joins what the checker and Compile say of one batch, without saying
// the same thing twice.
func Together(checked, computed diag.List) diag.List {
	out := append(diag.List{}, checked...)
	for _, d := range computed {
		said := false
		for _, c := range checked {
			said = said || slices.Contains(sooner[d.Code], c.Code)
		}
		if !said {
			out.Add(d)
		}
	}
	out.Sort()
	return out.Dedup()
}
