package numbers

import (
	"fmt"
	"math"
	"reflect"
	"sync"
	"unsafe"
)

// RanAway is the error of a stage, or of the plan, that gave what is no number.
// The limits of the language should not let it come to that; where they do,
// nothing of the stage is shown.
type RanAway struct{ What string } // the field of the result that is none, as PeakTempC

func (r *RanAway) Error() string { return fmt.Sprintf("%s is not a number", r.What) }

// Ran gives an error of type *RanAway if a float of a result, however deep, is NaN
// or infinite. The result is a pointer or a slice.
func Ran(result any) error {
	v := reflect.ValueOf(result)
	sound := true
	switch v.Kind() {
	case reflect.Pointer:
		sound = layoutOf(v.Type().Elem()).sound(v.UnsafePointer())
	case reflect.Slice:
		sound = layoutOf(v.Type().Elem()).allSound(v.UnsafePointer(), v.Len())
	}
	if sound {
		return nil
	}
	return &RanAway{noNumber(v, "")}
}

// layout is where the floats of a type stand. A plan has some ten thousand, and
// each is looked at: reading them where they lie takes a fiftieth of the time that
// going through the fields by reflection does.
type layout struct {
	size   uintptr
	floats []uintptr
	within []within
}

// within is a slice or a pointer to what has floats too.
type within struct {
	at    uintptr
	slice bool
	of    *layout
}

var layouts sync.Map // of *layout, by reflect.Type

func layoutOf(t reflect.Type) *layout {
	if l, ok := layouts.Load(t); ok {
		return l.(*layout)
	}
	l := &layout{size: t.Size()}
	l.add(t, 0, map[reflect.Type]*layout{t: l})
	layouts.Store(t, l)
	return l
}

// add takes in a type that stands at an offset. The layouts of what it points to
// are made with it; known are those under way, for a type may hold its own.
func (l *layout) add(t reflect.Type, at uintptr, known map[reflect.Type]*layout) {
	switch t.Kind() {
	case reflect.Float64:
		l.floats = append(l.floats, at)
	case reflect.Pointer, reflect.Slice:
		of := known[t.Elem()]
		if of == nil {
			of = &layout{size: t.Elem().Size()}
			known[t.Elem()] = of
			of.add(t.Elem(), 0, known)
			if len(of.floats)+len(of.within) == 0 {
				return
			}
		}
		l.within = append(l.within, within{at, t.Kind() == reflect.Slice, of})
	case reflect.Array:
		for i := range t.Len() {
			l.add(t.Elem(), at+uintptr(i)*t.Elem().Size(), known)
		}
	case reflect.Struct:
		for i := range t.NumField() {
			f := t.Field(i)
			l.add(f.Type, at+f.Offset, known)
		}
	}
}

// sound says if every float of the value at p is a number.
func (l *layout) sound(p unsafe.Pointer) bool {
	if p == nil {
		return true
	}
	for _, at := range l.floats {
		if x := *(*float64)(unsafe.Add(p, at)); x-x != 0 { // NaN, or of an infinity
			return false
		}
	}
	for _, w := range l.within {
		in := unsafe.Add(p, w.at)
		if !w.slice {
			if !w.of.sound(*(*unsafe.Pointer)(in)) {
				return false
			}
		} else if s := *(*[]struct{})(in); !w.of.allSound(unsafe.Pointer(unsafe.SliceData(s)), len(s)) {
			return false
		}
	}
	return true
}

// allSound is sound for so many values in a row.
func (l *layout) allSound(p unsafe.Pointer, many int) bool {
	if len(l.floats)+len(l.within) == 0 {
		return true
	}
	for i := range many {
		if !l.sound(unsafe.Add(p, uintptr(i)*l.size)) {
			return false
		}
	}
	return true
}

// noNumber gives the name of the first field that holds none; "" if all hold one.
func noNumber(v reflect.Value, name string) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return name
		}
	case reflect.Pointer:
		return noNumber(v.Elem(), name)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if what := noNumber(v.Index(i), name); what != "" {
				return what
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if what := noNumber(v.Field(i), v.Type().Field(i).Name); what != "" {
				return what
			}
		}
	}
	return ""
}
