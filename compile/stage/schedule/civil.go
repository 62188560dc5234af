package schedule

import (
	"fmt"
	"time"
)

// Civil gives the moment at which the clocks of a zone show a date and time.
// When clocks are put forward some times do not exist, and when they are put
// back some come twice: neither is guessed at.
func Civil(year, month, day, hour, minute int, zone *time.Location) (time.Time, error) {
	const layout = "2006-01-02 15:04"
	wanted := fmt.Sprintf("%04d-%02d-%02d %02d:%02d", year, month, day, hour, minute)
	utc := time.Date(year, time.Month(month), day, hour, minute, 0, 0, time.UTC)
	if utc.Format(layout) != wanted {
		return time.Time{}, &noSuchTimeError{Wanted: wanted, Reason: "the calendar has no such date"}
	}
	var found []time.Time
	for _, side := range []time.Duration{-24 * time.Hour, 24 * time.Hour} {
		_, offset := utc.Add(side).In(zone).Zone()
		t := utc.Add(-time.Duration(offset) * time.Second).In(zone)
		if t.Format(layout) == wanted && (len(found) == 0 || !found[0].Equal(t)) {
			found = append(found, t)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return time.Time{}, &noSuchTimeError{Wanted: wanted, Reason: "the clocks are put forward over it"}
	default:
		return time.Time{}, &noSuchTimeError{Wanted: wanted, Twice: true, Reason: "it comes twice, when the clocks are put back"}
	}
}

// noSuchTimeError says why a date and time is not one moment.
type noSuchTimeError struct {
	Wanted string
	Reason string
	Twice  bool
}

func (e *noSuchTimeError) Error() string { return e.Wanted + ": " + e.Reason }
