package main

import (
	_ "embed"
	"fmt"
	"runtime"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/licences"
	"newmake/lang/version"
)

// versionLine names the program and its version.
func versionLine() string {
	return fmt.Sprintf("newmake %s: a compiler of whiskey recipes, %s, %s/%s", version.Of(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
}

// ownLicence is about newmake's own licence, which is for its owner to choose.
const ownLicence = "The licence of newmake itself is for its owner to state; none is stated here.\n" +
	"What is linked into it is listed below, with the text of every licence.\n\n"

// changes is what changed for users. It is kept by hand.
//
//go:embed changes.txt
var changes string

func versionCommand(a *app) *cobra.Command {
	var changesToo, licencesToo bool
	cmd := &cobra.Command{
		Use:   "version",
		Short: "Say which version this is, what changed, and under which licences its parts are",
		Long: "version says which version of newmake this is. --changes tells what changed for those who\n" +
			"use it. --licences lists every module that is linked into it and gives the text of each\n" +
			"licence. The licence of newmake itself is its owner's to state.",
		Example: "  newmake version\n  newmake version --changes\n  newmake version --licences",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			text := versionLine() + "\n"
			if changesToo {
				text += "\n" + changes
			}
			if licencesToo {
				text += "\n" + ownLicence + licences.Linked
			}
			return a.write("", []byte(text), nil)
		},
	}
	cmd.Flags().BoolVar(&changesToo, "changes", false, "tell what changed for users")
	cmd.Flags().BoolVar(&licencesToo, "licences", false, "list what is linked in, with its licences")
	cmd.Flags().BoolVar(&licencesToo, "licenses", false, "the same, spelled the other way")
	cobra.CheckErr(cmd.Flags().MarkHidden("licenses"))
	return cmd
}
