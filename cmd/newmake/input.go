package main

import (
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/lang"
	"newmake/lang/recipe"
)

// standardInput is how a person names it.
const standardInput = "-"

// ending is that of the files that a house reads.
const ending = front.Ending

// place is what a path on the command line stands for. stdin is the file that
// standard input stands for, if it is that.
func (a *app) place(path, stdin string) (front.Place, error) {
	if path != standardInput {
		return front.Place{Path: path, NoLearned: a.noLearned}, nil
	}
	name, text, err := a.standardText(stdin)
	return front.Place{Path: name, Overlay: map[string][]byte{name: text}, NoLearned: a.noLearned}, err
}

// standardText reads standard input, as the file that it stands for.
func (a *app) standardText(stdin string) (name string, text []byte, err error) {
	if a.inTerminal {
		return "", nil, usage("standard input is a terminal: give a file, or pipe a batch in")
	}
	text, err = io.ReadAll(io.LimitReader(a.in, lang.MaxFileBytes+1)) // one more than a file may have, and it is refused
	if err != nil {
		return "", nil, usage("cannot read standard input: %v", err)
	}
	if stdin == "" {
		stdin = front.Unnamed
	}
	return stdin, text, nil
}

// load reads the house of a path.
func (a *app) load(path, stdin string) (*front.Source, error) {
	p, err := a.place(path, stdin)
	if err != nil {
		return nil, err
	}
	return front.Load(p)
}

// open finds what an argument means, and reads its house. The batch is the one
// that is asked for by name, or the one that the argument names, or "".
func (a *app) open(arg, asked, stdin string) (*front.Source, string, error) {
	path, batch := find(arg)
	if asked != "" {
		batch = asked
	}
	src, err := a.load(path, stdin)
	return src, batch, err
}

// find turns an argument into a path, or into a batch of the house around the
// working directory.
func find(arg string) (path, batch string) {
	if arg == "" {
		return ".", ""
	}
	if arg == standardInput {
		return arg, ""
	}
	if _, err := os.Stat(arg); err == nil || strings.HasSuffix(arg, ending) || strings.ContainsRune(arg, filepath.Separator) {
		return arg, ""
	}
	return ".", arg
}

// oneBatch makes one argument of those that say what to compute: a name of several
// words may come without its quotes. Of files there is one.
func oneBatch(command string, args []string) (string, error) {
	whole := strings.Join(args, " ")
	if len(args) < 2 {
		return whole, nil
	}
	for i, arg := range args {
		path, batch := find(arg)
		if batch != "" {
			continue
		}
		if others := slices.Delete(slices.Clone(args), i, i+1); isBatch(others) {
			if others[0][0] >= '0' && others[0][0] <= '9' {
				return "", usage("%q is neither a file nor a batch: words that belong to a flag want quotes, as in --grain \"corn 700 lb\"", strings.Join(others, " "))
			}
			return "", usage("%s takes a file or the name of a batch: write newmake %s %s --batch %q", command, command, path, strings.Join(others, " "))
		}
		return "", usage("%s takes one batch, not %s: write newmake %s %s", command, front.QuoteAll(args), command, arg)
	}
	return whole, nil
}

// firstBatch parts the file or batch that arguments begin with from what follows. The
// name of a batch may come without its quotes: of several that fit it is the longest.
func firstBatch(args []string) (batch string, rest []string) {
	if _, name := find(args[0]); name == "" || len(args) == 1 {
		return args[0], args[1:]
	}
	src, err := front.Load(front.Place{Path: "."})
	if err != nil {
		return args[0], args[1:]
	}
	for n := len(args); n > 1; n-- {
		words := strings.Join(args[:n], " ")
		name, _, err := src.Choose(words)
		if err == nil && slices.Contains(src.House.Batches(), name) {
			return name, args[n:]
		}
	}
	return args[0], args[1:]
}

// isBatch reports whether words are the name of a batch, and none of them a file.
func isBatch(words []string) bool {
	return !slices.ContainsFunc(words, func(word string) bool { _, batch := find(word); return batch == "" })
}

// answerFlags are those of every command that answers in the reader's units: how the
// answer is written, where, and in which units.
type answerFlags struct{ format, output, units string }

// declare declares them, with the ways in which the answer can be written, and says
// which units it has unless others are asked for.
func (f *answerFlags) declare(cmd *cobra.Command, ways formats.Ways, own string) {
	cmd.Flags().StringVarP(&f.output, "output", "o", "", "write to this file")
	formatFlag(cmd, &f.format, ways.Names())
	cmd.Flags().StringVar(&f.units, "units", "", "us or si (default: "+own+")")
	completeFlag(cmd, "units", oneOf("us", "si"))
}

// choose gives the format and the units; nil is the batch's own.
func (f answerFlags) choose(ways formats.Ways) (format string, system *recipe.System, err error) {
	if format, err = ways.Choose(f.format, f.output); err != nil {
		return "", nil, err
	}
	system, err = units(f.units)
	return format, system, err
}

// units are those that a flag asks for; nil is the batch's own.
func units(flag string) (*recipe.System, error) {
	system := recipe.US
	switch flag {
	case "":
		return nil, nil
	case "us":
	case "si":
		system = recipe.SI
	default:
		return nil, usage("--units is us or si, not %q", flag)
	}
	return &system, nil
}
