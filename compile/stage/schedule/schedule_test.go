package schedule

import (
	"testing"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/recipe"
)

const hour = 3600.0

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	require.NoError(t, err)
	return z
}

// tueToSat is 07:00 to 17:00, Tuesday to Saturday.
var tueToSat = recipe.Shift{FromMinute: 7 * 60, ToMinute: 17 * 60, Days: [7]bool{2: true, 3: true, 4: true, 5: true, 6: true}}

func work(t testing.TB, start string, tasks ...Task) []Slot {
	t.Helper()
	z := zone(t, "America/New_York")
	at, err := time.ParseInLocation("2006-01-02 15:04", start, z)
	require.NoError(t, err)
	return Run(Input{Start: at, Shift: tueToSat, Zone: z, Tasks: tasks})
}

func clock(at time.Time) string { return at.Format("Mon 2006-01-02 15:04") }

func TestFermentRunsOnUntilSomebodyIsThere(t *testing.T) {
	// Mash on Tuesday; five days end on Sunday, when nobody is there.
	slots := work(t, "2026-03-03 07:00",
		Task{Key: "mash", DurationS: 8 * hour, Attend: Throughout, Vessel: "kettle"},
		Task{Key: "ferment", DurationS: 120 * hour, Elastic: true, Vessel: "North"},
		Task{Key: "strip", DurationS: 6 * hour, Attend: Throughout, MayWait: true, Vessel: "Wash still"},
	)
	assert.Equal(t, "Tue 2026-03-03 15:00", clock(slots[0].End))
	// The clocks go forward on Sunday 8 March at 02:00: 120 h elapsed end an
	// hour later on the wall.
	assert.Equal(t, "Tue 2026-03-10 07:00", clock(slots[1].End), "the ferment stands until the still is lit")
	assert.Equal(t, "Tue 2026-03-10 07:00", clock(slots[2].Start))
	assert.Equal(t, 39*time.Hour, slots[2].Wait, "from Sunday 16:00 EDT")
	assert.Equal(t, "Sunday and Monday off", slots[2].WaitWhy)
}

func TestElapsedTimeAcrossBothChanges(t *testing.T) {
	for _, c := range []struct{ start, end string }{
		{"2026-03-06 12:00", "Tue 2026-03-10 13:00"}, // forward on 8 March
		{"2026-10-30 12:00", "Tue 2026-11-03 11:00"}, // back on 1 November
		{"2026-06-05 12:00", "Tue 2026-06-09 12:00"}, // no change
	} {
		slots := work(t, c.start, Task{Key: "ferment", DurationS: 96 * hour})
		assert.Equal(t, c.end, clock(slots[0].End))
		assert.Equal(t, 96*time.Hour, slots[0].End.Sub(slots[0].Start))
	}
}

func TestChainWaitsForAShiftItFits(t *testing.T) {
	chain := []Task{
		{Key: "charge", Chain: "strip", DurationS: hour, Attend: Throughout},
		{Key: "run", Chain: "strip", DurationS: 5 * hour, Attend: Throughout},
	}
	slots := work(t, "2026-03-03 12:00", chain...)
	assert.Equal(t, "Wed 2026-03-04 07:00", clock(slots[0].Start))
	assert.Equal(t, "6 h 00 min of work does not fit before 17:00", slots[0].WaitWhy)
	assert.Zero(t, slots[1].Wait, "no wait inside a chain")

	slots = work(t, "2026-03-03 11:00", chain...)
	assert.Equal(t, "Tue 2026-03-03 11:00", clock(slots[0].Start), "ends as the shift does")
	assert.Equal(t, "Tue 2026-03-03 17:00", clock(slots[1].End))
	assert.Zero(t, slots[1].OutOfShift)
}

func TestWorkLongerThanAShiftIsFlagged(t *testing.T) {
	slots := work(t, "2026-03-03 09:00",
		Task{Key: "a", Chain: "x", DurationS: 6 * hour, Attend: Throughout},
		Task{Key: "b", Chain: "x", DurationS: 6 * hour, Attend: Throughout})
	assert.Equal(t, "Wed 2026-03-04 07:00", clock(slots[0].Start), "begin with a shift")
	assert.Equal(t, 2*time.Hour, slots[1].OutOfShift)
}

