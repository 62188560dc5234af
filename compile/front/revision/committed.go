package revision

import (
	"newmake/lang/check"
	"newmake/lang/gitrepo"
)

// Committed is a house as it was committed last. It is read anew when another commit is
// the last, and may be asked by one at a time.
type Committed struct {
	commit string
	house  *check.House
}

// Of is the house as it was committed last, its files called as they are now; nil where
// there is no repository, or nothing of the house in it.
func (c *Committed) Of(now *check.House) *check.House {
	if now == nil || gitrepo.None(now.Root) {
		return nil
	}
	repo, err := gitrepo.Open(now.Root)
	if err != nil {
		return nil
	}
	commit, err := repo.Commit("HEAD")
	if err != nil {
		return nil
	}
	if commit != c.commit {
		c.commit, c.house = commit, houseAt(repo, commit, now)
		if c.house != nil {
			c.house.Teach = now.Teach
		}
	}
	return c.house
}

// houseAt is a house as it was at a commit, nil if it cannot be read.
func houseAt(repo *gitrepo.Repo, commit string, now *check.House) (was *check.House) {
	_ = reading(repo, func(at func(commit string) (*gitrepo.Tree, error)) error {
		tree, err := at(commit)
		if err != nil {
			return err
		}
		dir, err := repo.Below(now.Root)
		if err != nil {
			return err
		}
		was = inTree(tree, dir, now)
		return nil
	})
	return was
}

// inTree is a house as it lies in a folder of a tree, nil if it cannot be read.
func inTree(tree *gitrepo.Tree, dir string, now *check.House) *check.House {
	was, err := check.LoadFS(tree.FS(dir), now.Root, check.Options{})
	if err != nil {
		return nil
	}
	return was
}
