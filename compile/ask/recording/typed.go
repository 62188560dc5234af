package recording

import (
	"strings"

	"newmake/compile/measure"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/quantity"
	"newmake/lang/record"
	"newmake/lang/words"
)

// What a person types for a line: when it was, then the values in the order in which
// they are asked for, parted by spaces, or by commas and spaces; `-` for one that is left
// open, `none` for one that was not read; at the end where it went or came from, who, and a remark
// in quotes:
//
//	10:04 191
//	wed 09:00 1.034 at 68, 87, 3.9 "smells of apples"
//	16:00 54 63.5 to "Small tank"
//	none
//
// Units are those that stand beside the blanks, where no other is typed.

var (
	typedClock  = pattern.Of(`^\d{1,2}:\d{2}(:\d{2})?$`)
	typedPlace  = pattern.Of(`(?:^|[\s,])(?:to|from)\s+"[^"]+"`)
	typedOffset = pattern.Of(`^[+-]\d{2}:\d{2}$`)
	typedDate   = pattern.Of(`^\d{4}-\d{2}-\d{2}$`)
	dottedClock = pattern.Of(`^([01]?\d|2[0-3])\.([0-5]\d)$`)
	isNumber    = pattern.Of(`^-?[0-9][0-9,]*(\.[0-9]+)?$`)
	beginsValue = pattern.Of(`^(-?[0-9].*|none|about|-)$`)
)

// Fill is the page with what was typed for one of its lines. The error says what is
// wrong with it, and nothing has changed then.
func (p *Page) Fill(l Line, typed string) (*Page, error) {
	t, err := parse(typed)
	if err != nil {
		return nil, err
	}
	return p.fill(l, t)
}

func (p *Page) fill(l Line, t typed) (*Page, error) {
	if t.clock != "" && !l.Timed {
		return nil, diag.Refuse("this line takes no time: type the value alone")
	}
	if t.whole && len(l.Blanks) > 0 {
		t.values = make([]string, len(l.Blanks))
		for i := range t.values {
			t.values[i] = "none"
		}
	}
	switch n := len(t.values); {
	case n > len(l.Blanks):
		if m := dottedClock().FindStringSubmatch(t.values[0]); m != nil && n == len(l.Blanks)+1 {
			return nil, diag.Refuse("a clock is written %s:%s", m[1], m[2])
		}
		return nil, diag.Refuse("%d values were typed for %s: part them by commas, and leave one open with -", n, words.CountOf(len(l.Blanks), "blank", "blanks"))
	case n == 0 && t.clock == "" && t.tail == "":
		return nil, diag.Refuse("type a value, or none")
	}
	var edits []edit
	if t.tail != "" {
		edits = append(edits, edit{l.At.End, l.At.End, " " + t.tail})
	}
	for i := len(t.values) - 1; i >= 0; i-- {
		room := l.Blanks[i]
		if t.values[i] == "-" {
			continue
		}
		text := p.value(l, room, t.values[i])
		if room.At.Start == room.At.End { // a weight: it stands behind its name
			text = " " + text
		}
		edits = append(edits, edit{room.At.Start, room.At.End, text})
	}
	if t.day != "" || t.clock != "" {
		edits = append(edits, p.when(l, t))
	}
	return p.with(inOrder(edits))
}

// inOrder sorts changes from the last to the first; a remark goes behind a value at
// the same place.
func inOrder(edits []edit) []edit {
	for i := 1; i < len(edits); i++ {
		for j := i; j > 0 && edits[j].start > edits[j-1].start; j-- {
			edits[j], edits[j-1] = edits[j-1], edits[j]
		}
	}
	return edits
}

// when is the change that puts a time before a line. A day that is typed takes the
// place of the one that stands there.
func (p *Page) when(l Line, t typed) edit {
	start := l.At.Start
	first, _, _ := strings.Cut(string(p.Text[start:l.At.End]), " ")
	dayed := typedDate().MatchString(first) || lang.IsDay(first)
	e := edit{start: start, end: start}
	switch {
	case dayed && t.day != "":
		e.end = start + len(first)
		e.text = strings.TrimSpace(t.day + " " + t.clock)
	case dayed:
		e.start += len(first)
		e.end = e.start
		e.text = " " + t.clock
	default:
		e.text = strings.TrimSpace(t.day+" "+t.clock) + " "
	}
	return e
}

