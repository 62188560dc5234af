package tree

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// fromTo helps where a range is written with a word: 76 to 88 F.
func fromTo(n *Node, d *diag.Diagnostic, next int) bool {
	items := n.Match.Items
	if next+1 >= len(items) || items[next].Text != "to" || items[next+1].Kind != lang.Number {
		return false
	}
	it, high := &items[next-1], &items[next+1]
	all := it.At.To(high.At)
	text := strings.TrimSpace(it.Num + ".." + high.Num + " " + high.Unit)
	d.Code, d.At = diag.CodeShape, all
	d.Summary = "a range is written with two dots"
	d.Help = fmt.Sprintf("write `%s`\n%s", text, d.Help)
	d.Fix = &diag.Fix{At: all, Text: text, Label: "write `" + text + "`"}
	return true
}

// inTwoUnits helps where an amount is written as two: 1 hour 30 min.
func inTwoUnits(n *Node, d *diag.Diagnostic) {
	far := n.Match.miss.far
	if far == 0 {
		return
	}
	a, b := &n.Match.Items[far-1], &n.Match.Items[far]
	kind := kindOf(b.Unit)
	if a.Kind != lang.Number || a.Unit == "" || b.Unit == "" || kindOf(a.Unit) != kind {
		return
	}
	first, ok1 := ToSI(a.Value, a.Unit, kind)
	second, ok2 := ToSI(b.Value, b.Unit, kind)
	if !ok1 || !ok2 || kind == quantity.Temperature {
		return
	}
	all := a.At.To(b.At)
	text := wording.In(first+second, b.Unit, kind)
	d.At = all
	d.Summary = "one amount has one unit"
	d.Help = fmt.Sprintf("write `%s`\n%s", text, d.Help)
	d.Fix = &diag.Fix{At: all, Text: text, Label: "write `" + text + "`"}
}

// lastNumber gives the line's last item if it is a number.
func lastNumber(items []lang.Item) *lang.Item {
	if n := len(items); n > 0 && items[n-1].Kind == lang.Number {
		return &items[n-1]
	}
	return nil
}

// wrongNumber fills in what is wrong with a number: its unit, the want of one, or
// a word before it.
func (s shaper) wrongNumber(d *diag.Diagnostic, n *Node) {
	m := &n.Match
	it := &m.Items[m.miss.far]
	kinds, ranged := wantedKinds(m.miss.want)
	words := wantedWords(m.miss.want)
	switch {
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("%s does not belong here: the line is complete before it", wording.Item(it))
		inTwoUnits(n, d)
	case len(kinds) == 0 && len(words) == 1:
		d.Summary = fmt.Sprintf("`%s` is missing before %s", words[0], wording.Item(it))
		if words[0] != "," {
			d.Fix = &diag.Fix{At: diag.Span{Src: it.At.Src, Start: it.At.Start, End: it.At.Start}, Text: words[0] + " ", Label: "put in `" + words[0] + "`", Guess: !fitsWith(n, m.miss.far, words[0])}
		}
	case len(kinds) == 0:
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want, d.At.Units()))
	case it.Kind == lang.Range && !slices.Contains(ranged, true) && fits(kinds, it):
		d.Summary = "one value is wanted here, and this is a range"
	case it.Kind == lang.Number && !slices.Contains(ranged, false) && fits(kinds, it):
		d.Summary = "a range is wanted here, such as " + wording.Example(d.At, "78..88 F")
	default:
		s.wrongUnit(d, n, kinds, ranged)
	}
}

// fitsWith reports whether a line is right with a word put in before an item.
func fitsWith(n *Node, at int, word string) bool {
	m := new(matcher).line(n.Field.Pattern(), slices.Insert(slices.Clone(n.Match.Items), at, lang.Item{Kind: lang.Word, Text: word}))
	return m.fits()
}

func fits(kinds []quantity.Kind, it *lang.Item) bool {
	return slices.ContainsFunc(kinds, func(k quantity.Kind) bool {
		_, ok := ToSI(it.Value, it.Unit, k)
		return ok
	})
}

