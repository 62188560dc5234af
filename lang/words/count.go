// Package words writes lists and counts as one speaks them.
package words

import "strconv"

// Count is a number of things: 1 cask, 2 casks.
func Count(n int, what string) string { return CountOf(n, what, what+"s") }

// CountOf is a number of things whose plural does not take an s alone.
func CountOf(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
