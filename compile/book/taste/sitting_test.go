package taste

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Eight cups are one sitting, nine are not; a set stays whole.
func TestSitting(t *testing.T) {
	assert.Nil(t, sitting(Triangle, 2, 2))
	assert.Equal(t, &Sitting{Cups: 9, Most: 8, Sets: 2, Sittings: 2}, sitting(Triangle, 2, 3))
	assert.Equal(t, &Sitting{Cups: 18, Most: 8, Sets: 2, Sittings: 3}, sitting(Triangle, 2, 6))
	assert.Nil(t, sitting(Paired, 2, 4))
	assert.Equal(t, &Sitting{Cups: 10, Most: 8, Sets: 4, Sittings: 2}, sitting(Paired, 2, 5))
	assert.Nil(t, sitting(Ranking, 8, 1))
	assert.Equal(t, &Sitting{Cups: 9, Most: 8, Sets: 1, Sittings: 1}, sitting(Ranking, 9, 1))
	assert.Equal(t, 2, sitting(DuoTrio, 2, 4).Sittings)
}
