package glance_test

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/glance"
	"newmake/compile/show/internal/plantest"
)

func written(t testing.TB, p *plan.Plan, o glance.Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, glance.Write(&b, p, o))
	return b.String()
}

// oneScreen holds that a text is at most the rows and columns of a screen.
func oneScreen(t *testing.T, text string) {
	t.Helper()
	assert.LessOrEqual(t, strings.Count(text, "\n"), 23, text)
	plantest.Narrow(t, text)
}

// Every example on one screen, in both systems of units.
func TestGolden(t *testing.T) {
	for _, e := range append(plantest.Examples, struct{ Golden, Batch string }{"toll-road-first", "Toll Road, first"}) {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		us, si := written(t, p, glance.Options{Units: measure.US}), written(t, p, glance.Options{Units: measure.SI})
		oneScreen(t, us)
		oneScreen(t, si)
		plantest.Golden(t, e.Golden+".screen", us)
		plantest.Golden(t, e.Golden+"-si.screen", si)
	}
}

// The house that counts in litres, in both systems too; and no batch of an example is
// without its screen.
func TestGoldenInLitres(t *testing.T) {
	for golden, batch := range map[string]string{"grey-creel": "Grey Creel", "smoke-creel": "Smoke Creel"} {
		p := plantest.Plan(t, "examples/herring-stair", batch)
		us, si := written(t, p, glance.Options{Units: measure.US}), written(t, p, glance.Options{Units: measure.SI})
		oneScreen(t, us)
		oneScreen(t, si)
		plantest.Golden(t, golden+".screen", us)
		plantest.Golden(t, golden+"-si.screen", si)
	}
}

// marked is a notice of a severity.
func marked(severity, summary string, line int) plan.Notice {
	return plan.Notice{Code: "NM1211", Severity: severity, Summary: summary, Line: line, Help: "do this", Reason: "because"}
}

var long = strings.Repeat("the ferment comes to 95 F where the yeast works up to 90 F ", 5)

// What is wrong stands first, the worst of it before the rest, and the place of it
// is kept where the words are cut.
func TestFaults(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Promises[0].Kept = false
	p.Notices = []plan.Notice{
		marked("warning", long, 30), marked("note", "nothing in hand", 31),
		{Code: "NM1250", Severity: "error", Summary: "casks: 2 is promised, the plan gives 1", Line: 63},
		marked("error", "the still boils over", 0),
	}
	out := written(t, p, glance.Options{Units: measure.US})
	oneScreen(t, out)
	plantest.Golden(t, "ferry-landing-broken.screen", out)
	lines := strings.Split(out, "\n")
	assert.Equal(t, "  ! error NM1211  the still boils over", lines[1])
	assert.Equal(t, "  ! BROKEN  casks: 2 is promised, the plan gives 1 (line 63)", lines[2])
	assert.True(t, strings.HasPrefix(lines[3], "  ! warning NM1211  the ferment comes"), lines[3])
	assert.True(t, strings.HasSuffix(lines[4], "~ (line 30)"), lines[4])
	assert.NotContains(t, out, "good:")
	assert.NotContains(t, out, "nothing in hand")
}

// Four faults stand in full, of more the rest are counted.
func TestFourFaults(t *testing.T) {
	for n, more := range map[int]string{4: "", 5: "and 1 more: newmake check", 40: "and 36 more: newmake check"} {
		p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
		for range n {
			p.Notices = append(p.Notices, marked("warning", long, 30))
		}
		out := written(t, p, glance.Options{Units: measure.US, Notes: []string{long, "file holds 2 batches"}})
		oneScreen(t, out)
		assert.Equal(t, 4, strings.Count(out, "! warning"), n)
		if more == "" {
			assert.NotContains(t, out, "more: newmake check")
		} else {
			assert.Contains(t, out, more)
		}
	}
}

// Days give way before faults: the first, the last, and how many are between them.
func TestDaysFold(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	for range 9 {
		p.Notices = append(p.Notices, marked("warning", long, 30))
	}
	days := p.Schedule.Days
	for range 3 {
		p.Schedule.Days = append(p.Schedule.Days, days...)
	}
	out := written(t, p, glance.Options{Units: measure.US, Notes: []string{long, long}})
	oneScreen(t, out)
	assert.Equal(t, 4, strings.Count(out, "! warning"))
	assert.Regexp(t, `and \d+ days more: --full`, out)
	assert.Contains(t, out, "Tue  3  07:00-14:27")
	assert.Contains(t, out, "Thu 12  07:00-07:30", "the last day")
}

