package accuracy

import (
	"fmt"
	"strings"
)

const preface = `# How good the numbers are

Made by the tests: ` + "`go test ./compile/accuracy -update`" + ` writes this page, and the plain test
fails when it is stale. Each line holds a model against a source: how many points, the
largest error, the root-mean-square error, and the largest error that newmake claims. An
error is the model less the source. Where it exceeds the claim, the line says **worse**.
Why so much is claimed stands beside it: print rounding, the scatter of measurements, the
source's own range, or an approximation of the model; "the largest seen, rounded up" is a
claim that was set by what is measured here. Where nothing is claimed, it says why.
A fact of the trade without a publication is marked "common practice".

The tables stand in ` + "`testdata`" + ` with their citations. Those by GNU Units, python3-iapws and
scipy are made again in CI (` + "`.ci/oracle/check`" + `). What moves a batch most is in
[SENSITIVITY.md](SENSITIVITY.md).
`

// Page writes the sections as Markdown.
func Page(sections []Section) string {
	var b strings.Builder
	b.WriteString(preface)
	for _, s := range sections {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n", s.Title, s.Text)
		b.WriteString("| quantity | source | range | points | largest | rms | claimed | unit | why this much | remark |\n")
		b.WriteString("|---|---|---|--:|--:|--:|--:|---|---|---|\n")
		for _, r := range s.Rows {
			claim := "-"
			if r.Claim > 0 {
				claim = figures(r.Claim)
			}
			remark := r.Remark
			if r.Over() {
				remark = strings.TrimSuffix("**worse** than claimed; "+remark, "; ")
			}
			fmt.Fprintf(&b, "| %s | %s | %s | %d | %s | %s | %s | %s | %s | %s |\n",
				r.Quantity, r.Source, r.Range, r.N, figures(r.Max), figures(r.RMS()), claim, r.Unit, r.Why, remark)
		}
	}
	return b.String()
}
