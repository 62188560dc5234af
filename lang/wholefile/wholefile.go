// Package wholefile writes files whole or not at all.
//
// A text goes into a temporary file beside the one that is meant, is synced to
// the disk, and is renamed over it. Links are followed first, so that a link
// stays a link. The file keeps its mode, owner and group; where they cannot be
// kept it is left alone, because a replaced file would belong to somebody else.
// Access lists and extended attributes are not kept. What cannot be written
// leaves no trace.
//
// Errors speak of the file as the caller named it, never of the temporary one.
package wholefile

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// Device reports whether the last part of a path is a name that Windows keeps for a device,
// with an ending or without ("Naming Files, Paths, and Namespaces", Microsoft Learn). A
// folder with such a file cannot be copied there, nor checked out.
func Device(name string) bool {
	base, _, _ := strings.Cut(filepath.Base(name), ".")
	base = strings.ToUpper(strings.TrimSpace(base))
	switch base {
	case "CON", "PRN", "AUX", "NUL":
		return true
	}
	return len(base) == 4 && (base[:3] == "COM" || base[:3] == "LPT") && base[3] >= '1' && base[3] <= '9'
}

// What keeps a file from being written, other than the system's own errors.
var (
	ErrChanged  = errors.New("it was changed by something else meanwhile, and was left alone")
	ErrReadOnly = errors.New("it is read-only, and was left alone; chmod u+w makes it writable")
	ErrNotPlain = errors.New("it is not a plain file")
	ErrOwner    = errors.New("it belongs to another user or group, and would not any more: it was left alone")
	ErrLinks    = errors.New("its links lead in a circle")
)

// Disk is where files are written. The zero Disk is the system's.
type Disk struct {
	// Open makes a file that must not be there yet; nil is os.OpenFile. Tests put
	// a full disk here.
	Open func(name string, flag int, mode fs.FileMode) (File, error)
}

// File is what Disk needs of an *os.File.
type File interface {
	io.WriteCloser
	Sync() error
	Chmod(fs.FileMode) error
	Chown(uid, gid int) error
	Stat() (fs.FileInfo, error)
}

// Done says what a write came to.
type Done struct {
	Same  bool // the file held that text already, and was not touched
	Names int  // how many names the file had: the others keep the old text
}

// Write puts a text into a file, whatever was in it. A new file gets the mode
// 0644 less the umask.
func (d Disk) Write(name string, text []byte) (Done, error) {
	return d.put(name, text, nil)
}

// Replace is Write for a file that was read before: it gives ErrChanged unless
// the file still holds that text.
func (d Disk) Replace(name string, was, text []byte) (Done, error) {
	return d.put(name, text, func(now []byte) bool { return bytes.Equal(was, now) })
}

// put writes. unchanged is asked of the text that is there, at the last moment.
func (d Disk) put(name string, text []byte, unchanged func(now []byte) bool) (Done, error) {
	target, old, err := find(name)
	if err != nil {
		return Done{}, of(name, err)
	}
	done, mode := Done{Names: 1}, fs.FileMode(0o644)
	if old == nil && unchanged != nil {
		return Done{}, of(name, fs.ErrNotExist)
	}
	if old != nil {
		now, err := os.ReadFile(target)
		if unchanged != nil && (err != nil || !unchanged(now)) {
			return Done{}, of(name, errorOf(err, ErrChanged))
		}
		if err == nil && bytes.Equal(now, text) {
			return Done{Same: true, Names: links(old)}, nil
		}
		done.Names, mode = links(old), 0o600 // nobody else reads it before it has its own mode
	}
	f, temporary, err := d.temporary(target, mode)
	if err != nil {
		return Done{}, of(name, err)
	}
	err = fill(f, text, old)
	if err == nil && unchanged != nil { // writing took its time
		var now []byte
		if now, err = os.ReadFile(target); err == nil && !unchanged(now) {
			err = ErrChanged
		}
	}
	if err == nil {
		err = os.Rename(temporary, target)
	}
	if err != nil {
		os.Remove(temporary)
		return Done{}, of(name, err)
	}
	syncFolder(filepath.Dir(target))
	return done, nil
}

