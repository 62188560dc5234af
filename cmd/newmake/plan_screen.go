package main

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile/front"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/compile/show/formats"
	"newmake/compile/show/glance"
	"newmake/compile/show/text"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// screenFlags say how much of a plan is shown as text.
type screenFlags struct {
	full, screen bool
	day, part    string
}

func (f *screenFlags) add(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&f.full, "full", false, "all of the plan, and how sure each number is")
	cmd.Flags().BoolVar(&f.screen, "screen", false, "one screen of the plan, where no terminal is")
	cmd.Flags().StringVar(&f.day, "day", "", "the work of a day: tue, 10, \"10 mar\" or 2026-03-10")
	cmd.Flags().StringVar(&f.part, "part", "", "one part: "+words.Or(text.Parts))
	completeFlag(cmd, "part", oneOf(text.Parts...))
	cmd.MarkFlagsMutuallyExclusive("full", "screen", "day", "part")
}

// asked is the flag that was given, if any.
func (f screenFlags) asked() string {
	switch {
	case f.full:
		return "--full"
	case f.screen:
		return "--screen"
	case f.day != "":
		return "--day"
	case f.part != "":
		return "--part"
	}
	return ""
}

// plain reports whether an answer is text on standard output.
func (f screenFlags) plain(format, output string) bool {
	return (format == "" || format == "text") && formats.Standard(output)
}

// onScreen reports whether one screen is wanted: of a terminal, unless more is asked for.
func (f screenFlags) onScreen(a *app, format, output string) bool {
	return f.screen || a.outTerminal && f.asked() == "" && format == "" && output == ""
}

// days are the days of a plan that --day means.
func (f screenFlags) days(p *plan.Plan) ([]string, error) {
	if f.day == "" {
		return nil, nil
	}
	want := strings.ToLower(strings.Join(strings.Fields(f.day), " "))
	var out, known []string
	for _, d := range p.Schedule.Days {
		at := plan.Moment(d.From)
		known = append(known, at.Format("Mon 2 Jan"))
		for _, form := range []string{"Mon", "Monday", "2", "2 Jan", "2 January", "Jan 2", "January 2", "Mon 2", "Mon 2 Jan", "2006-01-02"} {
			if strings.ToLower(at.Format(form)) == want && !slices.Contains(out, d.Date) {
				out = append(out, d.Date)
			}
		}
	}
	if len(out) == 0 {
		return nil, usage("nobody is wanted on %q: --day is one of %s", f.day, strings.Join(known, ", "))
	}
	return out, nil
}

// show writes one screen of a plan. A promise that is not kept ends with 1, and is on
// the screen.
func (f screenFlags) show(a *app, made *front.Plan, arg string, notes []string) error {
	notes = slices.DeleteFunc(notes, func(n string) bool { return n == "" || a.quiet })
	o := glance.Options{Colour: a.colour(a.outTerminal), Arg: arg, Notes: notes}
	out, err := formats.Plan(made.Plan, "text", formats.Options{Screen: &o})
	if err != nil {
		return err
	}
	if err := a.write("", a.onTerminal(out), nil); err != nil {
		return err
	}
	if made.Diags.HasErrors() {
		return errSaid
	}
	return nil
}

// showAll writes the batches of a folder one line each.
func (f screenFlags) showAll(a *app, src *front.Source, arg string, system *recipe.System) error {
	plans, err := src.All(system)
	if err != nil {
		return err
	}
	var all []glance.One
	failed := false
	for _, p := range plans {
		one := glance.One{Name: p.Name, Plan: p.Plan, Errors: p.Diags.Count(diag.Error)}
		if front.Broken(p.Diags) {
			one.Plan = nil
		}
		failed = failed || p.Diags.HasErrors()
		all = append(all, one)
	}
	if err := f.several(a, fmt.Sprintf("%d batches of %s", len(all), arg), all); err != nil {
		return err
	}
	if failed {
		return errSaid
	}
	return nil
}

// showTrial writes a batch and its variants one line each.
func (f screenFlags) showTrial(a *app, t *front.Trial) error {
	var all []glance.One
	for _, p := range t.Plans {
		all = append(all, glance.One{Name: p.Batch.Name, Plan: p})
	}
	for _, l := range t.Left {
		all = append(all, glance.One{Name: l.Name, Errors: l.Diags.Count(diag.Error)})
	}
	err := f.several(a, "Variants of "+t.Name+" (side by side: --full)", all)
	if err == nil && len(t.Left) > 0 {
		return errSaid
	}
	return err
}

func (f screenFlags) several(a *app, title string, all []glance.One) error {
	var out bytes.Buffer
	if err := glance.Several(&out, title, all, glance.Options{Colour: a.colour(a.outTerminal)}); err != nil {
		return err
	}
	return a.write("", a.onTerminal(out.Bytes()), nil)
}

// onTerminal is a screen for a terminal that may know nothing but ASCII.
func (a *app) onTerminal(out []byte) []byte {
	if !a.plain() {
		return out
	}
	lines := strings.Split(strings.ReplaceAll(string(out), " · ", " | "), "\n")
	for i, line := range lines {
		parts := strings.Split(line, "\x1b[") // of which each but the first begins with a colour
		for k, part := range parts {
			colour := ""
			if at := strings.IndexByte(part, 'm'); k > 0 && at >= 0 {
				colour, part = "\x1b["+part[:at+1], part[at+1:]
			}
			parts[k] = colour + diag.SafeIn(part, true)
		}
		lines[i] = strings.Join(parts, "")
	}
	return []byte(strings.Join(lines, "\n"))
}

// mostFaults is how many errors are shown on one screen.
const mostFaults = 4

// refuseOnScreen ends a plan whose text has errors, on one screen: the first of them in
// full, the next ones a line each, and how many more there are.
func (a *app) refuseOnScreen(list diag.List, arg string) error {
	errors := slices.DeleteFunc(slices.Clone(list), func(d diag.Diagnostic) bool { return d.Severity != diag.Error })
	shown := errors[:min(mostFaults, len(errors))]
	o := diag.Options{Color: a.colour(a.errTerminal), ASCII: a.plain(), Fold: a.errTerminal}
	if err := diag.Render(a.err, shown[:min(1, len(shown))], o); err != nil {
		return usage("cannot write: %v", err)
	}
	for _, d := range shown[min(1, len(shown)):] {
		line, col := d.At.Position()
		where := ""
		if d.At.Src != nil {
			where = fmt.Sprintf("%s:%d:%d: ", d.At.Src.Name, line, col)
		}
		a.tell("%s", columns.Cut(diag.SafeIn(fmt.Sprintf("%serror %s: %s", where, d.Code, d.Summary), a.plain()), columns.Page))
	}
	if more := len(list) - len(shown); more > 0 {
		a.tell("and %d more: newmake check %s", more, arg)
	}
	a.tell("%s: nothing was planned", list.Counted())
	return ended(list)
}

// isFolder reports whether a source is of a folder, and not of one file.
func isFolder(src *front.Source) bool {
	info, err := os.Stat(src.Path)
	return err == nil && info.IsDir()
}
