package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var errFull = errors.New("no space left on device")

// fullFile takes so many bytes, and then no more.
type fullFile struct {
	*os.File
	left int
}

func (f *fullFile) Write(p []byte) (int, error) {
	n, err := f.File.Write(p[:min(len(p), f.left)])
	f.left -= n
	if err == nil && n < len(p) {
		err = &fs.PathError{Op: "write", Path: f.Name(), Err: errFull}
	}
	return n, err
}

func full(room int) Disk {
	return Disk{Open: func(name string, flag int, mode fs.FileMode) (File, error) {
		f, err := os.OpenFile(name, flag, mode)
		return &fullFile{f, room}, err
	}}
}

// late is a disk whose faults show only when what was written is synced or
// closed.
type late struct {
	*os.File
	sync, close error
}

func (f late) Sync() error  { return errorOf(f.sync, f.File.Sync()) }
func (f late) Close() error { return errorOf(f.close, f.File.Close()) }

func put(t *testing.T, name, text string, mode fs.FileMode) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	require.NoError(t, os.Chmod(path, mode))
	return path
}

func holds(t *testing.T, path, text string) {
	t.Helper()
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, text, string(got))
}

func alone(t *testing.T, path string) {
	t.Helper()
	all, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, all, 1, "no other file is left")
}

// A disk that is full after any number of bytes, or fails at the last, leaves the
// old text and nothing else, and its error speaks of no temporary file.
func TestFullDisk(t *testing.T) {
	disks := map[string]Disk{}
	for _, room := range []int{0, 1, 7} {
		disks["full after "+string(rune('0'+room))] = full(room)
	}
	for name, f := range map[string]late{"sync": {sync: errFull}, "close": {close: errFull}} {
		disks[name] = Disk{Open: func(name string, flag int, mode fs.FileMode) (File, error) {
			g, err := os.OpenFile(name, flag, mode)
			f.File = g
			return f, err
		}}
	}
	for name, disk := range disks {
		t.Run(name, func(t *testing.T) {
			path := put(t, "a.batch", "old text", 0o640)
			_, err := disk.Write(path, []byte("new text"))
			require.ErrorIs(t, err, errFull)
			assert.NotContains(t, err.Error(), ".newmake-")
			assert.Contains(t, err.Error(), path)
			_, err = disk.Replace(path, []byte("old text"), []byte("new text"))
			require.ErrorIs(t, err, errFull)
			holds(t, path, "old text")
			alone(t, path)

			fresh := filepath.Join(t.TempDir(), "b.batch")
			require.ErrorIs(t, disk.Create(fresh, []byte("new text"), 0o644), errFull)
			assert.NoFileExists(t, fresh)
			_, err = disk.Write(fresh, []byte("new text"))
			require.ErrorIs(t, err, errFull)
			all, err := os.ReadDir(filepath.Dir(fresh))
			require.NoError(t, err)
			assert.Empty(t, all)
		})
	}
	path := put(t, "a.batch", "old text", 0o640)
	_, err := full(8).Write(path, []byte("new text")) // room for just as much
	require.NoError(t, err)
	holds(t, path, "new text")
}

func TestWrite(t *testing.T) {
	path := put(t, "a", "old", 0o640)
	done, err := Disk{}.Write(path, []byte("new"))
	require.NoError(t, err)
	assert.Equal(t, Done{Names: 1}, done)
	holds(t, path, "new")
	alone(t, path)
	if runtime.GOOS != "windows" {
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
	}
	before, err := os.Stat(path)
	require.NoError(t, err)
	done, err = Disk{}.Write(path, []byte("new"))
	require.NoError(t, err)
	assert.True(t, done.Same)
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.True(t, os.SameFile(before, after), "what is so already is not written")

	fresh := filepath.Join(t.TempDir(), "b")
	_, err = Disk{}.Write(fresh, []byte("new"))
	require.NoError(t, err)
	holds(t, fresh, "new")
	_, err = Disk{}.Write(filepath.Dir(fresh), []byte("new"))
	require.ErrorIs(t, err, ErrNotPlain)
	_, err = Disk{}.Write(filepath.Join(fresh, "c"), []byte("new"))
	require.Error(t, err)
	_, err = Disk{}.Write(put(t, "c", "old", 0o444), []byte("new"))
	require.ErrorIs(t, err, ErrReadOnly)
}

func TestReplaceOnlyWhatWasRead(t *testing.T) {
	path := put(t, "a", "old", 0o600)
	_, err := Disk{}.Replace(path, []byte("older"), []byte("new"))
	require.ErrorIs(t, err, ErrChanged)
	holds(t, path, "old")

	// It changes while the new text is being written.
	slow := Disk{Open: func(name string, flag int, mode fs.FileMode) (File, error) {
		require.NoError(t, os.WriteFile(path, []byte("saved meanwhile"), 0o600))
		return os.OpenFile(name, flag, mode)
	}}
	_, err = slow.Replace(path, []byte("old"), []byte("new"))
	require.ErrorIs(t, err, ErrChanged)
	holds(t, path, "saved meanwhile")
	alone(t, path)

	require.NoError(t, os.Remove(path))
	_, err = Disk{}.Replace(path, []byte("old"), []byte("new"))
	require.ErrorIs(t, err, fs.ErrNotExist)
	assert.NoFileExists(t, path)
}

func TestCreateNeverReplaces(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a")
	require.NoError(t, Disk{}.Create(path, []byte("mine"), 0o644))
	holds(t, path, "mine")
	alone(t, path)
	require.ErrorIs(t, Disk{}.Create(path, []byte("other"), 0o644), fs.ErrExist)
	holds(t, path, "mine")

	// One appears while the text is being written.
	path = filepath.Join(t.TempDir(), "a")
	slow := Disk{Open: func(name string, flag int, mode fs.FileMode) (File, error) {
		require.NoError(t, os.WriteFile(path, []byte("theirs"), 0o600))
		return os.OpenFile(name, flag, mode)
	}}
	require.ErrorIs(t, slow.Create(path, []byte("other"), 0o644), fs.ErrExist)
	holds(t, path, "theirs")
	alone(t, path)
}

// Names of devices are known whatever their case and ending; names near them are free.
func TestDevice(t *testing.T) {
	for _, name := range []string{"CON", "con", "prn.batch", "runs/AUX", "Nul.a.b", "com1", "COM9.txt", "LPT1", "lpt9"} {
		assert.True(t, Device(name), name)
	}
	for _, name := range []string{"CONE", "26-01", "com", "com0", "com10", "lpt", "con-1", "con/house", ".", "nu"} {
		assert.False(t, Device(name), name)
	}
}
