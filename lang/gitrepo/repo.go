// Package gitrepo reads a house as it stood at a revision, or as it is staged. It
// calls git, and nothing else in the program does: what comes out is a file system
// for check.LoadFS.
//
// A repository may have been unpacked from anywhere, and its configuration may
// name programs: filters, monitors, hooks, transports, viewers. None of them is
// run (command.go). So git is never asked about files of the working tree; what
// was read is hashed here and compared with the names of the objects.
package gitrepo

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"sync/atomic"
)

// Repo is a repository with a working tree.
type Repo struct {
	Top string // of the working tree
	Dir string // where git is called from

	inHook bool
	limits limits
	mute   atomic.Bool // git has given no answer once
}

// ErrNoGit says that git is not installed, ErrNoRepo that a folder belongs to no
// repository.
var (
	ErrNoGit  = errors.New("git is not on the path, so no revision can be read")
	ErrNoRepo = errors.New("this folder belongs to no git repository")
)

// Open finds the repository around a folder, whatever GIT_DIR and its like say.
func Open(dir string) (*Repo, error) {
	return open(&Repo{Dir: dir, limits: usual()})
}

// OpenInHook finds the repository for which git has called a hook, and the index
// that git works with.
func OpenInHook(dir string) (*Repo, error) {
	return open(&Repo{Dir: dir, inHook: true, limits: usual()})
}

// None says, without calling git, that no folder at or above this one is that of a
// repository. Where it does not say so there may still be none.
func None(dir string) bool {
	at, err := filepath.Abs(dir)
	if err != nil {
		return false
	}
	if at, err = filepath.EvalSymlinks(at); err != nil {
		return false
	}
	for {
		if _, err := os.Lstat(filepath.Join(at, ".git")); !errors.Is(err, fs.ErrNotExist) {
			return false
		}
		up := filepath.Dir(at)
		if up == at {
			return true
		}
		at = up
	}
}

func open(r *Repo) (*Repo, error) {
	if _, err := exec.LookPath("git"); err != nil {
		return nil, ErrNoGit
	}
	top, err := r.run("rev-parse", "--show-toplevel")
	if err != nil {
		if strings.Contains(err.Error(), "not a git repository") {
			return nil, ErrNoRepo
		}
		return nil, err // a bare one, or one that git does not trust: in its own words
	}
	r.Top = filepath.FromSlash(strings.TrimSuffix(top, "\n"))
	if _, err := r.Below(r.Dir); err != nil {
		return nil, fmt.Errorf("the repository around this folder keeps its files elsewhere, in %q, so it is not read", r.Top)
	}
	return r, nil
}

// Commit finds the commit that a revision names.
func (r *Repo) Commit(rev string) (string, error) {
	if rev == "" {
		return "", errors.New("there is no revision with an empty name")
	}
	out, err := r.run("rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	if errors.Is(err, ErrNoAnswer) {
		return "", err
	}
	if err != nil {
		return "", fmt.Errorf("git knows no revision %q", rev)
	}
	return strings.TrimSpace(out), nil
}

// Names are the branches and tags of the repository, as a person writes them.
func (r *Repo) Names() ([]string, error) {
	out, err := r.run("rev-parse", "--symbolic", "--branches", "--tags")
	return strings.Fields(out), err
}

// MergeBase is the commit that two branched off from.
func (r *Repo) MergeBase(a, b string) (string, error) {
	var commits [2]string // a ref may be called like an option
	for i, rev := range []string{a, b} {
		var err error
		if commits[i], err = r.Commit(rev); err != nil {
			return "", err
		}
	}
	out, err := r.run("merge-base", commits[0], commits[1])
	if errors.Is(err, ErrNoAnswer) {
		return "", err
	}
	if err != nil {
		return "", errors.New("the two revisions have no commit in common")
	}
	return r.short(strings.TrimSpace(out)), nil
}

// short is a commit's name as short as it can be.
func (r *Repo) short(commit string) string {
	if out, err := r.run("rev-parse", "--short", commit); err == nil {
		return strings.TrimSpace(out)
	}
	return commit
}

// Below gives the path of a file below the top of the working tree, with
// slashes. The file need not exist; its folders may be links.
func (r *Repo) Below(name string) (string, error) {
	abs, err := filepath.Abs(name)
	if err != nil {
		return "", err
	}
	top := r.Top
	if real, err := filepath.EvalSymlinks(top); err == nil {
		top = real
	}
	rel, err := filepath.Rel(top, deepest(abs))
	if err != nil || !filepath.IsLocal(rel) {
		return "", fmt.Errorf("%s is not in the repository at %s", name, r.Top)
	}
	return path.Clean(filepath.ToSlash(rel)), nil
}

// deepest follows the links of as much of a path as exists.
func deepest(abs string) string {
	if real, err := filepath.EvalSymlinks(abs); err == nil {
		return real
	}
	up := filepath.Dir(abs)
	if up == abs {
		return abs
	}
	return filepath.Join(deepest(up), filepath.Base(abs))
}

// Shallow reports whether the history was cut off when the repository was cloned.
func (r *Repo) Shallow() bool {
	out, err := r.run("rev-parse", "--is-shallow-repository")
	return err == nil && strings.TrimSpace(out) == "true"
}
