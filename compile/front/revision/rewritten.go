package revision

import (
	"slices"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
	"newmake/lang/logbook"
	"newmake/lang/schema"
)

// Rewritten speaks of what the records of a house said when they were committed last, and
// no longer say. Where there is no repository, or no commit, there is nothing to say. A
// file of records that is gone altogether shows when that is staged.
func Rewritten(h *check.House) diag.List {
	var names []string
	var texts [][]byte
	for _, f := range h.Files {
		if slices.Contains(f.Heads(), schema.Run.Name) {
			names, texts = append(names, f.Source.Name), append(texts, f.Source.Text)
		}
	}
	if len(names) == 0 || gitrepo.None(h.Root) {
		return nil
	}
	repo, err := gitrepo.Open(h.Root)
	if err != nil {
		return nil
	}
	if same, err := repo.AtHead(names, texts); same || err != nil {
		return nil
	}
	commit, err := repo.Commit("HEAD")
	if err != nil {
		return nil
	}
	return rewritten(houseAt(repo, commit, h), h)
}

// reading lends a reader of a repository's commits.
func reading(repo *gitrepo.Repo, do func(at func(commit string) (*gitrepo.Tree, error)) error) error {
	r, err := repo.Reader()
	if err != nil {
		return err
	}
	defer r.Close()
	return do(r.At)
}

// rewritten holds the runs of a house against those of the same house as it was; nil was
// nothing. A run with errors is left until they are mended.
func rewritten(was, now *check.House) (said diag.List) {
	if was == nil {
		return nil
	}
	for _, number := range was.RunNumbers() {
		old, _ := was.Run(number)
		new, list := now.Run(number)
		if old == nil || list.HasErrors() && new != nil {
			continue
		}
		said = append(said, logbook.Rewritten(old, new)...)
	}
	return said
}
