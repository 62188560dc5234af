package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/google/renameio/v2"
	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/gitrepo"
)

func (a *app) gitSetupCommand() *cobra.Command {
	var apply, remove, staged bool
	cmd := &cobra.Command{
		Use:   "git-setup [FOLDER]",
		Short: "Teach a git repository about recipes",
		Long: "git-setup shows what it would set in a repository; --apply sets it, and --remove takes it\n" +
			"back. It sets\n\n" +
			"  line endings   *.batch files have LF on every machine\n" +
			"  hunk headers   git diff names the block that a change is in; this needs no newmake\n" +
			"  a diff driver  git diff shows texts as laid out, so that a change of layout alone shows\n" +
			"                 nothing; without newmake on the path it shows them as they are\n" +
			"  a hook         before a commit, the staged .batch files are laid out and checked\n\n" +
			"Nothing that is there already is written over. The attributes belong in the repository, so\n" +
			"commit .gitattributes; the rest is this clone's own.",
		Example: "  newmake git-setup\n" +
			"  newmake git-setup --apply\n" +
			"  newmake git-setup --remove",
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			dir := "."
			if len(args) == 1 {
				dir = args[0]
			}
			repo, err := gitrepo.Open(dir)
			if err != nil {
				return usage("%v", err)
			}
			switch {
			case staged:
				return a.staged(repo)
			case apply && remove:
				return usage("--apply sets and --remove takes back: give one of them")
			case apply:
				return a.applySetup(repo)
			case remove:
				return a.removeSetup(repo)
			}
			return a.showSetup(repo)
		},
	}
	cmd.Flags().BoolVar(&apply, "apply", false, "set it")
	cmd.Flags().BoolVar(&remove, "remove", false, "take it back")
	cmd.Flags().BoolVar(&staged, "staged", false, "lay out and check what is staged: what the hook calls")
	_ = cmd.Flags().MarkHidden("staged")
	return cmd
}

// part is one thing that is set.
type part struct {
	name string // where: .gitattributes, a key of git's config, the hook
	why  string
	// found is what is there: nothing, isOurs, or something else.
	found func() (state, error)
	set   func() error
	unset func() error
	show  []string // what is set, line by line
	// byHand is what a person does where something else is in the way.
	byHand string
}

type state int

const (
	notThere state = iota
	isOurs
	isOther
)

// Attributes and config. The patterns are POSIX extended regular expressions.
const (
	attributeLine = "*.batch text eol=lf diff=newmake"
	markBegin     = "# newmake: begin"
	markEnd       = "# newmake: end"

	// A line that opens a block: its words go into the hunk header.
	funcName = `^[ \t]*([a-z][a-z-]*([ \t].*)?)\{`
	// The text as laid out; as it is, where newmake is not there or refuses it.
	textConv = `f() { { newmake fmt - <"$1"; } 2>/dev/null || cat "$1"; }; f`
)

const hookText = `#!/bin/sh
# Installed by newmake git-setup; newmake git-setup --remove takes it out.
# Lays out and checks the .batch files that are staged.
if ! command -v newmake >/dev/null 2>&1; then
  echo "newmake is not on the path: staged .batch files were not checked" >&2
  exit 0
fi
exec newmake git-setup --staged
`

func setupParts(r *gitrepo.Repo) ([]part, error) {
	hook, err := hookPath(r)
	if err != nil {
		return nil, err
	}
	attributes := filepath.Join(r.Top, ".gitattributes")
	return []part{
		{
			name: ".gitattributes", why: "LF on every machine, and the driver below for .batch files", show: []string{attributeLine},
			found: func() (state, error) { return attributesFound(attributes) },
			set:   func() error { return addAttributes(attributes) },
			unset: func() error { return dropAttributes(attributes) },
		},
		configPart(r, "diff.newmake.xfuncname", funcName, "hunk headers name the block; needs no program"),
		configPart(r, "diff.newmake.textconv", textConv, "git diff shows the text as laid out; without newmake, as it is"),
		{
			name: belowTop(r, hook), why: "lays out and checks what is staged, before a commit", show: []string{"newmake git-setup --staged"},
			found:  func() (state, error) { return hookFound(r, hook) },
			set:    func() error { return writeHook(hook) },
			unset:  func() error { return os.Remove(hook) },
			byHand: "add to it the line `newmake git-setup --staged || exit 1`",
		},
	}, nil
}

// belowTop is a path as a person in the repository sees it.
func belowTop(r *gitrepo.Repo, path string) string {
	if rel, err := filepath.Rel(r.Top, path); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel)
	}
	return path
}

func configPart(r *gitrepo.Repo, key, value, why string) part {
	return part{
		name: key, why: why, show: []string{value},
		found: func() (state, error) {
			switch now, err := r.Run("config", "--local", "--get", key); {
			case err != nil:
				return notThere, nil
			case strings.TrimSuffix(now, "\n") == value:
				return isOurs, nil
			default:
				return isOther, nil
			}
		},
		set: func() error { _, err := r.Run("config", "--local", key, value); return err },
		unset: func() error {
			if _, err := r.Run("config", "--local", "--unset", key); err != nil {
				return err
			}
			section := key[:strings.LastIndex(key, ".")]
			if _, err := r.Run("config", "--local", "--get-regexp", "^"+strings.ReplaceAll(section, ".", `\.`)+`\.`); err != nil {
				_, _ = r.Run("config", "--local", "--remove-section", section) // empty now; older git leaves its head
			}
			return nil
		},
		byHand: "see it with `git config " + key + "`",
	}
}

