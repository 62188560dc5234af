package tree

import (
	"fmt"
	"slices"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
)

// twoWords helps where a name of two words stands without a hyphen or quotes: low
// wines for low-wines, charred oak for charred-oak; not where there can be no such name. It says if it did.
func (s shaper) twoWords(d *diag.Diagnostic, n *Node) bool {
	items, far := n.Match.Items, n.Match.miss.far
	it := &items[far]
	if far+1 < len(items) && items[far+1].Kind == lang.Word {
		joined := it.Text + "-" + items[far+1].Text
		if slices.Contains(wantedWords(n.Match.miss.want), joined) {
			both := it.At.To(items[far+1].At)
			d.Code, d.At = diag.CodeNoSuchWord, both
			d.Summary = fmt.Sprintf("`%s` is one word here, with a hyphen", it.Text+" "+items[far+1].Text)
			d.Help = fmt.Sprintf("write `%s`\n%s", joined, d.Help)
			d.Fix = &diag.Fix{At: both, Text: joined, Label: "write `" + joined + "`"}
			return true
		}
	}
	if last := len(n.Match.Caps) - 1; last >= 0 && far > 0 && n.Match.Caps[last].name && n.Match.Caps[last].Item == &items[far-1] && items[far-1].Kind == lang.Word && s.mayBeName(n, &n.Match.Caps[last], items[far-1].Text+"-"+it.Text) {
		before := items[far-1].Text
		d.Help = fmt.Sprintf("a name of two words has a hyphen, or stands in quotes: `%s-%s`, \"%s %s\"\n%s", before, it.Text, before, it.Text, d.Help)
		return true
	}
	return false
}

// mayBeName reports whether two words side by side may be one name: the library has it,
// the line declares it, or what it names is mostly called by more words than one.
func (s shaper) mayBeName(n *Node, c *Capture, joined string) bool {
	return c.Slot == "name" && n.Field.Block != nil || slices.Contains([]string{"plant", "vessel", "batch"}, c.Slot) || s.library != nil && s.library(joined)
}

// andWord helps where a list is written with a word: rye and malt.
func andWord(n *Node, d *diag.Diagnostic, words []string) bool {
	it := &n.Match.Items[n.Match.miss.far]
	if it.Text != "and" || n.Match.miss.far == 0 || !slices.Contains(words, ",") {
		return false
	}
	d.Summary = "a list is parted by commas, not by `and`"
	d.Help = "write a comma in its place\n" + d.Help
	return true
}

// carriedOn helps where the line above ends in a comma, so that the next line
// of the block was read as more of the list.
func carriedOn(n *Node, d *diag.Diagnostic, b *schema.Block) bool {
	items := n.Match.Items
	for i := min(n.Match.miss.far, len(items)-2); i >= 0; i-- {
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
		d.Fix = &diag.Fix{At: comma.At, Text: "", Label: "take the comma out", Guess: true}
		return true
	}
	return false
}

// smallWords are those that a sentence has and a line may do without.
var smallWords = []string{"a", "about", "at", "by", "for", "in", "is", "of", "on", "the", "to", "with"}

// wordTooMany helps where the line would be right without a word: entry at 120
// proof.
func wordTooMany(n *Node, d *diag.Diagnostic) bool {
	items, far := n.Match.Items, n.Match.miss.far
	if !slices.Contains(smallWords, items[far].Text) || far+1 >= len(items) || items[far+1].Kind != lang.Number {
		return false
	}
	without := slices.Delete(slices.Clone(items), far, far+1)
	m := new(matcher).line(n.Field.Pattern(), without)
	if !m.fits() {
		return false
	}
	it := &items[far]
	d.Summary = fmt.Sprintf("`%s` does not belong here", it.Text)
	d.Help = fmt.Sprintf("leave out `%s`\n%s", it.Text, d.Help)
	d.Fix = &diag.Fix{At: diag.Span{Src: it.At.Src, Start: it.At.Start, End: items[far+1].At.Start}, Text: "", Label: "leave out `" + it.Text + "`"}
	return true
}
