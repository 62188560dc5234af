package revision

import (
	"newmake/lang/check"
	"newmake/lang/gitrepo"
)

// Committed is a house as it was committed last, its files called as they are now; nil
// where there is no repository, or nothing of the house in it.
func Committed(now *check.House) *check.House {
	if now == nil || gitrepo.None(now.Root) {
		return nil
	}
	repo, err := gitrepo.Open(now.Root)
	if err != nil {
		return nil
	}
	var was *check.House
	_ = reading(repo, func(at func(commit string) (*gitrepo.Tree, error)) error {
		tree, err := head(repo, at)
		if err != nil {
			return err
		}
		dir, err := repo.Below(now.Root)
		if err != nil {
			return err
		}
		was, err = check.LoadFS(tree.FS(dir), now.Root, check.Options{})
		if err != nil {
			was = nil
		}
		return nil
	})
	if was != nil {
		was.Teach = now.Teach
	}
	return was
}
