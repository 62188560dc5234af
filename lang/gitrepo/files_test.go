package gitrepo

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFilesAreAFileSystem(t *testing.T) {
	f := files{"house.batch": {data: []byte(plant)}, "a/b/c.batch": {data: []byte(grain)}, "a/d.batch": {}}
	require.NoError(t, fstest.TestFS(f, "house.batch", "a/b/c.batch", "a/d.batch"))
	require.NoError(t, fstest.TestFS(files{}))
}

func TestALinkLeadsNowhere(t *testing.T) {
	f := files{"a/link.batch": {data: []byte("link.batch"), link: true}}
	list, err := fs.ReadDir(f, "a")
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.Equal(t, fs.ModeSymlink, list[0].Type())
	_, err = f.Open("a/link.batch")
	assert.ErrorIs(t, err, fs.ErrNotExist)
}
