package bands

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/plan"
	"newmake/lang/recipe"
)

// TestKept: a batch that is as it was has the bands that it had, and is not computed again;
// one that is not has its own.
func TestKept(t *testing.T) {
	text := func(p *plan.Plan) string {
		out, err := json.Marshal(p)
		require.NoError(t, err)
		return string(out)
	}
	var kept Kept
	made := func(b *recipe.Batch, of byte) string {
		p, list := compile.Compile(b)
		require.NotNil(t, p, list)
		kept.Put(p, b, [32]byte{of})
		require.NotNil(t, p.Bands)
		return text(p)
	}
	b := batch(t, "Low Bridge")
	first := made(b, 1)
	assert.Equal(t, text(known(t, b)), first)
	computed := kept.bench
	assert.Equal(t, first, made(batch(t, "Low Bridge"), 1))
	assert.True(t, kept.bench == computed)

	other := batch(t, "Toll Road")
	assert.Equal(t, text(known(t, other)), made(other, 2))
	assert.False(t, kept.bench == computed)
}
