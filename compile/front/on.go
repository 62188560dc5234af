package front

import (
	"errors"
	"strconv"

	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// onShape is a day as it is asked for, with a time or without.
var onShape = pattern.Of(`^(\d{4}-\d{2}-\d{2})(?: (\d{1,2}):(\d{2}))?$`)

// On moves the batch to another day, written as 2026-03-03, or as 2026-03-03 06:30.
// Without a time it begins at the time at which it would have. "" leaves it where it
// is, which has to be somewhere: a batch that names no day is not planned without
// one.
func (b *Batch) On(day string) error {
	if b.Recipe == nil {
		return nil
	}
	if day == "" {
		if b.Recipe.Start.Assumed {
			return diag.Refuse("%q has no `start`: say for which day, as in --on 2026-03-03", b.Name)
		}
		return nil
	}
	m := onShape().FindStringSubmatch(day)
	if m == nil {
		return diag.Refuse("%q is no day: write it as year-month-day, as in --on 2026-03-03, or --on \"2026-03-03 06:30\"", day)
	}
	d := record.ReadDate(m[1])
	if !d.Planned() {
		return diag.Refuse("there is no day %s: write it as year-month-day, from %d to %d", m[1], record.FirstYear, record.LastYear)
	}
	c := *b.Recipe
	was := c.Start
	c.Start = recipe.Start{Year: d.Year, Month: int(d.Month), Day: d.Day, Hour: was.Hour, Minute: was.Minute}
	if m[2] != "" {
		c.Start.Hour, _ = strconv.Atoi(m[2])
		c.Start.Minute, _ = strconv.Atoi(m[3])
		if c.Start.Hour > 23 || c.Start.Minute > 59 {
			return diag.Refuse("there is no time %s:%s: write it by the 24-hour clock", m[2], m[3])
		}
	}
	if _, err := work.ClockOf(&c); err != nil && !errors.Is(err, work.ErrZone) { // the fault is in what was asked for, not in the text
		return diag.Refuse("%q cannot start at %v; ask for an hour earlier or later, as in --on \"2026-03-03 06:30\"", b.Name, err)
	}
	b.Recipe = &c
	return nil
}
