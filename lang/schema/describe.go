package schema

import (
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
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
	s := strings.ReplaceAll(f.Pattern.String(), MustCompile(stepShape).String(), "STEP")
	if f.Pattern.Op == Alt && f.Name != "" && s != "STEP" {
		s = "(" + s + ")"
	}
	s = strings.ReplaceAll(s, "("+MustCompile(dayShape).String()+")", "DAY")
	s = strings.ReplaceAll(s, "("+MustCompile(monthShape).String()+")", "MONTH")
	return strings.TrimSpace(f.Name + " " + s)
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
	f.Pattern.visit(func(s *Shape) {
		if s.Op == Slot {
			out = append(out, FieldSlot{s.Slot, s.Kind.Name, s.Kind.Kind, s.Range})
		}
	})
	return out
}

// Words lists the fixed words of the field's shape, in order, without the marks.
func (f *Field) Words() []string {
	var out []string
	f.Pattern.visit(func(s *Shape) {
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
	Of       string // the slot's type, if the field has quantities of several sorts
	Text     string // "0 C to 60 C (32 F to 140 F)"
	Severity diag.Severity
	Reason   string
}

// Bounds says the field's limits in words, in the units of a system or of both.
func (f *Field) Bounds(reader quantity.System) []Bound {
	var sorts []string
	for _, s := range f.Slots() {
		if s.Kind != quantity.None && !slices.Contains(sorts, s.Type) {
			sorts = append(sorts, s.Type)
		}
	}
	var out []Bound
	for _, l := range f.Limits {
		b := Bound{Severity: l.Severity, Reason: l.Reason}
		kind := l.Kind
		for _, s := range f.Slots() {
			if s.Kind != quantity.None && kind == quantity.None && l.Holds(s.Name, s.Kind) {
				kind = s.Kind
			}
		}
		if l.Kind != quantity.None || l.Slot != "" && len(sorts) > 1 {
			b.Of = typeOf(kind)
		}
		if kind == quantity.None {
			kind = quantity.Number
		}
		b.Text = wording.SpanIn(l.Low, l.High, kind, reader)
		out = append(out, b)
	}
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
	return "`" + f.Form() + "`"
}
