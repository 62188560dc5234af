package lang

import (
	"fmt"
	"strconv"
	"strings"

	"newmake/lang/diag"
)

// parseNumber parses a number or a range, with its unit, of which t is the
// first token.
func parseNumber(lex *cursor, t piece) (Item, *fault) {
	start, end := t.start, t.start+len(t.text)
	item := Item{Kind: Number, At: diag.Span{Start: start, End: end}, Num: t.text}
	var f *fault
	if item.Value, f = numberValue(t.text, start); f != nil {
		return item, f
	}
	if lex.peek().kind != TokRange {
		if f := stuckToNumber(*lex, t.text, start, end); f != nil {
			if d := dateOtherwise(*lex, t); d != nil {
				f = d
			}
			return item, f
		}
		takeUnit(lex, &item)
		if lex.peek().kind != TokRange || item.Unit == "" {
			return item, nil
		}
		return item, unitTwice(lex, &item)
	}
	dots := lex.next()
	item.Kind = Range
	high := lex.peek()
	if high.kind != TokNumber {
		at := dots.start
		return item, &fault{code: diag.CodeBadRange, start: at, end: at + len(dots.text),
			summary: "a range needs a number after `..`", help: "write a range as `78..88 F`"}
	}
	lex.next()
	if item.High, f = numberValue(high.text, high.start); f != nil {
		return item, f
	}
	item.At.End = high.start + len(high.text)
	item.Num += ".." + high.text
	takeUnit(lex, &item)
	return item, nil
}

// unitTwice is the fault of `78 F..88 F`, with the edit that mends it if both
// units are the same.
func unitTwice(lex *cursor, item *Item) *fault {
	dots := lex.next()
	f := &fault{code: diag.CodeBadRange, start: int(item.unitAt), end: item.At.End,
		summary: "a range has one unit, after its second number",
		help:    fmt.Sprintf("write `%s..` and the unit once at the end", item.Num)}
	if high := lex.peek(); high.kind == TokNumber {
		lex.next()
		second := Item{At: diag.Span{Start: high.start, End: high.start + len(high.text)}}
		takeUnit(lex, &second)
		if second.Unit == item.Unit {
			f.help = fmt.Sprintf("write `%s..%s %s`", item.Num, high.text, item.Unit)
			f.fix = &edit{start: item.At.Start + len(item.Num), end: dots.start, text: "", label: "take the first unit out"}
		}
	}
	return f
}

// stuckToNumber finds what can't follow a number without a space: a second
// number behind a hyphen, or a name that begins with a digit.
func stuckToNumber(lex cursor, num string, start, end int) *fault {
	next := lex.peek()
	if next.start != end {
		return nil
	}
	switch next.kind {
	case TokNumber:
		if !strings.HasPrefix(next.text, "-") {
			break // cannot be: the lexer would have gone on
		}
		high := next.text[1:]
		if len(high) > 1 && high[0] == '0' && !strings.ContainsAny(high, ".,") { // nobody counts so
			return nameFault(num+next.text, start)
		}
		lex.next()
		both := Item{Num: num + ".." + high}
		takeUnit(&lex, &both)
		f := &fault{code: diag.CodeBadRange, start: start, end: end + len(next.text),
			summary: "a hyphen does not make a range",
			help:    fmt.Sprintf("write `%s`", strings.TrimSpace(both.Num+" "+both.Unit)),
			fix:     &edit{start: end, end: end + 1, text: "..", label: fmt.Sprintf("write `%s`", both.Num)}}
		if from, to := hourOf(num), hourOf(high); from != "" && to != "" && both.Unit == "" {
			f.help = fmt.Sprintf("of hours write `%s to %s`, and of anything else `%s` with its unit", from, to, both.Num)
			f.fix.guess = true
		}
		return f
	case TokWord:
		if len(next.text) > 1 && strings.Trim(next.text[1:], "-0123456789") == "" && (next.text[0] == 'e' || next.text[0] == 'E') {
			text := num + next.text
			return &fault{code: diag.CodeBadNumber, start: start, end: end + len(next.text),
				summary: fmt.Sprintf("`%.20s` is a number with an exponent, which is not read", text),
				help:    "write the number out: 1,500 for 1.5e3, 0.002 for 2e-3; if it is a name, put it in quotes"}
		}
		if digitsWithin(next.text) {
			return nameFault(num+next.text, start)
		}
	case TokBad:
		if next.text == "-" {
			return &fault{code: diag.CodeBadNumber, start: start, end: end + 1,
				summary: "a name cannot begin with a digit",
				help:    "put the name in quotes, or begin it with a letter, as in `two-row`"}
		}
	}
	return nil
}

