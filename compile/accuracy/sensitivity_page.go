package accuracy

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/compile/plan"
)

const sensitivityPreface = `# What moves a batch

Made by the tests, as [ACCURACY.md](ACCURACY.md) is: ` + "`go test ./compile/accuracy -update`" + `. One
thing at a time is changed in a batch of ` + "`testdata/houses`" + ` and the whole batch is computed again. A cell shows by how much a
number of the plan changes: the input lowered, then raised. Constants change by a tenth of
themselves, temperatures by 2 °C, pH by 0.2 and strengths by a point, for a tenth of a Celsius
degree or of a pH means nothing. A share does not rise above 1. "fails" is a batch that could not be
computed.

The constants are those of ` + "`stdlib`" + `, where each has its source. Many are tuned or from memory;
this table says which of them are worth measuring.
`

// SensitivityPage writes the effects as Markdown, the greatest on the yield
// first, and names those that do nothing that shows.
func SensitivityPage(subjects []subject) string {
	var b strings.Builder
	b.WriteString(sensitivityPreface)
	for _, s := range subjects {
		s.write(&b)
	}
	return b.String()
}

func (s *subject) write(b *strings.Builder) {
	base, all := s.base, s.all
	fmt.Fprintf(b, "\n## `%s`: %s\n\nThe batch as it is: ", s.house, s.words)
	for i, o := range outcomes {
		if i > 0 {
			b.WriteString("; ")
		}
		fmt.Fprintf(b, "%s %.*f", o.name, o.places, plan.RoundTo(o.of(base), o.places))
	}
	b.WriteString(".\n")
	var groups []string
	for _, e := range all {
		if !slices.Contains(groups, e.group) {
			groups = append(groups, e.group)
		}
	}
	for _, g := range groups {
		writeGroup(b, g, all)
	}
}

func writeGroup(b *strings.Builder, group string, all []effect) {
	var shown []effect
	var idle []string
	for _, e := range all {
		switch {
		case e.group != group:
		case e.idle():
			idle = append(idle, "`"+e.name+"`")
		default:
			shown = append(shown, e)
		}
	}
	slices.SortStableFunc(shown, func(x, y effect) int {
		switch {
		case x.most() > y.most():
			return -1
		case x.most() < y.most():
			return 1
		}
		return 0
	})
	fmt.Fprintf(b, "\n### %s\n\n| input | by |", strings.ToUpper(group[:1])+group[1:])
	for _, o := range outcomes {
		fmt.Fprintf(b, " %s |", o.name)
	}
	b.WriteString("\n|---|---|" + strings.Repeat("--:|", len(outcomes)) + "\n")
	for _, e := range shown {
		fmt.Fprintf(b, "| %s | %s |", e.name, e.step)
		for i, o := range outcomes {
			fmt.Fprintf(b, " %s, %s |", cell(e.down, i, o.places), cell(e.up, i, o.places))
		}
		b.WriteString("\n")
	}
	if len(idle) > 0 {
		fmt.Fprintf(b, "\nNothing that shows: %s.\n", strings.Join(idle, ", "))
	}
}

func cell(v []float64, i, places int) string {
	switch {
	case v == nil:
		return "fails"
	case v[i] == 0:
		return "0"
	}
	return fmt.Sprintf("%+.*f", places, v[i])
}

// most is the larger effect on the yield; a batch that fails comes first.
func (e effect) most() float64 {
	if e.down == nil || e.up == nil {
		return math.Inf(1)
	}
	return math.Max(math.Abs(e.down[byYield]), math.Abs(e.up[byYield]))
}

func (e effect) idle() bool {
	for _, v := range [][]float64{e.down, e.up} {
		if v == nil || slices.ContainsFunc(v, func(x float64) bool { return x != 0 }) {
			return false
		}
	}
	return true
}
