package lang

// Days are the days of the week as they are written, Sunday first as in package time.
var Days = [...]string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

// IsDay reports whether a word is a day of the week.
func IsDay(word string) bool {
	for _, d := range Days {
		if d == word {
			return true
		}
	}
	return false
}
