package plan

import (
	"math"
	"reflect"
	"strconv"
)

// Round rounds every number of the plan to the places its field states. After
// it, printing cannot show a difference that the models do not have, and the
// last bit of a float, which one processor may compute otherwise than another,
// is gone.
func (p *Plan) Round() { roundValue(reflect.ValueOf(p).Elem(), 0) }

func roundValue(v reflect.Value, places int) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat(RoundTo(v.Float(), places))
	case reflect.Pointer:
		if !v.IsNil() {
			roundValue(v.Elem(), places)
		}
	case reflect.Slice:
		for i := range v.Len() {
			roundValue(v.Index(i), places)
		}
	case reflect.Struct:
		t := v.Type()
		for i := range v.NumField() {
			if f := v.Field(i); holdsFloats(f.Kind()) {
				roundValue(f, fieldPlaces(t.Field(i), v))
			}
		}
	}
}

func holdsFloats(k reflect.Kind) bool {
	return k == reflect.Float64 || k == reflect.Struct || k == reflect.Slice || k == reflect.Pointer
}

// fieldPlaces reads a field's tag; "unit" means that the Unit beside it says.
func fieldPlaces(f reflect.StructField, parent reflect.Value) int {
	tag := f.Tag.Get("places")
	if tag == "unit" {
		return unitPlaces[Unit(parent.FieldByName("Unit").String())]
	}
	n, _ := strconv.Atoi(tag) // absent on a struct or slice; a test wants it on every float
	return n
}

// RoundTo rounds half away from zero to a number of decimals. The nudge of one
// part in 1e12 takes a value that lies on a half, but for its last bits, always
// the same way. What is not a number becomes 0: JSON has no word for it.
func RoundTo(x float64, places int) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0
	}
	scale := math.Pow10(places)
	r := math.Round(x*scale*(1+1e-12)) / scale
	return r + 0 // no negative zero
}

// Rounded is a quantity as a plan keeps it, so that what is said of one before
// the plan is rounded is what the plan shows.
func (q Quantity) Rounded() Quantity {
	roundValue(reflect.ValueOf(&q).Elem(), 0)
	return q
}

// Rounded is a strength as a plan keeps it.
func (s Strength) Rounded() Strength {
	roundValue(reflect.ValueOf(&s).Elem(), 0)
	return s
}
