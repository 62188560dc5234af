package main

import (
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"newmake/cmd/newmake/internal/gitrepo"
	"newmake/compile/compare"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// selection is one side of a comparison: a house, and the batches of it that are
// meant.
type selection struct {
	house *check.House
	names []string // those that are meant, in order
	all   []string // of the house
	label string
	whole bool // the house as a whole, and not a file of it
	moves bool // the other side is the same house at another time: a batch may have moved
}

func (s *selection) batch(name string) (*recipe.Batch, diag.List) { return s.house.Batch(name) }

// labelOf says where a batch of the selection stands.
func (s *selection) labelOf(name string) string {
	if !s.whole {
		return s.label
	}
	for _, f := range s.house.Files {
		if slices.Contains(s.house.BatchesIn(f.Source.Name), name) {
			return f.Source.Name
		}
	}
	return s.label
}

func (s *selection) inputs() []string {
	var out []string
	for _, f := range s.house.Files {
		out = append(out, f.Source.Name)
	}
	return out
}

// sides finds the two sides that the arguments mean.
func (a *app) sides(args, files []string) (old, new *selection, err error) {
	if len(args) == 2 && len(files) == 0 && isFile(args[1]) && a.isRevision(args[0]) {
		args, files = args[:1], args[1:] // REV FILE, as git takes it too
	}
	switch {
	case len(args) == 2 && len(files) == 0:
		if old, err = a.side(args[0]); err == nil {
			new, err = a.side(args[1])
		}
		return old, new, err
	case len(args) > 1 || len(files) > 1:
		return nil, nil, usage("give two sides, or one revision and one path after --; `newmake help diff` shows how")
	case len(args) == 0: // newmake diff -- FILE
		return a.sinceHead(files[0])
	}
	arg := args[0]
	if len(files) == 0 && isFile(arg) {
		return a.sinceHead(arg)
	}
	revisions, err := a.revisions(arg)
	if err != nil {
		if len(files) == 0 && !strings.Contains(arg, "..") {
			return a.againstParent(arg, err)
		}
		return nil, nil, err
	}
	where := "."
	if len(files) == 1 {
		where = files[0]
	}
	if old, err = a.atRevision(revisions[0], where, len(files) == 0); err != nil {
		return nil, nil, err
	}
	if revisions[1] == "" {
		new, err = a.working(where, len(files) == 0)
	} else {
		new, err = a.atRevision(revisions[1], where, len(files) == 0)
	}
	return times(old, new, err)
}

// times says of two sides that they are one house at two times.
func times(old, new *selection, err error) (*selection, *selection, error) {
	if err != nil {
		return nil, nil, err
	}
	old.moves, new.moves = true, true
	return old, new, nil
}

// isRevision says that an argument is a revision or a range, and neither a file
// nor a path at a revision.
func (a *app) isRevision(arg string) bool {
	if isFile(arg) || strings.Contains(arg, ":") || arg == standardInput {
		return false
	}
	_, err := a.revisions(arg)
	return err == nil
}

func isFile(arg string) bool {
	_, err := os.Stat(arg)
	return err == nil || strings.HasSuffix(arg, ending) && !strings.Contains(arg, ":")
}

func (a *app) sinceHead(file string) (old, new *selection, err error) {
	if old, err = a.atRevision("HEAD", file, false); err == nil {
		new, err = a.working(file, false)
	}
	return times(old, new, err)
}

// revisions parts A..B, A...B or REV. A missing end is HEAD; of REV alone the
// second is empty, which is the working tree.
func (a *app) revisions(arg string) (out [2]string, err error) {
	repo, err := gitrepo.Open(".")
	if err != nil {
		return out, usage("%v", err)
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
				return out, usage("%s", a.noRevision(repo, err))
			}
		}
	}
	if three {
		if out[0], err = repo.MergeBase(from, to); err != nil {
			return out, usage("%v", err)
		}
	}
	return out, nil
}

