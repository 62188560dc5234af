package main

import (
	"strings"

	"newmake/lang/record"
)

// dayOn is the day of --on; the one that holds without it where nothing is written.
func dayOn(text string, otherwise record.Date) (record.Date, error) {
	if text == "" {
		return otherwise, nil
	}
	d := record.ReadDate(strings.TrimSpace(text))
	if !d.Planned() {
		return record.Date{}, usage("--on is a day, written as year-month-day, 2026-06-30, from %d to %d, not %q", record.FirstYear, record.LastYear, text)
	}
	return d, nil
}
