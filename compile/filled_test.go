package compile

import (
	"maps"
	"path/filepath"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/recipe"
)

// filledLater are the fields of a plan that are filled after it is compiled, and by what.
var filledLater = map[string]string{
	"Plan.Bands": "compile/ask/bands", "Reading.Low": "compile/ask/bands", "Reading.High": "compile/ask/bands", "Reading.Tolerance": "compile/ask/bands",
	"Cask.Before": "compile/book/season", "Cask.BeforeOf": "compile/book/season",
	"Promise.Times": "compile/ask/odds", "Promise.Tried": "compile/ask/odds",
	"Plan.Opened": "compile/front", "Grain.Lots": "compile/front", "Grain.NoLotKg": "compile/front", "Plan.Source": "compile/front",
}

// TestEveryFieldIsFilled: each field of a plan is other than zero in the plan of some
// batch, so that none is left that nobody fills.
func TestEveryFieldIsFilled(t *testing.T) {
	filled := map[string]bool{}
	try := func(b *recipe.Batch) {
		if p, _ := Compile(b); p != nil {
			fill(reflect.ValueOf(p).Elem(), filled)
		}
	}
	for _, dir := range []string{"../examples/lantern-hollow", "../examples/herring-stair", "../testdata/houses/*"} {
		houses, err := filepath.Glob(dir)
		require.NoError(t, err)
		require.NotEmpty(t, houses, dir)
		for _, house := range houses {
			h, err := check.Load(house, check.Options{})
			require.NoError(t, err)
			for _, name := range h.Batches() {
				if b, _ := h.Batch(name); b != nil {
					try(b)
				}
			}
		}
	}
	try(edited(t, func(b *recipe.Batch) { // what none of the houses does
		b.Mash.Cooker.HeatedBy = recipe.Direct
		b.Spirit.WaterTo = recipe.Strength{Value: 0.2}
		b.Cask.TareKg, b.Cask.SizeM3, b.Cask.BottleAt = 50, 0.1, recipe.Strength{Value: 0.9}
		b.Costs.CarryingPerYear = 0.08
		b.Plant.Shift.ToMinute = b.Plant.Shift.FromMinute + 60
		own := *b.Models["congener"]
		own.House = true
		b.Models = maps.Clone(b.Models)
		b.Models["congener"] = &own
	}))
	try(edited(t, func(b *recipe.Batch) { b.Costs.PerBottle = 2 }))
	try(edited(t, func(b *recipe.Batch) {
		b.Bill.Lines = slices.Clone(b.Bill.Lines)
		for i := range b.Bill.Lines { // starch is cooked, and nothing splits it
			dead := *b.Bill.Lines[i].Grain
			dead.AlphaDU, dead.LintnerPower = 0, 0
			b.Bill.Lines[i].Grain = &dead
		}
	}))
	whole, _ := Compile(edited(t, func(*recipe.Batch) {}))
	try(edited(t, func(b *recipe.Batch) { b.Cask.SizeM3 = 1.001 * whole.Reduction.To.VolumeL / 1000 })) // a little short
	for field, is := range filled {
		if why := filledLater[field]; why == "" {
			assert.True(t, is, "%s is zero in the plan of every house: fill it in the stage's file of compile/report, or say in filledLater what does", field)
		} else {
			assert.False(t, is, "%s is filled, and said to be left to others", field)
		}
	}
	for field := range filledLater {
		_, is := filled[field]
		assert.True(t, is, "there is no field %s", field)
	}
}

// fill notes of each field of the structs in a value whether it holds anything.
func fill(v reflect.Value, filled map[string]bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			fill(v.Elem(), filled)
		}
	case reflect.Slice:
		for i := range v.Len() {
			fill(v.Index(i), filled)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			fill(v.MapIndex(k), filled)
		}
	case reflect.Struct:
		if v.Type().PkgPath() != reflect.TypeFor[plan.Plan]().PkgPath() {
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.IsExported() {
				name := v.Type().Name() + "." + f.Name
				filled[name] = filled[name] || !v.Field(i).IsZero()
				fill(v.Field(i), filled)
			}
		}
	}
}
