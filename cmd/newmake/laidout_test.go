package main

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
)

// TestLaidOut: what the repository ships, and the houses of its tests, stand in
// the canonical layout.
func TestLaidOut(t *testing.T) {
	count := 0
	for _, root := range []string{"../../stdlib", "../../examples", "../../testdata/houses", "../../lang/check/testdata/base.batch", "../../lang/check/testdata/house.batch", "testdata", "internal/newhouse/template"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || filepath.Ext(path) != ending {
				return err
			}
			count++
			text, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			out, list := lang.Format(diag.NewSource(path, text))
			if list.HasErrors() || !bytes.Equal(out, text) {
				t.Errorf("%s is not laid out: run `newmake fmt` on it", path)
			}
			return nil
		})
		require.NoError(t, err)
	}
	require.Greater(t, count, 20)
}
