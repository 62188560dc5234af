package chances

import (
	"fmt"
	"io"
	"math"
	"strings"

	"newmake/compile/ask/odds"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// Options of a rendering.
type Options struct {
	Units measure.Units
	Bold  bool
	Arg   string // the batch as it was named, for the command that comes next; "" leaves that out
}

// sharesTold is how many constants are named before the others are counted together.
const sharesTold = 8

// Text writes an answer as text.
func Text(w io.Writer, a *odds.Answer, o Options) error {
	t := answer{columns.Writer{Bold: o.Bold}, o, a}
	t.Strong(diag.Safe(a.Batch))
	t.Para(0, 0, verdict(a))
	if a.Failed > 0 {
		t.Para(0, 0, fmt.Sprintf("Of %d draws no batch came, and they are counted as failing.", a.Failed))
	}
	if len(t.a.Casks) > 0 {
		t.Para(0, 0, fmt.Sprintf("A cask counts as filled from %s of it on, as in the plan.", percent(t.a.CaskFullAt)))
	}
	t.casks()
	t.promises()
	t.numbers()
	t.shares()
	t.change()
	t.beside()
	t.Heading("NOT IN IT")
	for _, s := range a.NotInIt {
		t.Para(2, 4, s)
	}
	if o.Arg != "" {
		t.Gap()
		t.Para(0, 2, fmt.Sprintf("Each of the %d constants, its range and its source: newmake odds %s --format json", len(a.Drawn), o.Arg))
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type answer struct {
	columns.Writer
	o Options
	a *odds.Answer
}

// casks says how often other numbers of casks than the planned one are filled.
func (t *answer) casks() {
	if len(t.a.Casks) < 2 {
		return
	}
	t.Heading("CASKS")
	for _, c := range t.a.Casks {
		t.Item(fmt.Sprintf("  %d or more", c.Least), 16, c.Odds.Words)
	}
}

func (t *answer) promises() {
	if len(t.a.Promises) == 0 {
		return
	}
	t.Heading("PROMISES")
	for _, p := range t.a.Promises {
		switch stands, says := promise(p, t.o.Units); {
		case stands != "":
			t.Item("  "+stands, 20, says)
		case headline(t.a, p):
			t.Para(2, 4, strings.TrimSuffix(says, p.Odds.Words)+"as said above")
		default:
			t.Para(2, 4, says)
		}
	}
}

func (t *answer) numbers() {
	if len(t.a.Numbers) == 0 {
		return
	}
	t.Heading("NUMBERS")
	table := &columns.Table{Left: map[int]bool{5: true}}
	table.Row("", "planned", "1 in 20 less", "middle", "1 in 20 more", "")
	for _, n := range t.a.Numbers {
		if n.Low == n.High && n.Low == n.Planned {
			continue // set by the recipe
		}
		if foreign(n.Key, t.o.Units) {
			continue
		}
		table.Row(n.Name, number(n.Planned, n.Places), number(n.Low, n.Places), number(n.Middle, n.Places), number(n.High, n.Places), n.Unit)
	}
	table.Write(&t.Writer)
}

func (t *answer) shares() {
	s := mainShares(t.a)
	if s == nil {
		t.Gap()
		t.Para(2, 2, "What makes the spread is not told: there are too few draws, or nothing varies.")
		return
	}
	t.Heading("WHAT MAKES THE SPREAD of the " + s.Name)
	rest := s.R2
	for i, x := range s.Of {
		if i == sharesTold {
			break
		}
		rest -= x.Share
		t.Item(columns.Right(percent(x.Share), 7), 10, diag.Safe(x.Words)+", of the "+x.Owner)
	}
	if rest >= 0.005 {
		t.Item(columns.Right(percent(rest), 7), 10, "all others together")
	}
	t.Para(2, 2, told(s))
}

func (t *answer) change() {
	if t.a.Change == nil {
		return
	}
	t.Heading("TO FILL 9 TIMES IN 10")
	says, cmd := change(t.a, t.o.Units, t.o.Arg)
	t.Para(2, 4, says)
	if cmd != "" {
		t.Para(2, 4, cmd)
	}
}

func (t *answer) beside() {
	b := t.a.Beside
	if b == nil {
		return
	}
	t.Heading("BESIDE IT: " + diag.Safe(b.Batch) + " less " + diag.Safe(t.a.Batch))
	if b.Fills != nil {
		t.Para(2, 2, fmt.Sprintf("%s, with the same luck, fills %s: %s.", diag.Safe(b.Batch), casks(b.Casks), b.Fills.Words))
	}
	table := &columns.Table{Left: map[int]bool{4: true, 5: true}}
	table.Row("", "1 in 20 less", "middle", "1 in 20 more", "", "more in")
	for _, n := range b.Numbers {
		if n.Low == 0 && n.High == 0 || foreign(n.Key, t.o.Units) {
			continue
		}
		table.Row(n.Name, signed(n.Low, n.Places), signed(n.Middle, n.Places), signed(n.High, n.Places), n.Unit, fmt.Sprintf("%d of 10", int(math.Round(10*n.More.Share))))
	}
	table.Write(&t.Writer)
	t.Para(2, 2, fmt.Sprintf("%d constants were drawn alike for both, and %d are of one of them alone.", b.Shared, b.Alone))
}

func signed(x float64, places int) string {
	if x > 0 {
		return "+" + number(x, places)
	}
	return number(x, places)
}
