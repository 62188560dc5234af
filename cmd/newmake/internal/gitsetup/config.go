package gitsetup

import (
	"path/filepath"

	"newmake/lang/gitrepo"
)

// belowTop is a path as a person in the repository sees it.
func belowTop(r *gitrepo.Repo, path string) string {
	if rel, err := filepath.Rel(r.Top, path); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel)
	}
	return path
}

func configPart(r *gitrepo.Repo, key, value, why string) Part {
	return Part{
		Name: key, Why: why, Show: []string{value},
		Found: func() (State, error) {
			switch now, ok := r.Setting(key); {
			case !ok:
				return NotThere, nil
			case now == value:
				return IsOurs, nil
			default:
				return IsOther, nil
			}
		},
		Set:    func() error { return r.Set(key, value) },
		Unset:  func() error { return r.Unset(key) },
		ByHand: "see it with `git config " + key + "`",
		ToUndo: "see it with `git config " + key + "`",
	}
}
