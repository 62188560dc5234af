package sides

import (
	"errors"

	"newmake/compile/ask/compare"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
	"newmake/lang/house"
)

// Walk compares each revision of a range that touches a house with the one before
// it, oldest first. Each is compared before the next is read: a long history takes
// no more memory than a short one.
type Walk struct {
	Below string // what is looked at, below the top of the repository

	repo   *gitrepo.Repo
	reader *gitrepo.Reader
	span   [2]string
	whole  bool
}

// NewWalk begins a walk through a range, A..B or A, which ends at HEAD. files is
// the path to look at, if there is one; otherwise it is the house around the
// working directory. The walk is to be closed.
func NewWalk(span string, files []string) (*Walk, error) {
	w := &Walk{whole: len(files) == 0}
	var err error
	if w.span, err = revisions(span); err != nil {
		return nil, err
	}
	if w.span[1] == "" {
		w.span[1] = "HEAD"
	}
	where := "."
	if !w.whole {
		where = files[0]
	}
	if w.repo, err = gitrepo.Open(folderOf(where)); err == nil {
		if w.Below, err = w.repo.Below(where); err == nil {
			w.reader, err = w.repo.Reader()
		}
	}
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	return w, nil
}

// Close ends the walk.
func (w *Walk) Close() { w.reader.Close() }

// Each calls do for every revision, and gives how many there were. A revision in
// which neither side has the batch that was asked for is passed over. An error of
// do ends the walk.
func (w *Walk) Each(o Options, do func(gitrepo.Revision, *compare.Document) error) (n int, err error) {
	from, err := w.repo.Commit(w.span[0])
	if err != nil {
		return 0, diag.Refuse("%v", err)
	}
	to, err := w.repo.Commit(w.span[1])
	if err != nil {
		return 0, diag.Refuse("%v", err)
	}
	before, dir, err := w.read(from, w.span[0])
	if err != nil {
		return 0, diag.Refuse("%v", err)
	}
	if dir == "" {
		if _, dir, err = w.read(to, w.span[1]); err != nil {
			return 0, diag.Refuse("%v", err)
		}
	}
	if dir == "" {
		return 0, diag.Refuse("there is no house at %s, neither at %s nor at %s", w.Below, w.span[0], w.span[1])
	}
	all, err := w.repo.History(from, to, dir)
	if err != nil {
		return 0, diag.Refuse("%v", err)
	}
	there := len(all) == 0 // at one of the revisions at least
	for _, r := range all {
		after, _, err := w.read(r.Commit, r.Short)
		if err != nil {
			return 0, diag.Refuse("%v", err)
		}
		if before != nil && before.gone && after != nil && after.gone { // the path is of other revisions, or misspelt
			before = after
			continue
		}
		there = true
		doc, _, err := compared(orNobody(before, "nothing"), orNobody(after, r.Short), o)
		before = after
		if errors.Is(err, errNeither) {
			continue
		}
		if err != nil {
			return 0, err
		}
		if err := do(r, doc); err != nil {
			return 0, err
		}
	}
	if !there {
		return 0, diag.Refuse("there is no recipe and no folder %s, at any revision of %s..%s", w.Below, w.span[0], w.span[1])
	}
	return len(all), nil
}

// read reads the house as it was at a commit; nil if there was none.
func (w *Walk) read(commit, name string) (s *Side, dir string, err error) {
	tree, err := w.reader.At(commit)
	if err != nil {
		return nil, "", err
	}
	dir, ok := tree.House(w.Below)
	if !ok {
		return nil, "", nil
	}
	s, err = fromTree(tree, name, w.Below, name+":"+w.Below, w.whole)
	if err != nil {
		if _, broken := err.(diag.List); broken {
			return nil, dir, nil
		}
		return nil, dir, err
	}
	s.moves = true
	return s, dir, nil
}

// orNobody is a side, or that of a revision at which there was no house.
func orNobody(s *Side, label string) *Side {
	if s != nil {
		return s
	}
	return &Side{house: &check.House{House: &house.House{}}, label: label, moves: true}
}
