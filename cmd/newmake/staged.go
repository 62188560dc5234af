package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile"
	"newmake/compile/notice"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

// staged lays out and checks the .batch files that are staged: the texts that
// would be committed, and not those of the working tree.
func (a *app) staged(r *gitrepo.Repo) error {
	changed, err := r.StagedFiles(ending)
	if err != nil {
		return usage("%v", err)
	}
	if len(changed) == 0 {
		return nil
	}
	reader, err := r.Reader()
	if err != nil {
		return usage("%v", err)
	}
	defer reader.Close()
	tree, err := reader.Staged()
	if err != nil {
		return usage("%v", err)
	}
	list := a.checkStaged(tree, changed)
	a.show(list)
	if list.HasErrors() {
		a.say("%s: nothing was committed", list.Counted())
		return errSaid
	}
	return a.layOutStaged(r, tree, changed)
}

// checkStaged checks the houses of the files, as they are staged.
func (a *app) checkStaged(tree *gitrepo.Tree, changed []string) diag.List {
	var list diag.List
	var done []string
	for _, name := range changed {
		dir, ok := tree.House(name)
		if !ok {
			if tree.Has(name) {
				list.Add(diag.Diagnostic{Code: diag.CodeNoHouse, Severity: diag.Warning, Summary: name + " belongs to no house, so it was not checked"})
			}
			continue
		}
		if slices.Contains(done, dir) {
			continue
		}
		done = append(done, dir)
		h, err := check.LoadFS(tree.FS(dir), filepath.FromSlash(dir), check.Options{})
		if err != nil {
			if more, ok := err.(diag.List); ok {
				list = append(list, more...)
			}
			continue
		}
		list = append(list, concerns(h, dir, changed)...)
	}
	return list.Dedup()
}

// concerns is what is to be said of a house because of the files that are staged:
// of those files; and of all, if one of them holds what all depend on.
func concerns(h *check.House, dir string, changed []string) diag.List {
	own := map[*diag.Source]bool{}
	all := false
	for _, f := range h.Files {
		rel := filepath.ToSlash(f.Source.Name)
		if !slices.Contains(changed, rel) {
			continue
		}
		own[f.Source] = true
		for _, word := range f.Heads() {
			switch word {
			case "batch", "run", "tasting":
			default:
				all = true
			}
		}
	}
	said := h.Check()
	for _, name := range h.Batches() {
		if b, checked := h.Batch(name); b != nil {
			_, computed := compile.Compile(b)
			said = append(said, notice.Together(checked, computed)...)
		}
	}
	said = said.Dedup()
	if all {
		return said
	}
	return slices.DeleteFunc(said, func(d diag.Diagnostic) bool { return !own[d.At.Src] })
}

// layOutStaged lays out the staged texts in the index. A file of the working tree
// that is what was staged is laid out with it; one with further changes is left.
func (a *app) layOutStaged(r *gitrepo.Repo, tree *gitrepo.Tree, changed []string) error {
	for _, name := range changed {
		data, ok := tree.Data(name)
		if !ok {
			continue // deleted
		}
		out, list := lang.Format(diag.NewSource(name, data))
		if list.HasErrors() {
			a.show(diag.List{{Code: diag.CodeStaged, Severity: diag.Error, Summary: name + " cannot be laid out", Help: "newmake fmt says what is wrong with it"}})
			return errSaid
		}
		if bytes.Equal(out, data) {
			continue
		}
		shown := diag.Safe(name, false)
		if r.OtherIndex() {
			a.tell("%s is not laid out: run `newmake fmt %s`, and commit again", shown, shown)
			return errSaid
		}
		if err := r.Stage(name, out); err != nil {
			return usage("%v", err)
		}
		a.say("laid out %s, as it is staged", shown)
		working, ok := r.Working(name)
		if !ok {
			continue
		}
		if err := a.layOutWorking(working, data, out); err != nil {
			return usage("cannot write %s: %v", shown, reason(err))
		}
	}
	return nil
}

// layOutWorking writes a file of the working tree, if it is what was staged.
func (a *app) layOutWorking(file string, staged, out []byte) error {
	info, err := os.Lstat(file)
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	now, err := os.ReadFile(file)
	if err != nil {
		return nil
	}
	crlf := strings.Contains(string(now), "\r\n")
	if !bytes.Equal(bytes.ReplaceAll(now, []byte("\r\n"), []byte("\n")), bytes.ReplaceAll(staged, []byte("\r\n"), []byte("\n"))) {
		return nil
	}
	if crlf && !bytes.Contains(out, []byte("\r\n")) {
		out = bytes.ReplaceAll(out, []byte("\n"), []byte("\r\n"))
	}
	return uninterrupted(func() error {
		_, err := a.disk.Replace(file, now, out)
		return err
	})
}
