package lang

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"newmake/lang/composed"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Parse implements participle.Parseable: the items of a line up to a brace or its
// end, none of a block without a name. It takes whatever stands there: after the
// first thing that cannot be read, no more is.
func (l *items) Parse(lex *lexer.PeekingLexer) error {
	switch t := lex.Peek(); t.Type {
	case symbolItems:
		lex.Next()
		l.at = int32(t.Pos.Offset)
		l.list, l.fault = parseItems(newCursor(t.Value, t.Pos.Offset))
		return nil
	case symbol(TokOpen):
		l.at = int32(t.Pos.Offset)
		return nil
	}
	return participle.NextMatch
}

func parseItems(lex *cursor) ([]Item, *fault) {
	var room [12]Item // most lines fit, so the slice kept is made once
	list := room[:0]
	var bad *fault
	for bad == nil && lex.peek().kind != tokEnd {
		t := lex.peek()
		if t.kind == TokComma && (len(list) == 0 || list[len(list)-1].Kind == Comma) {
			bad = commaFault(t, len(list) == 0)
			break
		}
		var item Item
		if item, bad = parseItem(lex); bad == nil {
			list = append(list, item)
		}
	}
	if bad == nil {
		bad = danglingComma(list)
	}
	if len(list) == 0 {
		return nil, bad
	}
	return append([]Item(nil), list...), bad
}

// danglingComma is the fault of a list that ends in a comma, nil if none does.
func danglingComma(items []Item) *fault {
	if len(items) == 0 || items[len(items)-1].Kind != Comma {
		return nil
	}
	at := items[len(items)-1].At
	return &fault{code: diag.CodeDanglingComma, start: at.Start, end: at.End,
		summary: "nothing follows this comma",
		help:    "write the next of the list after the comma, or take the comma out",
		fix:     &edit{start: at.Start, end: at.End, label: "take the comma out", guess: true}}
}

func commaFault(t piece, first bool) *fault {
	f := &fault{code: diag.CodeDanglingComma, start: t.start, end: t.start + 1,
		summary: "two commas with nothing between them",
		help:    "take one of them out, or write what is missing between"}
	if first {
		f.code, f.summary = diag.CodeNoStatement, "a line cannot begin with a comma"
		f.help = "to carry a list on to the next line, end the line above with the comma"
	}
	return f
}

// parseItem parses one item. The next token is neither brace nor end.
func parseItem(lex *cursor) (Item, *fault) {
	t := lex.next()
	start, end := t.start, t.start+len(t.text)
	item := Item{At: diag.Span{Start: start, End: end}, Text: t.text}
	switch t.kind {
	case TokWord:
		item.Kind, item.Text = Word, composed.Form(t.text)
	case TokString:
		return stringItem(item, t.text)
	case TokNumber:
		return parseNumber(lex, t)
	case TokDate:
		item.Kind = Date
		return item, dateFault(t, lex.peek())
	case TokClock:
		item.Kind = Clock
		return item, clockFault(t, lex.peek())
	case TokComma:
		item.Kind = Comma
	case TokSlash:
		item.Kind = Slash
	case TokRange:
		return item, &fault{code: diag.CodeBadRange, start: start, end: end,
			summary: "`..` stands between two numbers", help: "write a range as `78..88 F`"}
	case TokUnit:
		if isCurrencySign(t.text) && lex.peek().kind == TokNumber {
			return priceItem(lex, t)
		}
		return item, strayUnit(t, *lex)
	case TokUnclosed:
		return item, &fault{code: diag.CodeUnclosed, start: start, end: end,
			summary: "this text has no closing quote",
			help:    "put a `\"` where it ends; a quoted text ends on the line where it begins"}
	default:
		return item, badChar(t, lex.peek())
	}
	return item, nil
}

// isCurrencySign reports whether a mark names one currency, and so may stand before its amount.
// `$` is that of too many.
func isCurrencySign(text string) bool { return text == "£" || text == "€" || text == "¥" }

// priceItem parses an amount whose currency stands before it, £540 or £0.48/kg: the same
// as 540 £ and 0.48 £/kg.
func priceItem(lex *cursor, sign piece) (Item, *fault) {
	t := lex.next()
	item := Item{Kind: Number, At: diag.Span{Start: sign.start, End: t.end()}, Num: t.text, Unit: sign.text}
	var f *fault
	if item.Value, f = numberValue(t.text, t.start); f != nil {
		return item, f
	}
	if per := lex.peek(); per.kind == TokUnit {
		lex.next()
		item.Unit += per.text
		item.At.End = per.end()
	} else if f := stuckToNumber(*lex, t.text, t.start, t.end()); f != nil {
		return item, f
	}
	return item, nil
}

