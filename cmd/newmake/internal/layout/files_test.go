package layout

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/wholefile"
)

// TestReplaceRefuses: what an editor saved meanwhile is not written over.
func TestReplaceRefuses(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batch")
	require.NoError(t, os.WriteFile(path, []byte("newmake   1\n"), 0o600))
	f := Text{Name: "a.batch", target: path}
	f.LayOut()
	require.NoError(t, f.Err)
	require.NoError(t, os.WriteFile(path, []byte("newmake    2\n"), 0o600))
	_, err := f.Replace(wholefile.Disk{})
	require.EqualError(t, err, "a.batch was changed by something else meanwhile: it was left alone")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "newmake    2\n", string(text))

	require.NoError(t, os.Remove(path))
	_, err = f.Replace(wholefile.Disk{})
	require.EqualError(t, err, "cannot write a.batch: there is no such file")
	assert.NoFileExists(t, path)
}

// TestReplaceLeavesNothing: the new text, the old mode, and no other file.
func TestReplaceLeavesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.batch")
	require.NoError(t, os.WriteFile(path, []byte("newmake   1\n"), 0o600))
	f := Text{Name: "a.batch", target: path}
	f.LayOut()
	require.NoError(t, f.Err)
	links, err := f.Replace(wholefile.Disk{})
	require.NoError(t, err)
	assert.Equal(t, 1, links)
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
	all, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, all, 1)
}
