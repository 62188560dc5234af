package recipe

import (
	"cmp"
	"maps"
	"reflect"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Value is one value that a batch holds, bound to that batch: what is compared,
// varied, made larger, set and found in the text goes through it. All that a
// recipe holds is described once, by the rows in values_batch.go,
// values_plant.go and values_library.go.
type Value struct {
	*Row
	Name  string    // in a distiller's words
	Path  Path      // where it is written; several values of one line share its path
	Of    string    // whose it is: "Wash still", "corn", "model mash"; "" for the batch's own
	Words string    // its name with its owner: "Wash still reflux"
	Input string    // what it is called where it is nudged: "starch of corn"; "" if it is not
	At    diag.Span // its line, else that of its block; zero if it is written nowhere
	Cells []Cell    // what it is made of
}

// Row describes one value.
type Row struct {
	Path Path   // below its owner: the words by which its line begins
	Name string // in a distiller's words; the last word of Path if empty
	// Vary says that it is worth a nudge in `why`.
	Vary bool
	// As is what it is called as an input that is nudged ("time of the ferment"),
	// where that is not its name; it is nudged then.
	As string
	// Down says that it is nudged downwards.
	Down bool
	// Maybe says that nothing stands for "not given": there is nothing to nudge.
	Maybe bool
	// Idle says that it changes nothing that a plan calculates.
	Idle bool
	// Grows says that its weights and volumes go with the size of the batch.
	Grows bool
	// Beside is a line to look at where the value has none of its own.
	Beside Path
	// Counts is what a whole number counts: "charge".
	Counts string
	// Part says that it is a part of another value, and not compared by itself.
	Part bool
}

// Cell is one datum of a value. It points into its batch.
type Cell struct {
	Kind quantity.Kind // of a number; None of all else
	Per  quantity.Kind // of a price: what it is for one unit of, None if each
	ref  any           // pointer to the datum, or a map of numbers
	key  string        // with a map: which of its numbers

	slot    string // of its line, where it is read; empty for the line's first number or word
	isApart bool   // it is not read by its row
}

// Is gives what the cell holds: a float64 in SI, an int, a bool, a word, a
// Strength, a Cut, a pointer to a vessel or to an entry of the library.
func (c Cell) Is() any {
	if m, ok := c.ref.(map[string]float64); ok {
		return m[c.key]
	}
	return reflect.ValueOf(c.ref).Elem().Interface()
}

// Set puts something of the same type into the cell.
func (c Cell) Set(v any) {
	if m, ok := c.ref.(map[string]float64); ok {
		m[c.key] = v.(float64)
		return
	}
	reflect.ValueOf(c.ref).Elem().Set(reflect.ValueOf(v))
}

// Is lists what the cells hold.
func (v Value) Is() []any {
	out := make([]any, len(v.Cells))
	for i, c := range v.Cells {
		out[i] = c.Is()
	}
	return out
}

// Same reports whether two values mean the same, wherever they are written. Vessels
// and entries of the library are the same by name: their figures are values too.
func (v Value) Same(w Value) bool {
	return slices.EqualFunc(v.Cells, w.Cells, Cell.same)
}

func (c Cell) same(d Cell) bool {
	if x, ok := c.ref.(*float64); ok { // most are numbers
		y, ok := d.ref.(*float64)
		return ok && *x == *y
	}
	if m, ok := c.ref.(map[string]float64); ok {
		n, ok := d.ref.(map[string]float64)
		return ok && m[c.key] == n[d.key]
	}
	return reflect.DeepEqual(plain(c.Is()), plain(d.Is()))
}

// plain leaves out of a datum what has no meaning of its own.
func plain(x any) any {
	switch x := x.(type) {
	case Cut:
		x.At = diag.Span{}
		return x
	case []*Vessel:
		names := make([]string, len(x))
		for i, v := range x {
			names[i] = v.Name
		}
		return names
	}
	return NameOf(x)
}

// NameOf gives the name of a vessel or of an entry of the library, "" for none, and
// anything else as it is.
func NameOf(x any) any {
	v := reflect.ValueOf(x)
	if v.Kind() != reflect.Pointer {
		return x
	}
	if v.IsNil() {
		return ""
	}
	return v.Elem().FieldByName("Name").String()
}

// Set gives v what w holds. Both are of the same row.
func (v Value) Set(w Value) {
	for i, c := range w.Cells {
		v.Cells[i].Set(c.Is())
	}
}

// Key tells the values of a batch apart.
type Key struct {
	Path Path
	Name string
}

// Key is the value's own.
func (v Value) Key() Key { return Key{v.Path, v.Name} }

// Constructors of cells whose kind no line of the language tells. The unit is that of the SI.
func numberOf(kind quantity.Kind) func(*float64) Cell {
	return func(x *float64) Cell { return Cell{Kind: kind, ref: x} }
}

var (
	mass        = numberOf(quantity.Mass)
	volume      = numberOf(quantity.Volume)
	temperature = numberOf(quantity.Temperature)
	duration    = numberOf(quantity.Duration)
	share       = numberOf(quantity.Share)
	dosed       = numberOf(quantity.Dose)
	conc        = numberOf(quantity.Concentration)
	alphaDU     = numberOf(quantity.DextrinizingUnit)
)

// price is money for one unit of a kind; None: each.
func price(x *float64, per quantity.Kind) Cell {
	return Cell{Kind: quantity.UnitPrice, Per: per, ref: x}
}

// datum is anything that is not a number: a word, a choice, a count, a strength,
// a cut, a vessel, an entry of the library.
func datum[T any](x *T) Cell { return Cell{ref: x} }

// number is a number whose kind the language tells, by the slot that it is read from.
func number(x *float64) Cell { return Cell{ref: x} }

// row is a Row with the way to its cells in its owner.
type row[T any] struct {
	Row
	cells func(*T) []Cell
}

func cells(c ...Cell) []Cell { return c }

// values gathers the values of a batch.
type values struct {
	batch  *Batch
	beside *Batch // whose entries of the library are left out; nil for none
	out    []Value
}

// owner is whose values are gathered.
type owner struct {
	path   Path
	name   string // for Value.Of
	words  string // stands before the names
	of     string // stands after what is nudged
	called string // stands before it
	where  func(Path) diag.Span
}

func gather[T any](v *values, o owner, kinds *kinds, rows []row[T], of *T) {
	for i := range rows {
		r := &rows[i]
		name := r.Name
		if name == "" {
			name = r.Path.Last()
		}
		x := Value{Row: &r.Row, Name: name, Path: o.path.join(r.Path), Of: o.name, Words: joined(o.words, name), At: o.where(r.Path), Cells: kinds.put(i, r.cells(of))}
		if !r.Beside.IsZero() && v.batch != nil {
			x.At = v.batch.beside(r.Path, r.Beside)
		}
		if r.Vary || r.As != "" {
			x.Input = o.called + cmp.Or(r.As, name)
			if o.of != "" {
				x.Input += " of " + o.of
			}
		}
		v.out = append(v.out, x)
	}
}

func joined(a, b string) string {
	if a == "" {
		return b
	}
	return a + " " + b
}

// Values lists all that a batch holds, in the order of the work: the batch's own,
// the bill, the steps, the doses and the promises, the plant with all its vessels
// and prices, and what it uses of the library.
func (b *Batch) Values() []Value { return b.ValuesBeside(nil) }

// ValuesBeside are the values of a batch without those that it has from the very
// vessels and entries of the library that another has: for two batches of one house
// that is most of them, and they are the same.
func (b *Batch) ValuesBeside(other *Batch) []Value {
	most := 300 + len(b.Costs.PerKg) + len(stepRows)*len(b.Mash.Steps) // and a little more than most batches have
	for name, m := range b.Models {
		if other == nil || other.Models[name] != m {
			most += len(m.Values)
		}
	}
	v := &values{batch: b, beside: other, out: make([]Value, 0, most)}
	own := owner{where: b.At}
	gather(v, own, batchKinds, batchRows, b)
	v.lists()
	if b.Plant != nil {
		o := own
		o.words = "plant's"
		gather(v, o, plantKinds, plantRows, b)
		for _, x := range b.Plant.Vessels {
			if other == nil || other.Plant == nil || !slices.Contains(other.Plant.Vessels, x) {
				v.out = append(v.out, x.Values()...)
			}
		}
		for _, x := range b.Plant.Tanks {
			if other == nil || other.Plant == nil || !slices.Contains(other.Plant.Tanks, x) {
				v.out = append(v.out, x.Values()...)
			}
		}
		for _, x := range b.Plant.RackHouses {
			if other == nil || other.Plant == nil || !slices.Contains(other.Plant.RackHouses, x) {
				v.out = append(v.out, x.Values()...)
			}
		}
	}
	v.prices()
	v.library()
	return v.out
}

// Value finds a value by its key; false if the batch has none.
func (b *Batch) Value(k Key) (Value, bool) {
	for _, v := range b.Values() {
		if v.Key() == k {
			return v, true
		}
	}
	return Value{}, false
}

// beside is where a value is written, or another is beside which it belongs.
func (b *Batch) beside(p, other Path) diag.Span {
	if at, ok := b.Where[p]; ok {
		return at
	}
	return b.At(other)
}

// in finds lines by the word that they begin with.
func in(where map[string]diag.Span) func(Path) diag.Span {
	return func(p Path) diag.Span { return where[p.Last()] }
}

func sortedKeys[T any](m map[string]T) []string { return slices.Sorted(maps.Keys(m)) }
