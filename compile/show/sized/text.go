// Package sized shows a size that was found: the lines that change, and what comes
// of them.
package sized

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/size"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
)

// Text writes the lines that change, and what comes of them.
func Text(w io.Writer, f *size.Found) {
	before, after := f.Before, f.After.Plan
	if f.Target.Of == nil {
		fmt.Fprintf(w, "%s, cut for %s\n\n", diag.Safe(f.Batch.Name), f.Target.What)
	} else {
		fmt.Fprintf(w, "%s, sized for %s: %s of grain, %s times the batch\n\n", diag.Safe(f.Batch.Name), diag.Safe(f.Target.What), f.Units.Mass(after.Bill.TotalKg), measure.Number(f.After.Factor, 3))
	}
	for _, l := range f.Text.Lines {
		if old, new := squeezed(l.Old), squeezed(l.New); len(old)+len(new) < 70 {
			fmt.Fprintf(w, "  %s -> %s\n", old, new)
		} else {
			fmt.Fprintf(w, "  %s\n    -> %s\n", old, new)
		}
	}
	fmt.Fprintln(w)
	row := func(name, old, new string) { fmt.Fprintf(w, "  %-18s %16s %16s\n", name, old, new) }
	row("", "now", "then")
	row("grain", f.Units.Mass(before.Bill.TotalKg), f.Units.Mass(after.Bill.TotalKg))
	row("wash", f.Units.Volume(before.Ferment.Wash), f.Units.Volume(after.Ferment.Wash))
	o, n := size.HeartsOf(before), f.After.Hearts()
	row("hearts", f.Units.Volume(o), f.Units.Volume(n))
	if f.Units == measure.SI {
		row("", measure.Number(o.AbvPct, 1)+" % vol", measure.Number(n.AbvPct, 1)+" % vol")
		row("pure alcohol", measure.Number(o.PureL, 2)+" L", measure.Number(n.PureL, 2)+" L")
	} else {
		row("", measure.Number(o.Proof, 1)+" proof", measure.Number(n.Proof, 1)+" proof")
		row("proof gallons", measure.Number(o.ProofGallons, 2), measure.Number(n.ProofGallons, 2))
	}
	row("casks filled", fmt.Sprint(before.Cask.Casks), fmt.Sprint(after.Cask.Casks))
	if before.Cask.Bottles+after.Cask.Bottles > 0 {
		row("bottles, about", fmt.Sprint(before.Cask.Bottles), fmt.Sprint(after.Cask.Bottles))
	}
	if last := after.Cask.LastFill; last != nil {
		row("the last takes", "", f.Units.Volume(*last))
	}
	row("left over", f.Units.Volume(before.Cask.Leftover), f.Units.Volume(after.Cask.Leftover))
	row("mash", measure.Duration(60*before.Mash.Hours), measure.Duration(60*after.Mash.Hours))
	row("stills", measure.Duration(60*(before.Strip.TotalHours+before.Spirit.TotalHours)), measure.Duration(60*(after.Strip.TotalHours+after.Spirit.TotalHours)))
	for _, v := range after.Plant.Vessels {
		was := ""
		for _, x := range before.Plant.Vessels {
			if x.Name == v.Name {
				was = measure.Number(x.FillPct, 0) + " %"
			}
		}
		row(diag.Safe(v.Name)+", full", was, measure.Number(v.FillPct, 0)+" %")
	}
	fmt.Fprintf(w, "\n%s.\n", capitalised(f.After.Gives(f.Units)))
	if kept := f.Kept(); len(kept) > 0 {
		fmt.Fprintln(w, strings.Join(columns.Wrap(diag.Safe("Times and paces stay as they are written: "+strings.Join(kept, "; ")+"."), 80), "\n"))
	}
	if l := f.Largest; l != nil {
		words := fmt.Sprintf("The largest that fits this plant is %s of grain: %s.", l.Grain(f.Units), l.Gives(f.Units))
		if l.Limit != nil {
			words += fmt.Sprintf(" In a larger one %s.", diag.Safe(l.Limit.Summary))
		}
		fmt.Fprintln(w, strings.Join(columns.Wrap(words, 80), "\n"))
	}
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func squeezed(s string) string { return strings.Join(strings.Fields(diag.Safe(s)), " ") }
