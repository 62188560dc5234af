package season_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/book/season"
	"newmake/lang/record"
	"newmake/lang/testflag"
)

// at170 is the invented house with a smaller boiler, which cannot heat a mash and a still
// at once.
var at170 = []string{"boiler     300 kW", "boiler     170 kW"}

// TestSmallBoiler: with 170 kW the house can make fewer batches in the same weeks, and more
// heat would bring some of them; with 300 kW it would bring nothing.
func TestSmallBoiler(t *testing.T) {
	// A third pair of hands, which else are what there is too little of.
	crew := []string{"crew       2", "crew       3"}
	wide, small := problem(t, "Many", many, crew...), problem(t, "Many", many, append(crew, at170...)...)
	wide.Effort, small.Effort = 40/testflag.Every(4), 40/testflag.Every(4)
	a, b := planned(t, wide), planned(t, small)
	t.Logf("300 kW: %d %+v", a.Capacity, a.Bottlenecks)
	t.Logf("170 kW: %d %+v", b.Capacity, b.Bottlenecks)
	brings := func(s *season.Season, what, name string) int {
		for _, r := range s.Bottlenecks {
			if r.What == what && (name == "" || r.Name == name) {
				return r.Batches
			}
		}
		t.Fatalf("%s was not tried", what)
		return 0
	}
	assert.Greater(t, a.Capacity, b.Capacity)
	assert.Zero(t, brings(a, season.MoreBoiler, ""))
	assert.LessOrEqual(t, a.Summary.MostBoilerKW, 300.0)
	assert.LessOrEqual(t, b.Summary.MostBoilerKW, 170.0)
	assert.Positive(t, brings(b, season.MoreBoiler, ""))
}

// many asks for more than can be made.
const many = `season "Many" from 2026-04-07 to 2026-05-16 {
  casks  20 of "Ferry Landing" by 2026-05-16
}
`

// TestCannotBeMet: the gap, what stands in the way, and the least change.
func TestCannotBeMet(t *testing.T) {
	p := problem(t, "Many", strings.Replace(many, "20 of", "40 of", 1))
	p.Effort, p.Quick = 20/testflag.Every(4), false
	s := planned(t, p)
	t.Logf("%+v %+v %+v capacity %d", s.Gap, s.Demands, s.Demands[0].Least, s.Capacity)
	assert.False(t, s.Demands[0].Met)
	assert.Less(t, s.Gap.Most, 40)
	assert.GreaterOrEqual(t, s.Gap.Most, s.Gap.Met)
	assert.NotEqual(t, season.ByDemand, s.Gap.By)
	assert.NotEmpty(t, s.Demands[0].Limit)
	assert.False(t, s.Demands[0].Enough, "no one thing more fills forty casks in six weeks")
}

const tooSoon = `season "Soon" from 2026-04-07 to 2026-05-16 {
  casks  1 of "Ferry Landing" by 2026-04-14
  make   "Low Bridge" on 2026-04-08
}
`

// TestTooSoon: a cask by a day on which it cannot be full is put off by so many days.
func TestTooSoon(t *testing.T) {
	p := problem(t, "Soon", tooSoon)
	p.Effort = 60 / testflag.Every(4)
	s := planned(t, p)
	t.Logf("%+v %+v", s.Demands, s.Demands[0].Least)
	assert.False(t, s.Demands[0].Met)
	require.NotNil(t, s.Demands[0].Least)
	assert.True(t, s.Demands[0].Enough)
	assert.True(t, s.Demands[1].Met)
}

const longOne = `season "Long" from 2026-04-07 to 2026-07-25 {
  make  12 of "Ferry Landing"
}
`

