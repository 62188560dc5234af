// Package spelling says how far one word is from another, for "did you mean".
package spelling

import (
	"slices"

	"github.com/agnivade/levenshtein"
)

// Distance counts the typing mistakes that make one word of the other: a
// letter left out, one too many, a wrong one, or two neighbours that changed
// places (cron for corn). Words further apart than a few mistakes get the plain edit
// distance, which counts a change of places as two.
func Distance(a, b string) int {
	const few = 3
	d := levenshtein.ComputeDistance(a, b)
	if d < 2 || d > few {
		return d
	}
	best, letters := d, []rune(a)
	for i := range letters[1:] {
		if letters[i] != letters[i+1] {
			turned := slices.Clone(letters)
			turned[i], turned[i+1] = turned[i+1], turned[i]
			best = min(best, 1+levenshtein.ComputeDistance(string(turned), b))
		}
	}
	return best
}
