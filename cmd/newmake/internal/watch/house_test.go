package watch

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is looked at, not only what the system tells, counts.
func TestLook(t *testing.T) {
	house := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(house, "house.batch"), []byte("newmake 1\n"), 0o644))
	before, err := look(house)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(house, "sheet.html"), nil, 0o644))
	require.NoError(t, os.MkdirAll(filepath.Join(house, ".git"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(house, ".git", "x.batch"), nil, 0o644))
	same, err := look(house)
	require.NoError(t, err)
	assert.Equal(t, before, same, "only texts of the house count")
	require.NoError(t, os.WriteFile(filepath.Join(house, "new.batch"), nil, 0o644))
	other, err := look(house)
	require.NoError(t, err)
	assert.NotEqual(t, before, other)
	_, err = look(filepath.Join(house, "nowhere"))
	assert.Error(t, err)
}
