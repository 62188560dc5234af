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

// ran gives an error of type *RanAway if a float of a stage's result is NaN or
// infinite. Curves and steps are not gone through: what is in them is in the plan,
// which is looked through whole before it is shown.
func ran(result any) error {
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
	case reflect.Struct:
		for i := range v.NumField() {
			if what := noNumber(v.Field(i), v.Type().Field(i).Name); what != "" {
				return what
			}
		}
	}
	return ""
}
