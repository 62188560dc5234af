// Package starchtest hands the stock that ships to the tests of starch and of
// the mash, so that the two can never drift apart.
package starchtest

import (
	"maps"
	"testing"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

// Model is `model mash`, a copy that a test may change.
func Model(t testing.TB) *recipe.Model {
	t.Helper()
	m := *find(t, check.Builtin().Stock.Models, "mash")
	m.Values = maps.Clone(m.Values)
	return &m
}

// Grain is a grain of the stock.
func Grain(t testing.TB, name string) *recipe.Grain {
	t.Helper()
	return find(t, check.Builtin().Stock.Grains, name)
}

// Enzyme is an enzyme of the stock.
func Enzyme(t testing.TB, name string) *recipe.Enzyme {
	t.Helper()
	return find(t, check.Builtin().Stock.Enzymes, name)
}

func find[T any](t testing.TB, stock map[string]*T, name string) *T {
	t.Helper()
	e := stock[name]
	if e == nil {
		t.Fatalf("the stock holds no %s", name)
	}
	return e
}
