package revision

import (
	"path/filepath"

	"newmake/compile/front"
	"newmake/lang/gitrepo"
)

// Commits is how many commits have changed a house, and one more if its texts are not
// those that were committed last: a number that rises as the house changes. It is 0
// where there is no git.
func Commits(src *front.Source) int {
	if gitrepo.None(src.House.Root) {
		return 0
	}
	repo, err := gitrepo.Open(src.House.Root)
	if err != nil {
		return 0
	}
	under, err := repo.Below(src.House.Root)
	if err != nil {
		return 0
	}
	all, err := repo.History("", "HEAD", filepath.ToSlash(under))
	if err != nil {
		return 0
	}
	var names []string
	var texts [][]byte
	for _, f := range src.House.Files {
		names, texts = append(names, f.Source.Name), append(texts, f.Source.Text)
	}
	if same, err := repo.AtHead(names, texts); err == nil && !same {
		return len(all) + 1
	}
	return len(all)
}
