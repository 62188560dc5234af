package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
)

// house makes a house of Lantern Hollow's plant and one more text.
func houseWith(t *testing.T, text []byte) (folder, file string) {
	t.Helper()
	folder = t.TempDir()
	plant, err := os.ReadFile(filepath.Join(hollow, "house.batch"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "house.batch"), plant, 0o644))
	file = filepath.Join(folder, "odd.batch")
	require.NoError(t, os.WriteFile(file, text, 0o644))
	return folder, file
}

// command runs newmake as main does, with streams of its own.
func command(args ...string) (code int, out, err string) {
	var o, e bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &o, err: &e, env: func(string) string { return "" }}
	code = run(a, args)
	return code, o.String(), e.String()
}

func utf16LE(text string) []byte {
	out := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(text)) {
		out = append(out, byte(u), byte(u>>8))
	}
	return out
}

// TestLimits: each limit of a text, and each thing of Unicode that has no place in
// one, is a diagnostic that names it and its place, in check, plan and fmt alike;
// none of them writes or hangs.
func TestLimits(t *testing.T) {
	big := bytes.Repeat([]byte("# a line of a file that is far too long for a recipe\n"), lang.MaxFileBytes/50)
	for _, c := range []struct {
		name string
		text []byte
		want []string // in what is said
		safe bool     // it warns, and goes on
	}{
		{name: "file size", text: big, want: []string{"NM0106", "4 MiB"}},
		{name: "line length", text: []byte("batch \"" + strings.Repeat("x", lang.MaxLineBytes) + "\" {\n}\n"), want: []string{"odd.batch:1:1: error NM0107", "65546 bytes", "64 KiB"}},
		{name: "nesting", text: []byte(strings.Repeat("bill {\n", 101)), want: []string{"odd.batch:101:6: error NM0108", "more than 100 deep"}},
		{name: "nesting without end", text: bytes.Repeat([]byte("{"), 60_000), want: []string{"NM0108"}},
		{name: "number of errors", text: []byte("batch \"B\" {\n" + strings.Repeat("  frobnicate 1\n", 262) + "}\n"), want: []string{"odd.batch:2:3: error NM0203", "\nand 21"}},
		{name: "invalid UTF-8", text: []byte("batch \"Caf\xe9\" {\n}\n"), want: []string{"odd.batch:1:11: error NM0101: byte E9 is not UTF-8"}},
		{name: "UTF-16", text: utf16LE("batch \"B\" {\n}\n"), want: []string{"NM0102", "UTF-16 (little-endian)"}},
		{name: "NUL", text: []byte("batch \"B\" {\n  standard\x00 bourbon\n}\n"), want: []string{"odd.batch:2:11: error NM0103: a NUL character"}},
		{name: "escape", text: []byte("batch \"B\" {\n  standard \x1b[31mbourbon\n}\n"), want: []string{"odd.batch:2:12: error NM0103: the control character U+001B", "␛[31m"}},
		{name: "bidi", text: []byte("batch \"B\" {\n  standard \u202ebourbon\n}\n"), want: []string{"odd.batch:2:12: error NM0104: U+202E RIGHT-TO-LEFT OVERRIDE reorders the text"}},
		{name: "bidi in a comment", text: []byte("# a note \u2066of mine\n\ngrain mine from corn { moisture 12 % }\n"), want: []string{"odd.batch:1:10: warning NM0104: U+2066 LEFT-TO-RIGHT ISOLATE"}, safe: true},
		{name: "look-alike in a name", text: []byte("batch \"Fеrry\" from \"Ferry\" {\n}\n"), want: []string{"odd.batch:1:7: error NM0206", "letter 2 is U+0435 CYRILLIC SMALL LETTER IE"}},
		{name: "look-alike of a mark", text: []byte("batch “B” {\n}\n"), want: []string{"odd.batch:1:7: error NM0105", "U+201C"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder, file := houseWith(t, c.text)
			for _, args := range [][]string{{"check", file}, {"check", folder}, {"plan", file}, {"fmt", file}, {"fmt", file, "--check"}} {
				code, out, said := command(args...)
				if c.name == "look-alike in a name" && args[0] == "fmt" || c.name == "number of errors" && args[0] == "fmt" {
					continue // layout is no matter of names
				}
				assert.NotContains(t, said, "\x1b")
				assert.NotContains(t, said, "\u202e")
				assert.NotContains(t, said, "\x00")
				for _, w := range c.want {
					assert.Contains(t, said, w, "%v", args[0])
				}
				if c.safe && args[0] != "plan" {
					assert.Zero(t, code, said)
					continue
				}
				assert.Equal(t, exitError, code, said)
				assert.Empty(t, out)
			}
			after, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(c.text, after) || c.safe || c.name == "look-alike in a name" || c.name == "number of errors", "the file is as it was")
		})
	}
}

// TestLimitsInHouse: what is wrong with one file does not hide another.
func TestLimitsInHouse(t *testing.T) {
	folder, _ := houseWith(t, []byte("batch \"B\" {\n  standard\x00 bourbon\n}\n"))
	for i := range 3 {
		text := fmt.Sprintf("batch \"B%d\" {\n  bill {\n    corn 500\n  }\n}\n", i)
		require.NoError(t, os.WriteFile(filepath.Join(folder, fmt.Sprintf("b%d.batch", i)), []byte(text), 0o644))
	}
	code, _, said := command("check", folder)
	assert.Equal(t, exitError, code)
	for _, w := range []string{"b0.batch:3:10: error NM0303", "b1.batch:3:10: error NM0303", "b2.batch:3:10: error NM0303", "odd.batch:2:11: error NM0103"} {
		assert.Contains(t, said, w)
	}
	assert.Less(t, strings.Index(said, "b2.batch"), strings.Index(said, "odd.batch"))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "bidi.batch"), []byte("batch \"C\" {\n  style \u202ebourbon\x7f\n}\n"), 0o644))
	code, out, _ := command("check", folder, "--format", "json")
	assert.Equal(t, exitError, code)
	assert.NotContains(t, out, "\x00")
	assert.NotContains(t, out, "\u202e")
	assert.Contains(t, out, `  style \u202ebourbon`)
	assert.True(t, json.Valid([]byte(out)))
	assert.Contains(t, out, `"code": "NM0103"`)
}
