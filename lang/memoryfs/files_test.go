package memoryfs

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFilesAreAFileSystem(t *testing.T) {
	f := Files{"house.batch": {Data: []byte("plant \"P\" {\n}\n")}, "a/b/c.batch": {Data: []byte("grain g {\n}\n")}, "a/d.batch": {}}
	require.NoError(t, fstest.TestFS(f, "house.batch", "a/b/c.batch", "a/d.batch"))
	require.NoError(t, fstest.TestFS(Files{}))
}

func TestALinkLeadsNowhere(t *testing.T) {
	f := Files{"a/link.batch": {Data: []byte("link.batch"), Link: true}}
	list, err := fs.ReadDir(f, "a")
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.Equal(t, fs.ModeSymlink, list[0].Type())
	_, err = f.Open("a/link.batch")
	assert.ErrorIs(t, err, fs.ErrNotExist)
}
