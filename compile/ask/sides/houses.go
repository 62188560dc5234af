package sides

import (
	"path"
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

// Pair is two sides that belong together.
type Pair struct{ Old, New *Side }

// All finds what arguments mean: as a rule one pair. A folder that is of no house, at
// two times, stands for each of the houses below it, at either time.
func (f *Finder) All(args, files []string) ([]Pair, error) {
	if len(args) == 1 && len(files) <= 1 && !isFile(args[0]) {
		where := "."
		if len(files) == 1 {
			where = files[0]
		}
		if len(front.Below(where)) > 0 {
			if span, err := revisions(args[0]); err == nil {
				return eachHouse(span, where)
			}
		}
	}
	old, new, err := f.both(args, files)
	if err != nil {
		return nil, err
	}
	return []Pair{{old, new}}, nil
}

// eachHouse pairs the houses below a folder by where they stand. One that is there at
// one time alone stands against nothing.
func eachHouse(span [2]string, where string) ([]Pair, error) {
	repo, err := gitrepo.Open(where)
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	top, err := repo.Below(where)
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	reads := [2]func(string) (*Side, error){}
	known := map[string]bool{}
	for i, rev := range span {
		var all []string
		if reads[i], all, err = housesAt(repo, rev, where, top); err != nil {
			return nil, err
		}
		for _, house := range all {
			known[house] = true
		}
	}
	var out []Pair
	for _, house := range sorted(known) {
		var two [2]*Side
		for i, rev := range span {
			s, err := reads[i](house)
			if err != nil {
				return nil, err
			}
			s = orNobody(s, house+" at "+rev)
			s.moves = true
			two[i] = s
		}
		out = append(out, Pair{two[0], two[1]})
	}
	return out, nil
}

// housesAt finds the houses below a folder at a revision, or as they are now, by
// their paths below it; and how to read one, nil if it is not there.
func housesAt(repo *gitrepo.Repo, rev, where, top string) (read func(string) (*Side, error), all []string, err error) {
	if rev == "" {
		for _, at := range front.Below(where) {
			if rel, err := filepath.Rel(where, at); err == nil {
				all = append(all, filepath.ToSlash(rel))
			}
		}
		return func(house string) (*Side, error) {
			if !slices.Contains(all, house) {
				return nil, nil
			}
			return working(filepath.Join(where, filepath.FromSlash(house)), true)
		}, all, nil
	}
	tree, err := treeAt(repo, rev)
	if err != nil {
		return nil, nil, err
	}
	for _, house := range tree.Houses(top) {
		all = append(all, strings.TrimPrefix(strings.TrimPrefix(house, top), "/"))
	}
	return func(house string) (*Side, error) {
		if !slices.Contains(all, house) {
			return nil, nil
		}
		below := path.Join(top, house)
		return fromTree(tree, rev, below, rev+":"+below, true)
	}, all, nil
}

func sorted(set map[string]bool) []string {
	var out []string
	for name := range set {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

// CompareAll compares each pair, and gives one document of all.
func CompareAll(pairs []Pair, o Options) (*compare.Document, diag.List, error) {
	doc := compare.NewDocument()
	var said diag.List
	var not error
	for _, p := range pairs {
		one, list, err := compared(p.Old, p.New, o)
		if err != nil { // the batch that was asked for may be another house's
			not = err
			continue
		}
		said = append(said, list...)
		doc.Pairs = append(doc.Pairs, one.Pairs...)
		doc.Added = append(doc.Added, one.Added...)
		doc.Removed = append(doc.Removed, one.Removed...)
		doc.Broken = append(doc.Broken, one.Broken...)
	}
	if not != nil && len(doc.Pairs)+len(doc.Added)+len(doc.Removed)+len(doc.Broken) == 0 {
		return nil, nil, not
	}
	return doc, said, nil
}
