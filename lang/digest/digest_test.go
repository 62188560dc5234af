package digest

import (
	"bytes"
	"crypto/sha256"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestSmall holds it against that of the Go distribution, at every length around which
// the padding takes another block, and far beyond.
func TestSmall(t *testing.T) {
	for n := range 300 {
		text := bytes.Repeat([]byte{byte(n), 0xff, 0}, n)[:n]
		assert.Equal(t, sha256.Sum256(text), small(text), n)
	}
	long := bytes.Repeat([]byte("a"), 1_000_000)
	assert.Equal(t, sha256.Sum256(long), small(long))
	assert.Len(t, long, 1_000_000)
}

func FuzzSmall(f *testing.F) {
	f.Add([]byte("abc"))
	f.Fuzz(func(t *testing.T, text []byte) { assert.Equal(t, sha256.Sum256(text), small(text)) })
}
