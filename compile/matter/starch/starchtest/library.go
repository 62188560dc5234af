// Package starchtest hands the library that ships to the tests of starch and of
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
	m := *find(t, check.Builtin().Library.Models, "mash")
	m.Values = maps.Clone(m.Values)
	return &m
}

// Grain is a grain of the library.
func Grain(t testing.TB, name string) *recipe.Grain {
	t.Helper()
	return find(t, check.Builtin().Library.Grains, name)
}

// Enzyme is an enzyme of the library.
func Enzyme(t testing.TB, name string) *recipe.Enzyme {
	t.Helper()
	return find(t, check.Builtin().Library.Enzymes, name)
}

func find[T any](t testing.TB, library map[string]*T, name string) *T {
	t.Helper()
	e := library[name]
	if e == nil {
		t.Fatalf("the library holds no %s", name)
	}
	return e
}
