package check

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

// twoWords helps where a name of two words stands without a hyphen or quotes: low
// wines for low-wines, charred oak for charred-oak; not where there can be no such name. It says if it did.
func (s shaper) twoWords(d *diag.Diagnostic, n *node) bool {
	items, far := n.m.items, n.m.miss.far
	it := &items[far]
	if far+1 < len(items) && items[far+1].Kind == lang.Word {
		joined := it.Text + "-" + items[far+1].Text
		if slices.Contains(wantedWords(n.m.miss.want), joined) {
			both := it.At.To(items[far+1].At)
			d.Code, d.At = diag.CodeNoSuchWord, both
			d.Summary = fmt.Sprintf("`%s` is one word here, with a hyphen", it.Text+" "+items[far+1].Text)
			d.Help = fmt.Sprintf("write `%s`\n%s", joined, d.Help)
			d.Fix = &diag.Fix{At: both, Text: joined, Label: "write `" + joined + "`"}
			return true
		}
	}
	if last := len(n.m.caps) - 1; last >= 0 && far > 0 && n.m.caps[last].name && n.m.caps[last].item == &items[far-1] && items[far-1].Kind == lang.Word && s.mayBeName(n, &n.m.caps[last], items[far-1].Text+"-"+it.Text) {
		before := items[far-1].Text
		d.Help = fmt.Sprintf("a name of two words has a hyphen, or stands in quotes: `%s-%s`, \"%s %s\"\n%s", before, it.Text, before, it.Text, d.Help)
		return true
	}
	return false
}

// fromTo helps where a range is written with a word: 76 to 88 F.
func (n *node) fromTo(d *diag.Diagnostic, next int) bool {
	items := n.m.items
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
func (n *node) inTwoUnits(d *diag.Diagnostic) {
	far := n.m.miss.far
	if far == 0 {
		return
	}
	a, b := &n.m.items[far-1], &n.m.items[far]
	kind := kindOf(b.Unit)
	if a.Kind != lang.Number || a.Unit == "" || b.Unit == "" || kindOf(a.Unit) != kind {
		return
	}
	first, ok1 := toSI(a.Value, a.Unit, kind)
	second, ok2 := toSI(b.Value, b.Unit, kind)
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
