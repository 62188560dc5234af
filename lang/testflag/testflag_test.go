package testflag

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryPackageKnowsTheSwitches: one that does not would fail `go test ./...
// -update` for all of them.
func TestEveryPackageKnowsTheSwitches(t *testing.T) {
	knows := map[string]bool{"lang/testflag": true} // by folder
	err := filepath.WalkDir("../..", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != "../.." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata" || d.Name() == "node_modules") {
			return fs.SkipDir
		}
		if !strings.HasSuffix(p, "_test.go") {
			return nil
		}
		text, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		dir, err := filepath.Rel("../..", filepath.Dir(p))
		dir = filepath.ToSlash(dir)
		knows[dir] = knows[dir] || strings.Contains(string(text), `"newmake/lang/testflag"`) ||
			strings.Contains(string(text), `"newmake/compile/show/internal/plantest"`) // which imports it
		return err
	})
	require.NoError(t, err)
	require.Greater(t, len(knows), 50)
	for dir, known := range knows {
		assert.True(t, known, "%s: a test of it has to import newmake/lang/testflag", dir)
	}
}
