package tree

import (
	"fmt"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/pattern"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/wording"
)

// sayingsOf is the block whose ways of saying something hold in a block: a step of a
// record is not said as a step of a recipe.
func sayingsOf(b *schema.Block, of string) string {
	if b.Timed {
		return "run"
	}
	return of
}

// onlyWhen speaks of a line that has a time and nothing else.
func (s shaper) onlyWhen(st *lang.Stmt, b *schema.Block, w When) *Node {
	n := &Node{Field: b.Unworded()[0], Stmt: st, When: w, Bad: true}
	if !st.Bad {
		s.diags.Add(diag.Diagnostic{Code: diag.CodeShape, At: w.At(), Summary: "this line has a time and nothing after it",
			Help: "write what was done or read, as in `09:00 " + wording.Restated(b.Unworded()[0].Example, w.At().Units()) + "`, or `09:00 none`"})
	}
	return n
}

// dottedClock is a time of day that is written with another mark, or with none.
var dottedClock = pattern.Of(`^([01]?[0-9]|2[0-3])[.]?([0-5][0-9])$`)

// timedOtherwise speaks of a line that begins with a time or a day as others write
// it, or with a reading that has no time. It says if it does.
func timedOtherwise(items []lang.Item, b *schema.Block, d *diag.Diagnostic) bool {
	head := &items[0]
	switch head.Kind {
	case lang.Number:
		if m := dottedClock().FindStringSubmatch(head.Num); m != nil {
			clock := fmt.Sprintf("%02s:%s", m[1], m[2])
			at := head.At
			at.End = at.Start + len(head.Num)
			d.Code, d.At = diag.CodeBadDate, at
			d.Summary = fmt.Sprintf("a clock is written `%s`", clock)
			d.Help = fmt.Sprintf("write `%s`, by the 24-hour clock", clock)
			d.Fix = &diag.Fix{At: at, Text: clock, Label: "write `" + clock + "`", Guess: !strings.Contains(head.Num, ".")}
			return true
		}
		d.Code = diag.CodeShape
		d.Summary = "a line does not begin with a reading"
		d.Help = "write when it was read before it, as in `09:00 " + wording.Restated(b.Unworded()[0].Example, head.At.Units()) + "`, or what was done"
		return true
	case lang.Word:
		low := strings.ToLower(head.Text)
		for _, day := range lang.Days {
			if !strings.HasPrefix(low, day) || !strings.HasPrefix(fullDays[day], low) && low != day+"s" {
				continue
			}
			d.Code, d.At = diag.CodeBadDate, head.At
			d.Summary = "a day is written in three small letters"
			d.Help = "write `" + day + "`"
			d.Fix = &diag.Fix{At: head.At, Text: day, Label: "write `" + day + "`"}
			return true
		}
	}
	return false
}

var fullDays = map[string]string{
	"sun": "sunday", "mon": "monday", "tue": "tuesday", "wed": "wednesday", "thu": "thursday", "fri": "friday", "sat": "saturday",
}

// clockWithin speaks of a time that stands behind what was done.
func clockWithin(n *Node, d *diag.Diagnostic) bool {
	it := &n.Match.Items[n.Match.miss.far]
	if it.Kind != lang.Clock && it.Kind != lang.Date || !n.When.IsZero() {
		return false
	}
	d.Summary = "the time comes first on its line"
	d.Help = fmt.Sprintf("write `%s` before `%s`\n%s", it.At.Text(), n.Stmt.Items[0].At.Text(), d.Help)
	return true
}

// withoutComma speaks of a number whose unit is no unit, but a word of the line: a
// comma is missing between them.
func withoutComma(n *Node, d *diag.Diagnostic) bool {
	items, far := n.Match.Items, n.Match.miss.far
	for _, i := range []int{far, far - 1} {
		if i < 0 || items[i].Kind != lang.Number || items[i].Unit == "" {
			continue
		}
		it := &items[i]
		if _, known := quantity.Lookup(it.Unit); known || !n.Field.Pattern().KnowsWord(it.Unit) {
			continue
		}
		at := it.UnitAt()
		d.Code, d.At = diag.CodeUnknownUnit, at
		d.Summary = fmt.Sprintf("`%s` after `%s` is taken for its unit", it.Unit, it.Num)
		d.Help = fmt.Sprintf("put a comma between them: `%s, %s`; a number that has a unit has it before the comma", it.Num, it.Unit)
		end := it.At.Start + len(it.Num)
		gap := diag.Span{Src: it.At.Src, Start: end, End: end}
		d.Fix = &diag.Fix{At: gap, Text: ",", Label: "put a comma", Guess: true}
		return true
	}
	return false
}