// noRevision says what may be the matter.
func (a *app) noRevision(repo *gitrepo.Repo, err error) string {
	if repo.Shallow() {
		return err.Error() + ": this is a shallow clone, whose older history was not fetched; `git fetch --unshallow` gets it"
	}
	return err.Error()
}

// againstParent compares a variant with the batch that it varies.
func (a *app) againstParent(name string, notRevision error) (old, new *selection, err error) {
	s, err := a.working(".", true)
	if err != nil {
		return nil, nil, err
	}
	known, ok := s.find(name)
	if !ok {
		return nil, nil, usage("%q is no revision (%v), no file, and no batch of this house", name, notRevision)
	}
	b, list := s.batch(known)
	if b == nil {
		return nil, nil, list
	}
	if b.Parent == "" {
		return nil, nil, usage("%q varies no other batch: say what to compare it with", known)
	}
	old, new = s.only(b.Parent), s.only(known)
	return old, new, nil
}

// find knows a batch by its name, or by its name as a file would have it.
func (s *selection) find(name string) (string, bool) {
	for _, n := range s.all {
		if strings.EqualFold(n, name) || fileName(n) == fileName(name) {
			return n, true
		}
	}
	return name, false
}

// only is the selection of one batch.
func (s *selection) only(name string) *selection {
	out := *s
	out.names, out.whole = []string{name}, true
	return &out
}

// side reads one side: a file, REV:path, or a batch by name.
func (a *app) side(arg string) (*selection, error) {
	if arg == standardInput {
		src, err := a.load(arg, "")
		if err != nil {
			return nil, err
		}
		return selectionOf(src.house, src.path, "standard input", false), nil
	}
	if isFile(arg) {
		if _, err := os.Stat(arg); err != nil {
			return nil, usage("cannot read %s: %v", arg, reason(err))
		}
		return a.working(arg, false)
	}
	if rev, where, ok := strings.Cut(arg, ":"); ok {
		return a.revisionPath(rev, where, arg)
	}
	s, err := a.working(".", true)
	if err != nil {
		return nil, err
	}
	known, ok := s.find(arg)
	if !ok {
		_, list := s.batch(arg)
		return nil, list
	}
	return s.only(known), nil
}

// revisionPath reads REV:path. The path is from the top of the repository, as git
// has it, or from here; or it is the name of a batch.
func (a *app) revisionPath(rev, where, label string) (*selection, error) {
	repo, err := gitrepo.Open(".")
	if err != nil {
		return nil, usage("%v", err)
	}
	tree, commit, err := a.tree(repo, rev)
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
		return a.fromTree(tree, rev, commit, below, label, false)
	}
	here, err := repo.Below(".")
	if err != nil {
		return nil, usage("%v", err)
	}
	s, err := a.fromTree(tree, rev, commit, here, label, true)
	if err != nil {
		return nil, usage("there is no %s at %s", where, rev)
	}
	known, ok := s.find(where)
	if !ok {
		return nil, usage("there is no file and no batch %s at %s", where, rev)
	}
	return s.only(known), nil
}

func (a *app) tree(repo *gitrepo.Repo, rev string) (*gitrepo.Tree, string, error) {
	commit, err := repo.Commit(rev)
	if err != nil {
		return nil, "", usage("%s", a.noRevision(repo, err))
	}
	r, err := repo.Reader()
	if err != nil {
		return nil, "", usage("%v", err)
	}
	defer r.Close()
	tree, err := r.At(commit)
	if err != nil {
		return nil, "", usage("%v", err)
	}
	return tree, commit, nil
}

