package main

import (
	"github.com/spf13/cobra"
)

// completeFiles offers batch files and folders.
func completeFiles(*cobra.Command, []string, string) ([]cobra.Completion, cobra.ShellCompDirective) {
	return []cobra.Completion{"batch"}, cobra.ShellCompDirectiveFilterFileExt
}
