package weeks

import (
	"bytes"
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/weeks"
	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
)

// spring is two weeks of an invented house: a run that is met, one that is not, a closed
// day, a vessel out of use, and a boiler that two runs want at one time.
func spring() *season.Season {
	at := func(day, clock string) string { return "2026-04-" + day + "T" + clock + ":00-04:00" }
	task := func(key, stage, vessel, from, to, attend string, people int, kW float64) season.Task {
		return season.Task{Key: key, Stage: stage, Vessel: vessel, Start: from, End: to, Attend: attend, People: people, KW: kW}
	}
	one := season.Run{Number: "26-09", Batch: "Ferry Landing", Mash: at("07", "07:00"), Done: true, Fermenter: "North", Casks: 1, Filled: at("15", "10:00"), OfSteadyPct: 100, Tasks: []season.Task{
		task("mash.1", "mash", "Kettle", at("07", "07:00"), at("07", "13:00"), plan.Stay, 1, 130),
		task("ferment.run", "ferment", "North", at("07", "13:00"), at("11", "07:00"), plan.Alone, 0, 0),
		task("strip.heat", "strip", "Wash still", at("11", "07:00"), at("11", "12:00"), plan.Stay, 1, 130),
		task("strip.clean", "strip", "Wash still", at("11", "12:00"), at("11", "12:45"), plan.Stay, 1, 0),
		task("spirit.heat", "spirit", "Spirit still", at("14", "07:00"), at("14", "15:00"), plan.Stay, 1, 45),
		task("fill.1", "fill", "", at("15", "08:00"), at("15", "10:00"), plan.Start, 2, 0),
	}}
	two := season.Run{Number: "1", Batch: "Low Bridge", Mash: at("11", "07:00"), Fermenter: "South", WashWaitHours: 5, OverFill: true, MostFillPct: 91, Feints: season.Flow{In: plan.Lot{VolumeL: 150, WineGallons: 39.6, AbvPct: 35, Proof: 70}, From: []string{"26-09"}, OtherKind: true}, Tasks: []season.Task{
		task("mash.1", "mash", "Kettle", at("11", "07:00"), at("11", "18:00"), plan.Stay, 2, 190),
		task("ferment.run", "ferment", "South", at("11", "18:00"), at("16", "07:00"), plan.Alone, 0, 0),
	}}
	two.Tasks[0].OutOfShift = 60
	return &season.Season{
		Format: season.Format, Version: season.Version, Name: "Spring", Plant: "Lantern Hollow", Zone: "America/New_York", Units: "us", From: "2026-04-07", To: "2026-04-18",
		Summary: season.Summary{Batches: 2, CasksFilled: 1, ProofGallons: 63.9, PureAlcoholL: 121.5},
		Gap:     season.Gap{Met: 1, Most: 2, By: "boiler"},
		Demands: []season.Demanded{
			{Batch: "Ferry Landing", Wanted: "casks", Amount: 1, By: "2026-04-18", Made: 1, Met: true, When: at("15", "10:00"), Runs: []string{"26-09"}},
			{Batch: "Low Bridge", Wanted: "batches", Amount: 2, Made: 1, Limit: "boiler", Enough: true, Least: &season.Relief{What: "boiler", Amount: 20, Unit: "kW", Batches: 1}, Runs: []string{"1"}},
		},
		Runs: []season.Run{one, two},
		Vessels: []season.Vessel{
			{Name: "Kettle", Kind: "cooker", Uses: []season.Use{{Run: "26-09", Batch: "Ferry Landing", Stage: "mash", From: at("07", "07:00"), To: at("07", "13:00")}, {Run: "1", Batch: "Low Bridge", Stage: "mash", From: at("11", "07:00"), To: at("11", "18:00")}}},
			{Name: "North", Kind: "fermenter", Uses: []season.Use{{Run: "26-09", Batch: "Ferry Landing", Stage: "ferment", From: at("07", "13:00"), To: at("11", "07:00")}}},
			{Name: "South", Kind: "fermenter", Uses: []season.Use{{Run: "1", Batch: "Low Bridge", Stage: "ferment", From: at("11", "18:00"), To: at("16", "07:00")}}},
			{Name: "East", Kind: "fermenter", Out: []season.Span{{From: at("08", "00:00"), To: at("10", "00:00"), Why: "new coil"}}},
			{Name: "Wash still", Kind: "still", Uses: []season.Use{{Run: "26-09", Batch: "Ferry Landing", Stage: "strip", From: at("11", "07:00"), To: at("11", "12:00")}}},
			{Name: "Spirit still", Kind: "still", Uses: []season.Use{{Run: "26-09", Batch: "Ferry Landing", Stage: "spirit", From: at("14", "07:00"), To: at("14", "15:00")}}},
		},
		Days: []season.Day{
			{Date: "2026-04-07", Open: at("07", "07:00"), Close: at("07", "17:00"), People: 2, Wanted: 1, MostKW: 130, Runs: []string{"26-09"}},
			{Date: "2026-04-11", Open: at("11", "07:00"), Close: at("11", "17:00"), People: 2, Wanted: 3, MostKW: 320, Runs: []string{"26-09", "1"}},
			{Date: "2026-04-17", Closed: true, Why: "holiday", Runs: []string{}},
		},
		Weekdays: []season.Weekdays{
			{Batch: "Ferry Landing", Days: []season.Weekday{{Day: "Sunday", Why: "no shift"}, {Day: "Tuesday", Can: true}}},
			{Batch: "Low Bridge", Days: []season.Weekday{{Day: "Sunday", Why: "no shift"}, {Day: "Tuesday", Why: "its wash would stand"}}},
		},
		Bottlenecks: []season.Relief{{What: "boiler", Amount: 100, Unit: "kW", Batches: 1, WaitH: 5}, {What: "day", Name: "Sunday", Amount: 1}},
		Boiler:      []season.Load{{At: at("07", "07:00"), Amount: 130}, {At: at("07", "13:00")}, {At: at("11", "07:00"), Amount: 320}, {At: at("11", "12:00"), Amount: 190}, {At: at("11", "18:00")}}, BoilerKW: 300,
		Crew: []season.Load{{At: at("11", "07:00"), Amount: 3}, {At: at("11", "12:00"), Amount: 2}, {At: at("11", "18:00")}}, CrewThere: 2,
		Conflicts: []season.Conflict{{Kind: "boiler", From: at("11", "07:00"), To: at("11", "12:00"), Need: 320, Have: 300, Tasks: []season.Member{{Run: "26-09", Key: "strip.heat"}, {Run: "1", Key: "mash.1"}}}},
		Closures:  []season.Closed{{From: "2026-04-17", To: "2026-04-17", Why: "holiday"}, {From: "2026-04-08", To: "2026-04-09", Vessel: "East"}},
		Changes:   []season.Change{{Run: "1", Batch: "Low Bridge", What: "mash", Was: at("10", "07:00"), Is: at("11", "07:00")}, {Run: "2", Batch: "Low Bridge", What: "dropped"}},
		Tanks:     []season.TankLevel{{Tank: "Feints", Holds: "feints", OfL: 300, MostL: 310, Over: true}},
	}
}