// nameFault is the fault of a name that begins with a digit: the number of a run, the
// foot of a sheet.
func nameFault(name string, start int) *fault {
	return &fault{code: diag.CodeBadNumber, start: start, end: start + len(name),
		summary: fmt.Sprintf("`%.40s` begins with a digit, and is no number", name),
		help:    "put a name that begins with a digit in quotes: `\"" + name + "\"`",
		fix:     &edit{start: start, end: start + len(name), text: `"` + name + `"`, label: "put it in quotes", guess: true}}
}

// digitsWithin reports whether a word has digits in it as no unit has: m3 is one, and 1h30
// is a time.
func digitsWithin(word string) bool {
	trailing := len(word)
	for trailing > 0 && class[word[trailing-1]]&isDigit != 0 {
		trailing--
	}
	return len(word)-trailing > 1 && word[0] >= 'A' && word[0] <= 'Z' || strings.ContainsAny(word[:trailing], "0123456789")
}

// dateOtherwise finds a date with its year last. Only the author knows which of the first
// two numbers is the month, so the message names both dates where both are possible.
func dateOtherwise(lex cursor, t piece) *fault {
	second := lex.peek()
	lex.next()
	year := lex.peek()
	a, errA := strconv.Atoi(t.text)
	b, errB := strconv.Atoi(strings.TrimPrefix(second.text, "-"))
	y, errY := strconv.Atoi(strings.TrimPrefix(year.text, "-"))
	if errA != nil || errB != nil || errY != nil || len(year.text) != len("-2026") || year.start != second.start+len(second.text) || a < 1 || b < 1 || a > 31 || b > 31 {
		return nil
	}
	end := year.start + len(year.text)
	f := &fault{code: diag.CodeBadDate, start: t.start, end: end, summary: "a date is written year-month-day"}
	monthFirst, dayFirst := fmt.Sprintf("%04d-%02d-%02d", y, a, b), fmt.Sprintf("%04d-%02d-%02d", y, b, a)
	switch {
	case a > 12:
		monthFirst = dayFirst
	case b > 12:
		dayFirst = monthFirst
	}
	if f.help = fmt.Sprintf("write `%s`", monthFirst); monthFirst == dayFirst {
		f.fix = &edit{start: t.start, end: end, text: monthFirst, label: f.help}
		return f
	}
	f.help += fmt.Sprintf(", or `%s`: only you know which is the month", dayFirst)
	return f
}

// takeUnit takes the unit after a number, if there is one, into the item.
func takeUnit(lex *cursor, item *Item) {
	t := lex.peek()
	switch t.kind {
	case TokUnit:
	case TokWord:
		if IsConnective(t.text) {
			return
		}
	default:
		return
	}
	lex.next()
	item.Unit = t.text
	item.unitAt = int32(t.start)
	item.At.End = t.start + len(t.text)
	if joined, end := compoundUnit(lex, t.text); end > 0 {
		item.Unit, item.At.End = joined, end
	}
}

// compounds are the units of more than one word: first, rest, as one.
var compounds = []struct{ first, second, third, unit string }{
	{"%", "abv", "", "% abv"},
	{"%", "abw", "", "% abw"},
	{"%", "vol", "", "% vol"},
	{"%", "of", "grain", "% of grain"},
	{"fl", "oz", "", "fl oz"},
	{"imp", "gal", "", "imp gal"},
	{"proof", "gal", "", "proof gal"},
	{"proof", "gallon", "", "proof gal"},
	{"proof", "gallons", "", "proof gal"},
	{"°", "F", "", "°F"},
	{"°", "C", "", "°C"},
	{"º", "F", "", "ºF"},
	{"º", "C", "", "ºC"},
}

