package main

import (
	"bytes"
	"fmt"

	"newmake/compile"
	"newmake/compile/notice"
	"newmake/compile/show/trial"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// variants writes a batch and all that vary it side by side.
func (a *app) variants(arg string, f planFlags) error {
	format, err := formatFor(variantFormats, f.format, f.output)
	if err != nil {
		return err
	}
	speak := format
	if format == "md" || !toTerminal(f.output) {
		speak = "text"
	}
	src, name, err := a.open(arg, f.batch, f.stdin)
	if list, ok := err.(diag.List); ok {
		return a.refuse(list, speak)
	}
	if err != nil {
		return err
	}
	if name, err = a.subject(src, name); err != nil {
		return err
	}
	if unread, _ := restOfFile(src, name, nil); len(unread) > 0 {
		return a.refuse(unread, speak)
	}
	trial, list, err := a.trial(src, name, f.units)
	if err != nil {
		return err
	}
	if broken(list) {
		return a.refuse(list, speak)
	}
	if len(trial) == 1 {
		a.say("no batch of the house varies %q; a variant begins: batch \"...\" from %q {", name, name)
	}
	return a.writeTrial(trial, format, f, src)
}

// subject is the batch whose variants are meant: the one named, or the first that
// others vary, or the first of all.
func (a *app) subject(src *source, name string) (string, error) {
	if name == "" {
		for _, own := range src.house.BatchesIn(src.path) {
			if len(src.house.Variants(own)) > 0 {
				return own, nil
			}
		}
	}
	return a.choose(src, name)
}

// trial computes a batch and its variants, side by side. All of them have to
// stand: a table with a hole in it is none.
func (a *app) trial(src *source, name, units string) (trial.Trial, diag.List, error) {
	if units != "" && units != "us" && units != "si" {
		return nil, nil, usage("--units is us or si, not %q", units)
	}
	if name == "" {
		list := src.house.CheckIn(src.path)
		if !list.HasErrors() {
			list.Add(noBatch(src))
		}
		return nil, list, nil
	}
	var batches []*recipe.Batch
	var list diag.List
	for _, n := range append([]string{name}, src.house.Variants(name)...) {
		b, checked := src.house.Batch(n)
		list = append(list, checked...)
		if b != nil {
			batches = append(batches, b)
		}
	}
	if list.HasErrors() {
		return nil, src.house.Ordered(list), nil
	}
	system := batches[0].Units
	switch units {
	case "us":
		system = recipe.US
	case "si":
		system = recipe.SI
	}
	plans := make(trial.Trial, len(batches))
	told := make([]diag.List, len(batches))
	parallel(len(batches), func(i int) {
		b := inUnits(batches[i], system)
		_, checked := src.house.Batch(b.Name)
		p, computed := compile.Compile(b)
		told[i] = notice.Together(checked, computed)
		if p != nil {
			p.Notices = notice.InPlan(told[i])
		}
		plans[i] = p
	})
	list = nil
	for i := range told {
		for _, d := range told[i] {
			d.Summary = fmt.Sprintf("%s: %s", batches[i].Name, d.Summary)
			list.Add(d)
		}
	}
	return plans, src.house.Ordered(list), nil
}

func (a *app) writeTrial(t trial.Trial, format string, f planFlags, src *source) error {
	var out bytes.Buffer
	var err error
	u := unitsOf(t[0])
	switch format {
	case "json":
		err = t.JSON(&out)
	case "md":
		err = t.Markdown(&out, u)
	default:
		err = t.Text(&out, u, a.colour(a.outTerminal) && toTerminal(f.output))
	}
	if err != nil {
		return err
	}
	return a.write(f.output, out.Bytes(), src.inputs())
}