func TestUnattendedWorkGoesOnAtNight(t *testing.T) {
	slots := work(t, "2026-03-03 16:00",
		Task{Key: "begin", DurationS: 10 * hour, Attend: Begin},
		Task{Key: "alone", DurationS: 2 * hour},
		Task{Key: "then", DurationS: hour, Attend: Throughout})
	assert.Equal(t, "Tue 2026-03-03 16:00", clock(slots[0].Start))
	assert.Equal(t, "Wed 2026-03-04 02:00", clock(slots[1].Start))
	assert.Equal(t, "Wed 2026-03-04 07:00", clock(slots[2].Start))
	assert.Equal(t, "night", slots[2].WaitWhy)
	assert.Equal(t, 3*time.Hour, slots[2].Wait)
}

// What can't stand over a night is done at once, and what lies outside is counted.
func TestNowWaitsForNoShift(t *testing.T) {
	slots := work(t, "2026-03-03 16:30", Task{Key: "draff", DurationS: hour, Attend: Throughout, Now: true})
	assert.Equal(t, "Tue 2026-03-03 16:30", clock(slots[0].Start))
	assert.Zero(t, slots[0].Wait)
	assert.Equal(t, 30*time.Minute, slots[0].OutOfShift)
	slots = work(t, "2026-03-03 16:30", Task{Key: "draff", DurationS: hour, Attend: Throughout})
	assert.Equal(t, "Wed 2026-03-04 07:00", clock(slots[0].Start))
}

func TestNewDay(t *testing.T) {
	slots := work(t, "2026-03-07 08:00", // a Saturday
		Task{Key: "strip", DurationS: hour, Attend: Throughout},
		Task{Key: "spirit", DurationS: hour, Attend: Throughout, NewDay: true})
	assert.Equal(t, "Tue 2026-03-10 07:00", clock(slots[1].Start))
	assert.Equal(t, "it wants a day of its own; Sunday and Monday off", slots[1].WaitWhy)
}

func TestStartOutsideTheShift(t *testing.T) {
	slots := work(t, "2026-03-01 07:00", Task{Key: "mash", DurationS: hour, Attend: Throughout}) // a Sunday
	assert.Equal(t, "Tue 2026-03-03 07:00", clock(slots[0].Start))
	assert.Equal(t, "Sunday and Monday off", slots[0].WaitWhy)
}

func TestNightShift(t *testing.T) {
	z := zone(t, "Europe/London")
	night := recipe.Shift{FromMinute: 22 * 60, ToMinute: 6 * 60, Days: [7]bool{1: true, 2: true, 3: true, 4: true, 5: true}}
	slots := Run(Input{Start: time.Date(2026, 3, 4, 1, 0, 0, 0, z), Shift: night, Zone: z, Tasks: []Task{
		{Key: "a", DurationS: 4 * hour, Attend: Throughout},
		{Key: "b", DurationS: 4 * hour, Attend: Throughout},
	}})
	assert.Equal(t, "Wed 2026-03-04 01:00", clock(slots[0].Start), "Tuesday's shift is still on")
	assert.Equal(t, "Wed 2026-03-04 22:00", clock(slots[1].Start))
}

func TestNoShiftStatedIsNoLimit(t *testing.T) {
	slots := Run(Input{Start: time.Date(2026, 3, 1, 3, 0, 0, 0, time.UTC), Zone: time.UTC, Tasks: []Task{
		{Key: "a", DurationS: 30 * hour, Attend: Throughout}}})
	assert.Zero(t, slots[0].Wait)
	assert.Zero(t, slots[0].OutOfShift)
}

