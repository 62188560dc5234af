package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// oneScreenful asks for the screen of something, and holds both streams together against
// one screen of 24 lines.
func oneScreenful(t *testing.T, args ...string) string {
	t.Helper()
	var both bytes.Buffer
	a := &app{in: strings.NewReader(""), out: &both, err: &both, color: "never", env: func(string) string { return "" }}
	run(a, append([]string{"plan", "--screen"}, args...))
	rows := 0
	for line := range strings.Lines(both.String()) {
		rows += max(1, (diag.Width(strings.TrimSuffix(line, "\n"))+columns.Page-1)/columns.Page)
	}
	assert.Positive(t, rows, args)
	assert.LessOrEqual(t, rows, 24, "%s\n%s", args, both.String())
	return both.String()
}

// Every batch of every example is one screen, both streams together: also with promises
// that are broken and with errors; and so is a folder of them.
func TestEveryExampleIsOneScreen(t *testing.T) {
	root := filepath.Join(t.TempDir(), "examples")
	require.NoError(t, os.CopyFS(root, os.DirFS("../../examples")))
	seen := 0
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && d.Name() == "runs" {
			return fs.SkipDir
		}
		text, _ := os.ReadFile(path)
		if filepath.Ext(path) != ".batch" || filepath.Base(path) == "house.batch" || !strings.Contains(string(text), "\nbatch \"") && !strings.HasPrefix(string(text), "batch \"") {
			return nil
		}
		for line := range strings.Lines(string(text)) {
			rest, is := strings.CutPrefix(line, "batch \"")
			if !is {
				continue
			}
			name, _, _ := strings.Cut(rest, "\"")
			seen++
			for _, units := range []string{"us", "si"} {
				assert.Contains(t, oneScreenful(t, path, "--batch", name, "--units", units), name[:min(10, len(name))])
			}
			broken := filepath.Join(filepath.Dir(path), "broken.batch")
			require.NoError(t, os.WriteFile(broken, []byte("batch \"Broken\" from \""+name+"\" {\n  promise casks 40\n  promise hearts 9,000 gal\n  promise wash 9 gal\n}\n"), 0o644))
			assert.Contains(t, oneScreenful(t, broken), "! BROKEN  casks: 40 is promised", name)
			require.NoError(t, os.WriteFile(broken, []byte("batch \"Broken\" from \""+name+"\" {\n"+strings.Repeat("  what 40 gal\n", 30)+"}\n"), 0o644))
			assert.Contains(t, oneScreenful(t, broken), "nothing was planned", name)
			require.NoError(t, os.Remove(broken))
		}
		return nil
	}))
	assert.GreaterOrEqual(t, seen, 8)
	for _, house := range []string{"lantern-hollow", "herring-stair"} {
		oneScreenful(t, filepath.Join(root, house))
	}
}
