package main

import (
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/ask/why"
	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/gitrepo"
	"newmake/lang/words"
)

// completeFiles offers batch files and folders.
func completeFiles(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	return []cobra.Completion{"batch"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeBatches offers the batches of the house around the working directory
// by the names that a shell takes without quotes, and batch files. Where there is
// no house it offers files alone.
func completeBatches(_ *cobra.Command, args []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	src, err := front.Load(front.Place{Path: "."})
	if err != nil || strings.ContainsRune(begun, filepath.Separator) || strings.HasPrefix(begun, ".") {
		return []cobra.Completion{"batch"}, cobra.ShellCompDirectiveFilterFileExt
	}
	var out []cobra.Completion
	for _, name := range src.House.Batches() {
		out = append(out, cobra.CompletionWithDesc(front.FileName(name), diag.SafeIn(name, true)))
	}
	for _, f := range src.House.Files {
		if len(src.House.BatchesIn(f.Source.Name)) > 0 {
			out = append(out, f.Source.Name)
		}
	}
	return out, cobra.ShellCompDirectiveDefault
}

// completeWhy offers batches, and then the numbers that may be asked for.
func completeWhy(cmd *cobra.Command, args []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return completeBatches(cmd, args, begun)
	}
	if len(args) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return why.Names(), cobra.ShellCompDirectiveNoFileComp
}

// completeSides offers batches, files, and the branches and tags of the repository.
func completeSides(cmd *cobra.Command, args []string, begun string) ([]cobra.Completion, cobra.ShellCompDirective) {
	out, how := completeBatches(cmd, nil, begun)
	if how == cobra.ShellCompDirectiveFilterFileExt || len(args) > 1 {
		return out, how
	}
	if repo, err := gitrepo.Open("."); err == nil {
		if names, err := repo.Names(); err == nil {
			out = append(append(out, "HEAD", "HEAD~1"), names...)
		}
	}
	return out, how
}

// tryNames are the values of the batch on the command line, ready for the one that
// is tried.
func tryNames(args []string) []cobra.Completion {
	if len(args) == 0 {
		return nil
	}
	path, name := find(strings.Join(args, " "))
	src, err := front.Load(front.Place{Path: path})
	if err != nil {
		return nil
	}
	if name, _, err = src.Choose(name); err != nil {
		return nil
	}
	b, _ := src.House.Batch(name)
	if b == nil {
		return nil
	}
	var out []cobra.Completion
	for _, p := range edit.Paths(src.House, b) {
		out = append(out, p+"=")
	}
	return out
}

// batchNames are the batches of the file or house that the command line names.
func batchNames(args []string) []cobra.Completion {
	path := "."
	if len(args) > 0 {
		path, _ = find(args[0])
	}
	src, err := front.Load(front.Place{Path: path})
	if err != nil {
		return nil
	}
	return src.House.BatchesIn(path)
}

// oneOf gives the completions of a flag that takes one of a few words.
func oneOf(all ...string) func([]string) []cobra.Completion {
	return func([]string) []cobra.Completion { return all }
}

// formatFlag is --format of a command that writes its answer in one of some forms,
// the first of which is for standard output. If there is a flag -o, its ending says
// the form too.
func formatFlag(cmd *cobra.Command, to *string, names []string) {
	left := " (default: " + names[0]
	if cmd.Flags().Lookup("output") != nil {
		left += ", or by the ending of -o"
	}
	cmd.Flags().StringVar(to, "format", "", words.Or(names)+left+")")
	completeFlag(cmd, "format", oneOf(names...))
}

// completeFlag offers values for a flag.
func completeFlag(cmd *cobra.Command, flag string, values func(args []string) []cobra.Completion) {
	err := cmd.RegisterFlagCompletionFunc(flag, func(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
		how := cobra.ShellCompDirectiveNoFileComp
		all := values(args)
		if len(all) > 0 && strings.HasSuffix(all[0], "=") {
			how |= cobra.ShellCompDirectiveNoSpace // the value follows
		}
		return all, how
	})
	if err != nil {
		panic(err) // there is no such flag: a fault of the program, found by its first test
	}
}
