package digest

import (
	"bytes"
	"crypto/sha256"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestSum256 holds it against that of the Go distribution, at every length around which
// the padding takes another block, and far beyond.
func TestSum256(t *testing.T) {
	for n := range 300 {
		text := bytes.Repeat([]byte{byte(n), 0xff, 0}, n)[:n]
		assert.Equal(t, sha256.Sum256(text), Sum256(text), n)
	}
	long := bytes.Repeat([]byte("a"), 1_000_000)
	assert.Equal(t, sha256.Sum256(long), Sum256(long))
	assert.Len(t, long, 1_000_000)
}

func FuzzSum256(f *testing.F) {
	f.Add([]byte("abc"))
	f.Fuzz(func(t *testing.T, text []byte) { assert.Equal(t, sha256.Sum256(text), Sum256(text)) })
}
