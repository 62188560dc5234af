package main

import "github.com/spf13/cobra"

func panicking() *cobra.Command {
	return &cobra.Command{Use: "panic", RunE: func(*cobra.Command, []string) error {
		var nothing []string
		_ = nothing[3]
		return nil
	}}
}