// strayUnit is the fault of a unit without a number. A currency's sign before its amount
// is told how that is written, one alone how the currency is called.
func strayUnit(t piece, lex cursor) *fault {
	start := t.start
	f := &fault{code: diag.CodeStrayUnit, start: start, end: start + len(t.text),
		summary: fmt.Sprintf("`%s` has no number before it", t.text),
		help:    "write the number first and its unit after it, as in `68 %`"}
	if !strings.ContainsAny(t.text, "$€£¥") {
		return f
	}
	if isCurrencySign(t.text) {
		code := quantity.Currency(t.text)
		f.summary = fmt.Sprintf("`%s` has no number beside it", t.text)
		f.help = fmt.Sprintf("a currency alone is written in three capitals: `%s`", code)
		f.fix = &edit{start: start, end: f.end, text: code, label: fmt.Sprintf("write `%s`", code)}
		return f
	}
	f.help = "write the amount first and the currency after it, as in `0.25 USD/lb`; alone it is three capitals, `USD`"
	if amount := lex.next(); t.text == "$" && amount.kind == TokNumber {
		text := amount.text + " USD"
		if per := lex.peek(); per.kind == TokUnit && strings.HasPrefix(per.text, "/") {
			text, amount = text+per.text, per
		}
		f.end = amount.end()
		f.summary = "`$` is the sign of several currencies, and stands after its amount as letters"
		f.help = fmt.Sprintf("write `%s`, or the three letters of yours", text)
		f.fix = &edit{start: start, end: f.end, text: text, label: fmt.Sprintf("write `%s`", text), guess: true}
	}
	return f
}

// stringItem takes the quotes and escapes out of a string.
func stringItem(item Item, raw string) (Item, *fault) {
	item.Kind = String
	body := raw[1 : len(raw)-1]
	if !strings.Contains(body, `\`) {
		item.Text = composed.Form(body)
		return item, nil
	}
	var b strings.Builder
	for i := 0; i < len(body); i++ {
		if body[i] != '\\' {
			b.WriteByte(body[i])
			continue
		}
		i++
		switch body[i] {
		case '"', '\\':
			b.WriteByte(body[i])
		case 'n':
			b.WriteByte('\n')
		case 't':
			b.WriteByte('\t')
		default:
			at := item.At.Start + i // the backslash: the quote stands before body
			return item, &fault{code: diag.CodeBadEscape, start: at, end: at + 1,
				summary: "a backslash stands before a quote, a backslash, `n` or `t`",
				help:    "write `\\\\` for a backslash in the text"}
		}
	}
	item.Text = composed.Form(b.String())
	return item, nil
}

// dateFault is what is wrong with a date, nil if nothing is.
func dateFault(t, next piece) *fault {
	parts := numbers(t.text, "-")
	if year, month, day := parts[0], parts[1], parts[2]; month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month) && !isStuck(t, next) {
		return nil
	}
	return timeFault(t, next, "date", "write a date as year-month-day, as in `2026-03-03`")
}

// clockFault is what is wrong with a time of day or an offset from UTC.
func clockFault(t, next piece) *fault {
	parts := numbers(strings.TrimLeft(t.text, "+-"), ":")
	h, m, s := parts[0], parts[1], parts[2]
	if (h <= 23 && m <= 59 && s <= 59 || h == 24 && m == 0 && s == 0) && !isStuck(t, next) {
		return nil
	}
	return timeFault(t, next, "time", "write a time by the 24-hour clock, from `00:00` to `24:00`")
}

func timeFault(t, next piece, what, help string) *fault {
	text := t.text
	if isStuck(t, next) {
		text += next.text
	}
	return &fault{code: diag.CodeBadDate, start: t.start, end: t.start + len(text),
		summary: fmt.Sprintf("there is no %s `%s`", what, text), help: help}
}

// isStuck reports whether a word or number follows a token without a space.
func isStuck(t, next piece) bool {
	if next.start != t.start+len(t.text) {
		return false
	}
	switch next.kind {
	case TokWord, TokNumber, TokUnit:
		return true
	case TokClock:
		return next.text[0] != '+' && next.text[0] != '-'
	}
	return false
}

// numbers reads up to three whole numbers of a few digits.
func numbers(text, sep string) (n [3]int) {
	for i, part := range strings.SplitN(text, sep, 3) {
		n[i], _ = strconv.Atoi(part) // the lexer let only digits through
	}
	return n
}

func daysIn(year, month int) int {
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}
