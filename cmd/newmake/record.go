package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"newmake/cmd/newmake/internal/asking"
	"newmake/compile/ask/bands"
	"newmake/compile/ask/recording"
	"newmake/compile/blank"
	"newmake/compile/front"
	"newmake/compile/front/revision"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/pattern"
	"newmake/lang/schema"
	"newmake/lang/wholefile"
	"newmake/lang/words"
)

// recordFlags are what a person says of a record.
type recordFlags struct {
	batch, on, number, table string
	noInput                  bool
}

func recordCommand(a *app) *cobra.Command {
	var f recordFlags
	cmd := &cobra.Command{
		Use:   "record [BATCH | FILE | NUMBER]",
		Short: "Open the record of a run, and fill it in",
		Long: "record opens a run of a batch: a file in the folder runs of the house, with a line for each\n" +
			"visit of a vessel and the words of what to read there. What was planned stands in\n" +
			"remarks, and in a file beside it, so that the readings can be held against the sheet\n" +
			"that was worked from.\n\n" +
			"In a terminal it then asks for one visit after the other, in the order of the sheet, and\n" +
			"keeps each answer before it asks for the next. Given the number of a run, or the day of\n" +
			"one, it goes on where it was left. --table fills in the table of the sheet that\n" +
			"`newmake plan -o steps.csv` gave, once that is filled in.",
		Example: "  newmake record ferry-landing.batch --on 2026-03-03\n" +
			"  newmake record 26-03\n" +
			"  newmake record 26-03 --table steps.csv\n" +
			"  newmake record ferry-landing.batch --on 2026-03-03 --no-input",
		ValidArgsFunction: completeBatches,
		RunE: func(_ *cobra.Command, args []string) error {
			arg, err := oneBatch("record", args)
			if err != nil {
				return err
			}
			return f.run(a, arg)
		},
	}
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch that was run, by name")
	cmd.Flags().StringVar(&f.on, "on", "", "the day of the mash: 2026-03-03")
	cmd.Flags().StringVar(&f.number, "number", "", "the number of the run (default: the next of its year)")
	cmd.Flags().StringVar(&f.table, "table", "", "fill in from this table, of plan -o steps.csv")
	cmd.Flags().BoolVar(&f.noInput, "no-input", false, "ask for nothing")
	completeFlag(cmd, "batch", batchNames)
	return cmd
}

// run opens a run, or goes on with one.
func (f recordFlags) run(a *app, arg string) error {
	src, name, err := a.open(arg, f.batch, "")
	if err != nil {
		return a.cannot(err, "text")
	}
	number := ""
	if r, _ := src.House.Run(name); r != nil && name != "" {
		number = r.Number
		if f.on != "" || f.number != "" {
			return usage("run %s is there already: --on and --number open another", number)
		}
	} else if b, _ := src.House.Batch(name); b == nil && runNumber().MatchString(name) {
		last := ""
		if all := src.House.RunNumbers(); len(all) > 0 {
			last = "; the last is " + slices.Max(all)
		}
		return usage("there is no run %s in this house%s: `newmake record BATCH --on DATE` opens one", name, last)
	} else if number, err = f.open(a, src, name); err != nil {
		return err
	}
	return f.fill(a, src.Path, number)
}

// open opens a run of a batch, and gives its number; that of a run of the same day,
// if there is one.
func (f recordFlags) open(a *app, src *front.Source, name string) (string, error) {
	b, err := src.Batch(name, nil)
	if err != nil {
		return "", err
	}
	a.notes(b.Notes...)
	if err := b.On(f.on); err != nil {
		return "", err
	}
	if b.Recipe == nil {
		return "", a.refuse(b.Diags, "text")
	}
	s := b.Recipe.Start
	date := fmt.Sprintf("%04d-%02d-%02d", s.Year, s.Month, s.Day)
	for _, number := range src.House.RunsOf(b.Name) {
		if d := src.House.PastNamed(schema.Run, number); d.On == date && (f.number == "" || f.number == number) {
			a.say("run %s of that day is there: it goes on", number)
			return number, nil
		}
	}
	number := f.number
	if number == "" {
		number = nextNumber(src.House.RunNumbers(), s.Year)
	}
	if !plainNumber().MatchString(number) {
		return "", usage("%q is no number for a run: letters, digits and hyphens, as in 26-03", number)
	}
	if wholefile.Device(number) {
		return "", usage("a run cannot be called %s: its file could not be kept on Windows, where that is the name of a device", number)
	}
	if src.House.PastNamed(schema.Run, number) != nil {
		return "", usage("the house has a run %s: give this one another number", number)
	}
	stamp := revision.Begin(src, b.Name)
	made := b.Plan()
	source, note := stamp()
	a.notes(note)
	if !made.Sound() {
		return "", a.refuse(made.Diags, "text")
	}
	made.Plan.Source = source
	bands.Put(made.Plan, made.Recipe)
	planned := blank.Of(made.Plan)
	head := recording.Head{Number: number, Batch: b.Name, Date: date}
	if source != nil {
		head.Sheet = source.Hash
		if source.Revision != "" && !source.Changed {
			head.Sheet = source.Revision
		}
	}
	text, err := recording.Skeleton(head, planned, measure.UnitsOf(b.Recipe.Units))
	if err != nil {
		return "", err
	}
	beside, err := json.MarshalIndent(planned, "", "  ")
	if err != nil {
		return "", err
	}
	at := filepath.Join(src.House.Root, "runs", number+ending)
	if err := os.MkdirAll(filepath.Dir(at), 0o777); err != nil {
		return "", usage("cannot make the folder %s: %v", filepath.Dir(at), wholefile.Reason(err))
	}
	for _, file := range []struct {
		name string
		text []byte
	}{{plannedBeside(at), append(beside, '\n')}, {at, text}} {
		err := uninterrupted(func() error { return a.disk.Create(file.name, file.text, 0o644) })
		if err != nil {
			return "", usage("cannot write %s: %v", file.name, wholefile.Reason(err))
		}
	}
	a.say("opened run %s: %s", number, at)
	return number, nil
}

