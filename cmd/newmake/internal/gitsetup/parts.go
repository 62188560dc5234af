// Package gitsetup teaches a git repository about recipes: line endings, hunk
// headers, a diff driver, a merge driver and hooks. Nothing that is there already is written
// over, and what was set can be taken back.
package gitsetup

import (
	"os"
	"path/filepath"

	"newmake/lang/gitrepo"
	"newmake/lang/wholefile"
)

// Setup is of one repository.
type Setup struct {
	Repo *gitrepo.Repo
	Disk wholefile.Disk
}

// Part is one thing that is set.
type Part struct {
	Name string // where: .gitattributes, a key of git's config, the hook
	Why  string
	// Found is what is there.
	Found func() (State, error)
	Set   func() error
	Unset func() error
	Show  []string // what is set, line by line
	// ByHand is what a person does where something else is in the way.
	ByHand string
	// ToUndo is what a person looks at there when it is taken back.
	ToUndo string
}

// State is what is there of a part.
type State int

const (
	NotThere State = iota
	IsOurs
	IsOther
)

// Attributes and config. The patterns are POSIX extended regular expressions.
const (
	attributeLine = "*.batch text eol=lf diff=newmake merge=newmake linguist-language=newmake"
	markBegin     = "# newmake: begin"
	markEnd       = "# newmake: end"
	wasOpen       = ", the line above had no end"
	wasEmpty      = ", the file was empty"

	// A line that opens a block: its words go into the hunk header.
	funcName = `^[ \t]*([a-z][a-z-]*([ \t].*)?)\{`
	// The text as laid out; as it is, where newmake is not there. One with errors newmake
	// gives as it is, and ends with 1.
	textConv = `f() { newmake fmt - <"$1" 2>/dev/null; [ $? -le 1 ] || cat "$1"; }; f`
	// Bills are merged first where newmake is there, and all else as git does.
	mergeDriver = `f() { command -v newmake >/dev/null 2>&1 && newmake git-setup --bills "$1" "$2" "$3"; ` +
		`git merge-file -q --marker-size="$4" -L ours -L base -L theirs "$2" "$1" "$3"; }; f %O %A %B %L`
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

// Parts are all that is set in a repository, in order.
func (s *Setup) Parts() ([]Part, error) {
	attributes := filepath.Join(s.Repo.Top, ".gitattributes")
	byHand := "it sets other line endings or another driver for *.batch, which ours would override: make that line `" + attributeLine + "`"
	toUndo := "its lines for *.batch are not newmake's own"
	if isLink(attributes) {
		byHand = "it is a link, which git does not read: put a file in its place"
		toUndo = "it is a link, and what it leads to is not newmake's own"
	}
	parts := []Part{
		{
			Name: ".gitattributes", Why: "LF on every machine, and the driver below for .batch files", Show: []string{attributeLine},
			Found:  func() (State, error) { return attributesFound(attributes) },
			Set:    func() error { return s.addAttributes(attributes) },
			Unset:  func() error { return s.dropAttributes(attributes) },
			ByHand: byHand,
			ToUndo: toUndo,
		},
		configPart(s.Repo, "diff.newmake.xfuncname", funcName, "hunk headers name the block; needs no program"),
		configPart(s.Repo, "diff.newmake.textconv", textConv, "git diff shows the text as laid out; without newmake, as it is"),
		configPart(s.Repo, "merge.newmake.driver", mergeDriver, "shares of a bill that two people changed are merged if they still come to 100 %, else a conflict as usual"),
	}
	for _, h := range hooks {
		hook, err := s.Repo.Hook(h.name)
		if err != nil {
			return nil, err
		}
		parts = append(parts, Part{
			Name: belowTop(s.Repo, hook), Why: h.why, Show: []string{"newmake git-setup --staged"},
			Found:  func() (State, error) { return hookFound(s.Repo, hook) },
			Set:    func() error { return s.writeHook(hook) },
			Unset:  func() error { return os.Remove(hook) },
			ByHand: "add to it the line `newmake git-setup --staged || exit 1`",
			ToUndo: "if you added the line `newmake git-setup --staged || exit 1`, take it out",
		})
	}
	return parts, nil
}

// hooks are git's, each before what it would make is made. A merge that needs no hand
// runs the second alone.
var hooks = []struct{ name, why string }{
	{"pre-commit", "lays out and checks what is staged, before a commit"},
	{"pre-merge-commit", "the same for what a merge brings, before it is committed"},
}
