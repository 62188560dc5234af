// Package gitrepo reads a house as it stood at a revision, or as it is staged. It
// calls git, and nothing else knows how: what comes out is a file system for
// check.LoadFS.
package gitrepo

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
)

// Repo is a repository with a working tree.
type Repo struct {
	Top string // of the working tree
	Dir string // where git is called from
}

// ErrNoGit says that git is not installed, ErrNoRepo that a folder belongs to no
// repository.
var (
	ErrNoGit  = errors.New("git is not on the path, so no revision can be read")
	ErrNoRepo = errors.New("this folder belongs to no git repository")
)

// Open finds the repository around a folder.
func Open(dir string) (*Repo, error) {
	if _, err := exec.LookPath("git"); err != nil {
		return nil, ErrNoGit
	}
	r := &Repo{Dir: dir}
	top, err := r.Run("rev-parse", "--show-toplevel")
	if err != nil {
		if strings.Contains(err.Error(), "not a git repository") {
			return nil, ErrNoRepo
		}
		return nil, err // a bare one, or one that git does not trust: in its own words
	}
	r.Top = filepath.FromSlash(strings.TrimSuffix(top, "\n"))
	return r, nil
}

// Run calls git and gives what it prints. The error is in git's own words.
func (r *Repo) Run(args ...string) (string, error) {
	return r.run(nil, args...)
}

// RunWith is Run with a standard input.
func (r *Repo) RunWith(input []byte, args ...string) (string, error) {
	return r.run(input, args...)
}

func (r *Repo) run(input []byte, args ...string) (string, error) {
	cmd := r.command(args...)
	cmd.Stdin = bytes.NewReader(input)
	var out, say bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &say
	if err := cmd.Run(); err != nil {
		words, _, _ := strings.Cut(strings.TrimSpace(say.String()), "\n")
		if words = strings.TrimPrefix(strings.TrimPrefix(words, "fatal: "), "error: "); words == "" {
			words = err.Error()
		}
		return "", fmt.Errorf("git %s: %s", args[0], words)
	}
	return out.String(), nil
}

// command is git as it is called: without pager, locks or translations, and
// without running a program that the repository names.
func (r *Repo) command(args ...string) *exec.Cmd {
	plain := []string{"--no-pager", "--no-optional-locks", "-c", "core.quotePath=false", "-c", "core.fsmonitor=false", "-c", "log.showSignature=false"}
	cmd := exec.Command("git", append(plain, args...)...)
	cmd.Dir = r.Dir
	cmd.Env = append(os.Environ(), "LC_ALL=C")
	return cmd
}

// Commit finds the commit that a revision names.
func (r *Repo) Commit(rev string) (string, error) {
	if rev == "" {
		return "", errors.New("there is no revision with an empty name")
	}
	out, err := r.Run("rev-parse", "--verify", "--quiet", "--end-of-options", rev+"^{commit}")
	if err != nil {
		return "", fmt.Errorf("git knows no revision %q", rev)
	}
	return strings.TrimSpace(out), nil
}

// MergeBase is the commit that two branched off from.
func (r *Repo) MergeBase(a, b string) (string, error) {
	out, err := r.Run("merge-base", a, b)
	if err != nil {
		return "", errors.New("the two revisions have no commit in common")
	}
	return r.Short(strings.TrimSpace(out)), nil
}

// Short is a commit's name as short as it can be.
func (r *Repo) Short(commit string) string {
	if out, err := r.Run("rev-parse", "--short", commit); err == nil {
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

// Commit of a history.
type Revision struct {
	Commit, Short string
	Date          string // 2026-03-03
	Subject       string
}

// History lists the revisions of the first-parent line from a to b that touch a
// folder, oldest first. An empty a begins at the beginning.
func (r *Repo) History(a, b, under string) ([]Revision, error) {
	span := b
	if a != "" {
		span = a + ".." + b
	}
	where := ":(top,literal)" + under
	if under == "." {
		where = ":(top)*" + ending
	}
	out, err := r.Run("log", "--first-parent", "--reverse", "--date=short", "--format=%H%x1f%h%x1f%ad%x1f%s", span, "--", where)
	if err != nil {
		return nil, err
	}
	var all []Revision
	for _, line := range strings.Split(strings.TrimSuffix(out, "\n"), "\n") {
		if f := strings.SplitN(line, "\x1f", 4); len(f) == 4 {
			all = append(all, Revision{f[0], f[1], f[2], f[3]})
		}
	}
	return all, nil
}

// Shallow says that the history was cut off when the repository was cloned.
func (r *Repo) Shallow() bool {
	out, err := r.Run("rev-parse", "--is-shallow-repository")
	return err == nil && strings.TrimSpace(out) == "true"
}
