package edit

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Variant is a batch that varies another, written: what differs, and no more.
type Variant struct {
	Name  string
	Text  []byte // laid out
	Lines []Line // each line that differs
}

// Scaled writes the variant of a batch that is f times as large: its grain, its
// liquor, what is dosed by weight or volume, and the cuts that are measured so,
// each in an amount that can be measured out. down says to round the grain down,
// where there is no more of it. note stands above it as a comment. remove says to
// take the promises out, which were made of another size.
func Scaled(h *check.House, b *recipe.Batch, f float64, name, note string, down, remove bool) (*Variant, error) {
	w := &writer{editor: editor{house: h, batch: b, result: &Result{}}, variant: &Variant{Name: name}, round: math.Round}
	if down {
		w.round = floor
	}
	w.bill(f)
	w.mash(f)
	w.scaleLines(recipe.PathFerm, f)
	w.scaleLines(recipe.PathSpirit, f)
	return w.finish(note, remove)
}

// Cut writes the variant of a batch whose hearts end elsewhere.
func Cut(h *check.House, b *recipe.Batch, to recipe.Cut, name, note string, remove bool) (*Variant, error) {
	w := &writer{editor: editor{house: h, batch: b, result: &Result{}}, variant: &Variant{Name: name}}
	at, ok := b.Where[recipe.PathHeartsTo]
	s := w.stmt(at)
	if !ok || s == nil {
		return nil, fault(diag.CodeChangePath, fmt.Sprintf("the batch %q does not say where its hearts end", b.Name), "write `hearts from ... to ...` in its spirit block")
	}
	old := at.Text()
	w.line(s, "spirit", s.At.Text(), strings.Replace(s.At.Text(), "to "+old, "to "+cutText(to, old), 1))
	return w.finish(note, remove)
}

// cutText writes a cut in the unit that it had.
func cutText(c recipe.Cut, old string) string {
	unit := strings.TrimLeft(old, "0123456789., ")
	var v float64
	var err error
	step := 0.1 // what a hydrometer and a thermometer are read to
	switch c.By {
	case recipe.ByVolume:
		v, err = quantity.FromSI(c.VolumeM3, unit, quantity.Volume)
		step = Step(v, unit)
	case recipe.ByVapourTemp:
		v, err = quantity.FromSI(c.TempC, unit, quantity.Temperature)
	case recipe.ByShare:
		v, unit = 100*c.Share, "%" // `of charge` stands after it
	case recipe.ByTime:
		v, err = quantity.FromSI(c.TimeS, unit, quantity.Duration)
	default:
		v = 100 * c.Strength.Value
		if u, _ := quantity.Lookup(unit); u == nil || u.Name != "% abv" { // it stays % vol where it was
			unit = "% abv"
		}
		if c.Strength.Basis == recipe.Proof {
			v, unit = 200*c.Strength.Value, "proof"
		}
	}
	if err != nil {
		return old
	}
	return inSteps(v, step, math.Round) + " " + unit
}

// writer writes the lines of a variant, block by block.
type writer struct {
	editor
	variant *Variant
	out     strings.Builder
	block   string
	round   func(float64) float64 // of grain
}

// open begins a block; close ends it.
func (w *writer) open(block string) {
	if w.block == block {
		return
	}
	w.close()
	w.block = block
	w.out.WriteString("  " + block + " {\n")
}

func (w *writer) close() {
	if w.block != "" {
		w.out.WriteString("  }\n")
		w.block = ""
	}
}

// line writes a line into a block, if it differs.
func (w *writer) line(s *lang.Stmt, block, old, new string) {
	if old == new {
		return
	}
	w.open(block)
	w.out.WriteString("    " + new + "\n")
	w.note(s, old, new)
}

func (w *writer) note(s *lang.Stmt, old, new string) {
	if old == new {
		return
	}
	number, _ := s.At.Position()
	w.variant.Lines = append(w.variant.Lines, Line{File: s.At.Src.Name, Number: number, Old: old, New: new})
}