var plainNumber = pattern.Of(`^[A-Za-z0-9][A-Za-z0-9-]*$`)

// runNumber is what runs are numbered like, and no batch is called.
var runNumber = pattern.Of(`^[0-9]{2}-[0-9]+$`)

// nextNumber is the next number of a year: 26-04 after 26-03.
func nextNumber(numbers []string, year int) string {
	most := 0
	for _, number := range numbers {
		var y, n int
		if c, _ := fmt.Sscanf(number, "%d-%d", &y, &n); c == 2 && y == year%100 && n > most {
			most = n
		}
	}
	return fmt.Sprintf("%02d-%02d", year%100, most+1)
}

// plannedBeside is the file that keeps what was planned of a run.
func plannedBeside(run string) string { return strings.TrimSuffix(run, ending) + ".planned.json" }

// keptPlan is what was kept beside a run of its plan; nil where nothing was.
func keptPlan(name string) (*blank.Planned, error) {
	text, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, usage("cannot read %s: %v", name, wholefile.Reason(err))
	}
	var p blank.Planned
	if err := json.Unmarshal(text, &p); err != nil || p.Format != blank.Format {
		return nil, usage("%s is not what newmake keeps beside a run: take it away, and the batch is planned anew", name)
	}
	return &p, nil
}

// fill fills in a run: from a table, or by asking.
func (f recordFlags) fill(a *app, path, number string) error {
	src, err := a.load(path, "")
	if err != nil {
		return a.cannot(err, "text")
	}
	page, err := f.page(a, src, number, nil)
	if list, ok := err.(diag.List); ok {
		return a.refuse(list, "text")
	}
	if err != nil {
		return err
	}
	file, was := page.Name, page.Text
	keep := func(p *recording.Page) error {
		err := uninterrupted(func() error { _, err := a.disk.Replace(file, was, p.Text); return err })
		switch {
		case errors.Is(err, wholefile.ErrChanged):
			return usage("%s was changed by somebody else meanwhile: what was typed before stands in it; go on with `newmake record %s`", file, number)
		case err != nil:
			return usage("cannot write %s: %v", file, wholefile.Reason(err))
		}
		was = p.Text
		return nil
	}
	switch {
	case f.table != "":
		in, err := os.Open(f.table)
		if err != nil {
			return usage("cannot read %s: %v", f.table, wholefile.Reason(err))
		}
		defer in.Close()
		then, n, left, err := page.FillTable(in)
		if err != nil {
			return usage("%s: %v", f.table, err)
		}
		if err := keep(then); err != nil {
			return err
		}
		for _, far := range then.Far(page) {
			a.say("kept, but %s: is that so?", far)
		}
		page = then
		a.say("filled in %s of run %s", words.Count(n, "blank"), number)
		if len(left) > 0 {
			a.say("%s of %s: the record has no line for what was read there, so it is not in it", words.And(left), f.table)
			if page.TakesCasks() {
				a.say("a cask has a line with its serial, as the remark in the record has it: `newmake record %s` asks for it", number)
			}
		}
	case !f.noInput && a.inTerminal && a.outTerminal:
		if page, err = (asking.Talk{In: a.in, Out: a.out, Keep: keep, Plain: a.plain()}).Fill(page); err != nil {
			return err
		}
	}
	if open := len(page.Lines()); open > 0 {
		a.say("%s: %d lines are left to fill in; `newmake record %s` goes on", file, open, number)
	}
	var said diag.List
	for _, d := range page.Diags {
		if d.Severity != diag.Note {
			said = append(said, d)
		}
	}
	a.show(said)
	if said.HasErrors() {
		return errSaid
	}
	return nil
}

// page reads the text of a run, to be filled in in a system of units; nil is that of
// its batch. The error is a diag.List where there is no such run, or it can't be read.
func (f recordFlags) page(a *app, src *front.Source, number string, in *measure.Units) (*recording.Page, error) {
	run, list := src.House.Run(number)
	if run == nil {
		return nil, list
	}
	file := run.At.Src.Name
	planned, units, err := f.planned(a, src, run.Batch, run.Date.String(), file)
	if err != nil {
		return nil, err
	}
	if in != nil {
		units = *in
	}
	return recording.Read(file, run.At.Src.Text, number, planned, logbook.Around{Zone: run.Zone, Instrument: src.House.Instrument}, units)
}

// planned is what was planned of a run: what is kept beside it, or else what the batch
// gives today.
func (f recordFlags) planned(a *app, src *front.Source, batch, date, file string) (*blank.Planned, measure.Units, error) {
	b, err := src.Batch(batch, nil)
	if err != nil {
		return nil, 0, err
	}
	units := measure.US
	if b.Recipe != nil {
		units = measure.UnitsOf(b.Recipe.Units)
	}
	name := plannedBeside(file)
	if kept, err := keptPlan(name); kept != nil || err != nil {
		return kept, units, err
	}
	a.say("%s is not there: the batch is planned anew, as it stands now", name)
	if err := b.On(date); err != nil {
		return nil, 0, err
	}
	made := b.Plan()
	if made.Plan == nil {
		return nil, units, nil
	}
	bands.Put(made.Plan, made.Recipe)
	return blank.Of(made.Plan), units, nil
}
