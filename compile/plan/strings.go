package plan

import "reflect"

// Strings gives a copy of the plan in which every text has gone through f. A
// renderer shows a recipe's words in a form that its medium does not obey; done
// to the whole plan, no word can be forgotten. A Unit is no text: it is ours, and
// what shows it must know it again.
func (p *Plan) Strings(f func(string) string) *Plan {
	return through(reflect.ValueOf(p), f).Interface().(*Plan)
}

func through(v reflect.Value, f func(string) string) reflect.Value {
	out := reflect.New(v.Type()).Elem()
	out.Set(v)
	switch v.Kind() {
	case reflect.String:
		if v.Type() == reflect.TypeFor[Unit]() {
			break
		}
		out.SetString(f(v.String()))
	case reflect.Pointer:
		if !v.IsNil() {
			out.Set(reflect.New(v.Type().Elem()))
			out.Elem().Set(through(v.Elem(), f))
		}
	case reflect.Slice:
		if !v.IsNil() {
			out.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			for i := range v.Len() {
				out.Index(i).Set(through(v.Index(i), f))
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			out.Field(i).Set(through(v.Field(i), f))
		}
	}
	return out
}
