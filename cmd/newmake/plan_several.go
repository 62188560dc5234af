package main

import (
	"bytes"
	"fmt"
	"strings"

	"newmake/compile/front"
	"newmake/compile/show/formats"
	"newmake/compile/show/glance"
	"newmake/lang/diag"
)

// several are the files and houses that are to be planned one after another: what was
// named, if it is more than one, with the houses below a folder in its place. One batch,
// file or house is nil.
func several(args []string) []string {
	if len(args) == 0 {
		args = []string{"."}
	}
	var out []string
	for _, arg := range args {
		path, batch := find(arg)
		if batch != "" || path == standardInput {
			return nil
		}
		if below := front.Below(path); len(below) > 0 {
			out = append(out, below...)
		} else {
			out = append(out, path)
		}
	}
	if len(args) == 1 && len(out) == 1 && out[0] == args[0] {
		return nil
	}
	return out
}

// runSeveral plans all batches of some files and houses: a line each on a screen, or else
// each whole.
func (f planFlags) runSeveral(a *app, paths []string) error {
	for _, of := range []struct {
		flag  string
		given bool
	}{{"--batch", f.batch != ""}, {"--try", len(f.try) > 0}, {"--on", f.on != ""}, {"--variants", f.variants}, {"--watch", f.watch}, {"--open", f.open}, {"--day", f.day != ""}} {
		if of.given {
			return usage("%s goes with one batch, and these are %s", of.flag, front.QuoteAll(paths))
		}
	}
	format, system, err := f.choose(formats.OfPlan)
	if err != nil {
		return err
	}
	if format != "text" && format != "md" || !formats.Standard(f.output) {
		return usage("several plans are text or md, on standard output; write a file for each batch by itself, as in newmake plan %s --batch NAME -o NAME.html", paths[0])
	}
	screen := f.onScreen(a, f.format, f.output)
	var lines []glance.One
	var whole bytes.Buffer
	var failed diag.List
	for _, path := range paths {
		src, err := a.load(path, "")
		if err != nil {
			return a.cannot(err, "text")
		}
		made, err := src.All(system)
		if err != nil {
			return err
		}
		for _, p := range made {
			one := glance.One{Name: p.Name, Plan: p.Plan, Errors: p.Diags.Count(diag.Error)}
			if one.Plan == nil || front.Broken(p.Diags) {
				one.Plan = nil
			}
			lines = append(lines, one)
			failed = append(failed, p.Diags...)
			if screen {
				continue
			}
			if one.Plan == nil {
				a.show(p.Diags)
				continue
			}
			if f.full || format == "md" {
				sure(p)
			}
			out, err := formats.Plan(p.Plan, format, f.options(a))
			if err != nil {
				return err
			}
			if whole.Len() > 0 {
				whole.WriteString("\n\n")
			}
			whole.Write(out)
		}
	}
	if screen {
		err = f.screenFlags.several(a, fmt.Sprintf("%d batches of %s", len(lines), strings.Join(paths, ", ")), lines)
	} else {
		err = a.write("", whole.Bytes(), nil)
	}
	if err == nil && failed.HasErrors() {
		return errSaid
	}
	return err
}