// Create writes a file that is not there, with a mode less the umask. It gives
// fs.ErrExist if there is one, a link that leads nowhere included.
func (d Disk) Create(name string, text []byte, mode fs.FileMode) error {
	if _, err := os.Lstat(name); err == nil {
		return of(name, fs.ErrExist)
	}
	f, temporary, err := d.temporary(name, mode)
	if err != nil {
		return of(name, err)
	}
	defer os.Remove(temporary)
	if err := fill(f, text, nil); err != nil {
		return of(name, err)
	}
	// A second name is refused where there is a file; a rename would replace it.
	err = os.Link(temporary, name)
	if err != nil && !errors.Is(err, fs.ErrExist) { // a file system without such links
		if _, there := os.Lstat(name); there == nil {
			err = fs.ErrExist
		} else {
			err = os.Rename(temporary, name)
		}
	}
	if err != nil {
		return of(name, err)
	}
	syncFolder(filepath.Dir(name))
	return nil
}

// find follows links to the file that is meant. Its info is nil if there is none
// yet. A file that the caller may not write is refused, though its folder would
// let it be replaced.
func find(name string) (target string, old fs.FileInfo, err error) {
	if target, err = follow(name); err != nil {
		return "", nil, err
	}
	old, err = os.Stat(target)
	if err == nil && !old.Mode().IsRegular() {
		return "", nil, ErrNotPlain
	}
	if err == nil && old.Mode().Perm()&0o222 == 0 { // root would be let
		return "", nil, ErrReadOnly
	}
	// Opened by the name that was given, so that the system's own rules for links
	// in folders that anybody may write to hold.
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if errors.Is(err, fs.ErrNotExist) {
		return target, nil, nil
	}
	if err != nil {
		return "", nil, err
	}
	defer f.Close()
	if opened, err := f.Stat(); err != nil || old == nil || !os.SameFile(opened, old) {
		return "", nil, ErrChanged
	}
	return target, old, nil
}

// follow gives the path that a path leads to. Unlike filepath.EvalSymlinks it
// follows a link to a file that is not there.
func follow(name string) (string, error) {
	name = filepath.Clean(name)
	for range 40 { // as many as Linux follows
		folder, err := filepath.EvalSymlinks(filepath.Dir(name))
		if err != nil {
			return "", err
		}
		name = filepath.Join(folder, filepath.Base(name))
		info, err := os.Lstat(name)
		if errors.Is(err, fs.ErrNotExist) || err == nil && info.Mode()&fs.ModeSymlink == 0 {
			return name, nil
		}
		if err != nil {
			return "", err
		}
		to, err := os.Readlink(name)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(folder, to)
		}
		name = to
	}
	return "", ErrLinks
}

// temporary makes a file beside another. A house does not read it, for its name
// does not end in .batch.
func (d Disk) temporary(target string, mode fs.FileMode) (File, string, error) {
	open := d.Open
	if open == nil {
		open = func(name string, flag int, mode fs.FileMode) (File, error) { return os.OpenFile(name, flag, mode) }
	}
	name := filepath.Join(filepath.Dir(target), ".newmake-"+strconv.FormatUint(rand.Uint64(), 36)+".tmp")
	f, err := open(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	return f, name, err
}

// fill writes a text and closes the file, which is on the disk then, with the
// owner and mode of the old one.
func fill(f File, text []byte, old fs.FileInfo) error {
	_, err := f.Write(text)
	if err == nil && old != nil {
		err = keepOwner(f, old)
		if err == nil { // after the owner, for a change of owner takes bits away
			err = f.Chmod(old.Mode() & (fs.ModePerm | fs.ModeSetuid | fs.ModeSetgid | fs.ModeSticky))
		}
	}
	if err == nil {
		err = f.Sync()
	}
	return errorOf(err, f.Close())
}

// syncFolder makes a rename last. Some systems cannot, and the file is whole
// either way.
func syncFolder(folder string) {
	if f, err := os.Open(folder); err == nil {
		_ = f.Sync()
		f.Close()
	}
}

func errorOf(a, b error) error {
	if a != nil {
		return a
	}
	return b
}

// of is an error of a file under the name that the caller knows.
func of(name string, err error) error {
	return &fs.PathError{Op: "write", Path: name, Err: bare(err)}
}

// bare is what is wrong with a file, without its name.
func bare(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return bare(path.Err)
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return bare(link.Err)
	}
	var call *os.SyscallError
	if errors.As(err, &call) {
		return bare(call.Err)
	}
	return err
}

// Reason is what is wrong with a file in words for a person, without its name.
func Reason(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "permission denied"
	}
	return bare(err).Error()
}
