package accuracy

import (
	"fmt"
	"strings"

	"newmake/compile/work"
)

const preface = `# How good the numbers are

Made by the tests: ` + "`go test ./compile/accuracy -update`" + ` writes this page, and the plain test
fails when it is stale. Each line holds a model against a source: how many points, the
largest error, the root-mean-square error, and the largest error that newmake claims. An
error is the model less the source. Where it exceeds the claim, the line says **worse**.
Why so much is claimed stands beside it: print rounding, the scatter of measurements, the
source's own range, or an approximation of the model; "the largest seen, rounded up" is a
claim that was set by what is measured here. Where nothing is claimed, it says why.
A fact of the trade without a publication is marked "common practice". A published number
that holds at every temperature is one point. Lines that give a table back to itself stand
apart, under Guards.

The tables stand in ` + "`testdata`" + ` with their citations. Those by GNU Units, python3-iapws and
scipy are made again in CI (` + "`.ci/oracle/check`" + `). What moves a batch most is in
[SENSITIVITY.md](SENSITIVITY.md).
`

// Page writes the sections as Markdown: what holds the models against sources by
// subject, then what guards the program alone, then the tolerances of a plan.
func Page(sections []Section, tolerances []work.Tolerance) string {
	var b strings.Builder
	b.WriteString(preface)
	var guards []Row
	for _, s := range sections {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n\n", s.Title, s.Text)
		var rows []Row
		for _, r := range s.Rows {
			if r.guard() {
				guards = append(guards, r)
			} else {
				rows = append(rows, r)
			}
		}
		writeRows(&b, rows)
	}
	fmt.Fprintf(&b, "\n## %s\n\n%s\n\n", "Guards",
		"These lines validate no model. A table that a model is made of gives itself back, or arithmetic is held against arithmetic done elsewhere: they fail when the program slips.")
	writeRows(&b, guards)
	writeTolerances(&b, tolerances)
	return b.String()
}

func writeRows(b *strings.Builder, rows []Row) {
	b.WriteString("| quantity | source | range | points | largest | rms | claimed | unit | why this much | remark |\n")
	b.WriteString("|---|---|---|--:|--:|--:|--:|---|---|---|\n")
	for _, r := range rows {
		claim := "-"
		if r.Claim > 0 {
			claim = figures(r.Claim)
		}
		remark := r.Remark
		if r.over() {
			remark = strings.TrimSuffix("**worse** than claimed; "+remark, "; ")
		}
		fmt.Fprintf(b, "| %s | %s | %s | %d | %s | %s | %s | %s | %s | %s |\n",
			r.Quantity, r.Source, r.Range, r.N, figures(r.Max), figures(r.RMS()), claim, r.Unit, r.Why, remark)
	}
}

// writeTolerances writes what a plan allows a reading, part by part.
func writeTolerances(b *strings.Builder, all []work.Tolerance) {
	fmt.Fprintf(b, "\n## Tolerances\n\n%s\n\n",
		fmt.Sprintf("How far off a plan lets a reading be before it asks why. The parts of a line have nothing to do with one another and add as squares. "+
			"What is read on the clock is allowed, besides, what it changes in %.0f %% of the time of a ferment (no published curve was found) and in %.0f %% of that of a run "+
			"(heat, power, and hours that the equilibrium moves by 5 %%); hearts that end at a strength, with no feints returned, what runs while the spout falls by a point.",
			100*work.FermentPace, 100*work.RunPace))
	b.WriteString("| reading | unit | parts |\n|---|---|---|\n")
	for _, t := range all {
		var parts []string
		for _, p := range t.Parts {
			var much []string
			if p.Abs > 0 {
				much = append(much, figures(p.Abs))
			}
			if p.Share > 0 {
				much = append(much, figures(100*p.Share)+" % of it")
			}
			parts = append(parts, strings.Join(much, " and ")+": "+p.Why)
		}
		fmt.Fprintf(b, "| %s | %s | %s |\n", t.Of, t.Unit, strings.Join(parts, "; "))
	}
}