func textOf(t *testing.T, s *season.Season, o Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Text(&b, s, o))
	for _, l := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, columns.Width(l), columns.Page, l)
	}
	return b.String()
}

// The screen says first if it is met and how much better a plan could be; a mark for each
// day stands where it belongs; whatever is not met says what limits it and what would do.
func TestText(t *testing.T) {
	got := textOf(t, spring(), Options{})
	assert.LessOrEqual(t, strings.Count(got, "\n"), screen)
	for _, want := range []string{
		"Tue 7 Apr to Sat 18 Apr 2026: 2 batches, 1 cask, 64 proof gallons.",
		"1 line of what is asked for is not met. At most 1 batch is more possible; what",
		"limits it is the boiler.",
		"2 mashes of Low Bridge: NOT MET: 1 of 2; what limits it is the boiler. The",
		"least change that would do: 20 kW more from the boiler",
		"! 320 kW are wanted of the boiler, which gives 300, Sat 11 Apr 07:00 to Sat",
		"The bottleneck: 100 kW more from the boiler would bring 1 batch more and 5 h",
		"2 things are otherwise than printed: --full.",
		"\nKettle            A...!.....-.\n",
		"\nNorth             AAAAA.....-.\n",
		"\nEast              .//.......-.\n",
		"\nWash still        ....!.....-.\n",
		"\nSpirit still      .......A..-.\n",
		"\npeople wanted     1...3.......\n",
		"\nboiler, tenths    4...#.......\n",
	} {
		assert.Contains(t, got, want)
	}
	calm := spring()
	calm.Conflicts, calm.Changes, calm.Gap, calm.Demands[1].Least = nil, nil, season.Gap{Proved: true}, nil
	roomy := textOf(t, calm, Options{})
	assert.Contains(t, roomy, "Ferry Landing can be mashed on Tue.")
	assert.Contains(t, roomy, "Low Bridge can be mashed on no day of the week: --full says why.")
	full := textOf(t, spring(), Options{Full: true})
	for _, want := range []string{
		"not on Sun: no shift; not on Tue: its wash would stand.",
		"Work on Sunday would bring nothing.",
		"run 1 of Low Bridge: mash on Sat 11 Apr 07:00, was Fri 10 Apr 07:00",
		"run 2 of Low Bridge is dropped",
		"* it was begun, and stands as it was",
		"left by run 26-09, of another batch; the wash stands 5 h past its time",
		"! 81.9 gal",
	} {
		assert.Contains(t, strings.Join(strings.Fields(full), " "), strings.Join(strings.Fields(want), " "))
	}
}

