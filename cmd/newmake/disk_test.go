package main

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/wholefile"
)

// fullDisk has room for so many bytes.
type fullDisk struct{ left int }

func (d *fullDisk) open(name string, flag int, mode fs.FileMode) (wholefile.File, error) {
	f, err := os.OpenFile(name, flag, mode)
	return fullFile{f, d}, err
}

type fullFile struct {
	*os.File
	disk *fullDisk
}

func (f fullFile) Write(p []byte) (int, error) {
	n, err := f.File.Write(p[:min(len(p), f.disk.left)])
	f.disk.left -= n
	if err == nil && n < len(p) {
		err = &fs.PathError{Op: "write", Path: f.Name(), Err: syscall.ENOSPC}
	}
	return n, err
}

// onFull runs newmake where the disk has room for so many bytes.
func onFull(room int, args ...string) (code int, out, said string) {
	var o, e bytes.Buffer
	disk := &fullDisk{room}
	a := &app{in: strings.NewReader(""), out: &o, err: &e, env: func(string) string { return "" }, disk: wholefile.Disk{Open: disk.open}}
	code = run(a, args)
	return code, o.String(), e.String()
}

// allFiles is the files below a folder, with their text.
func allFiles(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(p)
		all[p] = string(text)
		return err
	}))
	return all
}

// TestFullDisk: whatever writes a file leaves all as it was on a full disk, says
// why in the file's own name, and can be run again.
func TestFullDisk(t *testing.T) {
	house := houseCopy(t)
	text := filepath.Join(house, "toll-road.batch")
	good, err := os.ReadFile(text)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(text, append([]byte("\n\n"), good...), 0o644)) // to be laid out
	out := filepath.Join(house, "sheet.txt")
	for _, args := range [][]string{
		{"fmt", text},
		{"plan", text, "-o", out},
		{"size", text, "--wash", "350 gal", "-w"},
		{"size", text, "--wash", "350 gal", "-w=" + filepath.Join(house, "two.batch"), "--name", "Second"},
	} {
		before := allFiles(t, house)
		for _, room := range []int{0, 100} {
			code, _, said := onFull(room, args...)
			assert.Equal(t, exitUsage, code, "%v\n%s", args, said)
			assert.Contains(t, said, "cannot write "+house, "%v", args)
			assert.Contains(t, said, syscall.ENOSPC.Error())
			assert.NotContains(t, said, ".tmp", "%v", args)
			assert.True(t, maps.Equal(before, allFiles(t, house)), "%v: all is as it was", args)
		}
		code, _, said := onFull(1<<20, args...)
		assert.Equal(t, exitOK, code, "%v\n%s", args, said)
		assert.False(t, maps.Equal(before, allFiles(t, house)), "%v: it is written now", args)
	}
}

// TestInitOnFullDisk: of a house that did not fit nothing is left, its folders
// included, and the next try is not refused.
func TestInitOnFullDisk(t *testing.T) {
	top := t.TempDir()
	folder := filepath.Join(top, "new", "house")
	for _, room := range []int{0, 10, 1000, 3000} {
		code, out, said := onFull(room, "init", folder)
		assert.Equal(t, exitUsage, code)
		assert.Empty(t, out)
		assert.Contains(t, said, syscall.ENOSPC.Error())
		assert.NotContains(t, said, ".tmp")
		assert.NoDirExists(t, filepath.Join(top, "new"))
	}
	there := filepath.Join(top, "there") // a folder of the person's own stays
	require.NoError(t, os.Mkdir(there, 0o755))
	code, _, _ := onFull(1000, "init", there)
	assert.Equal(t, exitUsage, code)
	assert.DirExists(t, there)
	assert.Empty(t, allFiles(t, there))
	for _, dir := range []string{folder, there} {
		code, _, said := onFull(1<<20, "init", dir)
		assert.Equal(t, exitOK, code, said)
		assert.Len(t, allFiles(t, dir), 3)
	}
}

// noRoom is a standard output that takes nothing.
type noRoom struct{}

func (noRoom) Write([]byte) (int, error) {
	return 0, &fs.PathError{Op: "write", Path: "/dev/stdout", Err: syscall.ENOSPC}
}

// TestOutputThatIsLost: a command whose answer could not be written has failed,
// and says so once.
func TestOutputThatIsLost(t *testing.T) {
	house := houseCopy(t)
	text := filepath.Join(house, "toll-road.batch")
	for _, args := range [][]string{
		{}, {"--help"}, {"help"}, {"plan", "--help"}, {"version"}, {"--version"}, {"init"}, {"init", filepath.Join(house, "..", "second")},
		{"fmt"}, {"fmt", "-d", text}, {"size"}, {"diff"}, {"gauge"}, {"gauge", "38 gal at 134.1 proof at 66 F"}, {"explain", "backset"}, {"library"},
		{"plan", text}, {"plan", text, "--format", "json"}, {"plan", "--schema"}, {"plan", text, "--variants"}, {"why", text}, {"why", text, "hearts"},
		{"size", text, "--wash", "350 gal"}, {"size", text, "--wash", "350 gal", "--format", "json"}, {"check", text, "--format", "json"}, {"fmt", text, "--format", "json"},
		{"completion", "bash"},
	} {
		if len(args) > 1 && args[0] == "fmt" {
			require.NoError(t, os.WriteFile(text, append([]byte("\n"), allFiles(t, house)[text]...), 0o644))
		}
		var e bytes.Buffer
		a := &app{in: strings.NewReader(""), out: noRoom{}, err: &e, env: func(string) string { return "" }}
		code := run(a, args)
		assert.Equal(t, exitUsage, code, "%q: %s", args, e.String())
		assert.Equal(t, 1, strings.Count(e.String(), "cannot write to standard output: "+syscall.ENOSPC.Error()), "%q: %s", args, e.String())
		assert.NotContains(t, e.String(), "/dev/stdout", "%q", args)
	}
}

// TestLinkThatLeadsNowhere: the link stays, and what it names is made.
func TestLinkThatLeadsNowhere(t *testing.T) {
	house := houseCopy(t)
	link := filepath.Join(house, "sheet.txt")
	if err := os.Symlink("new.txt", link); errors.Is(err, errors.ErrUnsupported) {
		t.Skip("no links here")
	}
	code, _, said := command("plan", filepath.Join(house, "toll-road.batch"), "-o", link)
	require.Equal(t, exitOK, code, said)
	to, err := os.Readlink(link)
	require.NoError(t, err)
	assert.Equal(t, "new.txt", to)
	assert.FileExists(t, filepath.Join(house, "new.txt"))
}
