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
