package compare

import (
	"maps"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

var lantern = filepath.Join("..", "..", "..", "examples", "lantern-hollow")

// batch reads one batch of the example house.
func batch(t testing.TB, name string) *recipe.Batch {
	t.Helper()
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, list.Error())
	return b
}

// edited is a batch with a change; nothing of the first is touched.
func edited(old *recipe.Batch, change func(*recipe.Batch)) *recipe.Batch {
	b := *old
	b.Plant = clonePlant(old.Plant)
	bind(&b)
	b.Bill.Lines = slices.Clone(b.Bill.Lines)
	b.Mash.Steps = slices.Clone(b.Mash.Steps)
	b.Ferm.Doses = slices.Clone(b.Ferm.Doses)
	b.Models = maps.Clone(b.Models)
	change(&b)
	return &b
}
