package main

import (
	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/lsp"
	"newmake/lang/version"
)

func lspCommand(a *app) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "lsp",
		Short: "Speak with an editor: mistakes, words and predictions as you type",
		Long: "lsp is a language server: an editor starts it and speaks with it over standard input and\n" +
			"output (Language Server Protocol 3.17). It says what is wrong in every file of the house as\n" +
			"it is typed, what a word or a value means, and what may be written at a place; it leads to\n" +
			"where a name is declared and used, renames it, lays the text out, puts in fixes, and shows\n" +
			"beside the lines what the batch is predicted to give, and above it what has changed since\n" +
			"the last commit. It changes no file of the house: the editor does.",
		Example: "  newmake lsp",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			if a.inTerminal {
				a.say("this waits for an editor to speak with; Ctrl-C ends it")
			}
			code := lsp.Serve(a.in, a.out, lsp.Options{
				Version: version.Of(), NoLearned: a.noLearned, Fault: func(what any) { a.fault(what) },
			})
			if code != 0 {
				return &exit{code: code}
			}
			return nil
		},
	}
	cmd.Flags().Bool("stdio", true, "over standard input and output, which is the only way")
	return cmd
}
