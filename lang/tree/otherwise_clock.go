package tree

import (
	"fmt"
	"newmake/lang/pattern"
	"strconv"
	"strings"
	"time"
)

// Times, days and dates as people write them.
const (
	anyClock = `(?:[0-9]{1,2}(?:[:.]?[0-9]{2})? ?[ap]\.?m\.?|[0-9]{1,2}:?[0-9]{2}|noon)`
	anyDay   = `(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*`
	anyDays  = anyDay + `(?: ?(?:-|to|through|thru) ?` + anyDay + `)?`
	anyMonth = `(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?`
)

// clockParts takes a time of day apart: hours, minutes, and the half of the day.
var clockParts = pattern.Of(`(?i)^([0-9]{1,2}?)[:.]?([0-9]{2})?(?: ?([ap])\.?m\.?)?$`)

// clock24 is a time by the 24-hour clock, or "" of what is no time of day.
func clock24(said string) string {
	said = strings.TrimSpace(said)
	if strings.EqualFold(said, "noon") {
		return "12:00"
	}
	m := clockParts().FindStringSubmatch(said)
	if m == nil {
		return ""
	}
	hour, _ := strconv.Atoi(m[1])
	minute, _ := strconv.Atoi(m[2]) // none is 0
	switch half := strings.ToLower(m[3]); {
	case half != "" && (hour < 1 || hour > 12), 60*hour+minute > 24*60, minute > 59:
		return ""
	case half == "a" && hour == 12:
		hour = 0
	case half == "p" && hour < 12:
		hour += 12
	}
	return fmt.Sprintf("%02d:%02d", hour, minute)
}

// shift writes the line of a shift whose clocks and days were given in another way.
func shift(said []string) string {
	from, to := clock24(said[1]), clock24(said[2])
	if from == "" || to == "" {
		return ""
	}
	line := from + " to " + to
	switch days := strings.ToLower(said[3]); days {
	case "":
		return line
	case "every day", "daily", "all week":
		return line + ", mon to sun"
	case "weekdays":
		return line + ", mon to fri"
	default:
		for part := range strings.SplitSeq(strings.NewReplacer(" and ", ",", "&", ",").Replace(days), ",") {
			if names := dayNames().FindAllString(part, 2); names != nil {
				for i, name := range names {
					names[i] = name[:3]
				}
				line += ", " + strings.Join(names, " to ")
			}
		}
		return line
	}
}

var dayNames = pattern.Of(anyDay)

// dated writes a date, and a time of day if there is one, from the numbers of the parts
// that hold its year, its month, its day and its clock.
func dated(year, month, day, clock int) func(said []string) string {
	return func(said []string) string {
		at := strings.Index("janfebmaraprmayjunjulaugsepoctnovdec", strings.ToLower(said[month])[:3])/3 + 1
		date := fmt.Sprintf("%s-%02d-%s", said[year], at, pad2(said[day]))
		if _, err := time.Parse(time.DateOnly, date); err != nil {
			return "" // there is no such day
		}
		return started([]string{"", date, said[clock]})
	}
}

// started is a date as it is written here, and a time of day that is not.
func started(said []string) string {
	if said[2] == "" {
		return said[1]
	}
	clock := clock24(said[2])
	if clock == "" {
		return ""
	}
	return said[1] + " " + clock
}
