package main

import (
	"bytes"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/gitsetup"
	"newmake/lang/gitrepo"
	"newmake/lang/wholefile"
)

func gitSetupCommand(a *app) *cobra.Command {
	var apply, remove, staged, bills bool
	cmd := &cobra.Command{
		Use:   "git-setup [FOLDER]",
		Short: "Teach a git repository about recipes",
		Long: "git-setup shows what it would set in a repository; --apply sets it, and --remove takes it\n" +
			"back. It sets\n\n" +
			"  line endings   *.batch files have LF on every machine\n" +
			"  hunk headers   git diff names the block that a change is in; this needs no newmake\n" +
			"  a diff driver  git diff shows texts as laid out, so that a change of layout alone shows\n" +
			"                 nothing; without newmake on the path it shows them as they are\n" +
			"  a merge driver two changes of one bill are merged if its shares still come to 100 %;\n" +
			"                 else it is a conflict as usual; without newmake on the path git merges alone\n" +
			"  hooks          before a commit or a merge, the .batch files in it are laid out and checked\n\n" +
			"Nothing that is there already is written over. The attributes belong in the repository, so\n" +
			"commit .gitattributes; the rest is this clone's own.",
		Example: "  newmake git-setup\n" +
			"  newmake git-setup --apply\n" +
			"  newmake git-setup --remove",
		Args: func(cmd *cobra.Command, args []string) error {
			if bills {
				return cobra.ExactArgs(3)(cmd, args)
			}
			return cobra.MaximumNArgs(1)(cmd, args)
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if bills {
				return mergeBills(a, args)
			}
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
			setup := &gitsetup.Setup{Repo: repo, Disk: a.disk}
			switch {
			case staged:
				return layOutStaged(a, repo)
			case apply && remove:
				return usage("--apply sets and --remove takes back: give one of them")
			case apply:
				return applySetup(a, setup)
			case remove:
				return removeSetup(a, setup)
			}
			return showSetup(a, setup)
		},
	}
	cmd.Flags().BoolVar(&apply, "apply", false, "set it")
	cmd.Flags().BoolVar(&remove, "remove", false, "take it back")
	cmd.Flags().BoolVar(&staged, "staged", false, "lay out and check what is staged: what the hook calls")
	cmd.Flags().BoolVar(&bills, "bills", false, "ready BASE OURS THEIRS for git's merge: what the merge driver calls")
	_ = cmd.Flags().MarkHidden("staged")
	_ = cmd.Flags().MarkHidden("bills")
	return cmd
}

// mergeBills readies the three texts that git has laid out for a merge: base, ours and
// theirs. It changes all of them or, where nothing is to be merged, none.
func mergeBills(a *app, names []string) error {
	var texts [3][]byte
	for i, name := range names {
		var err error
		if texts[i], err = os.ReadFile(name); err != nil {
			return usage("%s: %v", name, wholefile.Reason(err))
		}
	}
	base, ours, theirs := gitsetup.MergeBills(texts[0], texts[1], texts[2])
	for i, text := range [...][]byte{base, ours, theirs} {
		if bytes.Equal(text, texts[i]) {
			continue
		}
		if _, err := a.disk.Replace(names[i], texts[i], text); err != nil {
			return usage("%s: %v", names[i], wholefile.Reason(err))
		}
	}
	return nil
}

func showSetup(a *app, s *gitsetup.Setup) error {
	parts, err := s.Parts()
	if err != nil {
		return usage("%v", err)
	}
	missing := 0
	a.tellOn(a.out, "In the repository at %s:", s.Repo.Top)
	for _, p := range parts {
		found, err := p.Found()
		if err != nil {
			return usage("%v", err)
		}
		word := map[gitsetup.State]string{gitsetup.NotThere: "to be set", gitsetup.IsOurs: "is set", gitsetup.IsOther: "something else is there, and stays"}[found]
		if found == gitsetup.NotThere {
			missing++
		}
		a.tellOn(a.out, "\n  %s: %s\n    %s", p.Name, word, p.Why)
		for _, l := range p.Show {
			fmt.Fprintf(a.out, "      %s\n", l)
		}
		if found == gitsetup.IsOther {
			fmt.Fprintf(a.out, "    %s\n", p.ByHand)
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

func applySetup(a *app, s *gitsetup.Setup) error {
	return eachPart(a, s, gitsetup.NotThere, "set", "is set already", func(p gitsetup.Part) error { return p.Set() })
}

func removeSetup(a *app, s *gitsetup.Setup) error {
	return eachPart(a, s, gitsetup.IsOurs, "taken back", "was not set", func(p gitsetup.Part) error { return p.Unset() })
}

// eachPart does something with the parts in one state, and says what it did. What is
// somebody else's is left alone.
func eachPart(a *app, s *gitsetup.Setup, when gitsetup.State, done, not string, do func(gitsetup.Part) error) error {
	parts, err := s.Parts()
	if err != nil {
		return usage("%v", err)
	}
	left := false
	for _, p := range parts {
		found, err := p.Found()
		if err != nil {
			return usage("%v", err)
		}
		switch found {
		case when:
			if err := uninterrupted(func() error { return do(p) }); err != nil {
				return usage("%s: %v", p.Name, wholefile.Reason(err))
			}
			a.say("%s: %s", p.Name, done)
		case gitsetup.IsOther:
			left = true
			advice := p.ByHand
			if when == gitsetup.IsOurs {
				advice = p.ToUndo
			}
			a.tell("%s: something else is there, and was left alone; %s", p.Name, advice)
		default:
			a.say("%s: %s", p.Name, not)
		}
	}
	if left && when == gitsetup.NotThere {
		return errSaid
	}
	return nil
}