func TestCivil(t *testing.T) {
	z := zone(t, "America/New_York")
	at, err := Civil(2026, 3, 3, 7, 0, z)
	require.NoError(t, err)
	assert.Equal(t, "2026-03-03T07:00:00-05:00", at.Format(time.RFC3339))

	_, err = Civil(2026, 3, 8, 2, 30, z)
	require.ErrorContains(t, err, "put forward")
	_, err = Civil(2026, 11, 1, 1, 30, z)
	require.ErrorContains(t, err, "twice")
	_, err = Civil(2026, 2, 30, 7, 0, z)
	require.ErrorContains(t, err, "no such date")

	// The hours beside the changes are plain.
	for _, ok := range [][2]int{{1, 59}, {3, 0}} {
		_, err = Civil(2026, 3, 8, ok[0], ok[1], z)
		require.NoError(t, err)
	}
	for _, ok := range [][2]int{{0, 59}, {2, 0}} {
		_, err = Civil(2026, 11, 1, ok[0], ok[1], z)
		require.NoError(t, err)
	}
	// South of the equator, and a change of half an hour.
	_, err = Civil(2026, 10, 4, 2, 15, zone(t, "Australia/Lord_Howe"))
	require.ErrorContains(t, err, "put forward")
}

func TestRounds(t *testing.T) {
	z := zone(t, "America/New_York")
	from := time.Date(2026, 3, 3, 16, 0, 0, 0, z)
	to := time.Date(2026, 3, 10, 7, 0, 0, 0, z)
	var got []string
	for _, at := range Rounds(from, to, tueToSat, z, 9*60) {
		got = append(got, clock(at))
	}
	assert.Equal(t, []string{"Wed 2026-03-04 09:00", "Thu 2026-03-05 09:00", "Fri 2026-03-06 09:00", "Sat 2026-03-07 09:00"}, got)
}

func TestConflicts(t *testing.T) {
	at := time.Date(2026, 3, 3, 7, 0, 0, 0, time.UTC)
	slot := func(key, vessel string, from, hours int, people int, power float64) Slot {
		start := at.Add(time.Duration(from) * time.Hour)
		return Slot{Task: Task{Key: key, Vessel: vessel, Attend: Throughout, People: people, Power: power},
			Start: start, End: start.Add(time.Duration(hours) * time.Hour)}
	}
	slots := []Slot{
		slot("mash", "kettle", 0, 6, 1, 170e3),
		slot("strip", "still", 2, 6, 1, 140e3),
		slot("spirit", "still", 4, 1, 1, 50e3),
	}
	got := Conflicts(slots, 2, 320e3)
	require.Len(t, got, 3)
	assert.Equal(t, Crew, got[0].Kind)
	assert.Equal(t, 3.0, got[0].Need)
	assert.Equal(t, Boiler, got[1].Kind)
	assert.Equal(t, 360e3, got[1].Need)
	assert.Equal(t, Vessel, got[2].Kind)
	assert.Equal(t, []string{"strip", "spirit"}, got[2].Keys)
	assert.Equal(t, at.Add(5*time.Hour), got[2].To)

	two := Conflicts([]Slot{slot("a", "still", 0, 2, 1, 0), slot("b", "still", 1, 2, 1, 0)}, 0, 0)
	require.Len(t, two, 1, "two want one vessel")
	assert.Equal(t, Conflict{Kind: Vessel, Vessel: "still", Need: 2, Have: 1}, Conflict{Kind: two[0].Kind, Vessel: two[0].Vessel, Need: two[0].Need, Have: two[0].Have})

	assert.Empty(t, Conflicts(slots[:2], 2, 320e3))
	assert.Empty(t, Conflicts(slots[:2], 0, 0), "not stated is no limit")
}

func TestOccupancyHoldsTheWaits(t *testing.T) {
	slots := work(t, "2026-03-03 07:00",
		Task{Key: "mash", Stage: "mash", Vessel: "kettle", DurationS: 8 * hour, Attend: Throughout},
		Task{Key: "ferment", Stage: "ferment", Vessel: "North", DurationS: 120 * hour, Elastic: true},
		Task{Key: "charge", Stage: "strip", Vessel: "Wash still", DurationS: hour, Attend: Throughout})
	uses := Occupancy(slots)
	require.Len(t, uses, 3)
	assert.Equal(t, slots[2].Start, uses[1].To)
}