// TestFeintsSettle: of many runs of one batch, begun without feints, what each leaves comes
// to what the batch's own plan has in a house at work.
func TestFeintsSettle(t *testing.T) {
	p := problem(t, "Long", longOne)
	p.Effort, p.Quick = 20, true
	p.Asks.Today.FeintsSaid = true
	s := planned(t, p)
	require.Len(t, s.Runs, 12)
	assert.Zero(t, s.Runs[0].Feints.In.VolumeL)
	assert.Less(t, s.Runs[0].OfSteadyPct, 90.0)
	last := s.Runs[11]
	assert.InDelta(t, last.Feints.In.PureL, last.Feints.Out.PureL, 0.5)
	// The wash of a run that stands for longer than it is asked to has a little more alcohol.
	steady, list := compile.Compile(p.Batches["Ferry Landing"])
	require.NotNil(t, steady, list)
	assert.InEpsilon(t, steady.Spirit.Feints.PureL, last.Feints.Out.PureL, 0.01)
	assert.InDelta(t, 100, last.OfSteadyPct, 1.5)
}

// TestEmptySeason: nothing is asked for, and nothing is planned.
func TestEmptySeason(t *testing.T) {
	p := problem(t, "Spring", "")
	asks := *p.Asks
	asks.Casks, asks.Makes = nil, nil
	p.Asks = &asks
	s := planned(t, p)
	assert.Empty(t, s.Runs)
	assert.True(t, s.Gap.Proved)
	assert.Len(t, s.Days, 40)
	assert.Empty(t, s.Conflicts)
}

// TestClocksAndLeapDays: a season over a change of the clocks, either way, or a 29th of
// February is as any other: the wash stands for the hours that pass, and people begin by
// the clock.
func TestClocksAndLeapDays(t *testing.T) {
	for _, c := range []struct{ from, to, day string }{
		{"2026-02-24", "2026-03-28", "2026-03-08"},
		{"2026-10-20", "2026-11-21", "2026-11-01"},
		{"2028-02-15", "2028-03-18", "2028-02-29"},
	} {
		p := problem(t, "Turn", `season "Turn" from `+c.from+` to `+c.to+` {
  make  3 of "Ferry Landing"
  make  "Low Bridge" every 2 weeks
}
`)
		p.Effort, p.Quick = 30, true
		s := planned(t, p)
		for _, d := range s.Demands {
			assert.True(t, d.Met, c.from)
		}
		seen := false
		for _, d := range s.Days {
			seen = seen || d.Date == c.day
			if d.Open != "" {
				assert.Contains(t, d.Open, "T07:00:00")
			}
		}
		assert.True(t, seen)
	}
}

// TestReplan: a still that is out of use for a few days moves what it must. Runs that it
// does not touch stay as they are printed.
func TestReplan(t *testing.T) {
	const weeks = `season "Weeks" from 2026-04-07 to 2026-05-23 {
  make  5 of "Ferry Landing"
%s}
`
	p := problem(t, "Weeks", fmt.Sprintf(weeks, ""))
	p.Effort, p.Quick = 60, true
	was := planned(t, p)
	again := problem(t, "Weeks", fmt.Sprintf(weeks, ""))
	again.Effort, again.Quick, again.Printed = 60, true, was
	same := planned(t, again)
	assert.Empty(t, same.Changes, "nothing has happened, and nothing is moved")

	// Two recipes, whose feints go into one another's charges and change their times.
	spring := problem(t, "Spring", "")
	spring.Effort, spring.Quick = 60, true
	first := planned(t, spring)
	spring.Printed = first
	assert.Empty(t, planned(t, spring).Changes)

	last := was.Runs[len(was.Runs)-1]
	strip, ok := key(last.Tasks, "strip.charge")
	require.True(t, ok)
	day := strip.Start[:10]
	bad := problem(t, "Weeks", fmt.Sprintf(weeks, `  without "Wash still" `+day+` "a leak"`+"\n"))
	bad.Effort, bad.Quick, bad.Printed = 60, true, was
	now := planned(t, bad)
	assert.True(t, now.Demands[0].Met)
	require.NotEmpty(t, now.Changes)
	for _, c := range now.Changes {
		assert.Equal(t, last.Number, c.Run, "%+v", c)
	}
}

const begun = `run "26-09" of "Ferry Landing" on 2026-04-07 {
  mash in "Copper kettle" {
    07:10  add corn
    13:00  cool 78 F
  }
  ferment in "South" {
    tue 13:40 pitch 1.066 SG at 78 F
  }
}

season "Weeks" from 2026-04-07 to 2026-05-16 {
  make  3 of "Ferry Landing"
}
`