// What is proved is said to be, and what is not is not: the gap is of one batch or more.
func TestGap(t *testing.T) {
	for _, c := range []struct {
		gap  season.Gap
		want string
	}{
		{season.Gap{Proved: true, Met: 2, Most: 2}, "Proved best: no plan meets more."},
		{season.Gap{Met: 2, Most: 3}, "At most 1 batch is more possible."},
		{season.Gap{Met: 2, Most: 4, By: "Wash still"}, "At most 2 batches are more possible; what limits it is Wash still."},
	} {
		s := spring()
		s.Gap = c.gap
		assert.Equal(t, c.want, of(s).gap())
	}
	s := spring()
	s.Gap, s.Demands[0].Met = season.Gap{Proved: true, Met: 2, Most: 2}, false
	assert.Equal(t, "Proved: no plan has more of these batches in time.", of(s).gap(), "how many casks they fill is another question")
}

// A season of many vessels, demands and conflicts is one screen all the same, and one of
// half a year has several days a mark.
func TestOneScreen(t *testing.T) {
	s := spring()
	for range 3 {
		s.Demands = append(s.Demands, s.Demands...)
		s.Conflicts = append(s.Conflicts, s.Conflicts...)
		s.Changes = append(s.Changes, s.Changes...)
	}
	s.Vessels = append(s.Vessels, season.Vessel{Name: "Idle", Kind: "fermenter"})
	for range 10 {
		got := textOf(t, s, Options{})
		assert.LessOrEqual(t, strings.Count(got, "\n"), screen)
		assert.Contains(t, got, "NOT MET")
		assert.NotContains(t, got, "\nIdle")
		s.Vessels = append(s.Vessels, s.Vessels[0])
	}
	got := textOf(t, s, Options{})
	assert.LessOrEqual(t, strings.Count(got, "\n"), screen)
	assert.Contains(t, got, "NOT MET")
	assert.NotContains(t, got, "\nIdle")
	assert.Contains(t, got, "more: --full")

	s = spring()
	s.To = "2026-10-05" // 182 days
	got = textOf(t, s, Options{})
	assert.Contains(t, got, "a mark is 3 days")
	assert.Contains(t, got, "\nNorth             AA.-")
	s.To = "2026-06-07" // 62 days, which the page just has room for
	assert.NotContains(t, textOf(t, s, Options{}), "a mark is")
	s.To = "2026-06-08"
	assert.Contains(t, textOf(t, s, Options{}), "a mark is 2 days")
}

func TestNothing(t *testing.T) {
	s := &season.Season{Name: "Empty", Plant: "Lantern Hollow", Units: "si", From: "2026-04-07", To: "2026-04-07"}
	got := textOf(t, s, Options{Full: true})
	assert.Contains(t, got, "Nothing is asked for.")
	for _, write := range []func(*bytes.Buffer) error{
		func(b *bytes.Buffer) error { return HTML(b, s) },
		func(b *bytes.Buffer) error { return ICS(b, s, 0) },
		func(b *bytes.Buffer) error { return CSV(b, s) },
		func(b *bytes.Buffer) error { return WeekHTML(b, s, 1) },
		func(b *bytes.Buffer) error { return BuyText(b, s, Options{}) },
	} {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		assert.NotEmpty(t, b.String())
	}
}

