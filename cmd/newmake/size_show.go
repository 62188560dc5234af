package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"newmake/cmd/newmake/internal/wholefile"
	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// sized is an answer as JSON.
type sized struct {
	Format  string       `json:"format"`
	Version string       `json:"version"`
	Batch   string       `json:"batch"`
	Target  string       `json:"target"`
	Factor  float64      `json:"factor"` // times the batch; 1 for a cut
	Lines   []sizedLine  `json:"lines"`
	Before  plan.Summary `json:"before"`
	After   plan.Summary `json:"after"` // of the variant as it is written
	Variant string       `json:"variant"`
	Text    string       `json:"text"`
}

type sizedLine struct {
	Old string `json:"old"`
	New string `json:"new"`
}

func heartsOf(p *plan.Plan) plan.Lot {
	for _, f := range p.Spirit.Fractions {
		if f.Name == "hearts" {
			return f.Lot
		}
	}
	return plan.Lot{}
}

func (a *app) showSize(s *sizing, f sizeFlags) error {
	before, _ := compile.Compile(s.batch)
	if f.format == "json" {
		out := sized{
			Format: "newmake.size", Version: "1.0", Batch: s.batch.Name, Target: s.target.What, Factor: plan.RoundTo(s.answer.Factor, 6),
			Lines: []sizedLine{}, Before: before.Summary, After: s.after.Plan.Summary, Variant: s.text.Name, Text: string(s.text.Text),
		}
		for _, l := range s.text.Lines {
			out.Lines = append(out.Lines, sizedLine{l.Old, l.New})
		}
		return a.writeJSON(struct {
			sized
			Notices diag.List `json:"diagnostics"`
		}{out, append(diag.List{}, s.list...)})
	}
	var out bytes.Buffer
	s.print(&out, before)
	a.show(s.list)
	return a.write("", out.Bytes(), nil)
}

// print writes the lines that change, and what comes of them.
func (s *sizing) print(w io.Writer, before *plan.Plan) {
	if s.target.Of == nil {
		fmt.Fprintf(w, "%s, cut for %s\n\n", diag.Safe(s.batch.Name, false), s.target.What)
	} else {
		fmt.Fprintf(w, "%s, sized for %s: %s times the batch\n\n", diag.Safe(s.batch.Name, false), diag.Safe(s.target.What, false), measure.Number(s.answer.Factor, 4))
	}
	for _, l := range s.text.Lines {
		if old, new := squeezed(l.Old), squeezed(l.New); len(old)+len(new) < 70 {
			fmt.Fprintf(w, "  %s -> %s\n", old, new)
		} else {
			fmt.Fprintf(w, "  %s\n    -> %s\n", old, new)
		}
	}
	fmt.Fprintln(w)
	after := s.after.Plan
	row := func(name, old, new string) { fmt.Fprintf(w, "  %-18s %16s %16s\n", name, old, new) }
	row("", "now", "then")
	row("grain", s.units.Mass(before.Bill.TotalKg), s.units.Mass(after.Bill.TotalKg))
	row("wash", s.units.Volume(before.Ferment.Wash), s.units.Volume(after.Ferment.Wash))
	o, n := heartsOf(before), heartsOf(after)
	row("hearts", s.units.Volume(o), s.units.Volume(n))
	if s.units == measure.SI {
		row("", measure.Number(o.AbvPct, 1)+" % vol", measure.Number(n.AbvPct, 1)+" % vol")
		row("pure alcohol", measure.Number(o.PureL, 2)+" L", measure.Number(n.PureL, 2)+" L")
	} else {
		row("", measure.Number(o.Proof, 1)+" proof", measure.Number(n.Proof, 1)+" proof")
		row("proof gallons", measure.Number(o.ProofGallons, 2), measure.Number(n.ProofGallons, 2))
	}
	row("casks filled", fmt.Sprint(before.Cask.Casks), fmt.Sprint(after.Cask.Casks))
	if last := after.Cask.LastFill; last != nil {
		row("the last takes", "", s.units.Volume(*last))
	}
	row("left over", s.units.Volume(before.Cask.Leftover), s.units.Volume(after.Cask.Leftover))
	row("mash", measure.Number(before.Mash.Hours, 1)+" h", measure.Number(after.Mash.Hours, 1)+" h")
	row("stills", measure.Number(before.Strip.TotalHours+before.Spirit.TotalHours, 1)+" h", measure.Number(after.Strip.TotalHours+after.Spirit.TotalHours, 1)+" h")
	for _, v := range after.House.Vessels {
		was := ""
		for _, x := range before.House.Vessels {
			if x.Name == v.Name {
				was = measure.Number(x.FillPct, 0) + " %"
			}
		}
		row(diag.Safe(v.Name, false)+", full", was, measure.Number(v.FillPct, 0)+" %")
	}
	fmt.Fprintf(w, "\n%s.\n", capitalised(s.gives(s.after)))
}

func capitalised(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

func squeezed(s string) string { return strings.Join(strings.Fields(diag.Safe(s, false)), " ") }

// writeVariant puts the variant where it was asked for. What is there already is
// never written over.
func (a *app) writeVariant(s *sizing, f sizeFlags) error {
	if f.write != ownFile {
		return a.newFile(f.write, s)
	}
	at := s.batch.Where[recipe.PathBatch]
	file := at.Src.Name
	now, err := os.ReadFile(file)
	if err != nil {
		return usage("cannot read %s: %v", file, reason(err))
	}
	if !bytes.Equal(now, at.Src.Text) {
		return usage("%s has changed since it was read: nothing was written", file)
	}
	text := s.text.Text
	if crlf := bytes.Count(now, []byte("\r\n")); 2*crlf > bytes.Count(now, []byte("\n")) {
		text = bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
	}
	gap := "\n"
	if bytes.HasSuffix(text, []byte("\r\n")) {
		gap = "\r\n"
	}
	out := bytes.Clone(now)
	if len(out) > 0 && !bytes.HasSuffix(out, []byte("\n")) {
		out = append(out, gap...)
	}
	out = append(append(out, gap...), text...)
	if len(out) > lang.MaxFileBytes {
		return usage("%s would become too large: give a new file, -w=NAME.batch", file)
	}
	var done wholefile.Done
	err = uninterrupted(func() (err error) {
		done, err = a.disk.Replace(file, now, out)
		return err
	})
	if err != nil {
		return usage("cannot write %s: %v", file, reason(err))
	}
	a.tellNames(file, done)
	a.say("wrote the variant %q at the end of %s", s.text.Name, file)
	return nil
}

// newFile writes the variant into a file of its own.
func (a *app) newFile(name string, s *sizing) error {
	if filepath.Ext(name) != ending {
		return usage("%s does not end in %s, so no house would read it", name, ending)
	}
	rel, err := filepath.Rel(absolute(s.house.Root), absolute(name))
	if err != nil || !filepath.IsLocal(rel) {
		return usage("%s is not in the house at %s, so its batch would vary nothing", name, s.house.Root)
	}
	err = uninterrupted(func() error { return a.disk.Create(name, s.text.Text, 0o644) })
	if errors.Is(err, fs.ErrExist) {
		return usage("there is a file %s already: nothing was written", name)
	}
	if err != nil {
		return usage("cannot write %s: %v", name, reason(err))
	}
	a.say("wrote %s, %s", name, size(len(s.text.Text)))
	return nil
}

func absolute(name string) string {
	if abs, err := filepath.Abs(name); err == nil {
		if real, err := filepath.EvalSymlinks(abs); err == nil {
			return real
		}
		return abs
	}
	return name
}
