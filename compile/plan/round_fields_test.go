package plan

import (
	"bytes"
	"fmt"
	"go/format"
	"math/rand/v2"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// round_fields.go is what is written here from the tags.
func TestRoundFieldsFollowTheTags(t *testing.T) {
	want, err := format.Source([]byte(roundFields()))
	require.NoError(t, err)
	if testflag.Update() {
		require.NoError(t, os.WriteFile("round_fields.go", want, 0o644))
	}
	have, err := os.ReadFile("round_fields.go")
	require.NoError(t, err)
	assert.True(t, bytes.Equal(want, have), "round_fields.go is stale: go test ./compile/plan -update writes it from the tags")
}

// roundFields writes the methods round and noNumber for every struct of a plan that
// holds a float.
func roundFields() string {
	var out strings.Builder
	out.WriteString("// Written by go test ./compile/plan -update from the tags. DO NOT EDIT.\n//\n// Where a field is gone this does not compile: take its line out, then run that.\n\npackage plan\n")
	for _, typ := range planStructs() {
		if !hasFloats(typ) {
			continue
		}
		fmt.Fprintf(&out, "\nfunc (x *%s) round() {\n", typ.Name())
		for i := range typ.NumField() {
			f := typ.Field(i)
			name := "x." + f.Name
			places := f.Tag.Get("places")
			if places == "unit" {
				places = "unitPlaces[x.Unit]"
			}
			switch of := f.Type; of.Kind() {
			case reflect.Float64:
				fmt.Fprintf(&out, "%s = RoundTo(%s, %s)\n", name, name, places)
			case reflect.Struct:
				if hasFloats(of) {
					fmt.Fprintf(&out, "%s.round()\n", name)
				}
			case reflect.Pointer:
				if hasFloats(of.Elem()) {
					fmt.Fprintf(&out, "if %s != nil {\n%s.round()\n}\n", name, name)
				}
			case reflect.Slice:
				switch {
				case of.Elem().Kind() == reflect.Float64:
					fmt.Fprintf(&out, "for i := range %s {\n%s[i] = RoundTo(%s[i], %s)\n}\n", name, name, name, places)
				case hasFloats(of.Elem()):
					fmt.Fprintf(&out, "for i := range %s {\n%s[i].round()\n}\n", name, name)
				}
			}
		}
		out.WriteString("}\n")
		writeNoNumber(&out, typ)
	}
	return out.String()
}

func writeNoNumber(out *strings.Builder, typ reflect.Type) {
	fmt.Fprintf(out, "\nfunc (x *%s) noNumber() string {\n", typ.Name())
	for i := range typ.NumField() {
		f := typ.Field(i)
		name := "x." + f.Name
		within := "if what := %s.noNumber(); what != \"\" {\nreturn what\n}\n"
		switch of := f.Type; of.Kind() {
		case reflect.Float64:
			fmt.Fprintf(out, "if !isNumber(%s) {\nreturn %q\n}\n", name, f.Name)
		case reflect.Struct:
			if hasFloats(of) {
				fmt.Fprintf(out, within, name)
			}
		case reflect.Pointer:
			if hasFloats(of.Elem()) {
				fmt.Fprintf(out, "if %s != nil {\n"+within+"}\n", name, name)
			}
		case reflect.Slice:
			switch {
			case of.Elem().Kind() == reflect.Float64:
				fmt.Fprintf(out, "for _, v := range %s {\nif !isNumber(v) {\nreturn %q\n}\n}\n", name, f.Name)
			case hasFloats(of.Elem()):
				fmt.Fprintf(out, "for i := range %s {\n"+within+"}\n", name, name+"[i]")
			}
		}
	}
	out.WriteString("return \"\"\n}\n")
}

// planStructs is every struct that a plan is made of, by name.
func planStructs() []reflect.Type {
	seen := map[reflect.Type]bool{}
	var all []reflect.Type
	var walk func(reflect.Type)
	walk = func(typ reflect.Type) {
		for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct || seen[typ] {
			return
		}
		seen[typ] = true
		all = append(all, typ)
		for i := range typ.NumField() {
			walk(typ.Field(i).Type)
		}
	}
	walk(reflect.TypeFor[Plan]())
	walk(reflect.TypeFor[Strength]())
	slices.SortFunc(all, func(a, b reflect.Type) int { return strings.Compare(a.Name(), b.Name()) })
	return all
}

// hasFloats reports whether a struct holds a float, however deep.
func hasFloats(typ reflect.Type) bool {
	switch typ.Kind() {
	case reflect.Float64:
		return true
	case reflect.Pointer, reflect.Slice:
		return hasFloats(typ.Elem())
	case reflect.Struct:
		for i := range typ.NumField() {
			if hasFloats(typ.Field(i).Type) {
				return true
			}
		}
	}
	return false
}

// Written out or read from the tags, rounding gives the same bits.
func TestRoundAgainstReflection(t *testing.T) {
	afterUpdate(t)
	r := rand.New(rand.NewPCG(3, 4))
	for range 20 {
		var a Plan
		fill(reflect.ValueOf(&a).Elem(), r)
		b := *a.Strings(func(s string) string { return s }) // a deep copy
		a.round()
		roundValue(reflect.ValueOf(&b).Elem(), 0)
		require.Equal(t, b, a)
	}
}

// afterUpdate leaves a test of the written methods to the run after -update: the methods
// in this one are those of before.
func afterUpdate(t *testing.T) {
	if testflag.Update() {
		t.Skip("round_fields.go was written just now: go test ./compile/plan tries it")
	}
}

// fill puts something in everything.
func fill(v reflect.Value, r *rand.Rand) {
	switch v.Kind() {
	case reflect.Float64:
		v.SetFloat([]float64{r.Float64(), 1e4 * r.NormFloat64(), 0.125, 2.5, -0.00001}[r.IntN(5)])
	case reflect.String:
		if v.Type() == reflect.TypeFor[Unit]() {
			units := []string{"L", "kg", "C", "SG", "each", "h"}
			v.SetString(units[r.IntN(len(units))])
		}
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		fill(v.Elem(), r)
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range v.Len() {
			fill(v.Index(i), r)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), r)
		}
	}
}

// roundValue rounds by reading the tags as it goes.
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
