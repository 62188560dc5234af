package compare

import (
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

var lantern = filepath.Join("..", "..", "..", "examples", "lantern-hollow")

// batch reads one batch of the example house.
func batch(t testing.TB, name string) *recipe.Batch {
	t.Helper()
	h, err := lanternHollow()
	require.NoError(t, err)
	b, list := h.Batch(name)
	require.NotNil(t, b, list.Error())
	return b
}

// lanternHollow is read once: no test changes what it gives.
var lanternHollow = sync.OnceValues(func() (*check.House, error) { return check.Load(lantern, check.Options{}) })

// edited is a batch with a change; nothing of the first is touched.
func edited(old *recipe.Batch, change func(*recipe.Batch)) *recipe.Batch {
	b := old.Clone()
	change(b)
	return b
}
