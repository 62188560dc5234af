package numbers

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a Keeping memo holds does not grow with what it is asked; one that is not
// told how much to keep keeps all.
func TestKeeping(t *testing.T) {
	most, all := Keeping(3), &Memo{}
	runs := 0
	count := func(in float64) (float64, error) { runs++; return 2 * in, nil }
	few, many := table[float64, float64]{most: most.mashes.most}, table[float64, float64]{most: all.mashes.most}
	for i := range 9 {
		for range 2 {
			for _, m := range []*table[float64, float64]{&few, &many} {
				out, err := m.get(float64(i), count, float64(i))
				assert.NoError(t, err)
				assert.Equal(t, 2*float64(i), out)
			}
		}
	}
	assert.Equal(t, 18, runs, "what is kept is not run again")
	assert.Len(t, few.order, 3)
	assert.Len(t, few.rows, 3)
	assert.Len(t, many.rows, 9)
}
