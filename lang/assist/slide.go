package assist

import (
	"math"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Slider is a number of a text that may be moved, and every text that it may have.
type Slider struct {
	Label  string     // the line as far as the number: "heat to"
	Unit   string     // "" for a bare number
	Now    int        // which of Texts stands there
	Places []Place    // the number, then others that follow it
	Texts  [][]string // by position, low to high: what stands at each of the places
}

// mostPositions is how finely a slider is parted: a hand does not place it more exactly.
const mostPositions = 150

// apart is how far a slider goes to either side on a scale whose nothing is a convention:
// half of a temperature means nothing. In SI; what a recipe is tried with, common practice.
var apart = map[quantity.Kind]float64{quantity.Temperature: 15, quantity.Gravity: 0.02, quantity.PH: 0.6}

// Slide gives the slider of the number at a place. It goes from half to twice the number,
// within what the language allows and, where the number is usual now, within what is
// usual. A share of a bill takes the others along, so that they come to what they came to.
// It is false where no number stands, and in a record: what was read is not moved.
func (s *Snapshot) Slide(offset int) (slider Slider, ok bool) {
	p, ok := s.at(offset)
	if !ok || p.cap == nil || p.path[0].Field.Past {
		return slider, false
	}
	it := p.cap.Item
	if p.cap.Kind == quantity.None || it.Kind != lang.Number && it.Kind != lang.Range {
		return slider, false
	}
	numbers := numbersIn(it.At)
	high := len(numbers) > 1 && offset > numbers[0].End
	slider.Label, slider.Unit = labelOf(p.node(), it.At), it.Unit
	m := moved{value: it.Value, written: numbers[0].Text()}
	m.low, m.high = ends(m.value, p.cap, p.node().Field.Limits)
	slider.Places = slices.Clone(numbers[:1])
	switch {
	case high:
		m = moved{value: it.High, written: numbers[1].Text()}
		m.low, m.high = ends(m.value, p.cap, p.node().Field.Limits)
		m.low = max(m.low, it.Value)
		slider.Places = numbers[1:2]
		slider.Label += " " + numbers[0].Text() + ".."
	case len(numbers) > 1:
		m.high = min(m.high, it.High)
	}
	m.whole = p.cap.Kind == quantity.Number && !strings.Contains(m.written, ".")
	others, bound := beside(p)
	if bound {
		if len(others) == 0 {
			return slider, false
		}
		m.high = min(m.high, m.value+total(others))
	}
	positions, now := m.positions()
	if len(positions) < 2 {
		return slider, false
	}
	slider.Now = now
	for _, at := range others {
		slider.Places = append(slider.Places, at.place)
	}
	places := 1
	for _, text := range append(written(others), m.written, wording.Trimmed(m.step, 6)) {
		_, decimals, _ := strings.Cut(text, ".")
		places = max(places, len(decimals))
	}
	for i, v := range positions {
		texts := append([]string{m.text(v)}, written(others)...)
		if i != now {
			for k, share := range giveWay(others, m.value-v, places) {
				texts[k+1] = wording.Trimmed(share, places)
			}
		}
		slider.Texts = append(slider.Texts, texts)
	}
	return slider, true
}

// numbersIn are the places of the numbers of an item: one, or the two of a range.
func numbersIn(at diag.Span) (out []diag.Span) {
	for _, t := range lang.Tokens([]byte(at.Text())) {
		if t.Kind == lang.TokNumber {
			out = append(out, diag.Span{Src: at.Src, Start: at.Start + int(t.Start), End: at.Start + int(t.End)})
		}
	}
	return out
}

// labelOf is a line as far as a place in it.
func labelOf(n *tree.Node, at diag.Span) string {
	before := diag.Span{Src: at.Src, Start: n.At().Start, End: at.Start}
	return strings.Trim(strings.Join(strings.Fields(before.Text()), " "), " ,")
}

// ends are how far a number may be moved, in its unit.
func ends(v float64, c *tree.Capture, limits []schema.Limit) (low, high float64) {
	unit, kind := c.Item.Unit, c.Kind
	low, high = min(v/2, v*2), max(v/2, v*2)
	if d := apart[kind]; d > 0 {
		if si, err := quantity.ToSI(v, unit, kind); err == nil {
			low, high = inUnit(si-d, si+d, unit, kind)
		}
	}
	for _, l := range limits {
		least, most := inUnit(l.Low, l.High, unit, kind)
		if !l.Holds(c.Slot, kind) || l.Severity != diag.Error && (v < least || v > most) {
			continue
		}
		if v == 0 && low == high { // nothing has no half: as far as is usual, or to ten
			low, high = least, min(most, 10)
		}
		low, high = max(low, least), min(high, most)
	}
	return low, high
}

func inUnit(lowSI, highSI float64, unit string, kind quantity.Kind) (low, high float64) {
	low, err := quantity.FromSI(lowSI, unit, kind)
	high, err2 := quantity.FromSI(highSI, unit, kind)
	if err != nil || err2 != nil {
		return math.Inf(-1), math.Inf(1)
	}
	return min(low, high), max(low, high)
}

// moved is a number and how far it goes.
type moved struct {
	value, low, high float64
	step             float64
	written          string
	whole            bool // a count
}

// positions are where the number may stand, low to high, and which of them it is now.
// They are round numbers, and the one that is written.
func (m *moved) positions() (at []float64, now int) {
	if m.whole {
		m.low = max(m.low, min(1, m.value))
	}
	if m.step = quantity.RoundUp((m.high - m.low) / mostPositions); !strings.Contains(m.written, ".") && (m.whole || m.high-m.low >= 16) {
		m.step = max(m.step, 1)
	}
	if !(m.step > 0) || math.IsInf(m.step, 0) {
		return nil, 0
	}
	const hair = 1e-9 // of a step, by which arithmetic misses a round number
	for i := math.Ceil(m.low/m.step - hair); i*m.step <= m.high+hair*m.step; i++ {
		at = append(at, i*m.step)
	}
	now, found := slices.BinarySearchFunc(at, m.value, func(a, v float64) int {
		switch {
		case math.Abs(a-v) < hair*m.step:
			return 0
		case a < v:
			return -1
		}
		return 1
	})
	if !found {
		at = slices.Insert(at, now, m.value)
	} else {
		at[now] = m.value
	}
	return at, now
}

// text writes the number at a position, with commas if it has them now.
func (m *moved) text(v float64) string {
	if v == m.value {
		return m.written
	}
	text := wording.Trimmed(v, max(0, int(math.Ceil(-math.Log10(m.step)-1e-9)))) // as fine as the step
	if strings.Contains(m.written, ",") {
		text = wording.Grouped(text)
	}
	return text
}

// share is another share of a bill.
type share struct {
	place   Place
	value   float64
	written string
}

// beside are the other shares of the bill of a share. It is bound to them unless one line
// takes the rest.
func beside(p spot) (others []share, bound bool) {
	if len(p.path) < 2 || p.cap.Kind != quantity.Share || p.path[len(p.path)-2].Field != schema.Bill {
		return nil, false
	}
	for _, l := range p.path[len(p.path)-2].Lines {
		c := l.Quantity()
		switch {
		case l == p.node():
		case l.Has("rest"):
			return nil, false
		case c != nil && c.Kind == quantity.Share && c.Item.Unit == p.cap.Item.Unit:
			at := numbersIn(c.Item.At)[0]
			others = append(others, share{at, c.Item.Value, at.Text()})
		}
	}
	return others, true
}

func total(shares []share) (sum float64) {
	for _, s := range shares {
		sum += s.value
	}
	return sum
}

func written(shares []share) (texts []string) {
	for _, s := range shares {
		texts = append(texts, s.written)
	}
	return texts
}

// giveWay are the other shares when together they are more by so much.
func giveWay(others []share, more float64, places int) []float64 {
	values := make([]float64, len(others))
	for i, s := range others {
		values[i] = s.value
	}
	sum := total(others)
	if sum <= 0 {
		return values
	}
	return edit.InProportion(values, (sum+more)/sum, places)
}
