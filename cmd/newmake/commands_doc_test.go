package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

const commandsFile = "COMMANDS.md"

// exitCodes are what a script may rely on.
var exitCodes = []struct {
	code int
	what string
}{
	{exitOK, "done; nothing to report"},
	{exitError, "the text has errors, or the thing asked for isn't so: a promise that is not kept, `fmt --check` with something to lay out, `diff --exit-code` with a difference"},
	{exitUsage, "wrong use, a file that cannot be read or written"},
	{exitFault, "a fault in newmake: please report it with the file that it names"},
	{exitInterrupt, "Ctrl-C; no half file is left"},
}

// TestCommandsDocument keeps COMMANDS.md what the program says of itself.
func TestCommandsDocument(t *testing.T) {
	text := commandsDocument()
	if testflag.Update() {
		require.NoError(t, os.WriteFile(commandsFile, []byte(text), 0o644))
		return
	}
	was, err := os.ReadFile(commandsFile)
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(string(was), text), "the commands have changed: go test ./cmd/newmake -update writes it anew")
}

func commandsDocument() string {
	var b strings.Builder
	b.WriteString("# The commands\n\nMade from the program's own help by `go test ./cmd/newmake -update`; `newmake help COMMAND` prints the same.\n\n")
	top := root(&app{env: func(string) string { return "" }})
	all := shownCommands(top)
	b.WriteString("| command | |\n|---|---|\n")
	for _, c := range all {
		fmt.Fprintf(&b, "| [`%s`](#newmake-%s) | %s |\n", c.Name(), c.Name(), cell(c.Short))
	}
	b.WriteString("\nResults go to standard output, messages to standard error. A file named by `-o` is\nreplaced whole or not at all, and an input is never written over.\n\n## Exit codes\n\n| code | |\n|---|---|\n")
	for _, e := range exitCodes {
		fmt.Fprintf(&b, "| %d | %s |\n", e.code, e.what)
	}
	b.WriteString("\n## Flags of every command\n\n")
	flags(&b, top.PersistentFlags())
	for _, c := range all {
		fmt.Fprintf(&b, "## newmake %s\n\n%s.\n\n```text\nnewmake %s\n```\n\n%s\n\n", c.Name(), strings.TrimSuffix(c.Short, "."), c.Use, prose(c.Long))
		if c.Example != "" {
			fmt.Fprintf(&b, "```text\n%s\n```\n\n", regexp.MustCompile(`(?m)^  `).ReplaceAllString(c.Example, ""))
		}
		flags(&b, c.NonInheritedFlags())
		if c.Flags().Lookup("schema") != nil {
			fmt.Fprintf(&b, "The JSON has a published schema: `newmake %s --schema`.\n\n", c.Name())
		}
	}
	return strings.TrimRight(b.String(), "\n") + "\n"
}

func shownCommands(top *cobra.Command) []*cobra.Command {
	var out []*cobra.Command
	for _, c := range top.Commands() {
		if !c.Hidden && c.Name() != "help" && c.Name() != "completion" {
			out = append(out, c)
		}
	}
	return out
}

func flags(b *strings.Builder, set *pflag.FlagSet) {
	head := "| flag | |\n|---|---|\n"
	set.VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Name == "help" {
			return
		}
		kind, use := pflag.UnquoteUsage(f)
		name := "`--" + f.Name
		if kind != "" {
			name += " " + strings.ToUpper(kind)
		}
		name += "`"
		if f.Shorthand != "" {
			name = "`-" + f.Shorthand + "` " + name
		}
		b.WriteString(head)
		head = ""
		fmt.Fprintf(b, "| %s | %s |\n", name, cell(use))
	})
	if head == "" {
		b.WriteString("\n")
	}
}

// cell is a text in a cell of a table.
func cell(text string) string {
	return strings.NewReplacer("|", `\|`, "\n", " ", "*", `\*`, "<", `\<`).Replace(text)
}

// prose is a help text as Markdown: its indented lists stand as they are typed.
func prose(text string) string {
	var out []string
	for part := range strings.SplitSeq(text, "\n\n") {
		lines := strings.Split(part, "\n")
		listed := -1
		for i, l := range lines {
			if strings.HasPrefix(l, "  ") && listed < 0 {
				listed = i
			}
		}
		switch {
		case listed < 0:
			out = append(out, strings.NewReplacer("*", `\*`, "<", `\<`).Replace(part))
		default:
			if listed > 0 {
				out = append(out, strings.Join(lines[:listed], "\n"))
			}
			out = append(out, "```text\n"+strings.Join(lines[listed:], "\n")+"\n```")
		}
	}
	return strings.Join(out, "\n\n")
}

// TestPullRequestDocument: the lines that CI.md shows are those that a script runs.
func TestPullRequestDocument(t *testing.T) {
	script, err := os.ReadFile("../../testdata/script/pull-request.txtar")
	require.NoError(t, err)
	_, want, found := strings.Cut(string(script), "-- pull-request.sh --\n")
	require.True(t, found)
	shown := 0
	for _, b := range blocks(t, "CI.md") {
		if b.language == "sh" {
			require.Equal(t, want, b.text)
			shown++
		}
	}
	require.Equal(t, 1, shown)
}
