package house

import (
	"path/filepath"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/sorting"
	"newmake/lang/tree"
)

// Texts are the files of a house, and what may be declared in those that could not be
// read.
type Texts struct {
	Root    string    // the folder as the user knows it
	Files   []*File   // in order of their paths
	loading diag.List // files that were not read
	losses  func() losses
}

// Main is the file that makes the folder a house, nil if there is none.
func (t *Texts) Main() *File {
	i := slices.IndexFunc(t.Files, func(f *File) bool { return f.Path == FileName })
	if i < 0 {
		return nil
	}
	return t.Files[i]
}

// FilesIn lists the texts of one file, or of all below a folder, in order. The
// path is one as Load takes it.
func (t *Texts) FilesIn(path string) []*File {
	in := t.within(path)
	var out []*File
	for _, f := range t.Files {
		if in(f) {
			out = append(out, f)
		}
	}
	return out
}

// within says which files are a file, or lie below a folder. A link stands for
// what it leads to: a house reads a file once, under its own name.
func (t *Texts) within(path string) func(*File) bool {
	root, at := absolute(t.Root), absolute(path)
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

// BatchesIn lists the batches of one file, or of all files below a folder, in
// order. The path is one as Load takes it.
func (t *Texts) BatchesIn(path string) []string {
	var out []string
	for _, f := range t.FilesIn(path) {
		for _, d := range f.Decls {
			if d.Field == schema.Batch && !d.NameAt.IsZero() && !d.Taken {
				out = append(out, d.Name)
			}
		}
	}
	return out
}

// Loading is what there is to say of files that were not read.
func (t *Texts) Loading() diag.List { return t.loading }

// Ordered sorts a list by the house's files and by place, says nothing twice, and
// no more than can be read (see diag.List.Cap).
func (t *Texts) Ordered(list diag.List) diag.List {
	if len(list) == 0 {
		return nil
	}
	rank := make(map[*diag.Source]int, len(t.Files))
	for i, f := range t.Files {
		rank[f.Source] = i + 1
	}
	place := func(d diag.Diagnostic) int {
		if r := rank[d.At.Src]; r > 0 {
			return r
		}
		if d.At.Src != nil && len(d.At.Src.Text) == 0 {
			return 0 // a file that was not read
		}
		return len(t.Files) + 1
	}
	sorting.Stable(list, func(a, b diag.Diagnostic) int {
		if c := place(a) - place(b); c != 0 {
			return c
		}
		return a.At.Start - b.At.Start
	})
	return list.Dedup().Cap().InTrade()
}

// losses is what may be declared in texts that could not be read.
type losses struct {
	any      bool
	names    map[string]bool        // in lines that are no declaration
	nameless map[*schema.Field]bool // sorts of which a declaration lacks its name
}

func (t *Texts) lostNames() losses {
	l := losses{false, map[string]bool{}, map[*schema.Field]bool{}}
	for _, file := range t.Files {
		for _, d := range file.Decls {
			if d.nameless() {
				l.nameless[d.Field] = true
			}
		}
		for _, st := range file.lost {
			l.any = true
			for i := range st.Items {
				l.names[tree.Key(st.Items[i].Text)] = true
			}
		}
	}
	return l
}

// Lost reports whether something of a name may be declared in a text that could not be
// read: its name stands in a line that is no declaration, or there is a
// declaration of its sort that lacks its name. That has its own diagnostic, so a second
// one, that the name is unknown, would only confuse.
func (t *Texts) Lost(f *schema.Field, name string) bool {
	l := t.losses()
	return l.nameless[f] || l.names[tree.Key(name)]
}

// LostAny reports whether there are lines that are no declaration.
func (t *Texts) LostAny() bool { return t.losses().any }

// LostSaid is what there is to say of the lines for which Lost and LostAny say
// that something may be there.
func (t *Texts) LostSaid() diag.List {
	var list diag.List
	for _, f := range t.Files {
		for _, d := range f.Decls {
			if d.nameless() {
				list = append(list, d.Said()...)
			}
		}
		if len(f.lost) > 0 {
			list = append(list, f.Loose()...)
		}
	}
	return list
}

// has reports whether a text is one of the house's.
func (t *Texts) has(src *diag.Source) bool {
	return slices.ContainsFunc(t.Files, func(f *File) bool { return f.Source == src })
}
