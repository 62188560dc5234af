package check

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// mismatch says why a line does not have its field's shape: what stands where,
// what was wanted there, and what a right line looks like.
func (s shaper) mismatch(n *node, b *schema.Block) {
	m, f := &n.m, n.field
	if s.match.wrong++; s.match.wrong > diag.MostSaid { // counted, and not shown
		s.diags.Add(diag.Diagnostic{Code: diag.CodeShape, At: n.at(), Summary: "this line does not have its shape"})
		return
	}
	form := "the line reads: " + f.Form() + "\nfor example: " + schema.Example(f)
	if m.miss.far >= len(m.items) {
		d := diag.Diagnostic{Code: diag.CodeShape, At: n.at(), Help: form}
		d.Summary = fmt.Sprintf("this line ends too soon: %s is wanted", wanted(m.miss.want))
		if it := lastNumber(m.items); it != nil && it.Unit == "%" && slices.Contains(wantedWords(m.miss.want), "of") {
			d.Code, d.At = diag.CodePercentOf, it.At
			d.Summary = fmt.Sprintf("`%s` of what?", it.At.Text())
			d.Help = fmt.Sprintf("write `%s %% abv` for a strength at the spout, `%s %% of charge` for a share of the charge's pure alcohol\n", it.Num, it.Num) + d.Help
		}
		s.diags.Add(d)
		return
	}
	it := &m.items[m.miss.far]
	d := diag.Diagnostic{Code: diag.CodeShape, At: it.At, Help: form}
	switch {
	case n.carriedOn(&d, b):
	case it.Kind == lang.Number || it.Kind == lang.Range:
		s.wrongNumber(&d, n)
	case it.Kind == lang.Word:
		s.wrongWord(&d, n, b)
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("%s does not belong here", wording.Item(it))
	default:
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want))
	}
	n.timeOtherwise(&d, m.miss.want)
	s.diags.Add(d)
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
func (s shaper) wrongNumber(d *diag.Diagnostic, n *node) {
	m := &n.m
	it := &m.items[m.miss.far]
	kinds, ranged := wantedKinds(m.miss.want)
	words := wantedWords(m.miss.want)
	switch {
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("%s does not belong here: the line is complete before it", wording.Item(it))
		n.inTwoUnits(d)
	case len(kinds) == 0 && len(words) == 1:
		d.Summary = fmt.Sprintf("`%s` is missing before %s", words[0], wording.Item(it))
		if words[0] != "," {
			d.Fix = &diag.Fix{At: diag.Span{Src: it.At.Src, Start: it.At.Start, End: it.At.Start}, Text: words[0] + " ", Label: "put in `" + words[0] + "`"}
		}
	case len(kinds) == 0:
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want))
	case it.Kind == lang.Range && !slices.Contains(ranged, true) && fits(kinds, it):
		d.Summary = "one value is wanted here, and this is a range"
	case it.Kind == lang.Number && !slices.Contains(ranged, false) && fits(kinds, it):
		d.Summary = "a range is wanted here, such as `78..88 F`"
	default:
		s.wrongUnit(d, n, kinds, ranged)
	}
}

func fits(kinds []quantity.Kind, it *lang.Item) bool {
	return slices.ContainsFunc(kinds, func(k quantity.Kind) bool {
		_, ok := toSI(it.Value, it.Unit, k)
		return ok
	})
}

// wrongUnit fills in what is wrong with a number's unit.
func (s shaper) wrongUnit(d *diag.Diagnostic, n *node, kinds []quantity.Kind, ranged []bool) {
	m := &n.m
	it := &m.items[m.miss.far]
	_, err := quantity.ToSI(it.Value, it.Unit, kinds[0])
	var ue *quantity.UnitError
	if !errors.As(err, &ue) {
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want))
		return
	}
	form := d.Help
	d.Help = kindHelp(kinds) + "\n" + form
	unitAt := it.UnitAt()
	if unitAt.IsZero() {
		unitAt = it.At
	}
	if it.Unit == "" {
		next := m.miss.far + 1
		if next < len(m.items) && m.items[next].Kind == lang.Word && !slices.Contains(wantedWords(m.miss.want), m.items[next].Text) && !n.field.Pattern.KnowsWord(m.items[next].Text) {
			if !slices.Contains(ranged, true) || !n.fromTo(d, next) {
				s.unknownUnit(d, kinds[0], m.items[next].Text, m.items[next].At)
			}
			return
		}
		if n.fraction(d) {
			return
		}
		d.Code, d.Summary = diag.CodeNoUnit, fmt.Sprintf("`%s` needs a unit: %s is wanted", it.Num, kindList(kinds))
	} else if !ue.Known {
		s.unknownUnit(d, kinds[0], it.Unit, unitAt)
	} else {
		d.At = unitAt
		d.Code, d.Summary = diag.CodeWrongKind, fmt.Sprintf("`%s` is %s, and %s is wanted here", it.Unit, ue.Is, kindList(kinds))
		if kinds[0] == quantity.Number {
			d.Code, d.Summary = diag.CodeNotUnit, fmt.Sprintf("a bare number is wanted here, without `%s`", it.Unit)
		}
		switch u, _ := quantity.Lookup(it.Unit); { // it is known
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
		d.Help = ue.Hint + "\n" + form
	}
}

