package wording

import (
	"slices"
	"strings"
)

// More is what a line of the records is completed with. What is "" stays as it is.
type More struct {
	Readings []string // `__ gal`, `__ proof at __ F`
	Lot      string   // in quotes, as From and To
	From, To string
	Remark   string // where the line has none
}

// Completed is a line of the records with more in it, each where the language has it: readings
// after those that stand there, then lot, from and to, who wrote it, the remark, and when.
func Completed(line string, more More) string {
	items := itemsOf(line)
	lead := leadOf(items)
	end := lead // of the readings
	for end < len(items) && !(items[end] == "of" && slices.Contains(items[:lead], "lost")) && !slices.Contains([]string{"lot", "from", "to", "by", "written"}, items[end]) && !strings.HasPrefix(items[end], `"`) && !beginsEnd(items, end) {
		end++
	}
	out := slices.Clone(items[:lead])
	for _, reading := range parted(items[lead:end]) {
		if len(out) > lead {
			out = append(out, ",")
		}
		out = append(out, reading...)
	}
	for _, r := range more.Readings {
		if len(out) > lead {
			out = append(out, ",")
		}
		out = append(out, r)
	}
	rest := items[end:]
	for _, p := range []struct{ word, name string }{{"lot", more.Lot}, {"from", more.From}, {"to", more.To}} {
		own, left := taken(rest, p.word)
		if rest = left; p.name != "" {
			own = []string{p.word, p.name}
		}
		out = append(out, own...)
	}
	by, rest := taken(rest, "by")
	if out = append(out, by...); more.Remark != "" && !slices.ContainsFunc(rest, func(s string) bool { return strings.HasPrefix(s, `"`) }) {
		out = append(out, more.Remark)
	}
	return strings.ReplaceAll(strings.Join(append(out, rest...), " "), " ,", ",")
}

// Head is a line of the records as it begins, before its readings: its day and clock, its word and
// what the word names.
func Head(line string) string {
	items := itemsOf(line)
	return strings.Join(items[:leadOf(items)], " ")
}

// itemsOf parts a line at its spaces and commas; what is in quotes stays whole.
func itemsOf(line string) []string {
	var out []string
	for line = strings.TrimSpace(line); line != ""; line = strings.TrimSpace(line) {
		end := strings.IndexAny(line, " \t,")
		switch {
		case line[0] == '"':
			if end = strings.IndexByte(line[1:], '"') + 2; end < 2 {
				end = len(line)
			}
		case end < 0:
			end = len(line)
		case end == 0:
			end = 1
		}
		out, line = append(out, line[:end]), line[end:]
	}
	return out
}

// parted parts readings at their commas. A label without a value is dropped.
func parted(items []string) [][]string {
	var out [][]string
	for len(items) > 0 {
		end := slices.Index(items, ",")
		if end < 0 {
			end = len(items)
		}
		if slices.ContainsFunc(items[:end], func(s string) bool { return s == "none" || strings.ContainsAny(s[:1], "0123456789.-") }) {
			out = append(out, items[:end])
		}
		items = items[min(end+1, len(items)):]
	}
	return out
}

// leadOf is where the readings of a line begin: after its day and clock, its word, and what the
// word names.
func leadOf(items []string) int {
	i := 0
	for i < len(items) && items[i] != "" && (items[i][0] >= '0' && items[i][0] <= '9' || slices.Contains([]string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}, items[i])) {
		i++
	}
	if i == len(items) {
		return i
	}
	word := items[i]
	i++
	next := func(is ...string) bool { return i < len(items) && slices.Contains(is, items[i]) }
	switch word {
	case "from", "into":
		if next("vat", "tank", "run") {
			i++
		}
		i = min(i+1, len(items)) // its name
		if next("part") {
			i++
		}
	case "charge":
		if next("low-wines", "feints", "water", "wash") {
			i++
		}
	}
	return i
}

// beginsEnd reports whether a comma is the one before `written`.
func beginsEnd(items []string, i int) bool {
	return items[i] == "," && i+1 < len(items) && items[i+1] == "written"
}

// taken takes a word and the name behind it out of what a line ends in.
func taken(items []string, word string) (own, left []string) {
	i := slices.Index(items, word)
	if i < 0 {
		return nil, items
	}
	to := i + 1
	if to < len(items) && items[to] == "run" {
		to++
	}
	to = min(to+1, len(items))
	return items[i:to], slices.Concat(items[:i], items[to:])
}
