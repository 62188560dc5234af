package revision

import (
	"fmt"
	"path/filepath"
	"slices"

	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Worked finds the recipes of the sheets that runs were worked from, by what stands at
// the sheets' feet.
type Worked struct {
	src       *front.Source
	noLearned bool
	houses    map[string]*front.Source // by the sheet; nil of one that is not in the history
}

// NewWorked looks in the history of a source's house. Of older texts what the house had
// learned is left out where noLearned says so.
func NewWorked(src *front.Source, noLearned bool) *Worked {
	return &Worked{src: src, noLearned: noLearned, houses: map[string]*front.Source{}}
}

// Of is the recipe of a run. note says that it is an older text, or that the one of the sheet is not
// to be found, so that the batch is taken as it stands now.
func (w *Worked) Of(run *record.Run) (b *recipe.Batch, said diag.List, note string) {
	b, said = w.src.House.Batch(run.Batch)
	if b == nil {
		return b, said, ""
	}
	if run.Sheet == "" {
		return w.before(run, b, said, "")
	}
	key := run.Batch + "\x00" + run.Sheet
	src, seen := w.houses[key]
	if !seen {
		src = w.find(run)
		w.houses[key] = src
	}
	switch {
	case src == w.src:
		return b, said, ""
	case src == nil:
		return w.before(run, b, said, fmt.Sprintf("sheet %q of run %q is not in the history of this house: the batch is taken as it stands now", run.Sheet, run.Number))
	}
	old, list := src.House.Batch(run.Batch)
	if old == nil {
		return w.before(run, b, said, fmt.Sprintf("at %q, of which run %q has its sheet, the house has no batch %q that can be read: it is taken as it stands now", run.Sheet, run.Number, run.Batch))
	}
	if alike(old, b) {
		return b, said, ""
	}
	return old, list, fmt.Sprintf("%q is taken as it stood at %q, of which run %q has its sheet", run.Batch, run.Sheet, run.Number)
}

// Lost reports whether the text of the sheet of a run was looked for by Of, and is not to be found.
func (w *Worked) Lost(run *record.Run) bool {
	src, sought := w.houses[run.Batch+"\x00"+run.Sheet]
	return sought && src == nil
}

// before is the batch without what was learned after the run or of it: whoever made the run
// worked without that, and a plan that is moved by its own run says nothing about it.
func (w *Worked) before(run *record.Run, b *recipe.Batch, said diag.List, note string) (*recipe.Batch, diag.List, string) {
	l := b.Learned
	if l == nil || l.On <= run.Date.String() && !slices.Contains(l.From, run.Number) {
		return b, said, note
	}
	left := fmt.Sprintf("what was learned on %s is left out, as run %q was made without it", l.On, run.Number)
	if note != "" {
		left = note + ", and " + left
	}
	b, said = w.src.House.Untaught(run.Batch)
	return b, said, left
}

// alike reports whether two recipes are one in all values.
func alike(a, b *recipe.Batch) bool {
	return slices.EqualFunc(a.Values(), b.Values(), func(x, y recipe.Value) bool { return x.Key() == y.Key() && x.Same(y) })
}

// mostBack is how many changes of a house are looked at for a sheet that was printed of a
// text before it was committed.
const mostBack = 40

// find is the house as it stood for a sheet.
func (w *Worked) find(run *record.Run) *front.Source {
	if now, _ := Of(w.src, run.Batch); now != nil && (now.Hash == run.Sheet || now.Revision == run.Sheet && !now.Changed) {
		return w.src
	}
	root := w.src.House.Root
	if gitrepo.None(root) {
		return nil
	}
	repo, err := gitrepo.Open(root)
	if err != nil {
		return nil
	}
	dir, err := repo.Below(root)
	if err != nil {
		return nil
	}
	var found *front.Source
	_ = reading(repo, func(at func(string) (*gitrepo.Tree, error)) error {
		load := func(commit string) *front.Source {
			tree, err := at(commit)
			if err != nil {
				return nil
			}
			src, err := front.Load(front.Place{FS: tree.FS(dir), Root: root, Path: root, NoLearned: w.noLearned})
			if err != nil {
				return nil
			}
			return src
		}
		if commit, err := repo.Commit(run.Sheet); err == nil {
			found = load(commit)
			return nil
		}
		all, err := repo.History("", "HEAD", filepath.ToSlash(dir))
		if err != nil {
			return err
		}
		slices.Reverse(all)
		for _, r := range all[:min(len(all), mostBack)] {
			src := load(r.Commit)
			if src == nil {
				continue
			}
			if b, _ := src.House.Batch(run.Batch); b != nil && hashOf(src, sourcesOf(src, b)) == run.Sheet {
				found = src
				return nil
			}
		}
		return nil
	})
	return found
}
