package check

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// TestWordOfPlantMisspelt: a batch whose plant stands under a word that is none is
// no recipe, and the word is what is said.
func TestWordOfPlantMisspelt(t *testing.T) {
	for _, word := range []string{"plat", "palnt", "Plant", "plants"} {
		house := folder(t, "../../examples/lantern-hollow")
		file := house["house.batch"]
		file.Data = bytes.Replace(file.Data, []byte("\nplant "), []byte("\n"+word+" "), 1)
		h, err := LoadFS(house, "", Options{})
		require.NoError(t, err)
		assert.True(t, h.Check().HasErrors(), word)
		for _, name := range h.Batches() {
			b, list := h.Ready(name)
			assert.True(t, b == nil, "%s: %s", word, name)
			assert.True(t, list.HasErrors(), "%s: %s", word, name)
			assert.Contains(t, list.Error(), word, name)
			assert.LessOrEqual(t, list.Count(diag.Error), mostErrors, list.Error())
		}
	}
}