func attributesFound(file string) (state, error) {
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return notThere, nil
	}
	if err != nil {
		return notThere, err
	}
	if bytes.Contains(text, []byte(markBegin)) {
		return isOurs, nil
	}
	return notThere, nil
}

func addAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	if len(text) > 0 && !bytes.HasSuffix(text, []byte("\n")) {
		text = append(text, '\n')
	}
	text = append(text, markBegin+"\n"+attributeLine+"\n"+markEnd+"\n"...)
	return renameio.WriteFile(file, text, 0o644, renameio.WithExistingPermissions())
}

// dropAttributes takes the marked lines out, and the file if nothing else is in it.
func dropAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	var kept []string
	inside := false
	for line := range strings.Lines(string(text)) {
		switch strings.TrimSpace(line) {
		case markBegin:
			inside = true
			continue
		case markEnd:
			inside = false
			continue
		}
		if !inside {
			kept = append(kept, line)
		}
	}
	if inside {
		return fmt.Errorf("%s has %q without its end: mend it by hand", file, markBegin)
	}
	if len(kept) == 0 {
		return os.Remove(file)
	}
	return renameio.WriteFile(file, []byte(strings.Join(kept, "")), 0o644, renameio.WithExistingPermissions())
}

func hookPath(r *gitrepo.Repo) (string, error) {
	out, err := r.Run("rev-parse", "--git-path", "hooks/pre-commit")
	if err != nil {
		return "", err
	}
	path := filepath.FromSlash(strings.TrimSuffix(out, "\n"))
	if !filepath.IsAbs(path) {
		path = filepath.Join(r.Dir, path)
	}
	return filepath.Abs(path)
}

// hookFound looks at the hook. One kept outside the repository, for all of a
// person's repositories, is somebody else's whatever is in it.
func hookFound(r *gitrepo.Repo, hook string) (state, error) {
	text, err := os.ReadFile(hook)
	switch {
	case err == nil && string(text) == hookText:
		return isOurs, nil
	case err == nil:
		return isOther, nil
	case !os.IsNotExist(err):
		return notThere, err
	}
	if path, err := r.Run("config", "--get", "core.hooksPath"); err == nil && strings.TrimSpace(path) != "" {
		return isOther, nil
	}
	return notThere, nil
}

func writeHook(hook string) error {
	if err := os.MkdirAll(filepath.Dir(hook), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(hook, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o755) // never over one that is there
	if err != nil {
		return err
	}
	_, err = f.WriteString(hookText)
	return errorOf(err, f.Close())
}

func (a *app) showSetup(r *gitrepo.Repo) error {
	parts, err := setupParts(r)
	if err != nil {
		return usage("%v", err)
	}
	missing := 0
	fmt.Fprintf(a.out, "In the repository at %s:\n", r.Top)
	for _, p := range parts {
		found, err := p.found()
		if err != nil {
			return usage("%v", err)
		}
		word := map[state]string{notThere: "to be set", isOurs: "is set", isOther: "something else is there, and stays"}[found]
		if found == notThere {
			missing++
		}
		fmt.Fprintf(a.out, "\n  %s: %s\n    %s\n", p.name, word, p.why)
		for _, l := range p.show {
			fmt.Fprintf(a.out, "      %s\n", l)
		}
		if found == isOther {
			fmt.Fprintf(a.out, "    %s\n", p.byHand)
		}
	}
	fmt.Fprintln(a.out)
	if missing == 0 {
		fmt.Fprintln(a.out, "Nothing is left to set. newmake git-setup --remove takes it back.")
	} else {
		fmt.Fprintln(a.out, "Nothing was changed. newmake git-setup --apply sets it.")
	}
	return nil
}

func (a *app) applySetup(r *gitrepo.Repo) error {
	return a.each(r, notThere, "set", "is set already", func(p part) error { return p.set() })
}

func (a *app) removeSetup(r *gitrepo.Repo) error {
	return a.each(r, isOurs, "taken back", "was not set", func(p part) error { return p.unset() })
}

// each does something with the parts in one state, and says what it did. What is
// somebody else's is left alone.
func (a *app) each(r *gitrepo.Repo, when state, done, not string, do func(part) error) error {
	parts, err := setupParts(r)
	if err != nil {
		return usage("%v", err)
	}
	left := false
	for _, p := range parts {
		found, err := p.found()
		if err != nil {
			return usage("%v", err)
		}
		switch found {
		case when:
			if err := do(p); err != nil {
				return usage("%s: %v", p.name, err)
			}
			a.say("%s: %s", p.name, done)
		case isOther:
			left = true
			fmt.Fprintf(a.err, "%s: something else is there, and was left alone; %s\n", p.name, p.byHand)
		default:
			a.say("%s: %s", p.name, not)
		}
	}
	if left && when == notThere {
		return errSaid
	}
	return nil
}
