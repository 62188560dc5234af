package main

import (
	"embed"

	"github.com/spf13/cobra"
)

// schemas are the published JSON Schemas (draft 2020-12) of what commands print as
// JSON, one file a command; that of a plan is plan.Schema. A test makes them from
// the types and holds real answers against them. Names that a schema does not
// know are to be ignored by a reader: a minor version adds some.
//
//go:embed schemas/*.json
var schemas embed.FS

// withSchema gives a command that prints JSON the switch --schema. A command
// without a file among the schemas stays as it is.
func withSchema(a *app, cmd *cobra.Command) *cobra.Command {
	schema, err := schemas.ReadFile("schemas/" + cmd.Name() + ".json")
	if err != nil {
		return cmd
	}
	asked := cmd.Flags().Bool("schema", false, "print the JSON schema of what --format json gives")
	if args := cmd.Args; args != nil {
		cmd.Args = func(cmd *cobra.Command, given []string) error {
			if *asked {
				return nil
			}
			return args(cmd, given)
		}
	}
	run := cmd.RunE
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		if *asked {
			return a.write("", schema, nil)
		}
		return run(cmd, args)
	}
	return cmd
}