func calendar(t *testing.T, s *season.Season, n int) (string, map[string]*ics.VEvent) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, ICS(&b, s, n))
	read, err := ics.ParseCalendar(strings.NewReader(b.String()))
	require.NoError(t, err)
	out := map[string]*ics.VEvent{}
	for _, e := range read.Events() {
		require.Nil(t, out[e.Id()], "two events have one UID")
		out[e.Id()] = e
	}
	return b.String(), out
}

// A plan made anew moves its events and doubles none, also where a run that was to come is
// made by now and has a number of its own.
func TestCalendarUpdatesInPlace(t *testing.T) {
	text, before := calendar(t, spring(), 7)
	again, _ := calendar(t, spring(), 7)
	assert.Equal(t, text, again)
	assert.Len(t, before, 7, "mash, strip, clean, spirit and fill of one run, the mash of the other, and a closure; what ferments wants nobody")
	assert.Contains(t, text, "SUMMARY:! mash: Low Bridge\\, run 1\r\n")
	assert.Contains(t, text, "DTSTART;VALUE=DATE:20260417\r\nDTEND;VALUE=DATE:20260418\r\n")

	s := spring()
	s.Runs[1].Number, s.Runs[1].Done = "26-10", true
	for i := range s.Runs[1].Tasks {
		k := &s.Runs[1].Tasks[i]
		k.Start, k.End = strings.Replace(k.Start, "-11T", "-12T", 1), strings.Replace(k.End, "-11T", "-12T", 1)
	}
	moved, after := calendar(t, s, 8)
	require.Len(t, after, len(before))
	changed := 0
	for id, e := range after {
		require.NotNil(t, before[id], "the event is another's")
		assert.Equal(t, "8", e.GetProperty(ics.ComponentPropertySequence).Value)
		if e.GetProperty(ics.ComponentPropertyDtStart).Value != before[id].GetProperty(ics.ComponentPropertyDtStart).Value {
			changed++
		}
	}
	assert.Equal(t, 1, changed)
	assert.NotEqual(t, text, moved)
}

// What a house wrote stays text in every form.
func TestHostile(t *testing.T) {
	s := spring()
	evil := "<script>alert(1)</script>\r\nBEGIN:VEVENT\x1b]8;;"
	s.Name, s.Plant, s.Days[2].Why, s.Vessels[0].Name = evil, evil, evil, "=1+1"
	for i := range s.Runs {
		s.Runs[i].Batch, s.Runs[i].Number = evil, "=2+2"
		for k := range s.Runs[i].Tasks {
			s.Runs[i].Tasks[k].Vessel = evil
		}
	}
	s.Conflicts[0].Vessel = evil
	var page, week, rows, cal bytes.Buffer
	require.NoError(t, HTML(&page, s))
	require.NoError(t, WeekHTML(&week, s, 1))
	templates(t).Same(t, "season", nil, viewOf(s), page.String())
	templates(t).Same(t, "week", nil, weekOf(s, 1), week.String())
	require.NoError(t, CSV(&rows, s))
	require.NoError(t, ICS(&cal, s, 0))
	for _, b := range []*bytes.Buffer{&page, &week, &rows, &cal} {
		assert.NotContains(t, b.String(), "\x1b")
	}
	assert.NotContains(t, page.String()+week.String(), "<script")
	assert.NotContains(t, cal.String(), "\nBEGIN:VEVENT\x1b")
	assert.Equal(t, strings.Count(cal.String(), "\nEND:VEVENT"), strings.Count(cal.String(), "\nBEGIN:VEVENT"))
	assert.Contains(t, rows.String(), "\n'=2+2,")
	textOf(t, s, Options{Full: true})
}

// The picture marks every member of a conflict, and nothing else.
func TestPicture(t *testing.T) {
	pics := of(spring()).pictures()
	require.Len(t, pics, 1)
	marked := map[string]int{}
	for _, r := range pics[0].Rows {
		for _, b := range r.Boxes {
			if strings.Contains(b.Class, "clash") {
				marked[r.Name]++
			}
			assert.GreaterOrEqual(t, b.X, picLeft)
			assert.LessOrEqual(t, b.X+b.W, picWidth+0.01)
		}
	}
	assert.Equal(t, map[string]int{"Kettle": 1, "Wash still": 1, "people": 1, "boiler": 1}, marked)
	assert.Len(t, pics[0].Shades, 1)

	s := spring()
	s.To = "2026-06-07" // nine weeks
	assert.Len(t, of(s).pictures(), 1)
	s.To = "2026-06-08"
	assert.Len(t, of(s).pictures(), 2)
}