// TestBegun: what was begun stands as it is written, and answers what is asked for; all
// else of it comes from the day on which it is planned.
func TestBegun(t *testing.T) {
	p := problem(t, "Weeks", begun)
	p.Effort, p.Quick = 30, true
	p.On = record.Date{Year: 2026, Month: 4, Day: 14}
	s := planned(t, p)
	require.Len(t, s.Runs, 3)
	r := s.Runs[0]
	assert.Equal(t, "26-09", r.Number)
	assert.True(t, r.Done)
	assert.Equal(t, "South", r.Fermenter)
	assert.Equal(t, "2026-04-07T07:10:00-04:00", r.Mash)
	strip, ok := key(r.Tasks, "strip.charge")
	require.True(t, ok)
	assert.GreaterOrEqual(t, strip.Start, "2026-04-14")
	assert.Contains(t, s.Demands[0].Runs, "26-09")
	for _, x := range s.Runs[1:] {
		assert.GreaterOrEqual(t, x.Mash, "2026-04-14")
	}
}

// TestRandomHouses: whatever the house has and the season asks for, the plan keeps the
// rules.
func TestRandomHouses(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	pick := func(of ...string) string { return of[r.IntN(len(of))] }
	for i := range 24 {
		from := record.Date{Year: 2026, Month: time.Month(1 + r.IntN(12)), Day: 1 + r.IntN(28)}
		day := func(n int) string { return from.After(n).String() }
		text := fmt.Sprintf("season \"Any\" from %s to %s {\n", day(0), day(34))
		text += fmt.Sprintf("  casks %d of \"Ferry Landing\" by %s\n", 1+r.IntN(4), day(20+r.IntN(15)))
		text += pick("", "  make \"Low Bridge\" every 2 weeks\n", "  make 2 of \"Toll Road\"\n", "  make \"Stone Ferry\" every 10 days\n", "  make \"Low Bridge\" on wed\n")
		if r.IntN(2) == 0 {
			at := 5 + r.IntN(20)
			text += fmt.Sprintf("  closed %s to %s\n", day(at), day(at+r.IntN(3)))
		}
		if r.IntN(2) == 0 {
			at := 5 + r.IntN(20)
			text += fmt.Sprintf("  without %s %s to %s\n", pick(`"East"`, `"Wash still"`, `"Spirit still"`, `"Copper kettle"`, `"Spirit receiver"`), day(at), day(at+r.IntN(4)))
		}
		others := []string{
			"boiler     300 kW", pick("boiler     300 kW", "boiler     200 kW", "boiler     140 kW"),
			"crew       2", pick("crew       2", "crew       1", "crew       3"),
			"07:00 to 17:00, tue to sat", pick("07:00 to 17:00, tue to sat", "06:00 to 22:00, mon to fri", "01:00 to 23:00, mon to sun", "06:00 to 14:00, mon to sat"),
			`fermenter "North", "South", "East", "West"`, pick(`fermenter "North", "South", "East", "West"`, `fermenter "East", "South"`),
		}
		if i%testflag.Every(6) != 0 {
			continue
		}
		p := problem(t, "Any", text+"}\n", others...)
		p.Effort, p.Quick = 12, true
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			s := planned(t, p)
			assert.GreaterOrEqual(t, s.Gap.Most, s.Gap.Met)
			if t.Failed() {
				t.Logf("%s %+v %+v %d %f", text, p.Plant.Shift, p.Plant.Crew, len(s.Runs), p.Plant.BoilerW)
			}
		})
	}
}

