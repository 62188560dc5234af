package lang

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"newmake/lang/diag"
)

// parseNumber parses a number or a range, with its unit, of which t is the
// first token.
func parseNumber(lex *lexer.PeekingLexer, t *lexer.Token) (Item, *fault) {
	start, end := t.Pos.Offset, t.Pos.Offset+len(t.Value)
	item := Item{Kind: Number, At: diag.Span{Start: start, End: end}, Num: t.Value}
	var f *fault
	if item.Value, f = numberValue(t.Value, start); f != nil {
		return item, f
	}
	if kindOf(lex.Peek()) != TokRange {
		if f := stuckToNumber(lex.Peek(), t.Value, start, end); f != nil {
			return item, f
		}
		takeUnit(lex, &item)
		if kindOf(lex.Peek()) != TokRange || item.Unit == "" {
			return item, nil
		}
		return item, unitTwice(lex, &item)
	}
	dots := lex.Next()
	item.Kind = Range
	high := lex.Peek()
	if kindOf(high) != TokNumber {
		at := dots.Pos.Offset
		return item, &fault{code: diag.CodeBadRange, start: at, end: at + len(dots.Value),
			summary: "a range needs a number after `..`", help: "write a range as `78..88 F`"}
	}
	lex.Next()
	if item.High, f = numberValue(high.Value, high.Pos.Offset); f != nil {
		return item, f
	}
	item.At.End = high.Pos.Offset + len(high.Value)
	item.Num += ".." + high.Value
	takeUnit(lex, &item)
	return item, nil
}

// unitTwice is the fault of `78 F..88 F`, with the edit that mends it if both
// units are the same.
func unitTwice(lex *lexer.PeekingLexer, item *Item) *fault {
	dots := lex.Next()
	f := &fault{code: diag.CodeBadRange, start: int(item.unitAt), end: item.At.End,
		summary: "a range has one unit, after its second number",
		help:    fmt.Sprintf("write `%s..` and the unit once at the end", item.Num)}
	if high := lex.Peek(); kindOf(high) == TokNumber {
		lex.Next()
		second := Item{At: diag.Span{Start: high.Pos.Offset, End: high.Pos.Offset + len(high.Value)}}
		takeUnit(lex, &second)
		if second.Unit == item.Unit {
			f.help = fmt.Sprintf("write `%s..%s %s`", item.Num, high.Value, item.Unit)
			f.fix = &edit{item.At.Start + len(item.Num), dots.Pos.Offset, "", "take the first unit out"}
		}
	}
	return f
}

// stuckToNumber finds what can't follow a number without a space: a second
// number behind a hyphen, or a name that begins with a digit.
func stuckToNumber(next *lexer.Token, num string, start, end int) *fault {
	if next.Pos.Offset != end {
		return nil
	}
	switch kindOf(next) {
	case TokNumber:
		if !strings.HasPrefix(next.Value, "-") {
			break // cannot be: the lexer would have gone on
		}
		high := next.Value[1:]
		return &fault{code: diag.CodeBadRange, start: start, end: end + len(next.Value),
			summary: "a hyphen does not make a range",
			help:    fmt.Sprintf("write `%s..%s`", num, high),
			fix:     &edit{end, end + 1, "..", fmt.Sprintf("write `%s..%s`", num, high)}}
	case TokWord:
		if len(next.Value) > 1 && strings.Trim(next.Value[1:], "-0123456789") == "" && (next.Value[0] == 'e' || next.Value[0] == 'E') {
			text := num + next.Value
			return &fault{code: diag.CodeBadNumber, start: start, end: end + len(next.Value),
				summary: fmt.Sprintf("`%.20s` is a number with an exponent, which is not read", text),
				help:    "write the number out: 1,500 for 1.5e3, 0.002 for 2e-3"}
		}
	case TokBad:
		if next.Value == "-" {
			return &fault{code: diag.CodeBadNumber, start: start, end: end + 1,
				summary: "a name cannot begin with a digit",
				help:    "put the name in quotes, or begin it with a letter, as in `two-row`"}
		}
	}
	return nil
}

// takeUnit takes the unit after a number, if there is one, into the item.
func takeUnit(lex *lexer.PeekingLexer, item *Item) {
	t := lex.Peek()
	switch kindOf(t) {
	case TokUnit:
	case TokWord:
		if IsConnective(t.Value) {
			return
		}
	default:
		return
	}
	lex.Next()
	item.Unit = t.Value
	item.unitAt = int32(t.Pos.Offset)
	item.At.End = t.Pos.Offset + len(t.Value)
	if joined, last := compoundUnit(lex, t.Value); last != nil {
		item.Unit = joined
		item.At.End = last.Pos.Offset + len(last.Value)
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

// compoundUnit takes the further words of a unit that has them, and gives the
// last of them, nil if there are none.
func compoundUnit(lex *lexer.PeekingLexer, first string) (unit string, last *lexer.Token) {
	next := lex.Peek()
	if kindOf(next) != TokWord {
		return "", nil
	}
	for i := range compounds {
		c := &compounds[i]
		if c.first != first || c.second != next.Value {
			continue
		}
		before := lex.MakeCheckpoint()
		lex.Next()
		if c.third == "" {
			return c.unit, next
		}
		if third := lex.Peek(); third.Value == c.third {
			lex.Next()
			return c.unit, third
		}
		lex.LoadCheckpoint(before)
	}
	return "", nil
}

// IsConnective says whether a word joins the parts of a statement. After a
// number such a word is not its unit: `3 days`, but `3 at`.
func IsConnective(word string) bool {
	switch word {
	case "to", "at", "of", "from", "in", "for", "with", "and", "any", "on", "within",
		"new", "used", "over", "by", "until", "as", "plus", "than", "least", "most", "per":
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
		f.fix = &edit{at, at + len(text), full, f.help}
		return 0, f
	case strings.ContainsAny(frac, ".,"):
		return 0, numberFault(text, at, "`%s` has more than one decimal mark",
			"the point is the decimal mark, and commas part thousands: write 1,300.5 or 1300.5")
	case commas && !properGroups(whole):
		return 0, numberFault(text, at, "`%s` can be read in two ways",
			"the point is the decimal mark (1.3), and a comma only parts groups of three digits (1,300)")
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

// properGroups says whether commas part a whole number in threes.
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
