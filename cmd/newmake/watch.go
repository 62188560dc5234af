package main

import (
	"bytes"
	"context"
	"fmt"
	"os/signal"
	"slices"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// watching is `plan --watch` and `plan --open`: a plan made anew whenever a text
// of the house is saved. When the text breaks, the last good one stays.
type watching struct {
	app    *app
	arg    string
	flags  planFlags
	format string
	named  bool  // the person named the batch; otherwise it is the first
	page   *page // where it is served; nil without --open
}

func (a *app) watchPlan(arg string, f planFlags) error {
	ctx, stop := signal.NotifyContext(context.Background(), stops()...)
	defer stop()
	return a.watch(ctx, arg, f)
}

// watch goes on until the context ends.
func (a *app) watch(ctx context.Context, arg string, f planFlags) error {
	if arg == standardInput {
		return usage("standard input cannot be watched: give a file")
	}
	format, err := formatFor(planFormats, f.format, f.output)
	if err != nil {
		return err
	}
	if !slices.Contains([]string{"", "us", "si"}, f.units) {
		return usage("--units is us or si, not %q", f.units)
	}
	w := &watching{app: a, arg: arg, flags: f, format: format}
	src, err := w.first()
	if err != nil {
		return err
	}
	ctx, end := context.WithCancel(ctx) // what is served ends with the watching
	defer end()
	changes, err := watchHouse(ctx, src.house.Root, a.say)
	if err != nil {
		return usage("cannot watch %s: %v", src.house.Root, err)
	}
	if f.open {
		w.page = newPage()
	}
	if err := w.make(); err != nil {
		return err
	}
	if f.open {
		if err := a.serve(ctx, w.page); err != nil {
			return err
		}
	}
	for {
		select {
		case <-ctx.Done():
			return &exit{code: exitInterrupt}
		case _, there := <-changes:
			if !there {
				return usage("the folder %s is gone: nothing is watched any more", src.house.Root)
			}
			if err := w.make(); err != nil {
				return err
			}
		}
	}
}

// first finds what is to be watched, and settles which batch is meant, so that
// this is said once.
func (w *watching) first() (*source, error) {
	path, name := w.app.find(w.arg)
	if w.flags.batch != "" {
		name = w.flags.batch
	}
	src, err := w.app.load(path, "")
	if list, ok := err.(diag.List); ok {
		return nil, w.app.refuse(list, "text")
	}
	if err != nil {
		return nil, err
	}
	w.arg, w.named = path, name != ""
	w.flags.batch, err = w.app.choose(src, name)
	return src, err
}

// make plans once, writes and serves. Only what no save can mend is an error.
func (w *watching) make() error {
	src, p, list, err := w.compute()
	if err != nil {
		w.broken(err.Error())
		return nil
	}
	if p == nil || broken(list) {
		w.app.show(list)
		w.app.tell("%s: the last good plan stays", list.Counted())
		if w.page != nil {
			w.page.problems(textOf(list))
		}
		return nil
	}
	p.Source = revisionOf(src, p.Batch.Name)
	if w.page != nil {
		w.page.show(p)
	}
	if w.page == nil || w.flags.output != "" {
		return w.app.writePlan(p, list, w.format, w.flags, src)
	}
	w.app.show(list)
	return nil
}

func (w *watching) compute() (*source, *plan.Plan, diag.List, error) {
	src, err := w.app.load(w.arg, "")
	if list, ok := err.(diag.List); ok {
		return nil, nil, list, nil
	}
	if err != nil {
		return nil, nil, nil, err
	}
	name := w.flags.batch
	if !w.named && !slices.Contains(src.house.BatchesIn(w.arg), name) { // it has another name by now
		if name, err = w.app.choose(src, ""); err != nil {
			return nil, nil, nil, err
		}
	}
	p, list, err := w.app.compute(src, name, w.flags.units)
	return src, p, list, err
}

// broken says what stands in the way where there is no list of diagnostics: a
// file that is gone for the moment.
func (w *watching) broken(why string) {
	fmt.Fprintln(w.app.err, safeLines("newmake: "+why+": the last good plan stays", w.app.plain()))
	if w.page != nil {
		w.page.problems(why)
	}
}

// textOf is diagnostics as they stand in a terminal, without colour.
func textOf(list diag.List) string {
	var b bytes.Buffer
	diag.Render(&b, list, diag.Options{})
	return b.String()
}
