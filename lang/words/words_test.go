package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLists(t *testing.T) {
	assert.Equal(t, "nothing", And(nil))
	assert.Equal(t, "a", And([]string{"a"}))
	assert.Equal(t, "a and b", And([]string{"a", "b"}))
	assert.Equal(t, "a, b and c", And([]string{"a", "b", "c"}))
	assert.Equal(t, "a, b or c", Or([]string{"a", "b", "c"}))
}

func TestCount(t *testing.T) {
	assert.Equal(t, "0 casks", Count(0, "cask"))
	assert.Equal(t, "1 cask", Count(1, "cask"))
	assert.Equal(t, "2 casks", Count(2, "cask"))
	assert.Equal(t, "1 batch", CountOf(1, "batch", "batches"))
	assert.Equal(t, "12 batches", CountOf(12, "batch", "batches"))
}

// TestOdds: tenths, and at the ends twentieths, on both sides of each.
func TestOdds(t *testing.T) {
	for share, want := range map[float64]string{
		0: "hardly ever, in less than 1 of 20", 0.0499: "hardly ever, in less than 1 of 20", 0.05: "about 1 in 10", 0.149: "about 1 in 10", 0.151: "about 2 in 10",
		0.5: "about 5 in 10", 0.9499: "about 9 in 10", 0.95: "nearly always, in 19 of 20 or more", 1: "nearly always, in 19 of 20 or more",
	} {
		assert.Equal(t, want, Odds(share), "%g", share)
	}
}