// wrongUnit fills in what is wrong with a number's unit.
func (s shaper) wrongUnit(d *diag.Diagnostic, n *Node, kinds []quantity.Kind, ranged []bool) {
	m := &n.Match
	it := &m.Items[m.miss.far]
	_, err := quantity.ToSI(it.Value, it.Unit, kinds[0])
	var ue *quantity.UnitError
	if !errors.As(err, &ue) {
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want, d.At.Units()))
		return
	}
	form := d.Help
	if units := KindHelp(kinds, d.At.Units()); units != "" {
		d.Help = units + "\n" + form
	}
	unitAt := it.UnitAt()
	if unitAt.IsZero() {
		unitAt = it.At
	}
	if it.Unit == "" {
		next := m.miss.far + 1
		if next < len(m.Items) && m.Items[next].Kind == lang.Word && !slices.Contains(wantedWords(m.miss.want), m.Items[next].Text) && !n.Field.Pattern().KnowsWord(m.Items[next].Text) {
			if !slices.Contains(ranged, true) || !fromTo(n, d, next) {
				unknownUnit(d, kinds[0], m.Items[next].Text, m.Items[next].At)
			}
			return
		}
		if fraction(n, d) {
			return
		}
		d.Code, d.Summary = diag.CodeNoUnit, fmt.Sprintf("`%s` needs a unit: %s is wanted", it.Num, KindList(kinds, d.At.Units()))
	} else if !ue.Known {
		unknownUnit(d, kinds[0], it.Unit, unitAt)
	} else {
		d.At = unitAt
		d.Code, d.Summary = diag.CodeWrongKind, fmt.Sprintf("`%s` is %s, and %s is wanted here", it.Unit, ue.Is, KindList(kinds, d.At.Units()))
		if kinds[0] == quantity.Number {
			d.Code, d.Summary = diag.CodeNotUnit, fmt.Sprintf("a bare number is wanted here, without `%s`", it.Unit)
		}
		switch u, _ := quantity.Lookup(it.Unit); { // it is known
		case ue.Is == quantity.Strength && slices.ContainsFunc(m.miss.want, func(w *schema.Shape) bool { return w.Slot == "warmth" }):
			d.Summary = fmt.Sprintf("what stands behind `at` is how warm the sample was, and %s is a strength", wording.Item(it))
			d.Help = fmt.Sprintf("write what the hydrometer said as a reading, `%s, %s at %s`; or, if it was worked out, behind what was read, `%s, true %s`\n",
				wording.Restated("45.9 gal", d.At.Units()), it.At.Text(), wording.Restated("66 F", d.At.Units()), wording.Restated("121.9 proof at 65 F", d.At.Units()), it.At.Text()) + form
		case u.Name == "oz" && slices.Contains(kinds, quantity.Volume):
			d.Code = diag.CodeOunces
		case u.Name == "fl oz" && slices.Contains(kinds, quantity.Mass):
			d.Code = diag.CodeOunces
		case u.Name == "%" && slices.Contains(kinds, quantity.Strength):
			d.Code, d.Summary = diag.CodePercentOf, "`%` of what? a strength is wanted here"
		case u.Name == "bushel" && slices.Contains(kinds, quantity.Mass):
			d.Code = diag.CodeBushels
		}
	}
	if ue.Hint != "" {
		d.Help = wording.Prose(ue.Hint, d.At.Units()) + "\n" + form
	}
}

// fraction speaks of a fraction, 1/2 gal or 1 1/2 gal, where a number stands
// without a unit.
func fraction(n *Node, d *diag.Diagnostic) bool {
	items := n.Match.Items[n.Match.miss.far:]
	var whole float64
	if len(items) > 3 && items[1].Kind == lang.Number && items[1].Unit == "" {
		whole, items = items[0].Value, items[1:]
	}
	if len(items) < 3 || items[1].Kind != lang.Slash || items[2].Kind != lang.Number || items[2].Value == 0 {
		return false
	}
	d.Code, d.At = diag.CodeBadNumber, d.At.To(items[2].At)
	text := strings.TrimSpace(wording.Decimal(whole+items[0].Value/items[2].Value) + " " + items[2].Unit)
	d.Summary = fmt.Sprintf("`%s` is a fraction, and fractions are not read", d.At.Text())
	d.Help = "write it as a decimal: `" + text + "`"
	return true
}

// shortUnits has what people write for a length of time, too short to be near to
// a unit's name. They are not read: m, mo and mth are too easily one another.
var shortUnits = map[string]string{"mo": "month", "mos": "month", "mth": "month", "mths": "month"}

func unknownUnit(d *diag.Diagnostic, want quantity.Kind, unit string, at diag.Span) {
	d.Code, d.At = diag.CodeUnknownUnit, at
	d.Summary = fmt.Sprintf("`%s` is not a unit", unit)
	_, err := quantity.ToSI(1, unit, want)
	var ue *quantity.UnitError
	if !errors.As(err, &ue) {
		return
	}
	if short := shortUnits[strings.ToLower(unit)]; short != "" && want == quantity.Duration {
		ue.Near = []string{short}
	}
	if len(ue.Near) > 0 {
		d.Help = fmt.Sprintf("did you mean `%s`? %s", ue.Near[0], d.Help)
		d.Fix = &diag.Fix{At: at, Text: ue.Near[0], Label: "write `" + ue.Near[0] + "`", Guess: true}
	}
}

// timeOtherwise helps where a date or a time of day is written in a way of its
// own: 3/2/2026, 7:00 AM, 7am.
func timeOtherwise(n *Node, d *diag.Diagnostic, want []*schema.Shape) {
	items, far := n.Match.Items, n.Match.miss.far
	it := &items[far]
	wants := func(k lang.ItemKind) bool {
		return slices.ContainsFunc(want, func(w *schema.Shape) bool { return w.Op == schema.Slot && w.Kind.Names == "" && w.Kind.Item == k })
	}
	half := strings.ToLower(strings.ReplaceAll(it.Text, ".", ""))
	switch {
	case wants(lang.Date):
		d.Help = "write a date as year-month-day, as in `2026-03-03`\n" + d.Help
	case wants(lang.Clock), far > 0 && items[far-1].Kind == lang.Clock && (half == "am" || half == "pm"):
		d.Help = "write a time by the 24-hour clock, as in `07:00` or `17:00`\n" + d.Help
	}
}
