package weeks

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"newmake/compile/book/season"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// The columns of a picture in characters: the names, and what is left for the days.
const (
	nameCols = 16
	dayCols  = columns.Page - nameCols - 2
)

// timeline is a season as rows of characters, one for each day, or for several days
// where the season is long.
type timeline struct {
	say
	first   time.Time // midnight in UTC, as all days are here
	days    int
	each    int // days a character
	letters map[string]rune
	marks   map[mark]bool // days on which a vessel is in a conflict
}

type mark struct {
	vessel string
	day    int
}

func newTimeline(v say) *timeline {
	t := &timeline{say: v, first: moment(v.s.From), marks: map[mark]bool{}}
	t.days = int(moment(v.s.To).Sub(t.first).Hours()/24) + 1
	t.each = (t.days + dayCols - 1) / dayCols
	t.letters, _ = v.letters()
	for _, c := range v.s.Conflicts {
		for _, m := range c.Tasks {
			if task, ok := v.task(m); ok {
				t.marks[mark{task.Vessel, t.dayOf(c.From)}] = true
			}
		}
	}
	return t
}

// task finds a task of a run.
func (v say) task(m season.Member) (season.Task, bool) {
	for _, r := range v.s.Runs {
		if r.Number != m.Run {
			continue
		}
		for _, t := range r.Tasks {
			if t.Key == m.Key {
				return t, true
			}
		}
	}
	return season.Task{}, false
}

// dayOf is the number of a time's day, from the first of the season.
func (t *timeline) dayOf(at string) int {
	return int(moment(dateOf(at)).Sub(t.first).Hours() / 24)
}

// write writes the rows; those of vessels that nothing is in only where there
// is room.
func (t *timeline) write(w *columns.Writer, o room) {
	w.Line(t.head())
	shown, left, rows := 0, 0, ""
	for _, x := range t.s.Vessels {
		if !o.idle && len(x.Uses) == 0 && len(x.Out) == 0 {
			continue
		}
		if shown == o.vessels {
			left++
			continue
		}
		shown++
		row := t.vessel(x)
		rows += row
		w.Line(columns.Fill(columns.Cut(diag.Safe(x.Name), nameCols), nameCols) + "  " + row)
	}
	if left > 0 {
		w.Line(fmt.Sprintf("and %d more: --full", left))
	}
	w.Line(columns.Fill("people wanted", nameCols) + "  " + t.counted(func(d season.Day) float64 { return float64(d.Wanted) }))
	if t.s.BoilerKW > 0 {
		w.Line(columns.Fill("boiler, tenths", nameCols) + "  " + t.counted(func(d season.Day) float64 { return 10 * d.MostKW / t.s.BoilerKW }))
	}
	_, order := t.say.letters()
	var key []string
	for _, b := range order {
		key = append(key, fmt.Sprintf("%c %s", t.letters[b], diag.Safe(b)))
	}
	line := strings.Join(key, ", ")
	if t.each > 1 {
		line += fmt.Sprintf("; a mark is %s", words.Count(t.each, "day"))
	}
	var marks []string
	for _, m := range []struct {
		said string
		in   func(rune) bool
	}{{"small: the next run", unicode.IsLower}, {"- closed", is('-')}, {"/ out of use", is('/')}, {"! conflict", is('!')}} {
		if strings.ContainsFunc(rows, m.in) {
			marks = append(marks, m.said)
		}
	}
	if len(marks) > 0 {
		line += "; " + strings.Join(marks, ", ")
	}
	w.Para(2, 4, line)
}

func is(mark rune) func(rune) bool { return func(r rune) bool { return r == mark } }

// head names the Mondays.
func (t *timeline) head() string {
	row := []rune(strings.Repeat(" ", dayCols))
	free := 0
	for d := 0; d < t.days; d++ {
		at := t.first.AddDate(0, 0, d)
		if at.Weekday() != time.Monday && d > 0 || t.each > 1 && d > 0 && at.Day() > 7 {
			continue
		}
		label := []rune(at.Format("2 Jan"))
		col := d / t.each
		if col < free || col+len(label) > dayCols {
			continue
		}
		if next := 7 - (int(at.Weekday())+6)%7; d == 0 && t.each == 1 && next <= len(label) { // the first Monday would be lost
			continue
		}
		copy(row[col:], label)
		free = col + len(label) + 1
	}
	return strings.Repeat(" ", nameCols+2) + strings.TrimRight(string(row), " ")
}

// vessel is the row of a vessel. Runs that follow one another are told apart by large
// and small letters.
func (t *timeline) vessel(x season.Vessel) string {
	row := make([]rune, (t.days+t.each-1)/t.each)
	hours := make([]float64, len(row))
	for i := range row {
		row[i] = '.'
	}
	put := func(from, to string, r rune) {
		a, b := moment(from), moment(to)
		for i := range row {
			// the day by the wall clock of the time itself
			y, m, d := t.first.AddDate(0, 0, i*t.each).Date()
			begin := time.Date(y, m, d, 0, 0, 0, 0, a.Location())
			end := begin.AddDate(0, 0, t.each)
			h := minTime(b, end).Sub(maxTime(a, begin)).Hours()
			if h > 0 && h > hours[i] {
				row[i], hours[i] = r, h
			}
		}
	}
	for _, d := range t.s.Days {
		if i := t.dayOf(d.Date) / t.each; d.Closed && i >= 0 && i < len(row) {
			row[i] = '-'
		}
	}
	small, last := false, ""
	for _, u := range x.Uses {
		if u.Cleaning {
			continue
		}
		if last != "" && last != u.Run {
			small = !small
		}
		last = u.Run
		r := t.letters[u.Batch]
		if r == 0 {
			r = '?'
		}
		if small {
			r = unicode.ToLower(r)
		}
		put(u.From, u.To, r)
	}
	for _, o := range x.Out {
		for i := range row {
			d := t.first.AddDate(0, 0, i*t.each).Format(time.DateOnly)
			if hours[i] == 0 && dateOf(o.From) <= d && d <= dateOf(o.To) && !(len(o.To) > len(time.DateOnly) && strings.HasPrefix(o.To, d+"T00:00")) {
				row[i] = '/'
			}
		}
	}
	for _, u := range x.Uses {
		if i := t.dayOf(u.From) / t.each; u.Conflict && i >= 0 && i < len(row) {
			row[i] = '!'
		}
	}
	for m := range t.marks {
		if i := m.day / t.each; m.vessel == x.Name && m.day >= 0 && i < len(row) {
			row[i] = '!'
		}
	}
	return string(row)
}

// counted is a row of digits, the most of each day.
func (t *timeline) counted(of func(season.Day) float64) string {
	most := make([]float64, (t.days+t.each-1)/t.each)
	for _, d := range t.s.Days {
		if i := t.dayOf(d.Date) / t.each; i >= 0 && i < len(most) {
			most[i] = max(most[i], of(d))
		}
	}
	var b strings.Builder
	for _, n := range most {
		switch {
		case n <= 0:
			b.WriteByte('.')
		case n > 9.5:
			b.WriteByte('#')
		default:
			fmt.Fprintf(&b, "%.0f", max(n, 1))
		}
	}
	return b.String()
}

func minTime(a, b time.Time) time.Time {
	if a.Before(b) {
		return a
	}
	return b
}

func maxTime(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}
