package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestReadOnlyIsLeftAlone: a file that nobody may write is not replaced either.
func TestReadOnlyIsLeftAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batch")
	require.NoError(t, os.WriteFile(path, []byte("newmake   1\n"), 0o444))
	var o, e bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &o, err: &e, env: func(string) string { return "" }}
	require.Equal(t, exitUsage, run(a, []string{"fmt", path}))
	assert.Contains(t, e.String(), "read-only")
	assert.Empty(t, o.String())
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "newmake   1\n", string(text))
}

// TestDiffIsHarmless: a diff is made harmless for a terminal, and left as it is
// for a program that applies it.
func TestDiffIsHarmless(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batch")
	require.NoError(t, os.WriteFile(path, []byte("newmake   1\t# a \u2066note"), 0o600))
	for _, terminal := range []bool{true, false} {
		var o, e bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &o, err: &e, outTerminal: terminal, env: func(string) string { return "" }}
		require.Equal(t, exitOK, run(a, []string{"fmt", path, "-d"}), e.String())
		assert.Equal(t, !terminal, strings.Contains(o.String(), "\u2066"))
		assert.Contains(t, o.String(), "\n\\ No newline at end of file\n+newmake 1")
	}
}