// bill writes the total of a bill in shares, or every weight of one in weights.
func (w *writer) bill(f float64) {
	b := w.batch.Bill
	s := w.stmt(w.batch.Where[recipe.PathBill])
	if s == nil {
		return
	}
	unit := "lb"
	if w.batch.Units == recipe.SI {
		unit = "kg"
	}
	total := func(unit string) string {
		v, _ := quantity.FromSI(b.TotalKg*f, unit, quantity.Mass)
		return "bill " + inSteps(v, Step(v, unit), w.round) + " " + unit
	}
	head := s.At.Text()
	if it := massOf(s); it != nil {
		unit = it.Unit
	}
	if w.inShares() {
		w.out.WriteString("  " + total(unit) + " { # the shares stay\n  }\n")
		w.note(s, head, total(unit))
		return
	}
	block := "bill"
	if massOf(s) != nil {
		block = total(unit)
		w.note(s, head, block)
	}
	w.open(block)
	for _, l := range b.Lines {
		line, it := w.editor.line(l.Grain.Name), w.amount(l.Grain.Name)
		if line == nil || it == nil {
			continue // `rest` stays what is left
		}
		text := scaled(line, f, w.round, it)
		w.out.WriteString("    " + text + "\n")
		w.note(line, line.At.Text(), text)
	}
	w.close()
}

// scaled is a line with some of its numbers made f times as large.
func scaled(s *lang.Stmt, f float64, round func(float64) float64, items ...*lang.Item) string {
	edits := make([]replacement, len(items))
	for i, it := range items {
		v := it.Value * f
		edits[i] = replacement{it.At, strings.TrimSpace(inSteps(v, Step(v, it.Unit), round) + " " + it.Unit)}
	}
	return patched(s.At.Text(), s.At.Start, edits)
}

// amounts are the numbers on a line that are amounts: weights and volumes.
func amounts(s *lang.Stmt) []*lang.Item {
	var out []*lang.Item
	for i := range s.Items {
		it := &s.Items[i]
		if it.Kind != lang.Number {
			continue
		}
		if sameKind(it.Unit, "lb") || sameKind(it.Unit, "gal") {
			out = append(out, it)
		}
	}
	return out
}

// mash writes each step that holds an amount as a replacement of that step.
func (w *writer) mash(f float64) {
	count := map[string]int{}
	all := map[string]int{}
	stmts := make([]*lang.Stmt, 0, len(w.batch.Mash.Steps))
	for _, step := range w.batch.Mash.Steps {
		s := w.stmt(w.batch.Where[step.Path])
		stmts = append(stmts, s)
		if s != nil {
			all[s.Head()]++
		}
	}
	for _, s := range stmts {
		if s == nil {
			continue
		}
		verb := s.Head()
		count[verb]++
		items := amounts(s)
		if len(items) == 0 {
			continue
		}
		which := verb
		if all[verb] > 1 {
			which += " " + strconv.Itoa(count[verb])
		}
		text := scaled(s, f, math.Round, items...)
		if text == s.At.Text() {
			continue
		}
		w.open("mash")
		w.out.WriteString("    replace " + which + " {\n      " + text + "\n    }\n")
		w.note(s, s.At.Text(), text)
	}
	w.close()
}

// scaleLines writes the lines of a block that hold an amount.
func (w *writer) scaleLines(block recipe.Path, f float64) {
	var done []*lang.Stmt
	for _, v := range w.batch.Values() {
		if !v.Grows || !v.Path.Within(block) {
			continue
		}
		s := w.stmt(v.At)
		if s == nil || s.Block != nil || slices.Contains(done, s) {
			continue
		}
		done = append(done, s)
		if items := amounts(s); len(items) > 0 {
			w.line(s, block.String(), s.At.Text(), scaled(s, f, math.Round, items...))
		}
	}
	w.close()
}

// units says in which units the variant is meant, where the file that it comes to
// stand in might say otherwise: a batch is gauged as most of its file is written.
func (w *writer) units() string {
	if w.batch.Gauge == recipe.SI {
		return "  units si\n"
	}
	f, _ := lang.Parse(diag.NewSource("", []byte(w.out.String())))
	metric := false
	lang.Walk(f.Stmts, func(s *lang.Stmt, _ int) bool {
		for _, it := range s.Items {
			u, ok := quantity.Lookup(it.Unit)
			metric = metric || ok && u.System == quantity.SI
		}
		return true
	})
	if metric {
		return "  units us\n"
	}
	return ""
}

// finish puts the variant together and lays it out.
func (w *writer) finish(note string, remove bool) (*Variant, error) {
	w.close()
	var text strings.Builder
	if note != "" {
		text.WriteString("# " + note + "\n")
	}
	fmt.Fprintf(&text, "batch %s from %s {\n", strconv.Quote(w.variant.Name), strconv.Quote(w.batch.Name))
	text.WriteString(w.units())
	text.WriteString(w.out.String())
	if remove {
		text.WriteString("  remove promise # promised of the batch as it was\n")
	}
	text.WriteString("}\n")
	out, list := lang.Format(diag.NewSource(w.variant.Name, []byte(text.String())))
	if list.HasErrors() {
		return nil, list
	}
	w.variant.Text = out
	return w.variant, nil
}