// No attended task lies outside the shifts unless it is counted as such, and
// the order of work is kept, whatever the durations.
func FuzzRun(f *testing.F) {
	f.Add(int64(1772539200), uint16(480), uint16(7200), uint16(360), uint8(3), uint8(0x7c))
	f.Add(int64(1793502000), uint16(30), uint16(1), uint16(900), uint8(1), uint8(0x01))
	z := zone(f, "America/New_York")
	f.Fuzz(func(t *testing.T, unix int64, a, b, c uint16, attend, days uint8) {
		unix %= 4e9
		shift := recipe.Shift{FromMinute: 420, ToMinute: 1020}
		for i := range shift.Days {
			shift.Days[i] = days&(1<<i) != 0
		}
		in := Input{Start: time.Unix(max(unix, 0), 0), Shift: shift, Zone: z}
		for i, m := range []uint16{a, b, c, a} {
			in.Tasks = append(in.Tasks, Task{DurationS: float64(m) * 60, Attend: Attend((int(attend) + i) % 3), Chain: []string{"", "x", "x", ""}[i]})
		}
		slots := Run(in)
		h := hours{shift, z}
		at := in.Start
		for _, s := range slots {
			require.False(t, s.Start.Before(at))
			require.Equal(t, s.DurationS, s.End.Sub(s.Start).Seconds())
			require.Equal(t, s.Start.After(at), s.Wait > 0)
			require.Equal(t, s.Wait > 0, s.WaitWhy != "")
			if s.Attend == Throughout && s.OutOfShift == 0 {
				require.True(t, h.staffed(s.Start, s.End))
			}
			at = s.End
		}
	})
}

// What is done meanwhile holds up nothing that goes on alone, and what follows waits for
// both.
func TestMeanwhile(t *testing.T) {
	line := func(start string, settleH, soakH float64) []Slot {
		return work(t, start,
			Task{Key: "reduce", DurationS: hour, Attend: Throughout},
			Task{Key: "settle", DurationS: settleH * hour, Elastic: true},
			Task{Key: "soak", DurationS: soakH * hour, Attend: Throughout, Meanwhile: true},
			Task{Key: "fill", DurationS: hour, Attend: Throughout})
	}
	slots := line("2026-03-03 15:30", 24, 1)
	assert.Equal(t, "Tue 2026-03-03 16:30", clock(slots[1].Start), "from the reducing")
	assert.Equal(t, "Wed 2026-03-04 07:00", clock(slots[2].Start), "when somebody is there")
	assert.Zero(t, slots[2].Wait, "nobody waits for it")
	assert.Equal(t, "Thu 2026-03-05 07:00", clock(slots[3].Start), "16:30 and an hour is past the shift")
	assert.Equal(t, "Thu 2026-03-05 07:00", clock(slots[1].End))

	slots = line("2026-03-03 12:00", 24, 1)
	assert.Equal(t, "Tue 2026-03-03 13:00", clock(slots[2].Start))
	assert.Equal(t, "Wed 2026-03-04 13:00", clock(slots[3].Start), "24 h after the reducing")
	assert.Zero(t, slots[3].Wait)

	slots = line("2026-03-03 12:00", 0.5, 2)
	assert.Equal(t, "Tue 2026-03-03 15:00", clock(slots[3].Start), "the longer of the two")
	assert.Equal(t, "Tue 2026-03-03 15:00", clock(slots[1].End))
}

