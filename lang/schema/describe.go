package schema

import (
	"slices"
	"strings"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// ExampleBlock is Example, with braces where a block belongs.
func ExampleBlock(f *Field, units quantity.System) string {
	text := Example(f, units)
	if f.Block == nil || strings.Contains(text, "{") {
		return text
	}
	return strings.TrimSuffix(text, "`") + " { ... }`"
}

// Form is a line of the field as a reader sees it: words as they are written,
// values as the names of their slots (see SlotTypes), [what may be left out],
// one | another, (repeated)*.
func (f *Field) Form() string {
	known := shortForms()
	s := strings.ReplaceAll(f.Pattern().String(), known.step, "STEP")
	if f.Pattern().Op == Alt && f.Name != "" && s != "STEP" {
		s = "(" + s + ")"
	}
	s = strings.ReplaceAll(s, known.day, "DAY")
	s = strings.ReplaceAll(s, known.month, "MONTH")
	return strings.TrimSpace(f.Name + " " + s)
}

// shortForms are the shapes that have a short name, as they are written.
var shortForms = sync.OnceValue(func() (out struct{ step, day, month string }) {
	out.step = MustCompile(stepShape).String()
	out.day = "(" + MustCompile(dayShape).String() + ")"
	out.month = "(" + MustCompile(monthShape).String() + ")"
	return out
})

// FormFor is Form for a reader who counts in a system: without the choices that others
// alone measure.
func (f *Field) FormFor(reader quantity.System) string {
	form := f.Form()
	for _, t := range SlotTypes {
		if strings.Contains(form, t.Name) && wording.OthersAlone(t.Kind, reader) {
			form = strings.NewReplacer(" | "+t.Name+" | ", " | ", " | "+t.Name+")", ")", "("+t.Name+" | ", "(").Replace(form)
		}
	}
	return form
}

// FieldSlot is one slot of a field's shape.
type FieldSlot struct {
	Name  string // by which the checker and Limit.Slot know it
	Type  string // one of SlotTypes
	Kind  quantity.Kind
	Range bool
}

// Slots lists the slots of the field's shape, in order.
func (f *Field) Slots() []FieldSlot {
	var out []FieldSlot
	f.Pattern().visit(func(s *Shape) {
		if s.Op == Slot {
			out = append(out, FieldSlot{s.Slot, s.Kind.Name, s.Kind.Kind, s.Range})
		}
	})
	return out
}

// KindOf is the kind of quantity of a slot, of the first that holds a quantity if it is
// not named; None where there is none.
func (f *Field) KindOf(slot string) quantity.Kind {
	for _, s := range f.Slots() {
		if t := slotByName[s.Type]; t.IsQuantity() && (slot == "" || slot == s.Name) {
			return s.Kind
		}
	}
	return quantity.None
}

// Words lists the fixed words of the field's shape, in order, without the marks.
func (f *Field) Words() []string {
	var out []string
	f.Pattern().visit(func(s *Shape) {
		if s.Op == Literal && s.Word != "," && !slices.Contains(out, s.Word) {
			out = append(out, s.Word)
		}
	})
	return out
}

func (s *Shape) visit(see func(*Shape)) {
	see(s)
	for _, sub := range s.Subs {
		sub.visit(see)
	}
}

// Bound is a limit of a field in words.
type Bound struct {
	Of       string // the number's place in the line, if it has several: "`cooled to TEMP`"
	Text     string // "0 C to 60 C (32 F to 140 F)"
	Severity diag.Severity
	Reason   string
}

// Bounds says the field's limits in words, in the units of a system or of both, but for those
// of all that is read.
func (f *Field) Bounds(reader quantity.System) []Bound {
	said := f.said()
	var out []Bound
	for _, l := range f.Limits {
		if l.AsRead {
			continue
		}
		b := Bound{Severity: l.Severity, Reason: l.Reason}
		kind := l.Kind
		for _, s := range f.Slots() {
			if s.Kind != quantity.None && kind == quantity.None && l.Holds(s.Name, s.Kind) {
				kind = s.Kind
			}
		}
		switch {
		case l.Kind != quantity.None:
			b.Of = typeOf(kind)
		case l.Slot != "" && len(said) > 1:
			b.Of = said[l.Slot]
		}
		if kind == quantity.None {
			kind = quantity.Number
		}
		b.Text = wording.SpanIn(l.Low, l.High, kind, reader)
		same := slices.IndexFunc(out, func(o Bound) bool { return o.Text == b.Text && o.Reason == b.Reason && o.Severity == b.Severity })
		if same >= 0 {
			out[same].Of = words.And([]string{out[same].Of, b.Of})
			continue
		}
		out = append(out, b)
	}
	return out
}

// said is each number of the field's line as its form shows it, with the words that stand
// before it: `cooled to TEMP`. The keys are the slots' names.
func (f *Field) said() map[string]string {
	out := map[string]string{}
	var walk func(s *Shape, before []string) []string
	walk = func(s *Shape, before []string) []string {
		switch s.Op {
		case Literal:
			if s.Word == "," {
				return nil
			}
			return append(slices.Clone(before), s.Word)
		case Slot:
			if s.Kind.IsQuantity() && out[s.Slot] == "" {
				text := strings.Join(append(slices.Clone(before), s.Kind.Name), " ")
				if len(before) > 0 {
					text = "`" + text + "`"
				}
				out[s.Slot] = text
			}
			return nil
		case Seq:
			for _, sub := range s.Subs {
				before = walk(sub, before)
			}
			return before
		}
		for _, sub := range s.Subs { // one or another, or none
			if s.Op != Alt {
				before = nil
			}
			walk(sub, before)
		}
		return nil
	}
	walk(f.Pattern(), nil)
	return out
}

// typeOf is the type of slot that takes one kind of quantity alone.
func typeOf(k quantity.Kind) string {
	for _, t := range SlotTypes {
		if t.Kind == k {
			return t.Name
		}
	}
	return ""
}

// Example is a line of the field in backquotes, in the units of a system; its form where
// it has no example.
func Example(f *Field, units quantity.System) string {
	if f.Example != "" {
		return "`" + wording.Restated(f.Example, units) + "`"
	}
	return "`" + f.FormFor(units) + "`"
}
