package gitrepo

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// StagedFiles lists the files with an ending that are staged to be added,
// changed, renamed or taken away, by their paths below the top.
func (r *Repo) StagedFiles(ending string) ([]string, error) {
	base := "HEAD"
	if _, err := r.Commit(base); err != nil { // before the first commit: against a tree of nothing
		out, err := r.runWith(nil, "hash-object", "-t", "tree", "--stdin")
		if err != nil {
			return nil, err
		}
		base = strings.TrimSpace(out)
	}
	out, err := r.run("diff-index", "--cached", "--name-only", "--no-renames", "--no-ext-diff", "--no-textconv",
		"--ignore-submodules=all", "-z", base, "--", ":(top)*"+ending)
	if err != nil {
		return nil, err
	}
	names := rows(out)
	for _, name := range names {
		if err := valid(name); err != nil {
			return nil, err
		}
	}
	return names, nil
}

// OtherIndex reports whether git works with an index of its own for this commit, as it
// does for `git commit FILE`: what is staged there does not stay staged. That of `git
// commit -a` becomes the index once the hook is done.
func (r *Repo) OtherIndex() bool {
	switch at := os.Getenv("GIT_INDEX_FILE"); filepath.Base(at) {
	case "index", "index.lock":
		return false
	default:
		return at != ""
	}
}

// Stage puts a text into the index in place of a file's.
func (r *Repo) Stage(name string, text []byte) error {
	out, err := r.run("ls-files", "-s", "-z", "--full-name", "--", ":(top,literal)"+name)
	if err != nil {
		return err
	}
	what, _, _ := strings.Cut(out, "\t")
	f := strings.Fields(what)
	if len(f) != 3 {
		return fmt.Errorf("%s is not staged", name)
	}
	blob, err := r.runWith(text, "hash-object", "-w", "--no-filters", "--stdin")
	if err != nil {
		return err
	}
	_, err = r.runWith([]byte(f[0]+" "+strings.TrimSpace(blob)+"\t"+name+"\x00"), "update-index", "-z", "--index-info")
	return err
}

// Working is the file of the working tree that a path below the top means; none if
// a link leads elsewhere on the way to it.
func (r *Repo) Working(name string) (string, bool) {
	file := filepath.Join(r.Top, filepath.FromSlash(name))
	below, err := r.Below(filepath.Dir(file))
	return file, err == nil && below == path.Dir(name)
}
