package gitsetup

import (
	"os"
	"path/filepath"

	"newmake/lang/gitrepo"
)

// hookFound looks at the hook. One kept outside the repository, for all of a
// person's repositories, is somebody else's whatever is in it.
func hookFound(r *gitrepo.Repo, hook string) (State, error) {
	if isOdd(hook) {
		return IsOther, nil
	}
	text, err := os.ReadFile(hook)
	switch {
	case err == nil && string(text) == hookText:
		return IsOurs, nil
	case err == nil:
		return IsOther, nil
	case !os.IsNotExist(err):
		return NotThere, err
	}
	if r.HooksElsewhere() {
		return IsOther, nil
	}
	return NotThere, nil
}

func (s *Setup) writeHook(hook string) error {
	if err := os.MkdirAll(filepath.Dir(hook), 0o755); err != nil {
		return err
	}
	return s.Disk.Create(hook, []byte(hookText), 0o755) // never over one that is there
}
