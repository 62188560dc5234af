//go:build unix

package wholefile

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A link stays a link, one that leads nowhere included, and what it leads to is
// written.
func TestLinks(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	require.NoError(t, os.Mkdir(at("far"), 0o755))
	require.NoError(t, os.Symlink(filepath.Join("far", "second"), at("first")))
	require.NoError(t, os.Symlink("third", at("far/second")))
	for _, text := range []string{"new", "newer"} { // the first time it leads nowhere
		_, err := Disk{}.Write(at("first"), []byte(text))
		require.NoError(t, err)
		for _, link := range []string{"first", "far/second"} {
			info, err := os.Lstat(at(link))
			require.NoError(t, err)
			assert.NotZero(t, info.Mode()&fs.ModeSymlink, link)
		}
		holds(t, at("far/third"), text)
	}
	all, err := os.ReadDir(at("far"))
	require.NoError(t, err)
	assert.Len(t, all, 2)

	require.NoError(t, os.Symlink("round", at("round")))
	_, err = Disk{}.Write(at("round"), []byte("new"))
	require.ErrorIs(t, err, ErrLinks)
	require.NoError(t, os.Symlink("no/such/folder", at("lost")))
	_, err = Disk{}.Write(at("lost"), []byte("new"))
	require.ErrorIs(t, err, fs.ErrNotExist)

	require.NoError(t, os.Symlink("nowhere", at("dangling")))
	require.ErrorIs(t, Disk{}.Create(at("dangling"), nil, 0o644), fs.ErrExist)
	assert.NoFileExists(t, at("nowhere"))
}

func TestNamesAreCounted(t *testing.T) {
	path := put(t, "a", "old", 0o600)
	require.NoError(t, os.Link(path, path+"2"))
	done, err := Disk{}.Write(path, []byte("new"))
	require.NoError(t, err)
	assert.Equal(t, 2, done.Names)
	holds(t, path+"2", "old")
}

// A pipe is not opened: it would wait for a reader.
func TestPipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(path, 0o600))
	_, err := Disk{}.Write(path, []byte("new"))
	require.ErrorIs(t, err, ErrNotPlain)
}

func TestUmaskHolds(t *testing.T) {
	old := syscall.Umask(0o027)
	defer syscall.Umask(old)
	for name, write := range map[string]func(string) error{
		"write":  func(p string) error { _, err := Disk{}.Write(p, []byte("new")); return err },
		"create": func(p string) error { return Disk{}.Create(p, []byte("new"), 0o644) },
	} {
		path := filepath.Join(t.TempDir(), name)
		require.NoError(t, write(path))
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm(), name)
	}
}

// foreign is a file whose owner cannot be given to it.
type foreign struct {
	*os.File
	asked *[2]int
}

func (f foreign) Stat() (fs.FileInfo, error) { return nil, syscall.EIO }
func (f foreign) Chown(uid, gid int) error {
	*f.asked = [2]int{uid, gid}
	return syscall.EPERM
}

// Where the owner cannot be kept, the file is left alone.
func TestOwnerThatCannotBeKept(t *testing.T) {
	path := put(t, "a", "old", 0o664)
	var asked [2]int
	disk := Disk{Open: func(name string, flag int, mode fs.FileMode) (File, error) {
		f, err := os.OpenFile(name, flag, mode)
		return foreign{f, &asked}, err
	}}
	_, err := disk.Write(path, []byte("new"))
	require.ErrorIs(t, err, ErrOwner)
	assert.Equal(t, [2]int{os.Getuid(), os.Getgid()}, asked)
	holds(t, path, "old")
	alone(t, path)
}

// Root lays out a file of somebody else: it stays theirs. Only root can try it;
// TestOwnerThatCannotBeKept holds everywhere that the owner is asked for.
func TestRootKeepsTheOwner(t *testing.T) {
	if os.Getuid() != 0 {
		t.Skip("only root may give files away")
	}
	path := put(t, "a", "old", 0o640)
	require.NoError(t, os.Chown(path, 4321, 1234))
	require.NoError(t, os.Chmod(path, 0o640|fs.ModeSetgid))
	_, err := Disk{}.Write(path, []byte("new"))
	require.NoError(t, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	s := info.Sys().(*syscall.Stat_t)
	assert.Equal(t, []int{4321, 1234}, []int{int(s.Uid), int(s.Gid)})
	assert.Equal(t, 0o640|fs.ModeSetgid, info.Mode())
	holds(t, path, "new")
}
