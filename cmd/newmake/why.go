package main

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/compile/ask/why"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/notice"
	"newmake/compile/plan"
	"newmake/compile/show/formats"
	"newmake/compile/show/working"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// whyFlags are what a person asks of an explanation.
type whyFlags struct {
	planFlags
	depth int
}

func whyCommand(a *app) *cobra.Command {
	var f whyFlags
	cmd := &cobra.Command{
		Use:   "why BATCH [VALUE]",
		Short: "How a predicted number came about",
		Long: "why shows how a number of the plan came about: the working with the numbers put in, what\n" +
			"is written about it and on which line, the source of the model and where it holds, and\n" +
			"which inputs move it most. The numbers it came from can be asked in turn; --depth tells\n" +
			"several generations at once. Without VALUE it lists what can be asked.",
		Example: "  newmake why ferry-landing.batch hearts\n" +
			"  newmake why ferry-landing.batch original gravity --depth 3\n" +
			"  newmake why ferry-landing.batch low wines --units si\n" +
			"  newmake why ferry-landing.batch year 4 --batch \"Ferry Landing, more rye\"\n" +
			"  newmake why ferry-landing.batch casks --format json\n" +
			"  newmake why ferry-landing.batch",
		ValidArgsFunction: completeWhy,
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return usage("say which batch, and which number of it: newmake why ferry-landing.batch hearts")
			}
			batch, value := firstBatch(args)
			return f.run(a, batch, strings.Join(value, "-"))
		},
	}
	cmd.Flags().IntVar(&f.depth, "depth", 1, "how many generations of numbers to tell in full, 1 to 9")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch, by name, of a file with several")
	f.declare(cmd, formats.OfAnswer, "the batch's own")
	cmd.Flags().StringVar(&f.stdin, "stdin-filename", "", "the file that standard input stands for")
	completeFlag(cmd, "batch", batchNames)
	return cmd
}

func (f whyFlags) run(a *app, arg, value string) error {
	format, system, err := f.choose(formats.OfAnswer)
	if err != nil {
		return err
	}
	if f.depth < 1 || f.depth > why.MostDepth {
		return usage("--depth is 1 to %d, not %d", why.MostDepth, f.depth)
	}
	noBatch := usage("%q is a number, and not a batch: newmake why BATCH %s", arg, arg)
	src, name, err := a.open(arg, f.batch, f.stdin)
	if _, ok := err.(diag.List); ok && value == "" && why.Known(arg) {
		return noBatch
	}
	if err != nil {
		return a.cannot(err, format)
	}
	b, err := src.Batch(name, system)
	if err != nil {
		return err
	}
	a.notes(b.Notes...)
	if b.Recipe == nil && value == "" && why.Known(arg) && src.Path == "." {
		return noBatch
	}
	if b.Recipe == nil {
		return a.refuse(b.Diags, format)
	}
	memo := new(compile.Memo)
	if _, computed := memo.Compile(b.Recipe); front.Broken(computed) {
		return a.refuse(notice.Together(b.Diags, computed), format)
	}
	q := why.Question{
		Batch: b.Recipe, Value: value, Depth: f.depth, Units: measure.US,
		Compile: func(b *recipe.Batch) *plan.Plan { p, _ := memo.Compile(b); return p },
	}
	if b.Recipe.Units == recipe.SI {
		q.Units = measure.SI
	}
	var out bytes.Buffer
	if value == "" {
		err = whyList(a, &out, q, format, arg)
	} else {
		err = whyValue(a, &out, q, format, arg)
	}
	if err != nil {
		return err
	}
	return a.write(f.output, out.Bytes(), src.Inputs())
}

// whyParts is what can be asked of a batch, as one JSON document.
type whyParts struct {
	Format  string     `json:"format"`
	Version string     `json:"version"`
	Batch   string     `json:"batch"`
	Parts   []why.Part `json:"parts"`
}

func whyList(a *app, out *bytes.Buffer, q why.Question, format, arg string) error {
	parts, err := why.List(q.Batch, q.Compile, q.Units)
	if err != nil {
		return err
	}
	if format == "json" {
		return diag.EncodeJSON(out, "", whyParts{why.Format, why.Version, q.Batch.Name, parts})
	}
	return working.List(out, q.Batch.Name, parts, a.colour(a.outTerminal), "newmake why "+quoted(arg)+" hearts")
}

func whyValue(a *app, out *bytes.Buffer, q why.Question, format, arg string) error {
	answer, err := why.Explain(q)
	var unknown *why.Unknown
	if errors.As(err, &unknown) {
		return usage("%v\n`newmake why %s` lists what can be asked.", err, quoted(arg))
	}
	if err != nil {
		return err
	}
	if format == "json" {
		return diag.EncodeJSON(out, "", answer)
	}
	deeper := ""
	if q.Depth < why.MostDepth && len(answer.Value.From) > 0 {
		deeper = fmt.Sprintf("newmake why %s %s --depth %d", quoted(arg), answer.Value.Name, q.Depth+1)
	}
	return working.Write(out, answer, a.colour(a.outTerminal), deeper)
}

// quoted is an argument as one types it.
func quoted(arg string) string {
	if strings.ContainsAny(arg, " \t'\"&;()<>|*?$\\") {
		return fmt.Sprintf("%q", arg)
	}
	return arg
}
