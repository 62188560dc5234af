package main

import (
	"bytes"
	"context"
	"os/signal"
	"slices"

	houses "newmake/cmd/newmake/internal/watch"
	"newmake/compile/ask/bands"
	"newmake/compile/ask/odds"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/show/formats"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// watching is `plan --watch` and `plan --open`: a plan made anew whenever a text
// of the house is saved. When the text breaks, the last good one stays.
type watching struct {
	app    *app
	arg    string
	flags  planFlags
	format string
	units  *recipe.System
	named  bool    // the person named the batch; otherwise it is the first
	site   *opened // what is served; nil without --open
	bands  bands.Kept
}

func watchPlan(a *app, arg string, f planFlags) error {
	ctx, stop := signal.NotifyContext(context.Background(), stops()...)
	defer stop()
	return watch(ctx, a, arg, f)
}

// watch goes on until the context ends.
func watch(ctx context.Context, a *app, arg string, f planFlags) error {
	if arg == standardInput {
		return usage("standard input cannot be watched: give a file")
	}
	w := &watching{app: a, arg: arg, flags: f}
	var err error
	if w.format, w.units, err = f.choose(formats.OfPlan); err != nil {
		return err
	}
	src, err := w.first()
	if err != nil {
		return err
	}
	ctx, end := context.WithCancel(ctx) // what is served ends with the watching
	defer end()
	root := src.House.Root
	changes, err := houses.House(ctx, root, a.say)
	if err != nil {
		return usage("cannot watch %s: %v", root, err)
	}
	var again <-chan struct{}
	if f.open {
		if w.site, err = newOpened(a, w, root); err != nil {
			return err
		}
		again = w.site.again
	}
	if err := w.make(); err != nil {
		return err
	}
	if f.open {
		if err := w.site.serve(ctx); err != nil {
			return err
		}
	}
	for {
		select {
		case <-ctx.Done():
			return &exit{code: exitInterrupt}
		case <-again:
			if err := w.make(); err != nil {
				return err
			}
		case _, there := <-changes:
			if !there {
				return usage("the folder %s is gone: nothing is watched any more", root)
			}
			if err := w.make(); err != nil {
				return err
			}
		}
	}
}

// first finds what is to be watched, and settles which batch is meant, so that
// this is said once.
func (w *watching) first() (*front.Source, error) {
	path, name := find(w.arg)
	if w.flags.batch != "" {
		name = w.flags.batch
	}
	src, err := w.app.load(path, "")
	if err != nil {
		return nil, w.app.cannot(err, "text")
	}
	w.arg, w.named = path, name != ""
	chosen, note, err := src.Choose(name)
	w.flags.batch = chosen
	w.app.notes(note)
	return src, err
}

// make plans once, writes and serves. Only what no save can mend is an error.
func (w *watching) make() error {
	src, made, err := w.plan()
	list, broken := err.(diag.List)
	if err != nil && !broken {
		w.broken(err.Error())
		return nil
	}
	if !broken {
		list = made.Diags
	}
	if broken || made.Plan == nil || front.Broken(list) {
		w.app.show(list)
		w.app.tell("%s: the last good plan stays", list.Counted())
		if w.site != nil {
			w.site.problems(textOf(list))
		}
		return nil
	}
	source, note := revision.Of(src, made.Plan.Batch.Name)
	w.app.notes(note)
	made.Plan.Source = source
	src.PutRecorded(made)
	if w.site != nil {
		odds.Judge(made.Plan, made.Recipe)
		w.bands.Put(made.Plan, made.Recipe, src.House.ButRuns())
		w.site.show(src, made)
	}
	if w.site == nil || w.flags.output != "" {
		return w.flags.write(w.app, made, w.format, src)
	}
	w.app.show(list)
	return nil
}

func (w *watching) plan() (*front.Source, *front.Plan, error) {
	src, err := w.app.load(w.arg, "")
	if err != nil {
		return nil, nil, err
	}
	name := w.flags.batch
	if !w.named && !slices.Contains(src.House.BatchesIn(w.arg), name) { // it has another name by now
		name = ""
	}
	b, err := src.Batch(name, w.units)
	if err != nil {
		return nil, nil, err
	}
	w.app.notes(b.Notes...)
	if err := b.On(w.flags.on); err != nil {
		return nil, nil, err
	}
	return src, b.Plan(), nil
}

// broken says what stands in the way where there is no list of diagnostics: a
// file that is gone for the moment.
func (w *watching) broken(why string) {
	w.app.tell("newmake: %s: the last good plan stays", why)
	if w.site != nil {
		w.site.problems(why)
	}
}

// textOf is diagnostics as they stand in a terminal, without colour.
func textOf(list diag.List) string {
	var b bytes.Buffer
	diag.Render(&b, list, diag.Options{})
	return b.String()
}
