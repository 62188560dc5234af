package main

import (
	"bytes"
	"os"
	"strings"

	"newmake/compile/front/revision"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
	"newmake/lang/wholefile"
)

// layOutStaged lays out and checks the .batch files that are staged: the texts that
// would be committed, and not those of the working tree.
func layOutStaged(a *app, r *gitrepo.Repo) error {
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
	var head *gitrepo.Tree
	if commit, err := r.Commit("HEAD"); err == nil {
		if head, err = reader.At(commit); err != nil {
			return usage("%v", err)
		}
	}
	list := revision.CheckStaged(tree, head, changed)
	a.show(list)
	if list.HasErrors() {
		a.say("%s: nothing was committed", list.Counted())
		return errSaid
	}
	return layOutIndex(a, r, tree, changed)
}

// layOutIndex lays out the staged texts in the index. A file of the working tree
// that is what was staged is laid out with it; one with further changes is left.
func layOutIndex(a *app, r *gitrepo.Repo, tree *gitrepo.Tree, changed []string) error {
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
		shown := diag.Safe(name)
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
		if err := layOutWorking(a, working, data, out); err != nil {
			return usage("cannot write %s: %v", shown, wholefile.Reason(err))
		}
	}
	return nil
}

// layOutWorking writes a file of the working tree, if it is what was staged.
func layOutWorking(a *app, file string, staged, out []byte) error {
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
