package check

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
)

// mayBeName says that two words side by side may be one name: the stock has it,
// the line declares it, or what it names is mostly called by more words than one.
func (s shaper) mayBeName(n *node, c *capture, joined string) bool {
	return c.slot == "name" && n.field.Block != nil || slices.Contains([]string{"plant", "vessel", "batch"}, c.slot) || s.stock != nil && s.stock(joined)
}

// andWord helps where a list is written with a word: rye and malt.
func (n *node) andWord(d *diag.Diagnostic, words []string) bool {
	it := &n.m.items[n.m.miss.far]
	if it.Text != "and" || n.m.miss.far == 0 || !slices.Contains(words, ",") {
		return false
	}
	d.Summary = "a list is parted by commas, not by `and`"
	d.Help = "write a comma in its place\n" + d.Help
	return true
}

// carriedOn helps where the line above ends in a comma, so that the next line
// of the block was read as more of the list.
func (n *node) carriedOn(d *diag.Diagnostic, b *schema.Block) bool {
	items := n.m.items
	for i := min(n.m.miss.far, len(items)-2); i >= 0; i-- {
		comma, next := &items[i], &items[i+1]
		if comma.Kind != lang.Comma || next.Kind != lang.Word || b.Find(next.Text) == nil {
			continue
		}
		if src := comma.At.Src; src == nil || src.LineOf(comma.At.Start) == src.LineOf(next.At.Start) {
			continue
		}
		d.Code, d.At = diag.CodeDanglingComma, next.At
		d.Summary = fmt.Sprintf("the line above ends in a comma, so that `%s` is read as more of its list", next.Text)
		d.Help = "take the comma out, or write the next of the list after it"
		d.Related = append(d.Related, diag.Related{At: comma.At, Text: "the comma is here"})
		d.Fix = &diag.Fix{At: comma.At, Text: "", Label: "take the comma out"}
		return true
	}
	return false
}

// timeOtherwise helps where a date or a time of day is written in a way of its
// own: 3/2/2026, 7:00 AM, 7am.
func (n *node) timeOtherwise(d *diag.Diagnostic, want []*schema.Shape) {
	items, far := n.m.items, n.m.miss.far
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

// smallWords are those that a sentence has and a line may do without.
var smallWords = []string{"a", "about", "at", "by", "for", "in", "is", "of", "on", "the", "to", "with"}

// wordTooMany helps where the line would be right without a word: entry at 120
// proof.
func (n *node) wordTooMany(d *diag.Diagnostic) bool {
	items, far := n.m.items, n.m.miss.far
	if !slices.Contains(smallWords, items[far].Text) || far+1 >= len(items) || items[far+1].Kind != lang.Number {
		return false
	}
	without := slices.Delete(slices.Clone(items), far, far+1)
	m := new(matcher).line(n.field.Pattern, without)
	if !m.fits() {
		return false
	}
	it := &items[far]
	d.Summary = fmt.Sprintf("`%s` does not belong here", it.Text)
	d.Help = fmt.Sprintf("leave out `%s`\n%s", it.Text, d.Help)
	d.Fix = &diag.Fix{At: diag.Span{Src: it.At.Src, Start: it.At.Start, End: items[far+1].At.Start}, Text: "", Label: "leave out `" + it.Text + "`"}
	return true
}
