// Package memoryfs is a file system in memory: what was read from git, or what a browser
// holds, read as a folder is.
package memoryfs

import (
	"bytes"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// Files are files by their paths, in folders that are there because a file is below
// them. No link is followed: one shows as a link and leads nowhere.
type Files map[string]File

// File is what a path holds.
type File struct {
	Data []byte
	Link bool
}

// Open opens a file or a folder.
func (f Files) Open(name string) (fs.File, error) {
	if !fs.ValidPath(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrInvalid}
	}
	if e, ok := f[name]; ok {
		if e.Link {
			return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
		}
		return &openFile{info{path.Base(name), 0o644, int64(len(e.Data))}, bytes.NewReader(e.Data)}, nil
	}
	list := f.below(name)
	if len(list) == 0 && name != "." {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return &openFolder{folder(path.Base(name)), list}, nil
}

// below lists what stands in a folder, in order.
func (f Files) below(dir string) []fs.DirEntry {
	var out []fs.DirEntry
	folders := map[string]bool{}
	for name, e := range f {
		if dir != "." {
			var ok bool
			if name, ok = strings.CutPrefix(name, dir+"/"); !ok {
				continue
			}
		}
		first, _, deeper := strings.Cut(name, "/")
		i := info{first, 0o644, int64(len(e.Data))}
		switch {
		case deeper && folders[first]:
			continue
		case deeper:
			folders[first] = true
			i = folder(first)
		case e.Link:
			i.mode = fs.ModeSymlink | 0o777
		}
		out = append(out, i)
	}
	slices.SortFunc(out, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return out
}

// info is what is known of a file or a folder.
type info struct {
	name string
	mode fs.FileMode
	size int64
}

func folder(name string) info { return info{name, fs.ModeDir | 0o755, 0} }

func (i info) Name() string               { return i.name }
func (i info) Size() int64                { return i.size }
func (i info) Mode() fs.FileMode          { return i.mode }
func (i info) Type() fs.FileMode          { return i.mode.Type() }
func (i info) ModTime() time.Time         { return time.Time{} }
func (i info) IsDir() bool                { return i.mode.IsDir() }
func (i info) Sys() any                   { return nil }
func (i info) Info() (fs.FileInfo, error) { return i, nil }

type openFile struct {
	info
	*bytes.Reader
}

func (f *openFile) Size() int64                { return f.info.size }
func (f *openFile) Stat() (fs.FileInfo, error) { return f.info, nil }
func (f *openFile) Close() error               { return nil }

type openFolder struct {
	info
	left []fs.DirEntry
}

func (f *openFolder) Stat() (fs.FileInfo, error) { return f.info, nil }
func (f *openFolder) Close() error               { return nil }

func (f *openFolder) Read([]byte) (int, error) {
	return 0, &fs.PathError{Op: "read", Path: f.name, Err: fs.ErrInvalid}
}

func (f *openFolder) ReadDir(n int) ([]fs.DirEntry, error) {
	if n <= 0 || n > len(f.left) {
		if n > 0 && len(f.left) == 0 {
			return nil, io.EOF
		}
		n = len(f.left)
	}
	out := f.left[:n]
	f.left = f.left[n:]
	return out, nil
}
