package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"golang.org/x/text/unicode/norm"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/spelling"
)

// nearest gives the candidate that a misspelt word most likely stood for, or "".
// One slip in a short word, two in a longer one; ties go to the first. Among more
// names than any house has it does not look.
func nearest(word string, candidates []string) string {
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
		d := spelling.Distance(lower, strings.ToLower(c))
		if d < dist && d < len(c) {
			best, dist = c, d
		}
	}
	return best
}

// nameKey is the form in which names are compared: NFC, so that an accent typed
// in two ways is one letter.
func nameKey(name string) string { return norm.NFC.String(name) }

// commentText is a comment without its mark.
func commentText(text string) string { return strings.TrimSpace(strings.TrimLeft(text, "#")) }

// show writes an item as a message names it.
func show(it *lang.Item) string {
	switch it.Kind {
	case lang.String:
		return strconv.Quote(it.Text)
	case lang.Number, lang.Range:
		return "`" + strings.TrimSpace(it.At.Text()) + "`"
	}
	return "`" + it.Text + "`"
}

// orList writes words as a choice: `a`, `b` or `c`.
func orList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = "`" + w + "`"
	}
	return orWords(quoted)
}

func orWords(parts []string) string { return joinWords(parts, "or") }

// andWords writes parts as a list: a, b and c.
func andWords(parts []string) string { return joinWords(parts, "and") }

func joinWords(parts []string, last string) string {
	switch len(parts) {
	case 0:
		return "nothing"
	case 1:
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " " + last + " " + parts[len(parts)-1]
}

// article puts a or an before a word.
func article(word string) string {
	if word != "" && strings.IndexByte("aeiou", word[0]) >= 0 {
		return "an `" + word + "`"
	}
	return "a `" + word + "`"
}

// in writes an SI value in the unit in which another value was written, so that
// a message speaks the reader's units.
func in(si float64, unit string, k quantity.Kind) string {
	v, err := quantity.FromSI(si, unit, k)
	if err != nil {
		return decimal(si)
	}
	text := decimal(v)
	switch {
	case unit == "":
		return text
	case strings.HasPrefix(unit, "/"):
		return text + " " + unit
	}
	return text + " " + unit
}

// decimal writes a number with three or four figures, and no more digits than
// it needs.
func decimal(v float64) string {
	a := math.Abs(v)
	prec := 0
	switch {
	case a == 0:
		return "0"
	case a < 0.001 || a >= 1e7:
		return strconv.FormatFloat(v, 'g', 3, 64)
	case a < 0.1:
		prec = 4
	case a < 1:
		prec = 3
	case a < 10:
		prec = 2
	case a < 100:
		prec = 1
	}
	text := strconv.FormatFloat(v, 'f', prec, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return grouped(text)
}

// grouped puts commas between thousands.
func grouped(text string) string {
	sign := ""
	if strings.HasPrefix(text, "-") {
		sign, text = "-", text[1:]
	}
	whole, rest, _ := strings.Cut(text, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if rest != "" {
		rest = "." + rest
	}
	return sign + whole + rest
}

// between writes a limit in the unit of the value that broke it; a time in the
// units in which one would say it.
func between(low, high float64, c *capture) string {
	units := []string{c.item.Unit}
	if c.kind == quantity.Duration {
		units = unitsShown[c.kind].si
	}
	return spanIn(low, high, c.kind, units)
}

// otherScale helps where a temperature makes sense only on the other scale: 190 C
// for 190 F. It fits if the number as written, on the other scale, lies within.
func otherScale(d *diag.Diagnostic, it *lang.Item, unitAt diag.Span, low, high float64) {
	v, other := it.Value, "F"
	si := tempC(v)
	if it.Unit == "F" || it.Unit == "°F" || it.Unit == "ºF" {
		other, si = "C", v
	}
	if si < low || si > high || unitAt.IsZero() {
		return
	}
	d.Help = fmt.Sprintf("did you mean `%s %s`? %s", it.Num, other, d.Help)
	d.Fix = &diag.Fix{At: unitAt, Text: other, Label: fmt.Sprintf("write `%s %s`", it.Num, other)}
}
