package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/library"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

func libraryCommand(a *app) *cobra.Command {
	var format, at, system string
	cmd := &cobra.Command{
		Use:   "library [KIND] [SEARCH...]",
		Short: "Show the library: grains, yeasts, enzymes, woods, standards, models",
		Long: "library lists what a batch may use, and shows the figures of an entry with the source of each.\n" +
			"The kinds are " + strings.Join(house.LibraryKinds(), ", ") + ". Words after the\n" +
			"kind are looked for in names, comments, lines and sources; an entry of just that name is\n" +
			"shown. Inside a house its own entries are in the list, marked, with what they change, and\n" +
			"figures are in the units of its plant; outside one they are as they were written. A proof\n" +
			"stays one, for it is measured at 60 F and a % abv at 20 C.",
		Example: "  newmake library\n" +
			"  newmake library grain\n" +
			"  newmake library grain oats\n" +
			"  newmake library corn\n" +
			"  newmake library standard 80 proof\n" +
			"  newmake library wood --units si\n" +
			"  newmake library enzyme --format json",
		ValidArgsFunction: completeLibrary,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "" && format != "text" && format != "json" {
				return usage("there is no format %q: write text or json", format)
			}
			return runLibrary(a, args, at, format, system)
		},
	}
	formatFlag(cmd, &format, formats.OfAnswer.Names())
	cmd.Flags().StringVar(&at, "house", ".", "a file or folder of the house whose library is shown")
	cmd.Flags().StringVar(&system, "units", "", "us or si (default: the house's; of JSON as written)")
	completeFlag(cmd, "units", oneOf("us", "si"))
	return cmd
}

// readerOf is the system in which whoever asks counts: as they say, or else as the house
// does. JSON is for programs, which reckon with what is written.
func readerOf(h *house.House, system, format string) (quantity.System, error) {
	asked, err := units(system)
	switch {
	case err != nil:
		return quantity.Both, err
	case asked != nil && *asked == recipe.SI:
		return quantity.SI, nil
	case asked != nil:
		return quantity.US, nil
	case format == "json":
		return quantity.Both, nil
	}
	return h.Units(), nil
}

func runLibrary(a *app, args []string, at, format, system string) error {
	h, root, err := libraryOf(at)
	if err != nil {
		return a.cannot(err, "text")
	}
	in, err := readerOf(h, system, format)
	if err != nil {
		return err
	}
	all := h.LibraryItems(in)
	answer := library.Search(all, root, args)
	if format == "json" {
		if err := a.writeJSON(answer.Document()); err != nil {
			return err
		}
	}
	if len(answer.Found) == 0 {
		if format != "json" {
			a.say("%s\n`%s` lists them all.", nothingFound(answer), strings.TrimSpace("newmake library "+answer.Kind))
		}
		return errSaid
	}
	if format == "json" {
		return nil
	}
	return a.write("", []byte(answer.Text(a.plain())), nil)
}

// nothingFound says that a search found nothing, and what is like it.
func nothingFound(a *library.Answer) string {
	what := "library"
	if a.Kind != "" {
		what = a.Kind + "s"
	}
	message := fmt.Sprintf("nothing in the %s is about %q", what, strings.Join(a.Words, " "))
	if a.Near != "" {
		message += "; did you mean `" + a.Near + "`?"
	}
	return message
}

// libraryOf is the library of the house around a path, with the house's folder. Where
// there is no house around the working directory it is the built-in one.
func libraryOf(path string) (*house.House, string, error) {
	src, err := front.Load(front.Place{Path: path})
	if _, ok := err.(diag.List); ok && path == "." {
		return check.Builtin().House, "", nil
	}
	if err != nil {
		return nil, "", err
	}
	return src.House.House, src.House.Root, nil
}

// unitsHere is the system of the house in whose folder one stands; Both in no house.
func unitsHere() quantity.System {
	h, _, err := libraryOf(".")
	if err != nil {
		return quantity.Both
	}
	return h.Units()
}

// completeLibrary offers kinds first, then the names of that kind.
func completeLibrary(_ *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
	h, _, err := libraryOf(".")
	if err != nil || len(args) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	var out []cobra.Completion
	kind := ""
	if len(args) == 0 {
		out = slices.Clone(house.LibraryKinds())
	} else if kind = library.KindOf(args[0]); kind == "" {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	for _, i := range h.LibraryItems(quantity.Both) {
		if kind == "" || i.Kind == kind {
			out = append(out, cobra.CompletionWithDesc(i.Name, i.Kind))
		}
	}
	return out, cobra.ShellCompDirectiveNoFileComp
}