func TestWeek(t *testing.T) {
	s := spring()
	assert.Equal(t, 2, WeeksOf(s))
	s.To = "2026-04-19"
	assert.Equal(t, 2, WeeksOf(s))
	s.To = "2026-04-20"
	assert.Equal(t, 3, WeeksOf(s))
	var b bytes.Buffer
	require.NoError(t, WeekText(&b, spring(), 1, Options{}))
	for _, want := range []string{
		"Week 1 of 2, 6 April to 12 April 2026",
		"Tue 7 Apr: 07:00 to 17:00, 2 people there, 1 wanted at most",
		"07:00 to 18:00", "! mash: Low Bridge, run 1, Kettle, 2 people, OUT OF THE SHIFT", "clean after the stripping run",
	} {
		assert.Contains(t, strings.Join(strings.Fields(b.String()), " "), want)
	}
	b.Reset()
	require.NoError(t, WeekText(&b, spring(), 2, Options{}))
	assert.Contains(t, b.String(), "Fri 17 Apr: closed, holiday")
	assert.NotContains(t, b.String(), "Sun 19 Apr", "it is past the season")
}

// A job is called by what is done on its day, where its stage alone does not say that.
func TestJobsInWords(t *testing.T) {
	for want, j := range map[string]weeks.Job{
		"read the ferment: Low Bridge, run 1":              {Run: "1", Batch: "Low Bridge", Stage: "ferment", Work: []string{"read the ferment"}},
		"gauge, reduce and soak casks: Low Bridge, run 1":  {Run: "1", Batch: "Low Bridge", Stage: "fill", Work: []string{"gauge", "reduce", "soak casks"}},
		"stripping run: Low Bridge, run 1":                 {Run: "1", Batch: "Low Bridge", Stage: "strip"},
		"clean after the stripping run: Low Bridge, run 1": {Run: "1", Batch: "Low Bridge", Stage: "strip", Cleaning: true},
	} {
		assert.Equal(t, want, JobName(j))
	}
	s := spring()
	s.Runs[0].Tasks[5].Key, s.Runs[0].Tasks[5].Title = "fill.cask", plan.Say("Fill")
	jobs := weeks.Jobs(s, "2026-04-15")
	require.Len(t, jobs, 1)
	assert.Equal(t, "fill casks: Ferry Landing, run 26-09", JobName(jobs[0]))
	said := about(measure.US, "2026-04-15", s.Runs[0], jobs[0])
	assert.Contains(t, said, "08:00 to 10:00 Fill: start it")
	assert.Contains(t, about(measure.US, "2026-04-07", s.Runs[0], weeks.Jobs(s, "2026-04-07")[0]), "07:00 to 13:00 mash.1: stay with it", "one of a plan that has no words for it")
}

// A day is closed also where nobody says why, in each form.
func TestClosedWithoutAReason(t *testing.T) {
	s := spring()
	s.Days[2].Why, s.Closures[0].Why = "", ""
	assert.Contains(t, textOf(t, s, Options{}), "\nKettle            A...!.....-.\n")
	assert.Equal(t, "closed", of(s).pictures()[0].Shades[0].Title)
	assert.Equal(t, "closed", viewOf(s).Days[2][1])
	var b bytes.Buffer
	require.NoError(t, WeekText(&b, s, 2, Options{}))
	assert.Contains(t, b.String(), "Fri 17 Apr: closed\n")
	assert.Contains(t, b.String(), "Sat 18 Apr: nobody is there\n")
	s.Days[2].Closed = false
	assert.Contains(t, textOf(t, s, Options{}), "\nKettle            A...!.......\n")
	assert.Empty(t, of(s).pictures()[0].Shades)
}

