package house

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/sorting"
)

// reader gathers the texts of a house: every .batch file below its folder, in
// order, each once. Hidden folders are left alone.
type reader struct {
	fsys    fs.FS
	shown   func(rel string) string // a path as the user knows it
	overlay map[string][]byte       // texts that stand for files, by path below the house
	texts   []text
	infos   []fs.FileInfo // of the files read
	links   []string
	diags   diag.List
}

func (r *reader) read() {
	_ = fs.WalkDir(r.fsys, ".", func(p string, d fs.DirEntry, err error) error {
		switch {
		case !utf8.ValidString(p):
			return r.misnamed(p, d)
		case err != nil:
			r.unreadable(p, err)
			if d != nil && d.IsDir() {
				return fs.SkipDir
			}
		case d.IsDir():
			return r.enter(p)
		case path.Ext(p) != ending || r.overlay[p] != nil:
		case d.Type()&fs.ModeSymlink != 0:
			r.links = append(r.links, p)
		default:
			r.file(p)
		}
		return nil
	})
	for _, p := range r.links {
		r.link(p)
	}
	for p, data := range r.overlay {
		r.texts = append(r.texts, text{path: p, name: r.shown(p), data: data})
	}
	sorting.Stable(r.texts, func(a, b text) int { return strings.Compare(a.path, b.path) })
}

// misnamed passes over what has a name that is not UTF-8. Not every system can
// keep such a name, and a house means the same on each; the rest of it is read.
func (r *reader) misnamed(p string, d fs.DirEntry) error {
	isDir := d != nil && d.IsDir()
	switch {
	case isDir && strings.HasPrefix(path.Base(p), "."):
		return fs.SkipDir
	case !isDir && path.Ext(p) != ending:
		return nil
	}
	what := " was not read: its name is not UTF-8"
	if isDir {
		what = " was not looked into: its name is not UTF-8"
	}
	r.diags.Add(diag.Diagnostic{Code: diag.CodeFileName, Severity: diag.Warning, Summary: r.shown(p) + what,
		Help: "rename it, with letters that this terminal shows", Reason: "not every system can keep such a name, so another clone of the house would lack it",
		At: diag.NewSource(r.shown(p), nil).Span(0, 0)})
	if isDir {
		return fs.SkipDir
	}
	return nil
}

// enter says whether to look into a folder: not into hidden ones, and not into
// another house.
func (r *reader) enter(p string) error {
	if p == "." {
		return nil
	}
	if strings.HasPrefix(path.Base(p), ".") {
		return fs.SkipDir
	}
	inner := path.Join(p, FileName)
	if _, err := fs.Stat(r.fsys, inner); err == nil {
		r.refuse(inner, diag.CodeNestedHouse, "there is a house inside this house: "+r.shown(p),
			"its names would mean two things; move that folder out of this one, or take its house.batch away to make it part of this house")
		return fs.SkipDir
	}
	return nil
}

// link reads what a link leads to, if that is inside the house and is not read
// anyway.
func (r *reader) link(p string) {
	info, err := fs.Stat(r.fsys, p)
	switch {
	case err != nil:
		r.refuse(p, diag.CodeLinkOut, r.shown(p)+" is a link that leads nowhere or out of the house",
			"copy the file into the house: only what is below its folder is read")
	case info.IsDir():
	case !slices.ContainsFunc(r.infos, func(seen fs.FileInfo) bool { return os.SameFile(seen, info) }):
		r.file(p)
	}
}

func (r *reader) file(p string) {
	info, err := fs.Stat(r.fsys, p)
	switch {
	case err != nil:
		r.unreadable(p, err)
		return
	case !info.Mode().IsRegular():
		r.refuse(p, diag.CodeUnreadable, r.shown(p)+" is not a plain file", "only plain files are read")
		return
	case info.Size() > lang.MaxFileBytes:
		r.refuse(p, diag.CodeFileTooLarge, r.shown(p)+" is larger than 4 MiB, and was not read",
			"a recipe is a few pages; is this the right file?")
		return
	}
	data, err := fs.ReadFile(r.fsys, p)
	if err != nil {
		r.unreadable(p, err)
		return
	}
	r.infos = append(r.infos, info)
	r.texts = append(r.texts, text{path: p, name: r.shown(p), data: data})
}

func (r *reader) unreadable(p string, err error) {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		err = pe.Err
	}
	r.refuse(p, diag.CodeUnreadable, r.shown(p)+" can't be read: "+err.Error(), "see that the file and its folder may be read")
}

// refuse speaks of a file that is not read, and shows nothing of it.
func (r *reader) refuse(p string, code diag.Code, summary, help string) {
	r.diags.Add(diag.Diagnostic{Code: code, Summary: summary, Help: help, At: diag.NewSource(r.shown(p), nil).Span(0, 0)})
}
