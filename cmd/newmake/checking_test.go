package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// many makes a house of n batches, one a file: Toll Road on as many days, or as
// many recipes of it that are each another's like and none its equal.
func many(tb testing.TB, n int, each bool) string {
	tb.Helper()
	folder := tb.TempDir()
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(hollow, name))
		require.NoError(tb, err)
		return string(text)
	}
	require.NoError(tb, os.WriteFile(filepath.Join(folder, "house.batch"), []byte(read("house.batch")), 0o644))
	recipe := read("toll-road.batch")
	for i := range n {
		day := time.Date(2006, 1, 3, 0, 0, 0, 0, time.UTC).AddDate(0, 0, 7*i).Format("2006-01-02")
		text := strings.Replace(recipe, `batch "Toll Road"`, fmt.Sprintf(`batch "Toll Road %d"`, i), 1)
		text = strings.Replace(text, "2026-05-05", day, 1)
		if each {
			text = strings.Replace(text, "0.6 g/L", fmt.Sprintf("0.6%03d g/L", i), 1)
			text = strings.Replace(text, "275 gal", fmt.Sprintf("275.%04d gal", i), 1)
		}
		require.NoError(tb, os.WriteFile(filepath.Join(folder, fmt.Sprintf("%04d.batch", i)), []byte(text), 0o644))
	}
	return folder
}

// TestManyInOrder: batches that are computed side by side are spoken of in the
// order of the files, the same each time.
func TestManyInOrder(t *testing.T) {
	folder := many(t, 40, true)
	for i := 0; i < 40; i += 7 {
		file := filepath.Join(folder, fmt.Sprintf("%04d.batch", i))
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		promised := strings.Replace(string(text), "  cask {", "  promise casks 7\n  cask {", 1)
		require.NoError(t, os.WriteFile(file, []byte(promised), 0o644))
	}
	code, _, first := command("check", folder)
	assert.Equal(t, exitError, code)
	last := -1
	for _, line := range strings.Split(first, "\n") {
		if rest, ok := strings.CutPrefix(line, folder+string(filepath.Separator)); ok && strings.Contains(line, "error NM1250") {
			var i int
			_, err := fmt.Sscanf(rest, "%d.batch", &i)
			require.NoError(t, err)
			assert.Greater(t, i, last)
			last = i
		}
	}
	assert.Equal(t, 35, last)
	assert.Contains(t, first, "6 errors; 40 batches in 41 files")
	_, _, second := command("check", folder)
	assert.Equal(t, first, second)
}

// BenchmarkCheckLike is `newmake check` of a house of 1,000 batches, every plan
// computed: a recipe on many days, as a house has after twenty years.
func BenchmarkCheckLike(b *testing.B) { checkMany(b, false) }

// BenchmarkCheckUnlike is the same at its worst, no two alike.
func BenchmarkCheckUnlike(b *testing.B) { checkMany(b, true) }

func checkMany(b *testing.B, each bool) {
	folder := many(b, 1000, each)
	for b.Loop() {
		if code, _, said := command("check", folder); code != exitOK {
			b.Fatal(said)
		}
	}
}

// BenchmarkCheckTwoHouses is `newmake check --format json` above two houses of 100 batches
// each, no two alike: what a published check of a repository asks for.
func BenchmarkCheckTwoHouses(b *testing.B) {
	top := b.TempDir()
	for _, name := range []string{"one", "two"} {
		require.NoError(b, os.Rename(many(b, 100, true), filepath.Join(top, name)))
	}
	for b.Loop() {
		code, out, said := command("check", top, "--format", "json")
		if code != exitOK || !strings.Contains(out, `"batches": 200`) {
			b.Fatal(out, said)
		}
	}
}

// TestCountOnTerminal: a person is told in one line what was done, a script is
// told nothing.
func TestCountOnTerminal(t *testing.T) {
	folder := many(t, 2, false)
	say := func(terminal bool, args ...string) string {
		var o, e bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &o, err: &e, errTerminal: terminal, env: func(string) string { return "" }}
		require.Equal(t, exitOK, run(a, args), e.String())
		require.Empty(t, o.String())
		return e.String()
	}
	assert.Empty(t, say(false, "check", folder))
	assert.Equal(t, "2 batches in 3 files, nothing to mend\n", say(true, "check", folder))
	assert.Equal(t, "1 batch in 1 file, nothing to mend\n", say(true, "check", filepath.Join(folder, "0001.batch")))
	assert.Empty(t, say(true, "check", folder, "-q"))
	assert.Empty(t, say(false, "fmt", folder))
	assert.Equal(t, "0 files laid out, 3 already so\n", say(true, "fmt", folder))
	assert.Empty(t, say(true, "fmt", folder, "-q"))
}
