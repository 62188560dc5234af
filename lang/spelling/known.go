package spelling

import (
	"slices"
	"strings"
)

// alsoCalled has words of the trade for which the language has another, so that
// whoever writes one is told the other. It is no part of the language.
var alsoCalled = map[string]string{
	"maize": "corn", "milo": "sorghum", "washback": "fermenter", "mash-tun": "cooker",
	"pot-still": "still", "receiver": "tank", "barrel": "cask", "mashbill": "bill", "mash-bill": "bill", "grist": "bill", "grain-bill": "bill",
	"temperature": "hold", "temp": "hold", "duration": "for", "time": "for", "yeast": "pitch", "liquor": "water",
	"stillage": "backset", "setback": "backset", "enzyme": "dose", "strength": "entry",
	"style": "standard", "expect": "promise", "og": "original-gravity", "fg": "final-gravity",
	"corn-meal": "corn", "cornmeal": "corn", "cracked-corn": "corn",
	"malted-rye": "rye-malt", "malted-wheat": "wheat-malt",
	"malted-oats":     "oat-malt",
	"champagne-yeast": "sparkling-wine-yeast",
	"altitude":        "elevation", "capacity": "holds", "volume": "holds", "size": "holds", "staff": "crew", "hours": "shift", "power": "heats",
}

// likely has words that say less than the language does, or other: barley is malted
// in many ways, oak is charred or not, a kettle cooks or boils wash, and flakes were
// steamed and rolled. What was meant, only who wrote it knows.
var likely = map[string]string{
	"malted-barley": "two-row-malt", "barley-malt": "two-row-malt", "pale-malt": "two-row-malt",
	"american-oak": "charred-oak", "new-american-oak": "charred-oak",
	"kettle": "cooker", "tun": "cooker", "hold": "rest", "steep": "rest",
	"flaked-corn": "corn", "flaked-maize": "corn", "flaked-oats": "oats", "rolled-oats": "oats", "flaked-barley": "barley", "flaked-rye": "rye", "flaked-wheat": "wheat",
}

// zones has what people of the United States call their zones, with the name in
// the IANA database: its cities say when the clocks change, and letters do not.
var zones = map[string]string{
	"eastern": "America/New_York", "est": "America/New_York", "edt": "America/New_York", "et": "America/New_York", "new york": "America/New_York",
	"central": "America/Chicago", "cst": "America/Chicago", "cdt": "America/Chicago", "ct": "America/Chicago", "chicago": "America/Chicago",
	"mountain": "America/Denver", "mst": "America/Denver", "mdt": "America/Denver", "mt": "America/Denver", "denver": "America/Denver",
	"pacific": "America/Los_Angeles", "pst": "America/Los_Angeles", "pdt": "America/Los_Angeles", "pt": "America/Los_Angeles", "los angeles": "America/Los_Angeles",
}

// Zone gives the name in the IANA database of a zone that is called otherwise, or
// "".
func Zone(said string) string {
	return zones[strings.TrimSpace(strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(said), "us "), "time"))]
}

// Called gives the known word that the trade also calls by another, or "".
func Called(word string, known []string) string {
	if other := alsoCalled[strings.ToLower(word)]; slices.Contains(known, other) {
		return other
	}
	return ""
}

// Likely gives the known word that another may have meant, or "".
func Likely(word string, known []string) string {
	if other := likely[strings.ToLower(word)]; slices.Contains(known, other) {
		return other
	}
	return ""
}

// Holding lists the known names that have a word in them, or all words of a name: malt is
// in distillers-malt and rye-malt, single-malt in scotch-single-malt.
func Holding(word string, known []string) []string {
	var out []string
	said := parts(word)
	for _, k := range known {
		within := parts(k)
		if len(said) > 0 && !slices.Contains(out, k) && !slices.ContainsFunc(said, func(s string) bool { return !slices.Contains(within, s) }) {
			out = append(out, k)
		}
	}
	return out
}

// parts are the words of a name, in small letters.
func parts(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == '-' || r == ' ' || r == ',' })
}

// Shortened gives the known word of three letters that a longer one begins with, or "":
// aug for August, tue for Tuesday.
func Shortened(word string, known []string) string {
	lower := strings.ToLower(word)
	for _, k := range known {
		if len(k) == 3 && len(lower) > 3 && strings.HasPrefix(lower, k) {
			return k
		}
	}
	return ""
}

// MostOffered is how many names are offered for one that is not known.
const MostOffered = 8

// Nearest gives the candidate that a misspelt word most likely stood for, or "".
// One slip in a short word, two in a longer one; ties go to the first. Among more
// names than any house has it does not look.
func Nearest(word string, candidates []string) string {
	if word == "" || len(word) > 60 || len(candidates) > 2000 {
		return ""
	}
	limit := 1
	if len(word) > 5 {
		limit = 2
	}
	best, dist := "", limit+1
	lower := strings.ToLower(word)
	for _, c := range candidates {
		if d := len(c) - len(word); d > limit || d < -limit {
			continue
		}
		d := Distance(lower, strings.ToLower(c))
		if d < dist && d < len(c) {
			best, dist = c, d
		}
	}
	return best
}
