package gitrepo

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// StagedFiles lists the files with an ending that are staged to be added,
// changed, renamed or taken away, by their paths below the top.
func (r *Repo) StagedFiles(ending string) ([]string, error) {
	out, err := r.Run("diff", "--cached", "--name-only", "--no-renames", "-z", "--", ":(top)*"+ending)
	if err != nil {
		return nil, err
	}
	return rows(out), nil
}

// OtherIndex says that git works with an index of its own for this commit, as it
// does for `git commit FILE`: what is staged there does not stay staged.
func (r *Repo) OtherIndex() bool {
	at := os.Getenv("GIT_INDEX_FILE")
	return at != "" && filepath.Base(at) != "index"
}

// Stage puts a text into the index in place of a file's.
func (r *Repo) Stage(name string, text []byte) error {
	out, err := r.Run("ls-files", "-s", "-z", "--full-name", "--", ":(top,literal)"+name)
	if err != nil {
		return err
	}
	what, _, _ := strings.Cut(out, "\t")
	f := strings.Fields(what)
	if len(f) != 3 {
		return fmt.Errorf("%s is not staged", name)
	}
	blob, err := r.RunWith(text, "hash-object", "-w", "--stdin")
	if err != nil {
		return err
	}
	_, err = r.RunWith([]byte(f[0]+" "+strings.TrimSpace(blob)+"\t"+name+"\x00"), "update-index", "-z", "--index-info")
	return err
}
