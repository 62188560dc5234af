package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/show/formats"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/explain"
)

func explainCommand(a *app) *cobra.Command {
	var format, at, system string
	var all bool
	cmd := &cobra.Command{
		Use:   "explain [CODE | WORD]",
		Short: "Say what a code, a word of the language, a unit or a term means",
		Long: "explain shows the page of a diagnostic's code: what it means, why it matters at the\n" +
			"still, a wrong and a right example. It also knows every word of the language, every\n" +
			"unit, and the terms of the trade. The first digits of a code list its family; without\n" +
			"a word it says what there is to ask for, and --all lists it. In a house that counts in\n" +
			"litres the examples are in litres.",
		Example: "  newmake explain NM0303\n" +
			"  newmake explain hearts\n" +
			"  newmake explain proof gallon\n" +
			"  newmake explain NM06\n" +
			"  newmake explain hearts --units si",
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			word := strings.Join(args, " ")
			if all && word != "" {
				return usage("--all lists every page, and goes without a word: newmake explain --all, or newmake explain %s", word)
			}
			h, _, err := libraryOf(at)
			switch {
			case err != nil && at == ".": // a page is shown wherever it is asked for
				h = check.Builtin().House
			case err != nil:
				return a.cannot(err, "text")
			}
			reader, err := readerOf(h, system, format)
			if err != nil {
				return err
			}
			answer := explain.Ask(word, reader)
			if all {
				answer = explain.Everything()
			}
			return runExplain(a, answer, format)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return explain.Names(), cobra.ShellCompDirectiveNoFileComp
		},
	}
	cmd.Flags().BoolVar(&all, "all", false, "list all pages")
	formatFlag(cmd, &format, formats.OfAnswer.Names())
	cmd.Flags().StringVar(&at, "house", ".", "a file or folder of the house whose units the examples are in")
	cmd.Flags().StringVar(&system, "units", "", "us or si (default: the house's; of JSON as written)")
	completeFlag(cmd, "units", oneOf("us", "si"))
	return cmd
}

func runExplain(a *app, answer explain.Answer, format string) error {
	if format == "json" {
		if err := a.writeJSON(answer.Document()); err != nil {
			return err
		}
	} else {
		text := answer.Text()
		if a.plain() {
			text = ascii(text)
		}
		if err := a.write("", []byte(text), nil); err != nil {
			return err
		}
	}
	if len(answer.Pages) > 0 {
		return nil
	}
	if format != "json" {
		a.say("%s\n`newmake explain --all` lists all pages.", noPage(answer.Word, answer.Near))
	}
	return errSaid
}

// ascii writes a text for a terminal that knows no other characters.
func ascii(text string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = diag.SafeIn(line, true)
	}
	return strings.Join(lines, "\n")
}

// noPage says that a word has no page, and which are like it.
func noPage(word string, near []string) string {
	message := fmt.Sprintf("there is no page on %q", word)
	if len(near) > 0 {
		message += "; did you mean `" + strings.Join(near, "` or `") + "`?"
	}
	return message
}
