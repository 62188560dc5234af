package cask

import (
	"math"

	"newmake/lang/record"
)

// sampleMonths is how often a cask is sampled (common practice: twice a year).
const sampleMonths = 6

const (
	dayS   = 86400
	monthS = YearS / 12
	// whole is how near to whole months a rest is that is counted on the calendar: a day
	// of a year of 365 days is a thirtieth of a month.
	whole = 0.04
)

// restMonths is a rest in months; whole says that it is one of whole months.
func restMonths(restS float64) (n int, isWhole bool) {
	m := restS / monthS
	n = int(math.Round(m))
	return n, n > 0 && math.Abs(m-float64(n)) < whole
}

// RestOver is the day on which a rest is over: on the calendar where it is one of whole
// months, after so many days where it is not.
func RestOver(filled record.Date, restS float64) record.Date {
	if n, ok := restMonths(restS); ok {
		return filled.Months(n)
	}
	return filled.After(int(math.Round(restS / dayS)))
}

// Sampling is a day on which a cask is sampled.
type Sampling struct {
	On     record.Date
	Months int // since it was filled, about
}

// Samplings are the days on which a cask is sampled: twice a year from its filling, by the
// calendar, and at the end of its rest. Plan, calendar, today and cellar count by it.
func Samplings(filled record.Date, restS float64) []Sampling {
	var out []Sampling
	end := RestOver(filled, restS)
	for n := sampleMonths; ; n += sampleMonths {
		day := filled.Months(n)
		if day.Compare(end) >= 0 {
			months, _ := restMonths(restS)
			return append(out, Sampling{end, months})
		}
		out = append(out, Sampling{day, n})
	}
}

// NextSampling is the day of the next sample of a cask that was last sampled on a day, or
// filled then: the first that lies more than half the time between two after it. One that
// is still in wood after its rest is sampled on.
func NextSampling(filled, last record.Date, restS float64) record.Date {
	after := last.Months(sampleMonths / 2)
	if restS > 0 {
		for _, s := range Samplings(filled, restS) {
			if s.On.Compare(after) > 0 || last == filled {
				return s.On
			}
		}
	}
	for n := sampleMonths; ; n += sampleMonths {
		if day := filled.Months(n); day.Compare(after) > 0 {
			return day
		}
	}
}

// SampledFor reports whether a cask that was sampled on a day need not be again on the day that its
// lot is due: it was within half the time between two before it, or after it. A zero day is never.
func SampledFor(due, sampled record.Date) bool {
	return !sampled.IsZero() && sampled.Compare(due.Months(-sampleMonths/2)) > 0
}

// ShareOfYear is how much of a year is over on a day.
func ShareOfYear(on record.Date) float64 {
	first := record.Date{Year: on.Year, Month: 1, Day: 1}
	return float64(first.DaysTo(on)) * dayS / YearS
}