// value is a value as it is written for a blank: with its unit, and with its word
// where the unit names another.
func (p *Page) value(l Line, r Room, text string) string {
	label := string(r.Kind)
	if text == "none" {
		if r.At.Start == r.At.End {
			return text
		}
		return label + " none"
	}
	value, at, sampled := strings.Cut(text, " at ")
	about := ""
	if rest, ok := strings.CutPrefix(value, "about "); ok {
		about, value = "about ", rest
	}
	if percent, ok := strings.CutSuffix(value, "%"); ok && (r.Kind == record.Strength || r.Kind == record.Spout) {
		if percent = strings.TrimSpace(percent); isNumber().MatchString(percent) { // of a strength no other is meant
			value = percent + " " + map[bool]string{true: "% vol", false: "% abv"}[p.units == measure.SI]
		}
	}
	if isNumber().MatchString(value) {
		value += " " + p.Unit(r)
	}
	out := about + value
	if sampled {
		if isNumber().MatchString(at) {
			at += map[bool]string{true: " C", false: " F"}[p.units == measure.SI]
		}
		out += " at " + at
	}
	if r.At.Start == r.At.End {
		return out
	}
	unit := strings.TrimLeft(strings.TrimPrefix(value, strings.Fields(value + " ")[0]), " ")
	if u, ok := quantity.Lookup(unit); ok && record.Named(l.stage, l.word, u.Measures[0].Kind) == r.Kind {
		return out
	}
	return label + " " + out
}

// typed is what was typed, in its parts.
type typed struct {
	day, clock string
	values     []string
	whole      bool   // `none` and nothing else
	tail       string // who, and a remark
}

func parse(text string) (t typed, err error) {
	place := ""
	if at := typedPlace().FindStringSubmatchIndex(text); at != nil && !strings.Contains(text[:at[0]], `"`) { // in a remark it is none
		place = strings.Trim(text[at[0]:at[1]], " \t,")
		text = text[:at[0]] + " " + text[at[1]:]
	}
	defer func() { t.tail = strings.TrimSpace(place + " " + t.tail) }()
	if head, remark, quoted := strings.Cut(text, `"`); quoted {
		body, rest, closed := strings.Cut(remark, `"`)
		if !closed || strings.TrimSpace(rest) != "" {
			return t, diag.Refuse("a remark stands at the end, in quotes")
		}
		text, t.tail = head, quotedRemark(body)
	}
	if text, err = parted(text); err != nil {
		return t, err
	}
	words := strings.Fields(text)
	if len(words) > 0 && (typedDate().MatchString(words[0]) || lang.IsDay(words[0])) {
		t.day, words = words[0], words[1:]
	}
	if len(words) > 0 && typedClock().MatchString(words[0]) {
		t.clock, words = words[0], words[1:]
		if len(words) > 0 && typedOffset().MatchString(words[0]) {
			t.clock, words = t.clock+" "+words[0], words[1:]
		}
	}
	if n := len(words); n >= 2 && words[n-2] == "by" {
		t.tail = strings.TrimSpace("by " + quotedRemark(words[n-1]) + " " + t.tail)
		words = words[:n-2]
	}
	open := false // an item is at hand
	for i, w := range words {
		if strings.EqualFold(w, "ph") && i+1 < len(words) && isNumber().MatchString(words[i+1]) {
			continue // a pH is said with its word first or behind
		}
		held := i > 0 && (words[i-1] == "at" || words[i-1] == "about")
		switch {
		case w == ",":
			open = false
		case !open || beginsValue().MatchString(w) && !held:
			t.values, open = append(t.values, w), true
		default:
			t.values[len(t.values)-1] += " " + w
		}
	}
	t.whole = len(t.values) == 1 && t.values[0] == "none"
	return t, nil
}

func quotedRemark(s string) string { return quoted(strings.Trim(s, `"`)) }

// parted puts spaces round the commas that part values, and leaves those that part
// the thousands of a number. A comma that a digit follows at once may be meant for the
// decimal mark: 64,5 is refused, for two values that nobody read would be kept.
func parted(text string) (string, error) {
	var b strings.Builder
	for text != "" {
		at := numbers().FindStringIndex(text)
		if at == nil {
			break
		}
		before, number := text[:at[0]], text[at[0]:at[1]]
		b.WriteString(strings.ReplaceAll(before, ",", " , "))
		text = text[at[1]:]
		if strings.HasSuffix(before, ":") { // a clock ends before its comma
			if minutes, rest, more := strings.Cut(number, ","); more {
				number, text = minutes, ","+rest+text
			}
		}
		if strings.Contains(number, ",") && !thousands().MatchString(number) {
			return "", twoReadings(number)
		}
		b.WriteString(number)
	}
	b.WriteString(strings.ReplaceAll(text, ",", " , "))
	return b.String(), nil
}

// twoReadings refuses a number with a comma that may be a decimal mark, or part two values.
func twoReadings(number string) error {
	values := strings.Split(number, ",")
	two, decimal := strings.Join(values, ", "), strings.Join(values, ".")
	const rule = "the point is the decimal mark, and a comma that parts two values has a space behind it"
	switch {
	case len(values) > 2:
		return diag.Refuse("`%s` can be read in more than one way: %s", number, rule)
	case strings.Contains(number, "."):
		return diag.Refuse("`%s` has a comma and a point: %s, as in `%s`", number, rule, two)
	}
	return diag.Refuse("`%s` can be read in two ways, %s or %s: write `%s` if the comma is a decimal mark, and `%s` if it parts two values", number, decimal, two, decimal, two)
}

var (
	numbers   = pattern.Of(`\d(?:[\d.,]*\d)?`)
	thousands = pattern.Of(`^[1-9]\d{0,2}(,\d{3})+(\.\d+)?$`) // as the language reads them
)