// TestBuyAndOdds: what is used is bought, less what is in store; and casks of a season are
// less sure than a plan says.
func TestBuyAndOdds(t *testing.T) {
	p := problem(t, "Spring", "")
	p.Effort, p.Quick, p.Draws = 30, true, 20
	p.Store = map[string]float64{"corn": 500}
	s := planned(t, p)
	corn, used := 0.0, 0.0
	for _, l := range s.Buy.Lines {
		assert.InDelta(t, l.Need, l.Store+l.Buy, 0.01, l.What)
		if l.What == "corn" {
			corn, used = corn+float64(l.Packs)*l.PackOf, used+l.Need
			assert.InDelta(t, float64(l.Packs)*50*0.16, l.Cost, 0.02, "whole bags of 50 lb are paid for")
			assert.GreaterOrEqual(t, float64(l.Packs)*l.PackOf, l.Buy)
			if l.Packs > 0 {
				assert.Less(t, float64(l.Packs-1)*l.PackOf, l.Buy)
			}
		}
	}
	assert.GreaterOrEqual(t, corn, used-500-0.01)
	assert.Less(t, corn, used-500+50*0.45359237, "what a week's bags leave over, the next week uses")
	// The bags are those that the costs of the house name; of grain else those of the trade.
	own := problem(t, "Spring", "", "oats              0.28 USD/lb", "oats              0.28 USD/lb in bags of 40 lb, pallets of 30", "distillers-yeast  14.50 USD/lb", "distillers-yeast  14.50 USD/lb in bags of 0.5 kg")
	own.Effort, own.Quick = 30, true
	packed := 0
	for _, l := range planned(t, own).Buy.Lines {
		switch {
		case l.What == "oats" && l.Buy > 0:
			packed++
			assert.InDelta(t, 40*0.45359237, l.PackOf, 0.001)
			assert.InDelta(t, float64(l.Packs)/30, l.Pallets, 0.051)
			assert.Less(t, float64(l.Packs-1)*l.PackOf, l.Buy)
		case l.Kind == season.BuyYeast:
			packed++
			assert.InDelta(t, 0.5, l.PackOf, 1e-9)
			assert.Zero(t, l.Pallets, "nobody says how many lie on one")
		case l.What == "corn" && l.Buy > 0:
			packed++
			assert.InDelta(t, 50*0.45359237, l.PackOf, 0.001)
		case l.Kind == season.BuyCask:
			assert.Zero(t, l.PackOf)
		}
	}
	assert.Greater(t, packed, 3)
	grain := 0.0
	for _, l := range s.Buy.Lines {
		if l.Kind == season.BuyGrain {
			grain += l.Need
		}
	}
	assert.InDelta(t, s.Summary.GrainKg, grain, 0.5)
	for _, l := range s.Buy.Lines {
		by := record.ReadDate(l.By)
		assert.True(t, p.Plant.Shift.Days[by.Weekday()] && p.Asks.ClosedOn(by) == nil, "%s by %s: somebody is there to take it in", l.What, l.By)
	}
	last := s.Buy.Weeks[len(s.Buy.Weeks)-1]
	assert.InDelta(t, s.Buy.Cost, last.Sum, 0.02)
	require.NotNil(t, s.Odds)
	assert.Equal(t, 20, s.Odds.Draws)
	assert.LessOrEqual(t, s.Odds.PureL.Low, s.Odds.PureL.Middle)
	assert.Less(t, s.Odds.PureL.Low, s.Odds.PureL.High)
	for i := 1; i < len(s.Odds.Casks); i++ {
		assert.LessOrEqual(t, s.Odds.Casks[i].Share, s.Odds.Casks[i-1].Share)
	}
	for _, d := range s.Odds.Demands {
		assert.LessOrEqual(t, s.Odds.AllMet, d.Share)
	}
	t.Logf("%+v", s.Odds)
}

// TestProvedByTheTree: one kettle makes one mash a day, so that of three mashes on two days
// one cannot be; that no plan has more than two is proved, whatever the bound says.
func TestProvedByTheTree(t *testing.T) {
	p := problem(t, "Days", `season "Days" from 2026-04-07 to 2026-04-18 {
  make  "Ferry Landing" on 2026-04-07, 2026-04-08
  make  "Low Bridge" on 2026-04-07
}
`)
	p.Effort, p.Quick = 20, true
	s := planned(t, p)
	assert.Equal(t, 2, s.Gap.Met)
	assert.True(t, s.Gap.Proved)
	assert.Equal(t, 1, s.Summary.DemandsMissed)
}

