package main

import (
	"time"

	"newmake/lang/record"
)

// dayOn is the day of --on; the one that holds without it where nothing is written.
func dayOn(text string, otherwise record.Date) (record.Date, error) {
	if text == "" {
		return otherwise, nil
	}
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return record.Date{}, usage("--on is a day, written 2026-06-30, not %q", text)
	}
	return record.DateOf(t), nil
}