// atRevision reads a file, or the house around a folder, as it was.
func (a *app) atRevision(rev, where string, whole bool) (*selection, error) {
	repo, err := gitrepo.Open(folderOf(where))
	if err != nil {
		return nil, usage("%v", err)
	}
	below, err := repo.Below(where)
	if err != nil {
		return nil, usage("%v", err)
	}
	tree, commit, err := a.tree(repo, rev)
	if err != nil {
		return nil, err
	}
	return a.fromTree(tree, rev, commit, below, rev+":"+below, whole)
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

func (a *app) fromTree(tree *gitrepo.Tree, rev, commit, below, label string, whole bool) (*selection, error) {
	dir, ok := tree.House(below)
	if !ok {
		return nil, usage("at %s there was no house: no house.batch at or above %s", rev, below)
	}
	shown := rev + ":" + dir
	if dir == "." {
		shown = rev + ":"
	}
	h, err := check.LoadFS(tree.FS(dir), shown, check.Options{})
	if err != nil {
		if list, ok := err.(diag.List); ok {
			return nil, list
		}
		return nil, usage("%v", err)
	}
	rel := strings.TrimPrefix(strings.TrimPrefix(below, dir), "/")
	if dir == "." {
		rel = below
	}
	return selectionOf(h, filepath.Join(shown, filepath.FromSlash(rel)), label, whole), nil
}

// working reads the files as they are now. A file that is gone has none of the
// house's batches.
func (a *app) working(where string, whole bool) (*selection, error) {
	at := where
	if _, err := os.Stat(at); err != nil {
		if at = filepath.Dir(where); folderOf(at) != at && !isFile(at) {
			return nil, usage("cannot read %s: %v", where, reason(err))
		}
		at = folderOf(at)
	}
	src, err := a.load(at, "")
	if err != nil {
		return nil, err
	}
	return selectionOf(src.house, where, where, whole), nil
}

func selectionOf(h *check.House, at, label string, whole bool) *selection {
	s := &selection{house: h, all: h.Batches(), label: label, whole: whole}
	if whole {
		s.names = s.all
	} else {
		s.names = h.BatchesIn(at)
	}
	return s
}

// match pairs the batches of two selections: by name, wherever in the house they
// stand; then those that are the same but for their name; and what is left, when
// each side has one. The order is that of the new side.
func match(old, new *selection) (pairs [][2]string, removed, added []string) {
	if len(old.names) == 1 && len(new.names) == 1 && !old.moves {
		return [][2]string{{old.names[0], new.names[0]}}, nil, nil
	}
	taken := map[string]bool{}
	pair := func(o, n string) { pairs, taken[o] = append(pairs, [2]string{o, n}), true }
	var left []string
	for _, n := range new.names {
		if o, ok := same(old, n); ok {
			pair(o, n)
		} else {
			left = append(left, n)
		}
	}
	for _, o := range old.names {
		if n, ok := same(new, o); ok && !taken[o] {
			pair(o, n) // it stands in another file now
		}
	}
	if len(left) == 1 && len(old.names) == 1 && len(pairs) == 0 { // one of each, by another name
		if _, still := same(new, old.names[0]); !still {
			pair(old.names[0], left[0])
			left = nil
		}
	}
	for _, n := range left {
		if o := alikeBatch(old, new, n, taken); o != "" {
			pair(o, n)
		} else {
			added = append(added, n)
		}
	}
	for _, o := range old.names {
		if !taken[o] {
			removed = append(removed, o)
		}
	}
	if len(pairs) == 0 && len(removed) > 0 && len(added) > 0 { // two files with nothing in common
		pair(removed[0], added[0])
		removed, added = removed[1:], added[1:]
	}
	return pairs, removed, added
}

func same(in *selection, name string) (string, bool) {
	known := in.names
	if in.moves {
		known = in.all
	}
	for _, n := range known {
		if strings.EqualFold(n, name) {
			return n, true
		}
	}
	return "", false
}

// alikeBatch finds a batch of the old side that is the new one under another name.
func alikeBatch(old, new *selection, name string, taken map[string]bool) string {
	b, _ := new.batch(name)
	if b == nil {
		return ""
	}
	for _, o := range old.names {
		if _, still := same(new, o); taken[o] || still {
			continue
		}
		if a, _ := old.batch(o); a != nil && compare.Find(a, b, measure.US).Same() {
			return o
		}
	}
	return ""
}
