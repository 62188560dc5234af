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
// subject, then what guards the program alone, then the errors of readings.
func Page(sections []Section, errors []work.ReadingError) string {
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
	writeReadingErrors(&b, errors)
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

// bandsText says where the bands of a plan come from.
const bandsText = "A sheet, `plan --full` and whatever else shows how sure a number is, has a band: 9 times in 10 what comes lies in it. " +
	"It is made of the constants of the batch that are not known for certain, the house's and the run's, at the 5 and 95 % ends of what is known of them (package constants; what was learned from runs narrows them): " +
	"the batch is computed at each end, one constant at a time, and what that does is added as squares, upwards and downwards apart. " +
	"A test holds that against draws of all constants together. " +
	"A reading's band has besides what no constant moves, below, and its instrument; the parts have nothing to do with one another and add as squares. " +
	"What is read at the spout while a run goes on is judged at what has come over, and not by the clock: the strength hangs little on how fast it runs, and by the clock tells little where it falls fast."

// writeReadingErrors writes the errors of readings, part by part.
func writeReadingErrors(b *strings.Builder, all []work.ReadingError) {
	fmt.Fprintf(b, "\n## Bands\n\n%s\n\n", bandsText)
	b.WriteString("| reading | unit | no constant moves | instrument |\n|---|---|---|---|\n")
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
		small := t.Instrument(0)
		much := figures(small)
		if small == 0 {
			much = figures(100*t.Instrument(1)) + " % of it"
		}
		fmt.Fprintf(b, "| %s | %s | %s | %s: %s |\n", t.Of, unitName(t.Unit), strings.Join(parts, "; "), much, t.InstrumentWhy())
	}
}
