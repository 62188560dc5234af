package gitsetup

import (
	"bytes"
	"math"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/sorting"
)

// MergeBills readies three texts for git's merge, which knows lines and not sums.
// Where both sides changed a bill of shares, line by line and without touching the
// same grain differently, and the shares still come to what they came to, all three
// texts get the merged bill, so that git finds nothing to merge there. Else the bill
// is taken out of base, so that git leaves a conflict even where the lines of the two
// would go together. Texts that cannot be read come back as they are.
func MergeBills(base, ours, theirs []byte) (newBase, newOurs, newTheirs []byte) {
	texts := [3][]byte{base, ours, theirs}
	var bills [3]map[string]*bill
	laidOut := true
	for i, text := range texts {
		if bytes.Contains(text, []byte("\r")) {
			return base, ours, theirs
		}
		out, list := lang.Format(diag.NewSource("", text))
		if list.HasErrors() {
			return base, ours, theirs
		}
		laidOut = laidOut && bytes.Equal(out, text)
		bills[i] = billsOf(text)
	}
	var swaps [3][]swap
	for name, b := range bills[0] {
		o, t := bills[1][name], bills[2][name]
		if o == nil || t == nil || o.same(b) || t.same(b) || o.same(t) {
			continue // git has nothing to weigh: one side, or both the same
		}
		merged, ok := b.merged(o, t)
		if !ok {
			swaps[0] = append(swaps[0], swap{b, ""})
			continue
		}
		for i, one := range [...]*bill{b, o, t} {
			swaps[i] = append(swaps[i], swap{one, merged})
		}
	}
	for i := range texts {
		texts[i] = swapped(texts[i], swaps[i])
		if !laidOut || len(swaps[i]) == 0 {
			continue
		}
		if out, list := lang.Format(diag.NewSource("", texts[i])); !list.HasErrors() {
			texts[i] = out
		}
	}
	return texts[0], texts[1], texts[2]
}

// bill is the lines of a bill of shares in a text.
type bill struct {
	start, end int // of the lines from its head to its closing brace
	head, foot string
	lines      []billLine
	variant    bool // it changes another's, whose shares are not seen
	rest       bool // one grain takes what is left
}

// billLine is one grain with the remarks above it.
type billLine struct {
	key     string // the grain; of a grain that is taken out, with the word before it
	text    string // whole lines
	percent float64
}

// billsOf finds the bills of shares in a text by the names of their batches. One that
// is written otherwise, or twice, is left to git.
func billsOf(text []byte) map[string]*bill {
	file, _ := lang.Parse(diag.NewSource("", text))
	out := map[string]*bill{}
	for _, s := range file.Stmts {
		if !is(s, "batch") || s.Block == nil || len(s.Items) < 2 {
			continue
		}
		name := s.Items[1].Text
		for _, line := range s.Block.Stmts {
			if !is(line, "bill") || line.Block == nil {
				continue
			}
			b := billAt(text, line)
			if _, twice := out[name]; twice {
				b = nil
			}
			if b != nil {
				b.variant = len(s.Items) > 2
			}
			out[name] = b
		}
	}
	return out
}

func is(s *lang.Stmt, word string) bool {
	return len(s.Items) > 0 && s.Items[0].Kind == lang.Word && s.Items[0].Text == word
}

// billAt reads one bill; nil if it is not one of shares with a line for each.
func billAt(text []byte, s *lang.Stmt) *bill {
	b := &bill{start: lineStart(text, s.At.Start), end: lineEnd(text, s.Block.At.End-1)}
	at := lineEnd(text, s.Block.At.Start)
	b.head = string(text[b.start:at])
	for _, l := range s.Block.Stmts {
		end := lineEnd(text, l.At.End-1)
		if l.Block != nil || len(l.Items) != 2 || end <= at {
			return nil
		}
		one := billLine{key: l.Items[0].Text, text: string(text[at:end])}
		switch last := l.Items[1]; {
		case one.key == "remove":
			one.key += " " + last.Text
		case last.Kind == lang.Number && last.Unit == "%":
			one.percent = last.Value
		case last.Kind == lang.Word && last.Text == "rest":
			b.rest = true
		default:
			return nil
		}
		if slices.ContainsFunc(b.lines, func(x billLine) bool { return x.key == one.key }) {
			return nil
		}
		b.lines = append(b.lines, one)
		at = end
	}
	if at > b.end {
		return nil
	}
	b.foot = string(text[at:b.end])
	return b
}

func lineStart(text []byte, at int) int { return bytes.LastIndexByte(text[:at], '\n') + 1 }

func lineEnd(text []byte, at int) int {
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		return at + n + 1
	}
	return len(text)
}

// unspaced is a text without what layout alone changes.
func unspaced(s string) string { return strings.Join(strings.Fields(s), " ") }

func (b *bill) same(c *bill) bool {
	return unspaced(b.text()) == unspaced(c.text())
}

func (b *bill) text() string {
	var out strings.Builder
	out.WriteString(b.head)
	for _, l := range b.lines {
		out.WriteString(l.text)
	}
	return out.String() + b.foot
}

func (b *bill) line(key string) (billLine, bool) {
	for _, l := range b.lines {
		if l.key == key {
			return l, true
		}
	}
	return billLine{}, false
}

// percent is what the shares come to.
func (b *bill) percent() (sum float64) {
	for _, l := range b.lines {
		sum += l.percent
	}
	return sum
}

// hundredth is of a percent: shares are written no finer.
const hundredth = 0.01

// merged merges two bills line by line, in the order of ours, with what theirs adds at
// the end. It says no where both sides changed one line differently, or the shares no
// longer come to what they came to.
func (b *bill) merged(ours, theirs *bill) (string, bool) {
	out := &bill{rest: ours.rest || theirs.rest}
	ok := true
	one := func(was, o, t string) string {
		switch {
		case unspaced(o) == unspaced(t), unspaced(t) == unspaced(was):
			return o
		case unspaced(o) == unspaced(was):
			return t
		}
		ok = false
		return o
	}
	out.head, out.foot = one(b.head, ours.head, theirs.head), one(b.foot, ours.foot, theirs.foot)
	var keys []string
	for _, side := range [...]*bill{ours, theirs, b} {
		for _, l := range side.lines {
			if !slices.Contains(keys, l.key) {
				keys = append(keys, l.key)
			}
		}
	}
	for _, key := range keys {
		was, inBase := b.line(key)
		o, inOurs := ours.line(key)
		t, inTheirs := theirs.line(key)
		if b.variant && (inBase != inOurs || inBase != inTheirs) {
			return "", false // what the parent has of it is not seen
		}
		l := o
		if text := one(was.text, o.text, t.text); text == t.text {
			l = t
		}
		if l.text != "" {
			out.lines = append(out.lines, l)
		}
	}
	sum := out.percent()
	switch {
	case !ok:
		return "", false
	case out.rest:
		return out.text(), sum < 100
	case b.variant:
		return out.text(), math.Abs(sum-b.percent()) < hundredth && math.Abs(sum-ours.percent()) < hundredth && math.Abs(sum-theirs.percent()) < hundredth
	}
	return out.text(), math.Abs(sum-100) < hundredth
}

// swap puts a text in the place of a bill.
type swap struct {
	of   *bill
	text string
}

func swapped(text []byte, swaps []swap) []byte {
	sorting.Stable(swaps, func(a, b swap) int { return b.of.start - a.of.start }) // from the end
	for _, s := range swaps {
		text = slices.Concat(text[:s.of.start], []byte(s.text), text[s.of.end:])
	}
	return text
}