// What weeks have room for is from the mash to the cask: a run that is filled after them is
// said to be, so that the number stands beside that of the batches.
func TestRoom(t *testing.T) {
	s := spring()
	s.Capacity = 1
	assert.Contains(t, of(s).bottleneck(), "These weeks have room for 1 batch from mash to cask, as far as was found. The bottleneck: 100 kW more")
	s.Runs[1].Filled = "2026-04-18T23:00:00-04:00"
	assert.NotContains(t, of(s).bottleneck(), "later", "the last day is one of them")
	s.Runs[1].Filled = "2026-04-19T00:00:00-04:00"
	assert.Contains(t, of(s).bottleneck(), "from mash to cask (1 of the 2 is filled later), as far")
}

// What is to buy stands week by week, with what is in store taken off, in bags, and what
// has no price is said to have none.
func TestBuy(t *testing.T) {
	s := spring()
	s.Buy = &season.BuyList{Currency: "USD", Cost: 131.5, Unpriced: []string{"lime"}, Weeks: []season.WeekBuy{{Monday: "2026-04-06", Cost: 100.5, Sum: 100.5}, {Monday: "2026-04-13", Cost: 31, Sum: 131.5}},
		Lines: []season.Buy{
			{What: "corn", Kind: "grain", By: "2026-04-06", Need: 500, Store: 46.4, Buy: 453.6, Unit: "kg", Packs: 20, PackOf: 22.68, Pallets: 0.5, Cost: 100.5, Priced: true, Runs: []string{"=1"}},
			{What: "corn", Kind: "grain", By: "2026-04-19", Need: 45.36, Buy: 45.36, Unit: "kg", Packs: 2, PackOf: 22.68, Cost: 31, Priced: true, Runs: []string{"2"}},
			{What: "lime", Kind: "chemical", By: "2026-04-19", Need: 1, Buy: 1, Unit: "kg", Runs: []string{"2"}},
			{What: "new cask", Kind: "cask", By: "2026-04-13", Need: 2, Store: 2, Unit: "each", Priced: true, Runs: []string{"2"}},
		}}
	var b bytes.Buffer
	require.NoError(t, BuyText(&b, s, Options{}))
	for _, l := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, columns.Width(l), columns.Page, l)
	}
	got := strings.Join(strings.Fields(b.String()), " ")
	for _, want := range []string{
		"Week of Mon 6 Apr: 100 USD, so far 100 USD what by in store to buy in bags pallets cost corn 6 Apr 102.3 lb 1,000.0 lb 20 x 50 lb 0.5 100",
		"Week of Mon 13 Apr: 31 USD, so far 132 USD", "corn 19 Apr - 100.0 lb 2 x 50 lb 31", "no price", "new cask 13 Apr 2 - 0",
		"All of it: 132 USD.", "Without a price in the house's costs, and not counted: lime.",
	} {
		assert.Contains(t, got, want)
	}
	b.Reset()
	require.NoError(t, BuyCSV(&b, s))
	assert.Contains(t, b.String(), "\ncorn,grain,2026-04-06,500,46.4,453.6,kg,20,22.68,0.5,100.5,USD,'=1\r\n")
	assert.Contains(t, b.String(), "\nlime,chemical,2026-04-19,1,0,1,kg,0,0,0,,USD,2\r\n")
}

// TestCasksAfter: casks that are full only after the last day are not counted with those
// that are full by it.
func TestCasksAfter(t *testing.T) {
	s := spring()
	var out bytes.Buffer
	require.NoError(t, Text(&out, s, Options{}))
	assert.Contains(t, out.String(), ": 2 batches, 1 cask, 64 proof gallons.")
	s.Summary.CasksAfter = 2
	out.Reset()
	require.NoError(t, Text(&out, s, Options{}))
	assert.Contains(t, out.String(), ": 2 batches, 1 cask (2 later), 64 proof gallons.")
}

// TestTakenAway: what was taken away and would do if it were not is said in words.
func TestTakenAway(t *testing.T) {
	v := of(&season.Season{Closures: []season.Closed{{Vessel: "East"}, {Person: "J"}}})
	for want, r := range map[string]season.Relief{
		"no closure on Fri 1 May":                {What: season.Opened, Name: "2026-05-01", Amount: 1},
		"no closure from Fri 1 May to Sat 2 May": {What: season.Opened, Name: "2026-05-01", Amount: 2},
		"East in use on all days":                {What: season.Back, Name: "East", Amount: 3},
		"J there on all days":                    {What: season.Back, Name: "J", Amount: 1},
	} {
		assert.Equal(t, want, v.thing(r))
	}
}