// A stage that was begun stands when it was, whatever the shift, and what follows goes by it
// and by the shift.
func TestBegun(t *testing.T) {
	z := zone(t, "America/New_York")
	at := func(s string) time.Time {
		when, err := time.ParseInLocation("2006-01-02 15:04", s, z)
		require.NoError(t, err)
		return when
	}
	for _, c := range []struct {
		begun                  Begun
		fermented, strip, next string
	}{
		{Begun{}, "Tue 2026-03-10 07:00", "Tue 2026-03-10 07:00", "Tue 2026-03-10 13:00"},
		{Begun{At: at("2026-03-12 08:10"), Hour: true}, "Thu 2026-03-12 08:10", "Thu 2026-03-12 08:10", "Fri 2026-03-13 07:00"},
		{Begun{At: at("2026-03-15 00:00")}, "Sun 2026-03-15 07:00", "Sun 2026-03-15 07:00", "Tue 2026-03-17 07:00"},
		{Begun{At: at("2026-03-03 06:00"), Hour: true}, "Tue 2026-03-03 15:00", "Tue 2026-03-03 06:00", "Tue 2026-03-03 12:00"}, // a slip: nothing ends before it begins
	} {
		in := Input{Start: at("2026-03-03 07:00"), Shift: tueToSat, Zone: z, Tasks: []Task{
			{Key: "mash", Stage: "mash", DurationS: 8 * hour, Attend: Throughout},
			{Key: "ferment", Stage: "ferment", DurationS: 120 * hour, Elastic: true},
			{Key: "strip.1", Stage: "strip", Chain: "1", DurationS: 5 * hour, Attend: Throughout},
			{Key: "strip.2", Stage: "strip", Chain: "1", DurationS: hour, Attend: Throughout},
			{Key: "spirit", Stage: "spirit", DurationS: 4 * hour, Attend: Throughout},
		}}
		if !c.begun.At.IsZero() {
			in.Begun = map[string]Begun{"strip": c.begun}
		}
		slots := Run(in)
		assert.Equal(t, c.fermented, clock(slots[1].End))
		assert.Equal(t, c.strip, clock(slots[2].Start))
		assert.Equal(t, slots[2].End, slots[3].Start)
		assert.Equal(t, c.next, clock(slots[4].Start), c.strip)
	}
}

// What a chain wants of people lasts to the end of its last attended work; of one that is
// only begun, to its beginning.
func TestAttended(t *testing.T) {
	task := func(a Attend, h float64) Task { return Task{Attend: a, DurationS: 3600 * h} }
	for _, c := range []struct {
		chain []Task
		hours float64
	}{
		{[]Task{task(Throughout, 2), task(Begin, 5)}, 2},
		{[]Task{task(Unattended, 2), task(Begin, 5)}, 2},
		{[]Task{task(Begin, 2), task(Throughout, 1), task(Unattended, 3)}, 3},
		{[]Task{task(Unattended, 2)}, 0},
	} {
		assert.InDelta(t, c.hours, attended(c.chain).Hours(), 1e-9)
	}
}

// A conflict that goes on is one; of other tasks, or after another of its kind, it is a new
// one.
func TestConflictsMerge(t *testing.T) {
	at := func(h int) time.Time { return time.Date(2026, 3, 3, h, 0, 0, 0, time.UTC) }
	crew := func(from, to int, keys ...string) Conflict {
		return Conflict{Kind: Crew, From: at(from), To: at(to), Keys: keys}
	}
	one := merge(nil, crew(7, 8, "a", "b"))
	assert.Equal(t, []Conflict{crew(7, 9, "a", "b")}, merge(one, crew(8, 9, "a", "b")), "the first of all is lengthened")
	two := merge(merge(nil, crew(7, 8, "a", "b")), crew(8, 9, "a", "c"))
	assert.Len(t, two, 2, "other tasks")
	assert.Len(t, merge(two, crew(9, 10, "a", "b")), 3, "another lies between")
	boiler := Conflict{Kind: Boiler, From: at(7), To: at(8), Keys: []string{"a", "b"}}
	assert.Len(t, merge(merge(nil, crew(7, 8, "a", "b")), boiler), 2, "another kind")
	tun := Conflict{Kind: Vessel, Vessel: "Tun", From: at(7), To: at(8), Keys: []string{"a", "b"}}
	still := tun
	still.Vessel = "Still"
	assert.Len(t, merge(merge(nil, tun), still), 2, "another vessel")
}
