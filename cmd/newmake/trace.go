package main

import (
	"bytes"

	"github.com/spf13/cobra"

	"newmake/compile/book/identity"
	"newmake/compile/book/ledger"
	"newmake/compile/book/trace"
	"newmake/compile/show/formats"
	"newmake/compile/show/traced"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/spelling"
	"newmake/lang/wording"
	"newmake/lang/words"
)

func traceCommand(a *app) *cobra.Command {
	var f booksFlags
	cmd := &cobra.Command{
		Use:   "trace NAME",
		Short: "From a bottle's lot to the grain's, and back",
		Long: "trace follows a bottling, vat, cask, tank, run, batch, lot or supplier both ways: what it is\n" +
			"made of, down to the lots of grain, who sold them and their certificates; and what was made\n" +
			"of it, up to the bottles. Where nothing is written that would lead on, it says so, and with\n" +
			"which line it would be mended. It follows what is written, and not how much: whatever went\n" +
			"into something is in it, and of a tank all counts that had gone in before. Of a vat or a\n" +
			"bottling it says how long the youngest spirit in it was in wood, which standards of\n" +
			"identity it meets and what keeps it from another. Where bottles went stands in the\n" +
			"bottling itself (`withdrawn`).",
		Example: "  newmake trace 30D16\n" +
			"  newmake trace C-118\n" +
			"  newmake trace LH-0012 --format json",
		Args: cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usage("trace needs a name: of a bottling, vat, cask, tank, run, batch, lot or supplier, as in `newmake trace 30D16`")
			}
			return traceName(a, f, args[0])
		},
	}
	f.declare(cmd, formats.OfAnswer)
	return cmd
}

// traceName prints the trace of the thing of a name.
func traceName(a *app, f booksFlags, name string) error {
	format, err := formats.OfAnswer.Choose(f.format, f.output)
	if err != nil {
		return err
	}
	b, err := f.read(a, format)
	if err != nil {
		return err
	}
	made := b.House.BatchOfBooks(b.texts)
	t, names := trace.Of(b.texts, name, made != nil && made.Gauge == recipe.SI)
	if t == nil {
		return a.noAnswer(diag.List{untraced(name, names)}, format)
	}
	is := &identity.Traced{Trace: t, Is: identity.Of(identity.HouseOf(b.House, b.texts, ledger.Amounts(b.House, b.texts)), t.Asked)}
	var out bytes.Buffer
	if format == "json" {
		err = diag.EncodeJSON(&out, "", is)
	} else {
		err = traced.Text(&out, is, a.bold(f.output))
	}
	if err != nil {
		return err
	}
	return f.answer(a, b, format, out.Bytes())
}

// manyNames is from how many on they are not all listed.
const manyNames = 12

// untraced says that there is nothing of a name.
func untraced(name string, names []string) diag.Diagnostic {
	d := diag.Diagnostic{Code: diag.CodeUnknownName, Summary: "nothing that can be traced is called " + wording.Quoted([]string{name})[0]}
	near := spelling.Nearest(name, names)
	switch {
	case near != "":
		d.Help = "did you mean `" + near + "`?"
	case len(names) == 0:
		d.Help = "the house has no runs, stores, casks, vats or bottlings yet: `newmake record` opens a run"
	case len(names) > manyNames:
		d.Help = "write the name of a bottling, vat, cask, tank, run, batch, lot or supplier, such as " + words.And(wording.Quoted(names[:3]))
	default:
		d.Help = "the house has " + words.And(wording.Quoted(names))
	}
	return d
}
