package sides

import (
	"os"
	"path"
	"path/filepath"
	"strings"

	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

// isRevision reports whether an argument is a revision or a range, and neither a file
// nor a path at a revision.
func isRevision(arg string) bool {
	if isFile(arg) || strings.Contains(arg, ":") || arg == standard {
		return false
	}
	_, err := revisions(arg)
	return err == nil
}

// revisions parts A..B, A...B or REV. A missing end is HEAD; of REV alone the
// second is empty, which is the working tree.
func revisions(arg string) (out [2]string, err error) {
	repo, err := gitrepo.Open(".")
	if err != nil {
		return out, diag.Refuse("%v", err)
	}
	from, to, three := strings.Cut(arg, "...")
	two := false
	if !three {
		from, to, two = strings.Cut(arg, "..")
	}
	if (two || three) && from == "" {
		from = "HEAD"
	}
	if (two || three) && to == "" {
		to = "HEAD"
	}
	out = [2]string{from, to}
	for _, rev := range out {
		if rev != "" || !two && !three && from == "" {
			if _, err := repo.Commit(rev); err != nil {
				return out, diag.Refuse("%s", noRevision(repo, err))
			}
		}
	}
	if three {
		if out[0], err = repo.MergeBase(from, to); err != nil {
			return out, diag.Refuse("%v", err)
		}
	}
	return out, nil
}

// noRevision says what may be the matter.
func noRevision(repo *gitrepo.Repo, err error) string {
	if repo.Shallow() {
		return err.Error() + ": this is a shallow clone, whose older history was not fetched; `git fetch --unshallow` gets it"
	}
	return err.Error()
}

// revisionPath reads REV:path. The path is from the top of the repository, as git
// has it, or from here; or it is the name of a batch.
func revisionPath(rev, where, label string) (*Side, error) {
	repo, err := gitrepo.Open(".")
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	tree, err := treeAt(repo, rev)
	if err != nil {
		return nil, err
	}
	below := path.Clean(where)
	if strings.HasPrefix(where, "./") || strings.HasPrefix(where, "../") || !tree.Has(below) {
		if here, err := repo.Below(filepath.FromSlash(where)); err == nil {
			below = here
		}
	}
	if tree.Has(below) {
		return fromTree(tree, rev, below, label, false)
	}
	here, err := repo.Below(".")
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	s, err := fromTree(tree, rev, here, label, true)
	if err != nil {
		return nil, diag.Refuse("there is no %s at %s", where, rev)
	}
	known, ok := s.find(where)
	if !ok {
		return nil, diag.Refuse("there is no file and no batch %s at %s", where, rev)
	}
	return s.only(known), nil
}

func treeAt(repo *gitrepo.Repo, rev string) (*gitrepo.Tree, error) {
	commit, err := repo.Commit(rev)
	if err != nil {
		return nil, diag.Refuse("%s", noRevision(repo, err))
	}
	r, err := repo.Reader()
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	defer r.Close()
	tree, err := r.At(commit)
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	return tree, nil
}

// atRevision reads a file, or the house around a folder, as it was.
func atRevision(rev, where string, whole bool) (*Side, error) {
	repo, err := gitrepo.Open(folderOf(where))
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	below, err := repo.Below(where)
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	tree, err := treeAt(repo, rev)
	if err != nil {
		return nil, err
	}
	label := rev + ":" + below
	if below == "." {
		label = rev + ":" // so git names the top
	}
	return fromTree(tree, rev, below, label, whole)
}

// folderOf is the nearest folder of a path that exists: git is called from there.
func folderOf(where string) string {
	for dir := where; ; dir = filepath.Dir(dir) {
		if info, err := os.Stat(dir); err == nil && info.IsDir() {
			return dir
		}
		if dir == filepath.Dir(dir) {
			return "."
		}
	}
}

func fromTree(tree *gitrepo.Tree, rev, below, label string, whole bool) (*Side, error) {
	dir, ok := tree.House(below)
	if !ok {
		return nil, diag.Refuse("at %s there was no house: no house.batch at or above %s", rev, below)
	}
	shown := rev + ":" + dir
	if dir == "." {
		shown = rev + ":"
	}
	src, err := front.Load(front.Place{FS: tree.FS(dir), Root: shown, Path: shown})
	if err != nil {
		return nil, err
	}
	rel := strings.TrimPrefix(strings.TrimPrefix(below, dir), "/")
	if dir == "." {
		rel = below
	}
	s := sideOf(src.House, filepath.Join(shown, filepath.FromSlash(rel)), label, whole)
	s.rev, s.gone = rev, !tree.Has(below)
	return s, nil
}
