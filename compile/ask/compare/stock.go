package compare

import (
	"maps"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// stockMix is which of two entries of the stock holds: the old one, until the
// edit that changes it is made.
type stockMix struct {
	grains  map[string]stockChange[recipe.Grain]
	enzymes map[string]stockChange[recipe.Enzyme]
}

type stockChange[T any] struct {
	edit int
	new  *T
}

func (m *stockMix) renumber(to []int) {
	for k, c := range m.grains {
		c.edit = to[c.edit]
		m.grains[k] = c
	}
	for k, c := range m.enzymes {
		c.edit = to[c.edit]
		m.enzymes[k] = c
	}
}

// findStock finds entries that both batches use under one name and that say
// something else now.
func (d *Difference) findStock() {
	d.stock = stockMix{map[string]stockChange[recipe.Grain]{}, map[string]stockChange[recipe.Enzyme]{}}
	for _, g := range d.bill.order {
		o, inOld := d.bill.old[g]
		n, inNew := d.bill.new[g]
		if !inOld || !inNew {
			continue
		}
		if lines := d.entry(*o.Grain, *n.Grain); len(lines) > 0 {
			d.stock.grains[g] = stockChange[recipe.Grain]{d.stockEdit("grain "+g, lines, nil), n.Grain}
		}
	}
	old, new := enzymes(d.Old), enzymes(d.New)
	for _, name := range slices.Sorted(maps.Keys(old)) {
		if n := new[name]; n != nil {
			if lines := d.entry(*old[name], *n); len(lines) > 0 {
				d.stock.enzymes[name] = stockChange[recipe.Enzyme]{d.stockEdit("enzyme "+name, lines, nil), n}
			}
		}
	}
	if o, n := d.Old.Ferm.Yeast, d.New.Ferm.Yeast; o.Name == n.Name {
		if lines := d.entry(*o, *n); len(lines) > 0 {
			d.stockEdit("yeast "+n.Name, lines, func(b *recipe.Batch) { b.Ferm.Yeast = n })
		}
	}
	if o, n := d.Old.Cask.Kind, d.New.Cask.Kind; o != nil && n != nil && o.Name == n.Name {
		if lines := d.entry(*o, *n); len(lines) > 0 {
			d.stockEdit("cask "+n.Name, lines, func(b *recipe.Batch) { b.Cask.Kind = n })
		}
	}
	d.models()
}

func (d *Difference) stockEdit(what string, lines []Line, apply func(*recipe.Batch)) int {
	return d.add(Edit{Part: OfStock, Kind: Changed, Path: "stock." + strings.Replace(what, " ", ".", 1), What: what + " in the stock", Counts: true, Lines: lines, apply: apply})
}

func enzymes(b *recipe.Batch) map[string]*recipe.Enzyme {
	out := map[string]*recipe.Enzyme{}
	for _, s := range b.Mash.Steps {
		if s.Enzyme != nil {
			out[s.Enzyme.Name] = s.Enzyme
		}
	}
	for _, x := range b.Ferm.Doses {
		out[x.Enzyme.Name] = x.Enzyme
	}
	return out
}

// models are the constants of the models; each model is one edit.
func (d *Difference) models() {
	names := slices.Collect(maps.Keys(d.Old.Models))
	for name := range d.New.Models {
		if d.Old.Models[name] == nil {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		var lines []Line
		o, n := constants(d.Old.Models[name]), constants(d.New.Models[name])
		for _, k := range slices.Sorted(maps.Keys(o)) {
			if v, ok := n[k]; !ok {
				lines = append(lines, Line{Name: k, Old: number(o[k])})
			} else if v != o[k] {
				lines = append(lines, Line{Name: k, Old: number(o[k]), New: number(v)})
			}
		}
		for _, k := range slices.Sorted(maps.Keys(n)) {
			if _, ok := o[k]; !ok {
				lines = append(lines, Line{Name: k, New: number(n[k])})
			}
		}
		if len(lines) == 0 {
			continue
		}
		to := d.New.Models[name]
		d.stockEdit("model "+name, lines, func(b *recipe.Batch) {
			b.Models = maps.Clone(b.Models)
			if to == nil {
				delete(b.Models, name)
			} else {
				b.Models[name] = to
			}
		})
	}
}

func constants(m *recipe.Model) map[string]float64 {
	if m == nil {
		return nil
	}
	return m.Values
}

// entry compares two entries of the stock figure by figure; where they stand and
// what is said of them does not count.
func (d *Difference) entry(old, new any) []Line {
	var lines []Line
	o, n := reflect.ValueOf(old), reflect.ValueOf(new)
	for i := range o.NumField() {
		f := o.Type().Field(i)
		if f.Type == reflect.TypeFor[recipe.Entry]() || reflect.DeepEqual(o.Field(i).Interface(), n.Field(i).Interface()) {
			continue
		}
		lines = append(lines, Line{Name: words(f.Name), Old: figure(o.Field(i)), New: figure(n.Field(i))})
	}
	return lines
}

// words parts the name of a figure: EthanolMostKgM3 is ethanol most kg m3.
func words(name string) string {
	var b strings.Builder
	last := ' '
	for i, r := range name {
		if i > 0 && unicode.IsUpper(r) && !unicode.IsUpper(last) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		last = r
	}
	return strings.ToLower(b.String())
}

func figure(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		return number(v.Float())
	case reflect.Bool:
		if v.Bool() {
			return "yes"
		}
		return "no"
	case reflect.Slice:
		var all []string
		for i := range v.Len() {
			all = append(all, figure(v.Index(i)))
		}
		return strings.Join(all, ", ")
	default:
		return v.String()
	}
}

// sameStandard compares what two standards ask, wherever they stand.
func sameStandard(a, b *recipe.Standard) bool {
	plain := func(s *recipe.Standard) []recipe.Condition {
		out := slices.Clone(s.Conditions)
		for i := range out {
			out[i].At = diag.Span{}
		}
		return out
	}
	return reflect.DeepEqual(plain(a), plain(b))
}
