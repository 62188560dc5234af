package numbers

import (
	"fmt"
	"math"
	"reflect"
)

// RanAway is the error of a stage, or of the plan, that gave what is no number.
// The limits of the language should not let it come to that; where they do,
// nothing of the stage is shown.
type RanAway struct{ What string } // the field of the result that is none, as PeakTempC

func (r *RanAway) Error() string { return fmt.Sprintf("%s is not a number", r.What) }

// Ran gives an error of type *RanAway if a float of a result, however deep, is NaN
// or infinite.
func Ran(result any) error {
	if what := noNumber(reflect.ValueOf(result), ""); what != "" {
		return &RanAway{what}
	}
	return nil
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
