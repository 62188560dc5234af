package measure

import "newmake/compile/plan"

// A plan's times are written with the plant's own offset, so no time zone is
// needed to show them.

// Clock is a time of a plan as 15:04.
func Clock(rfc3339 string) string { return plan.Moment(rfc3339).Format("15:04") }

// Date is a time's day: Mon 2 Jan 2006.
func Date(rfc3339 string) string { return plan.Moment(rfc3339).Format("Mon 2 Jan 2006") }

// LongDate is a time's day at length: Monday 2 January 2006.
func LongDate(rfc3339 string) string { return plan.Moment(rfc3339).Format("Monday 2 January 2006") }

// DayAndClock is a time with its day: Mon 2 Jan 15:04.
func DayAndClock(rfc3339 string) string { return plan.Moment(rfc3339).Format("Mon 2 Jan 15:04") }

// SameDay reports whether two times are on one day.
func SameDay(a, b string) bool { return Date(a) == Date(b) }