// Long names are cut by the columns that they take.
func TestLongNames(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Batch.Name = strings.Repeat("漢字", 60)
	p.Batch.Parent = strings.Repeat("Ferry Landing of the river ", 9)
	p.Batch.Changes = []string{strings.Repeat("rye 9 % (was 8 %) ", 40)}
	p.Plant.Name = strings.Repeat("é", 200)
	out := written(t, p, glance.Options{Units: measure.US, Arg: strings.Repeat("folder/", 30) + "x.batch", Notes: []string{strings.Repeat("x", 500)}})
	oneScreen(t, out)
	assert.Contains(t, strings.Split(out, "\n")[0], "Tue 3 - Thu 12 Mar 2026")
}

func TestHostileNames(t *testing.T) {
	for _, u := range []measure.Units{measure.US, measure.SI} {
		out := written(t, plantest.Hostile(t), glance.Options{Units: u, Notes: []string{plantest.Evil}, Arg: plantest.Evil})
		oneScreen(t, out)
		plantest.Harmless(t, out)
	}
}

// A plan that has nothing in it is a screen all the same.
func TestEmptyPlan(t *testing.T) {
	oneScreen(t, written(t, &plan.Plan{}, glance.Options{}))
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Cask, p.Cost, p.Law = plan.Cask{}, nil, nil
	oneScreen(t, written(t, p, glance.Options{}))
}

// A number that is too wide for the row of amounts stands beside its strength.
func TestWideChain(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	p.Bill.TotalKg *= 1e7
	p.Ferment.Wash = p.Ferment.Wash.Times(1e7)
	out := written(t, p, glance.Options{Units: measure.US})
	oneScreen(t, out)
	assert.Contains(t, out, "wash (8.7 % abv) > ")
}

// A state has its word without a colour, and its colour where there is one.
func TestColour(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	plain, painted := written(t, p, glance.Options{}), written(t, p, glance.Options{Colour: true})
	assert.NotContains(t, plain, "\x1b")
	assert.Contains(t, plain, "good: ")
	assert.Contains(t, painted, "\x1b[32mgood:\x1b[0m")
	p.Notices = append(p.Notices, marked("warning", "warm", 1), plan.Notice{Code: "NM1250", Severity: "error", Summary: "casks"})
	plain, painted = written(t, p, glance.Options{}), written(t, p, glance.Options{Colour: true})
	assert.Contains(t, plain, "! BROKEN  casks")
	assert.Contains(t, painted, "\x1b[1;31m! BROKEN\x1b[0m  casks")
	assert.Contains(t, painted, "\x1b[33m! warning NM1211\x1b[0m  warm")
	for _, l := range strings.Split(painted, "\n") {
		assert.Equal(t, strings.Count(l, "\x1b[0m")*2, strings.Count(l, "\x1b["), "each colour ends on its line: %s", l)
	}
}

// Batches stand one a line, as many as a screen holds.
func TestSeveral(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	warned := plantest.Plan(t, plantest.Lantern, "Stone Ferry")
	warned.Notices = append(warned.Notices, marked("warning", "warm", 1), marked("warning", "hot", 1))
	broken := plantest.Plan(t, plantest.Lantern, "Toll Road")
	broken.Notices = append(broken.Notices, plan.Notice{Code: "NM1250", Severity: "error"})
	all := []glance.One{{Name: "Ferry Landing", Plan: p}, {Name: "Stone Ferry", Plan: warned}, {Name: "Toll Road", Plan: broken}, {Name: "Lost", Errors: 2}, {Name: plantest.Evil, Plan: plantest.Hostile(t)}}
	show := func(all []glance.One) string {
		var b bytes.Buffer
		require.NoError(t, glance.Several(&b, "Batches", all, glance.Options{Notes: []string{long}}))
		oneScreen(t, b.String())
		plantest.Harmless(t, b.String())
		return b.String()
	}
	out := show(all)
	for _, want := range []string{`Ferry Landing .*1 cask .* good\n`, `Stone Ferry .* 2 warnings\n`, `Toll Road .* BROKEN\n`, `Lost +2 errors\n`} {
		assert.Regexp(t, want, out)
	}
	fits := 16 // beside the title and the notes
	for n, more := range map[int]bool{fits: false, fits + 1: true, 300: true} {
		many := make([]glance.One, n)
		for i := range many {
			many[i] = all[0]
		}
		assert.Equal(t, more, strings.Contains(show(many), " more\n"), n)
	}
}

// Every step of every example has a title, and each day says what is done.
func TestStepsHaveTitles(t *testing.T) {
	for _, e := range plantest.Examples {
		p := plantest.Plan(t, plantest.Lantern, e.Batch)
		for _, s := range p.Schedule.Steps {
			assert.NotEmpty(t, s.Title.Text, s.ID)
			assert.Less(t, len(measure.US.BriefPhrase(s.Title)), 60, s.ID)
		}
		for _, d := range p.Schedule.Days {
			assert.NotEmpty(t, d.Work, d.Date)
		}
	}
}
