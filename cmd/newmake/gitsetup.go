package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"newmake/lang/gitrepo"
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
			open := gitrepo.Open
			if staged { // git calls the hook, and says where its repository and index are
				open = gitrepo.OpenInHook
			}
			repo, err := open(dir)
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
	// toUndo is what a person looks at there when it is taken back.
	toUndo string
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
	wasOpen       = ", the line above had no end"
	wasEmpty      = ", the file was empty"

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

func (a *app) setupParts(r *gitrepo.Repo) ([]part, error) {
	hook, err := r.Hook("pre-commit")
	if err != nil {
		return nil, err
	}
	attributes := filepath.Join(r.Top, ".gitattributes")
	byHand := "it sets other line endings or another driver for *.batch, which ours would override: make that line `" + attributeLine + "`"
	toUndo := "its lines for *.batch are not newmake's own"
	if isLink(attributes) {
		byHand = "it is a link, which git does not read: put a file in its place"
		toUndo = "it is a link, and what it leads to is not newmake's own"
	}
	return []part{
		{
			name: ".gitattributes", why: "LF on every machine, and the driver below for .batch files", show: []string{attributeLine},
			found:  func() (state, error) { return attributesFound(attributes) },
			set:    func() error { return a.addAttributes(attributes) },
			unset:  func() error { return a.dropAttributes(attributes) },
			byHand: byHand,
			toUndo: toUndo,
		},
		configPart(r, "diff.newmake.xfuncname", funcName, "hunk headers name the block; needs no program"),
		configPart(r, "diff.newmake.textconv", textConv, "git diff shows the text as laid out; without newmake, as it is"),
		{
			name: belowTop(r, hook), why: "lays out and checks what is staged, before a commit", show: []string{"newmake git-setup --staged"},
			found:  func() (state, error) { return hookFound(r, hook) },
			set:    func() error { return a.writeHook(hook) },
			unset:  func() error { return os.Remove(hook) },
			byHand: "add to it the line `newmake git-setup --staged || exit 1`",
			toUndo: "if you added the line `newmake git-setup --staged || exit 1`, take it out",
		},
	}, nil
}

func (a *app) showSetup(r *gitrepo.Repo) error {
	parts, err := a.setupParts(r)
	if err != nil {
		return usage("%v", err)
	}
	missing := 0
	a.tellOn(a.out, "In the repository at %s:", r.Top)
	for _, p := range parts {
		found, err := p.found()
		if err != nil {
			return usage("%v", err)
		}
		word := map[state]string{notThere: "to be set", isOurs: "is set", isOther: "something else is there, and stays"}[found]
		if found == notThere {
			missing++
		}
		a.tellOn(a.out, "\n  %s: %s\n    %s", p.name, word, p.why)
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
	parts, err := a.setupParts(r)
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
				return usage("%s: %v", p.name, reason(err))
			}
			a.say("%s: %s", p.name, done)
		case isOther:
			left = true
			advice := p.byHand
			if when == isOurs {
				advice = p.toUndo
			}
			a.tell("%s: something else is there, and was left alone; %s", p.name, advice)
		default:
			a.say("%s: %s", p.name, not)
		}
	}
	if left && when == notThere {
		return errSaid
	}
	return nil
}
