package engine

import (
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"time"
)

// memory is a house of texts as a file system: names with slashes, as fs.ValidPath
// has them, and the folders that they imply.
type memory map[string]string

func (m memory) Open(name string) (fs.File, error) {
	if !fs.ValidPath(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrInvalid}
	}
	if text, ok := m[name]; ok {
		return &openText{entry: entry{path.Base(name), int64(len(text)), false}, r: strings.NewReader(text)}, nil
	}
	if below := m.below(name); name == "." || len(below) > 0 {
		return &openFolder{entry: entry{path.Base(name), 0, true}, below: below}, nil
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
}

// below are the entries of a folder, in order.
func (m memory) below(folder string) []fs.DirEntry {
	seen := map[string]entry{}
	for name, text := range m {
		rest := name
		if folder != "." {
			var in bool
			if rest, in = strings.CutPrefix(name, folder+"/"); !in {
				continue
			}
		}
		first, _, deeper := strings.Cut(rest, "/")
		if deeper {
			seen[first] = entry{first, 0, true}
		} else {
			seen[first] = entry{first, int64(len(text)), false}
		}
	}
	out := make([]fs.DirEntry, 0, len(seen))
	for _, e := range seen {
		out = append(out, e)
	}
	slices.SortFunc(out, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return out
}

// entry is a text or a folder.
type entry struct {
	name   string
	size   int64
	folder bool
}

func (e entry) Name() string               { return e.name }
func (e entry) Size() int64                { return e.size }
func (e entry) IsDir() bool                { return e.folder }
func (e entry) ModTime() time.Time         { return time.Time{} }
func (e entry) Sys() any                   { return nil }
func (e entry) Type() fs.FileMode          { return e.Mode().Type() }
func (e entry) Info() (fs.FileInfo, error) { return e, nil }
func (e entry) Mode() fs.FileMode {
	if e.folder {
		return fs.ModeDir | 0o555
	}
	return 0o444
}

type openText struct {
	entry
	r *strings.Reader
}

func (f *openText) Stat() (fs.FileInfo, error) { return f.entry, nil }
func (f *openText) Read(b []byte) (int, error) { return f.r.Read(b) }
func (f *openText) Close() error               { return nil }

type openFolder struct {
	entry
	below []fs.DirEntry
}

func (f *openFolder) Stat() (fs.FileInfo, error) { return f.entry, nil }
func (f *openFolder) Close() error               { return nil }
func (f *openFolder) Read([]byte) (int, error) {
	return 0, &fs.PathError{Op: "read", Path: f.name, Err: fs.ErrInvalid}
}

func (f *openFolder) ReadDir(n int) ([]fs.DirEntry, error) {
	if n <= 0 {
		out := f.below
		f.below = nil
		return out, nil
	}
	if len(f.below) == 0 {
		return nil, io.EOF
	}
	n = min(n, len(f.below))
	out := f.below[:n]
	f.below = f.below[n:]
	return out, nil
}
