// Package glance shows a plan on one screen of a terminal: what is wrong with it, the
// chain from grain to cask, a line for each day of work with the readings that decide
// it, and where more is. It chooses among what the plan says, and computes nothing.
//
// A state has a word before it has a colour, so that nothing is lost where colour is
// not shown or not seen.
package glance

import (
	"io"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// rows is the most lines that are shown: a terminal has 24, and the prompt that comes
// after wants one of them.
const rows = 23

// Options is how a plan is shown.
type Options struct {
	Units  measure.Units
	Colour bool
	Arg    string   // which batch was asked for, as it was: ferry-landing.batch
	Notes  []string // what a person should know besides
}

// Write writes the plan, in at most Rows lines of columns.Page.
func Write(w io.Writer, p *plan.Plan, o Options) error {
	p = p.Strings(func(s string) string { return diag.Safe(s) })
	g := &screen{Units: o.Units, Options: o, p: p}
	_, err := io.WriteString(w, g.page())
	return err
}

type screen struct {
	measure.Units
	Options
	p *plan.Plan
}

// page gives way where there are more lines than rows: first the second lines of
// faults and notes, then days in the middle.
func (g *screen) page() string {
	head := append([]string{g.title()}, g.parent()...)
	chain, more := g.chain(), g.more()
	days := g.days()
	room := rows - len(head) - len(chain) - len(more) - 2 // an empty line above and below the days
	faults := g.faults(2)
	notes := g.notes(2)
	if len(faults)+len(notes)+len(days) > room {
		faults, notes = g.faults(1), g.notes(1)
	}
	out := append(head, faults...)
	out = append(append(out, chain...), "")
	out = append(append(out, g.fold(days, room-len(faults)-len(notes))...), "")
	out = append(append(out, notes...), more...)
	return strings.Join(out, "\n") + "\n"
}

// title is the batch, its standard and its house, and the days from the first step to
// the last.
func (g *screen) title() string {
	from, to := plan.Moment(g.p.Schedule.Start), plan.Moment(g.p.Schedule.End)
	when := ""
	switch {
	case from.IsZero():
	case from.Year() != to.Year():
		when = from.Format("2 Jan 2006") + " - " + to.Format("2 Jan 2006")
	case from.Month() != to.Month():
		when = from.Format("Mon 2 Jan") + " - " + to.Format("Mon 2 Jan 2006")
	default:
		when = from.Format("Mon 2") + " - " + to.Format("Mon 2 Jan 2006")
	}
	parts := []string{g.p.Batch.Name}
	if s := g.p.Batch.Standard; s != "" { // most are of whisky
		parts = append(parts, strings.TrimSuffix(strings.TrimSuffix(s, " whisky"), " whiskey"))
	}
	parts = append(parts, g.p.Plant.Name)
	room := columns.Page - columns.Width(when) - 2
	name := shared(parts, room)
	return g.paint(strong, columns.Fill(name, room)+"  "+when)
}

// shared joins names so that they fit: what is longest gives way first.
func shared(parts []string, room int) string {
	const joint = " · "
	out := append([]string{}, parts...)
	for columns.Width(strings.Join(out, joint)) > room {
		longest := 0
		for i := range out {
			if columns.Width(out[i]) > columns.Width(out[longest]) {
				longest = i
			}
		}
		over := columns.Width(strings.Join(out, joint)) - room
		keep := max(columns.Width(out[longest])-over, 8)
		if keep >= columns.Width(out[longest]) {
			return columns.Cut(strings.Join(out, joint), room)
		}
		out[longest] = columns.Cut(out[longest], keep)
	}
	return strings.Join(out, joint)
}

// parent says of a variant what it has other than the batch that it varies.
func (g *screen) parent() []string {
	b := g.p.Batch
	if b.Parent == "" {
		return nil
	}
	words := "a variant of " + b.Parent
	if len(b.Changes) > 0 {
		words += ": " + strings.Join(b.Changes, "; ")
	}
	return limited(words, 2, 4, 2)
}

// notes are what a person should know besides, in at most so many lines each.
func (g *screen) notes(lines int) []string {
	var out []string
	for _, n := range g.Notes {
		out = append(out, limited(diag.Safe(n), 2, 4, lines)...)
	}
	return out
}

// more says where more is.
func (g *screen) more() []string {
	day := "tue"
	if all := g.p.Schedule.Days; len(all) > 0 {
		day = strings.ToLower(plan.Moment(all[0].From).Format("Mon"))
	}
	words := "More: --full · --day " + day + " · --part spirit · -o sheet.html"
	if why := diag.Safe(strings.Join(strings.Fields(" · newmake why "+g.Arg+" hearts"), " ")); columns.Width(words+" "+why) <= columns.Page-2 {
		words += " " + why
	}
	return []string{"  " + g.paint(faint, words)}
}

// limited wraps text into at most so many lines, the first from one column and the
// rest from another. What does not fit is cut, with a mark.
func limited(text string, first, then, lines int) []string {
	all := columns.Wrap(text, columns.Page-max(first, then))
	if len(all) == 0 {
		return nil
	}
	if len(all) > lines {
		rest := strings.Join(all[lines-1:], " ")
		all = append(all[:lines-1:lines-1], columns.Cut(rest, columns.Page-max(first, then)))
	}
	for i := range all {
		at := then
		if i == 0 {
			at = first
		}
		all[i] = strings.Repeat(" ", at) + all[i]
	}
	return all
}

// The states that have a colour (ECMA-48, SGR).
const (
	strong = "1"
	faint  = "2"
	bad    = "1;31"
	warn   = "33"
	good   = "32"
)

// paint gives a text a colour, where there is any.
func (g *screen) paint(how, s string) string {
	if !g.Colour || s == "" {
		return s
	}
	return "\x1b[" + how + "m" + s + "\x1b[0m"
}