// fraction speaks of a fraction, 1/2 gal or 1 1/2 gal, where a number stands
// without a unit.
func (n *node) fraction(d *diag.Diagnostic) bool {
	items := n.m.items[n.m.miss.far:]
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

func (s shaper) unknownUnit(d *diag.Diagnostic, want quantity.Kind, unit string, at diag.Span) {
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
		d.Fix = &diag.Fix{At: at, Text: ue.Near[0], Label: "write `" + ue.Near[0] + "`"}
	}
}

// wrongWord fills in what is wrong with a word: one letter out, or a word where
// a number should be.
func (s shaper) wrongWord(d *diag.Diagnostic, n *node, b *schema.Block) {
	m := &n.m
	it := &m.items[m.miss.far]
	words := wantedWords(m.miss.want)
	kinds, _ := wantedKinds(m.miss.want)
	near := spelling.Nearest(it.Text, words)
	switch {
	case n.andWord(d, words):
	case s.twoWords(d, n):
		if d.Fix == nil {
			d.Summary = fmt.Sprintf("`%s` does not belong here", it.Text)
		}
	case near != "":
		d.Code = diag.CodeNoSuchWord
		d.Summary = fmt.Sprintf("`%s` is not a word that may stand here", it.Text)
		d.Help = fmt.Sprintf("did you mean `%s`? %s", near, d.Help)
		d.Fix = &diag.Fix{At: it.At, Text: near, Label: "write `" + near + "`"}
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("`%s` does not belong here: the line is complete before it", it.Text)
	case len(kinds) > 0 && n.wordTooMany(d):
	case len(kinds) > 0 && len(words) == 0:
		d.Code = diag.CodeNotQuantity
		d.Summary = fmt.Sprintf("`%s` stands where %s is wanted", it.Text, kindList(kinds))
		d.Help = strings.TrimSpace(kindHelp(kinds) + "\n" + d.Help)
	case len(words) > 0 && len(kinds) == 0:
		d.Code = diag.CodeNoSuchWord
		d.Summary = fmt.Sprintf("`%s` is not a word that may stand here", it.Text)
		d.Help = "wanted: " + wanted(m.miss.want) + "\n" + d.Help
	default:
		d.Summary = fmt.Sprintf("`%s` stands where %s is wanted", it.Text, wanted(m.miss.want))
	}
}

func wantedWords(want []*schema.Shape) []string {
	var words []string
	for _, w := range want {
		if w.Op == schema.Literal && !slices.Contains(words, w.Word) {
			words = append(words, w.Word)
		}
	}
	return words
}

// wantedKinds lists the kinds of quantity that were wanted, and whether each was
// wanted as a range.
func wantedKinds(want []*schema.Shape) (kinds []quantity.Kind, ranged []bool) {
	for _, w := range want {
		if w.Op == schema.Slot && w.Kind.IsQuantity() {
			kinds, ranged = append(kinds, w.Kind.Kind), append(ranged, w.Range)
		}
	}
	return kinds, ranged
}

// wanted says what would have fitted, in words.
func wanted(want []*schema.Shape) string {
	var parts []string
	for _, w := range want {
		part := "`" + w.Word + "`"
		if w.Op == schema.Slot {
			part = w.Kind.Say
			if w.Range {
				part = "a range such as `" + strings.Replace(w.Kind.Example, " ", "..88 ", 1) + "`"
				if w.Kind.Kind != quantity.Temperature {
					part = w.Kind.Say + " from..to"
				}
			}
		}
		if !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return "the end of the line"
	}
	return words.Or(parts)
}

func kindList(kinds []quantity.Kind) string {
	var parts []string
	for _, k := range kinds {
		text := k.String()
		if k == quantity.None { // any will do
			text = "a number with its unit"
		}
		if !slices.Contains(parts, text) {
			parts = append(parts, text)
		}
	}
	return words.Or(parts)
}

// kindHelp lists the units that would do.
func kindHelp(kinds []quantity.Kind) string {
	var parts, seen []string
	for _, k := range kinds {
		if k == quantity.None || slices.Contains(seen, k.String()) {
			continue
		}
		seen = append(seen, k.String())
		units := quantity.Units(k)
		text := k.String() + " has no unit"
		if len(units) > 0 {
			text = k.String() + " is in " + wording.OrList(units[:min(len(units), 8)])
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}
