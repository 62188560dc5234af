package compile

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/numbers"
	"newmake/lang/check"
	"newmake/lang/testflag"
)

// The numbers of every batch of the examples, stage by stage, to six digits: a plan shows
// fewer, and a constant that is a little off hides behind them.
func TestNumbersAreHeld(t *testing.T) {
	var out strings.Builder
	for _, house := range []string{lantern, "examples/herring-stair"} {
		h, err := check.Load(filepath.Join("..", house), check.Options{})
		require.NoError(t, err)
		for _, name := range h.Batches() {
			b, list := h.Batch(name)
			require.NotNil(t, b, list.Error())
			n, err := Numbers(b, new(numbers.Memo), Printed)
			require.NoError(t, err, name)
			fmt.Fprintf(&out, "%s\n", name)
			for _, stage := range []struct {
				name  string
				holds any
			}{
				{"mashed", n.Mashed}, {"fermented", n.Fermented}, {"stripped", n.Stripped}, {"distilled", n.Distilled}, {"reduced", n.Reduced}, {"filled", n.Filled},
			} {
				held(&out, "  "+stage.name, reflect.ValueOf(stage.holds))
			}
		}
	}
	const golden = "testdata/numbers.txt"
	if testflag.Update() {
		require.NoError(t, os.WriteFile(golden, []byte(out.String()), 0o666))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, string(want), out.String())
}

// held writes the numbers of a value, a line for each struct that has some. Of a curve it
// writes the ends: what lies between comes of the same steps.
func held(out *strings.Builder, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && v.Elem().Type().PkgPath() != "newmake/lang/recipe" {
			held(out, path, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			switch last := v.Len() - 1; {
			case v.Type().Elem().Name() != "Point":
				held(out, fmt.Sprintf("%s %d", path, i+1), v.Index(i))
			case i == 0:
				held(out, path+" from", v.Index(i))
			case i == last:
				held(out, path+" to", v.Index(i))
			}
		}
	case reflect.Struct:
		line := ""
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() {
				continue
			}
			name, f := v.Type().Field(i).Name, v.Field(i)
			switch f.Kind() {
			case reflect.Float64:
				if x := f.Float(); math.Abs(x) > 1e-9 { // less is what rounding leaves of nothing
					line += fmt.Sprintf(" %s=%.6g", name, x)
				}
			case reflect.Int:
				if f.Int() != 0 {
					line += fmt.Sprintf(" %s=%d", name, f.Int())
				}
			}
		}
		if line != "" {
			fmt.Fprintf(out, "%s:%s\n", path, line)
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				held(out, path+" "+v.Type().Field(i).Name, v.Field(i))
			}
		}
	}
}
