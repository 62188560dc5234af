package house

import (
	"path/filepath"
	"slices"
)

// FilesIn lists the texts of one file, or of all below a folder, in order. The
// path is one as Load takes it.
func (h *House) FilesIn(path string) []*File {
	in := h.within(path)
	var out []*File
	for _, f := range h.Files {
		if in(f) {
			out = append(out, f)
		}
	}
	return out
}

// within says which files are a file, or lie below a folder. A link stands for
// what it leads to: a house reads a file once, under its own name.
func (h *House) within(path string) func(*File) bool {
	root, at := absolute(h.Root), absolute(path)
	wants := []string{at}
	if real, err := filepath.EvalSymlinks(at); err == nil {
		if top, err := filepath.EvalSymlinks(root); err == nil {
			if rel, err := filepath.Rel(top, real); err == nil && filepath.IsLocal(rel) {
				wants = append(wants, filepath.Join(root, rel))
			}
		}
	}
	return func(f *File) bool {
		name := absolute(f.Source.Name)
		return slices.ContainsFunc(wants, func(want string) bool {
			rel, err := filepath.Rel(want, name)
			return err == nil && filepath.IsLocal(rel)
		})
	}
}

func absolute(path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return filepath.Clean(path)
}