// compoundUnit takes the further words of a unit that has them, and says where
// they end, 0 if there are none.
func compoundUnit(lex *cursor, first string) (unit string, end int) {
	next := lex.peek()
	if next.kind != TokWord {
		return "", 0
	}
	for i := range compounds {
		c := &compounds[i]
		if c.first != first || c.second != next.text {
			continue
		}
		before := *lex
		lex.next()
		if c.third == "" {
			return c.unit, next.end()
		}
		if third := lex.peek(); third.text == c.third {
			lex.next()
			return c.unit, third.end()
		}
		*lex = before
	}
	return "", 0
}

// IsConnective reports whether a word joins the parts of a statement. After a
// number such a word is not its unit: `3 days`, but `3 at`.
func IsConnective(word string) bool {
	switch word {
	case "to", "at", "of", "from", "in", "for", "with", "and", "any", "on", "within",
		"new", "used", "over", "by", "until", "as", "plus", "than", "least", "most", "per", "into", "none", "about", "lot":
		return true
	}
	return false
}

// numberValue reads a number as written. The decimal mark is a point; commas
// may only part thousands, so that nobody's 1,3 is read as thirteen.
func numberValue(text string, at int) (float64, *fault) {
	digits := strings.TrimPrefix(text, "-")
	whole, frac, _ := strings.Cut(digits, ".")
	commas := strings.Contains(whole, ",")
	switch {
	case digits[0] == '.':
		full := strings.Replace(text, ".", "0.", 1)
		f := numberFault(text, at, "`%s` has no digit before its point", fmt.Sprintf("write `%s`", full))
		f.fix = &edit{start: at, end: at + len(text), text: full, label: f.help}
		return 0, f
	case strings.ContainsAny(frac, ".,"):
		return 0, numberFault(text, at, "`%s` has more than one decimal mark",
			"the point is the decimal mark, and commas part thousands: write 1,300.5 or 1300.5")
	case commas && !properGroups(whole):
		f := numberFault(text, at, "`%s` can be read in two ways",
			"the point is the decimal mark (1.3), and a comma only parts groups of three digits (1,300)")
		if decimal := withPoint(text); decimal != "" {
			f.help = fmt.Sprintf("write `%s` if the comma is a decimal mark: %s", decimal, f.help)
			f.fix = &edit{start: at, end: at + len(text), text: decimal, label: fmt.Sprintf("write `%s`", decimal), guess: true}
		}
		return 0, f
	}
	clean := text
	if commas {
		clean = strings.ReplaceAll(text, ",", "")
	}
	v, err := strconv.ParseFloat(clean, 64)
	if err != nil {
		return 0, numberFault(clean, at, "the number `%.20s...` is too large", "write a number that a distillery could mean")
	}
	return v, nil
}

func numberFault(text string, at int, format, help string) *fault {
	return &fault{code: diag.CodeBadNumber, start: at, end: at + len(text), summary: fmt.Sprintf(format, text), help: help}
}

// properGroups reports whether commas part a whole number in threes.
func properGroups(whole string) bool {
	groups := strings.Split(whole, ",")
	if n := len(groups[0]); n < 1 || n > 3 || groups[0][0] == '0' {
		return false
	}
	for _, g := range groups[1:] {
		if len(g) != 3 {
			return false
		}
	}
	return true
}

// hourOf is a bare number as the full hour that it may stand for, or "".
func hourOf(digits string) string {
	if h, err := strconv.Atoi(digits); err == nil && h >= 0 && h <= 24 {
		return fmt.Sprintf("%02d:00", h)
	}
	return ""
}

// withPoint is a number whose comma can be nothing but a decimal mark, with a point:
// 0.4 for 0,4; or "".
func withPoint(text string) string {
	if whole, frac, ok := strings.Cut(text, ","); ok && !strings.ContainsAny(frac, ",.") && frac != "" {
		return whole + "." + frac
	}
	return ""
}
