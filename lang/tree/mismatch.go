package tree

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// mismatch says why a line does not have its field's shape: what stands where,
// what was wanted there, and what a right line looks like.
func (s shaper) mismatch(n *Node, b *schema.Block, of string) {
	m, f := &n.Match, n.Field
	if s.match.wrong++; s.match.wrong > diag.MostSaid { // counted, and not shown
		s.diags.Add(diag.Diagnostic{Code: diag.CodeShape, At: n.At(), Summary: "this line does not have its shape"})
		return
	}
	form := "the line reads: " + f.FormFor(n.At().Units()) + "\nfor example: " + schema.Example(f, n.At().Units())
	if d := (diag.Diagnostic{Code: diag.CodeShape, Help: form}); asOthersSay(n.Stmt, sayingsOf(b, of), &d) {
		s.diags.Add(d)
		return
	}
	if m.miss.far >= len(m.Items) {
		d := diag.Diagnostic{Code: diag.CodeShape, At: n.At(), Help: form}
		d.Summary = fmt.Sprintf("this line ends too soon: %s is wanted", wanted(m.miss.want, d.At.Units()))
		if it := lastNumber(m.Items); it != nil {
			percentOf(n, it, &d)
		}
		numberRemarked(n, &d)
		s.diags.Add(d)
		return
	}
	it := &m.Items[m.miss.far]
	d := diag.Diagnostic{Code: diag.CodeShape, At: it.At, Help: form}
	switch {
	case m.miss.far > 0 && percentOf(n, &m.Items[m.miss.far-1], &d):
	case b.Timed && clockWithin(n, &d):
	case b.Timed && withoutComma(n, &d):
	case carriedOn(n, &d, b):
	case it.Kind == lang.Number || it.Kind == lang.Range:
		s.wrongNumber(&d, n)
	case it.Kind == lang.Word:
		s.wrongWord(&d, n)
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("%s does not belong here", wording.Item(it))
	default:
		d.Summary = fmt.Sprintf("%s stands where %s is wanted", wording.Item(it), wanted(m.miss.want, d.At.Units()))
	}
	timeOtherwise(n, &d, m.miss.want)
	s.diags.Add(d)
}

// percentOf asks of what a bare per cent is meant, where a strength may stand or a share of
// the charge. It says if it did.
func percentOf(n *Node, it *lang.Item, d *diag.Diagnostic) bool {
	if it.Kind != lang.Number || it.Unit != "%" || !slices.Contains(wantedWords(n.Match.miss.want), "of") {
		return false
	}
	d.Code, d.At = diag.CodePercentOf, it.At
	d.Summary = fmt.Sprintf("`%s` of what?", it.At.Text())
	d.Help = fmt.Sprintf("write `%s` for a strength at the spout, `%s %% of charge` for a share of the charge's pure alcohol\n", wording.Restated(it.Num+" % abv", it.At.Units()), it.Num) + d.Help
	return true
}

// numberRemark is a number with the mark of one before it, as in char #3.
var numberRemark = pattern.Of(`^#([0-9]+)$`)

// numberRemarked speaks of a line whose last number is lost to the mark before it.
func numberRemarked(n *Node, d *diag.Diagnostic) {
	kinds, _ := wantedKinds(n.Match.miss.want)
	if n.Stmt.Trail == nil || !slices.Contains(kinds, quantity.Number) {
		return
	}
	at := n.Stmt.Trail.At
	if m := numberRemark().FindStringSubmatch(strings.TrimSpace(at.Text())); m != nil {
		d.At, d.Summary = at, "`#` begins a remark here, and the number after it is lost"
		d.Help = "write `" + m[1] + "`\n" + d.Help
		d.Fix = &diag.Fix{At: at, Text: m[1], Label: "write `" + m[1] + "`"}
	}
}

// wrongWord fills in what is wrong with a word: one letter out, or a word where
// a number should be.
func (s shaper) wrongWord(d *diag.Diagnostic, n *Node) {
	m := &n.Match
	it := &m.Items[m.miss.far]
	words := wantedWords(m.miss.want)
	kinds, _ := wantedKinds(m.miss.want)
	near := spelling.Nearest(it.Text, words)
	if near == "" {
		near = spelling.Shortened(it.Text, words)
	}
	switch {
	case andWord(n, d, words):
	case s.twoWords(d, n):
		if d.Fix == nil {
			d.Summary = fmt.Sprintf("`%s` does not belong here", it.Text)
		}
	case near != "":
		d.Code = diag.CodeNoSuchWord
		d.Summary = fmt.Sprintf("`%s` is not a word that may stand here", it.Text)
		d.Help = fmt.Sprintf("did you mean `%s`? %s", near, d.Help)
		d.Fix = &diag.Fix{At: it.At, Text: near, Label: "write `" + near + "`", Guess: true}
	case len(m.miss.want) == 0:
		d.Summary = fmt.Sprintf("`%s` does not belong here: the line is complete before it", it.Text)
	case len(kinds) > 0 && wordTooMany(n, d):
	case len(kinds) > 0 && len(words) == 0:
		d.Code = diag.CodeNotQuantity
		d.Summary = fmt.Sprintf("`%s` stands where %s is wanted", it.Text, KindList(kinds, d.At.Units()))
		d.Help = strings.TrimSpace(KindHelp(kinds, d.At.Units()) + "\n" + d.Help)
	case len(words) > 0 && len(kinds) == 0:
		d.Code = diag.CodeNoSuchWord
		d.Summary = fmt.Sprintf("`%s` is not a word that may stand here", it.Text)
		d.Help = "wanted: " + wanted(m.miss.want, d.At.Units()) + "\n" + d.Help
	default:
		d.Summary = fmt.Sprintf("`%s` stands where %s is wanted", it.Text, wanted(m.miss.want, d.At.Units()))
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
func wanted(want []*schema.Shape, reader quantity.System) string {
	var parts []string
	for _, w := range want {
		if w.Op == schema.Slot && wording.OthersAlone(w.Kind.Kind, reader) {
			continue
		}
		part := "`" + w.Word + "`"
		if w.Op == schema.Slot {
			part = w.Kind.Say
			if w.Range {
				part = "a range such as `" + wording.Restated("78..88 F", reader) + "`"
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

// KindList says what would do, for a reader who counts in a system.
func KindList(kinds []quantity.Kind, reader quantity.System) string {
	var parts []string
	for _, k := range kinds {
		if wording.OthersAlone(k, reader) {
			continue
		}
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

// KindHelp lists the units that would do, for a reader who counts in a system.
func KindHelp(kinds []quantity.Kind, reader quantity.System) string {
	var parts, seen []string
	for _, k := range kinds {
		if k == quantity.None || wording.OthersAlone(k, reader) || slices.Contains(seen, k.String()) {
			continue
		}
		seen = append(seen, k.String())
		units := wording.UnitsOf(k, reader)
		text := k.String() + " has no unit"
		if k == quantity.UnitPrice {
			text = "a price is an amount, a currency, a slash and what it buys, as in `" + wording.Restated("0.16 USD/lb", reader) + "`"
		}
		if len(units) > 0 {
			text = k.String() + " is in " + wording.OrList(units[:min(len(units), 8)])
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, "; ")
}
