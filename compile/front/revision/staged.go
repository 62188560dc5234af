package revision

import (
	"path/filepath"
	"slices"

	"newmake/compile/front"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

// CheckStaged checks the houses of some files of a repository, as they are staged; head is
// what was committed last, nil before the first commit.
func CheckStaged(tree, head *gitrepo.Tree, changed []string) diag.List {
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
		root := filepath.FromSlash(dir)
		src, err := front.Load(front.Place{FS: tree.FS(dir), Root: root, Path: root})
		if err != nil {
			if more, ok := err.(diag.List); ok {
				list = append(list, more...)
			}
			continue
		}
		list = append(list, concerns(src.House, changed)...)
		if head != nil {
			list = append(list, rewritten(inTree(head, dir, src.House), src.House)...)
		}
	}
	return list.Dedup()
}

// concerns is what is to be said of a house because of the files that are staged:
// of those files; and of all, if one of them holds what all depend on.
func concerns(h *check.House, changed []string) diag.List {
	own := map[*diag.Source]bool{}
	all := false
	for _, f := range h.Files {
		if !slices.Contains(changed, filepath.ToSlash(f.Source.Name)) {
			continue
		}
		own[f.Source] = true
		for _, word := range f.Heads() {
			all = all || !isAlone(word)
		}
	}
	said := front.All(h)
	if all {
		return said
	}
	return slices.DeleteFunc(said, func(d diag.Diagnostic) bool { return !own[d.At.Src] })
}
