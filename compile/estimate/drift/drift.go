// Package drift watches a row of readings, each in standard deviations from where it
// should be, for a small lasting shift: the tabular cumulative sum of Montgomery,
// Introduction to Statistical Quality Control, chapter 9 (and of ISO 7870-4).
package drift

import "math"

// Cusum is a tabular cumulative sum. It grows by what each reading is more than Slack
// away, and signals when it is above Limit; both in standard deviations.
type Cusum struct {
	Slack, Limit float64
}

// Sums are the two sums after a reading, and for how many readings each has been
// above nothing.
type Sums struct {
	Above, Below   float64
	AboveN, BelowN int
}

// Run follows the sums through a row of readings.
func (c Cusum) Run(z []float64) []Sums {
	all := make([]Sums, len(z))
	var s Sums
	for i, x := range z {
		s.Above, s.AboveN = grown(s.Above, s.AboveN, x-c.Slack)
		s.Below, s.BelowN = grown(s.Below, s.BelowN, -x-c.Slack)
		all[i] = s
	}
	return all
}

func grown(sum float64, n int, by float64) (float64, int) {
	if sum += by; sum > 0 {
		return sum, n + 1
	}
	return 0, 0
}

// Shift is a drift that was found.
type Shift struct {
	At    int     // the reading at which it was noticed
	Since int     // the first reading after it began, by the count of the sum
	By    float64 // how far readings have been off since, in standard deviations, with sign
}

// First is the first shift in a row of readings, if there is one.
func (c Cusum) First(z []float64) (Shift, bool) {
	for i, s := range c.Run(z) {
		switch {
		case s.Above > c.Limit:
			return Shift{i, i + 1 - s.AboveN, c.Slack + s.Above/float64(s.AboveN)}, true
		case s.Below > c.Limit:
			return Shift{i, i + 1 - s.BelowN, -c.Slack - s.Below/float64(s.BelowN)}, true
		}
	}
	return Shift{}, false
}

// RunLength is how many readings pass on average until it signals, where all are
// off by so many standard deviations (Siegmund's approximation; Montgomery,
// equations 9.6 and 9.7). At 0 it is the time between false alarms.
func (c Cusum) RunLength(shift float64) float64 {
	return 1 / (1/c.oneSided(shift) + 1/c.oneSided(-shift))
}

func (c Cusum) oneSided(shift float64) float64 {
	const overshoot = 1.166
	d, b := shift-c.Slack, c.Limit+overshoot
	if d == 0 {
		return b * b
	}
	return (math.Exp(-2*d*b) + 2*d*b - 1) / (2 * d * d)
}