// TestProvedIsProved: what is proved of a tiny season after few steps of the search is not
// bettered by many.
func TestProvedIsProved(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	proved, short := 0, 0
	for i := range 20 {
		from := record.Date{Year: 2026, Month: 4, Day: 7 + r.IntN(7)}
		day := func(n int) string { return from.After(n).String() }
		text := fmt.Sprintf("season \"Tiny\" from %s to %s {\n  make %d of \"Ferry Landing\"\n  make \"Low Bridge\" on %s\n  make \"Stone Ferry\" on %s\n  casks 1 of \"Toll Road\" by %s\n}\n",
			day(0), day(13), 1+r.IntN(4), day(r.IntN(5)), day(r.IntN(5)), day(7+r.IntN(6)))
		if i%testflag.Every(5) != 1%testflag.Every(5) { // the second and so on, of which two miss a line
			continue
		}
		plan := func(effort int) *season.Season {
			p := problem(t, "Tiny", text, "07:00 to 17:00, tue to sat", "07:00 to 17:00, mon to sun", "crew       2", []string{"crew       1", "crew       2"}[i%2])
			p.Effort, p.Quick = effort, true
			return planned(t, p)
		}
		few, many := plan(2), plan(150/testflag.Every(6))
		if few.Gap.Proved {
			proved++
			assert.LessOrEqual(t, many.Gap.Met, few.Gap.Met, text)
		}
		if few.Summary.DemandsMissed > 0 && few.Gap.Proved {
			short++
		}
		assert.LessOrEqual(t, many.Gap.Met, few.Gap.Most, text)
	}
	t.Logf("%d proved, of which %d miss a line", proved, short)
	assert.Positive(t, proved)
	assert.Positive(t, short, "else nothing that is worth proving was tried")
}

const roundTheClock = `season "Round" from 2026-09-06 to 2026-09-19 {
  make   1 of "Low Bridge"
  crew   "J", "M" 00:00 to 24:00, sun to sat
}
`

// TestRoundTheClock: where somebody is always there a charge that begins with a day still
// has days to begin with.
func TestRoundTheClock(t *testing.T) {
	for name, text := range map[string]string{
		"all day":   roundTheClock,
		"a minute":  strings.Replace(roundTheClock, "00:00 to 24:00", "00:01 to 24:00", 1),
		"two turns": strings.Replace(roundTheClock, `"J", "M" 00:00 to 24:00, sun to sat`, `"J", "M" 00:00 to 12:00, sun to sat`+"\n  crew \"K\", \"L\" 12:00 to 24:00, sun to sat", 1),
	} {
		t.Run(name, func(t *testing.T) {
			p := problem(t, "Round", text)
			p.Effort = 60
			s := planned(t, p)
			assert.True(t, s.Demands[0].Met, "%+v", s.Demands[0])
		})
	}
}

// TestTakenAway: where a closure, a vessel out of use or somebody away is what stands in
// the way, that is named, and without it the line is met.
func TestTakenAway(t *testing.T) {
	for _, c := range []struct{ lines, limit, what, name string }{
		{"casks 1 of \"Ferry Landing\" by 2026-04-18\n  closed 2026-04-07 to 2026-04-11 \"flood\"", season.ByClosed, season.Opened, "2026-04-07"},
		{"make \"Ferry Landing\" on 2026-04-08\n  without \"Copper kettle\" 2026-04-07 to 2026-04-12", "Copper kettle", season.Back, "Copper kettle"},
		{"make \"Ferry Landing\" on 2026-04-08\n  crew \"M\", \"J\"\n  without \"M\" 2026-04-08\n  without \"J\" 2026-04-08", "M", season.Back, "M"},
	} {
		p := problem(t, "Gone", "season \"Gone\" from 2026-04-07 to 2026-04-20 {\n  "+c.lines+"\n}\n")
		p.Effort = 20
		s := planned(t, p)
		d := s.Demands[0]
		require.False(t, d.Met, c.lines)
		assert.Equal(t, c.limit, d.Limit, c.lines)
		require.NotNil(t, d.Least, c.lines)
		assert.Equal(t, c.what, d.Least.What, c.lines)
		assert.Equal(t, c.name, d.Least.Name, c.lines)
		assert.True(t, d.Enough, c.lines)
	}
}
