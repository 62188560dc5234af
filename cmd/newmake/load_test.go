package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
)

// endless is standard input that never ends, as of /dev/zero.
type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) {
	clear(p)
	e.read += len(p)
	return len(p), nil
}

// TestStandardInputHasAnEnd: what is larger than a file may be is not read on.
func TestStandardInputHasAnEnd(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../examples/lantern-hollow")))
	for _, command := range []string{"plan", "check", "fmt"} {
		var in endless
		var said bytes.Buffer
		a := &app{in: &in, out: &said, err: &said, env: func(string) string { return "" }}
		assert.Equal(t, exitError, run(a, []string{command, "-", "--stdin-filename", filepath.Join(dir, "zero.batch")}), command)
		assert.Contains(t, said.String(), "NM0106", command)
		assert.LessOrEqual(t, in.read, 2*lang.MaxFileBytes, command)
	}
}

// TestHouseTooLarge: a house that is there and was not read is not called missing.
func TestHouseTooLarge(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../examples/lantern-hollow")))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "house.batch"), make([]byte, lang.MaxFileBytes+1), 0o644))
	var said bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &said, err: &said, env: func(string) string { return "" }}
	assert.Equal(t, exitError, run(a, []string{"plan", filepath.Join(dir, "toll-road.batch")}))
	assert.Contains(t, said.String(), "NM0106")
	assert.NotContains(t, said.String(), "belongs to no house")
}

// TestStandardInputStandsForAFile: a batch that a file of the house has too is no
// second one, if one says so; and how to say so is said.
func TestStandardInputStandsForAFile(t *testing.T) {
	t.Chdir(filepath.Join("..", "..", "examples", "lantern-hollow"))
	text, err := os.ReadFile("ferry-landing.batch")
	require.NoError(t, err)
	var o, e bytes.Buffer
	a := &app{in: bytes.NewReader(text), out: &o, err: &e, env: func(string) string { return "" }}
	require.Equal(t, exitUsage, run(a, []string{"check", "-"}))
	require.Contains(t, strings.Join(strings.Fields(o.String()+e.String()), " "), "--stdin-filename ferry-landing.batch")
}
