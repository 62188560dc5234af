package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
	"newmake/compile/show/markup"
	"newmake/lang/sorting"
	"newmake/lang/words"
)

// view is what the templates see: the plan, and its steps laid out by the parts
// of the sheet.
type view struct {
	*plan.Plan
	Units  measure.Units
	Stale  bool
	Short  bool // two pages for the whole batch
	Style  markup.HTML
	Policy string

	DaysChart, MashChart, FermentChart, StripChart, SpiritChart, CaskChart chart.Chart
	FillingNotes                                                           int    // lines to write on below the casks
	WoodRows                                                               string // how high the rows of the samples are
	MashDay, FermentLog, Filling                                           part
	StripDays, SpiritDays                                                  []part              // one a charge
	MashOpposite, StripOpposite                                            bool                // its picture is opposite its steps
	blocks                                                                 map[string][]string // by page
	shortPages                                                             []shortPage         // once they are divided
}

// part is the steps of one part of the sheet.
type part struct {
	ID      string // of its element and of its pages
	Stage   string
	Caption string // of the table
	Charge  int    // of a still, from 1; 0 where there is one
	Columns []column
	Notes   int    // lines to write on below the steps
	Dated   bool   // the first step of each day says which
	Begin   *begin // what all its clocks hang on
	Days    []day
	Size    string  // of its rows: tall, or what fills the page
	Rows    float64 // how many are written in
	FixedMM float64 // about how much of its page the rest takes
}

// begin is the moment from which a part's clock counts, for those who are late.
type begin struct{ What, Planned string }

// Cells is how many columns the instruments take.
func (p part) Cells() int {
	n := 0
	for _, c := range p.Columns {
		n += c.Cells()
	}
	return n
}

// Date is the day of a part, or its first and last.
func (p part) Date() string {
	if len(p.Days) == 0 {
		return ""
	}
	first, last := p.Days[0].Date, p.Days[len(p.Days)-1].Date
	if first == last {
		return plan.Moment(first).Format("Mon 2 Jan 2006")
	}
	return plan.Moment(first).Format("2 Jan") + " to " + plan.Moment(last).Format("2 Jan 2006")
}

// day is the steps of one day, in order.
type day struct {
	Date  string // RFC 3339, of its first step
	Steps []step
}

func (v *view) fill() {
	p, u := v.Plan, v.Units
	v.DaysChart, v.MashChart, v.FermentChart = chart.Days(p, u), chart.Mash(p, u), chart.Ferment(p, u)
	v.StripChart, v.SpiritChart, v.CaskChart = chart.Strip(p, u), chart.Spirit(p, u), chart.Cask(p, u)
	v.MashDay = v.part("mash", "mash", "Steps of the mash day", func(s plan.Step) bool { return s.Stage == "mash" || setting(s) })
	v.MashDay.begins("first water", "mash.1")
	v.FermentLog = v.part("ferment", "ferment", "Readings of the ferment", func(s plan.Step) bool { return s.Stage == "ferment" && !setting(s) && !emptied(s) })
	v.FermentLog.begins("pitched", "ferment.run")
	v.StripDays = v.charges("strip", "Steps of the stripping run", p.Strip.Charges)
	v.SpiritDays = v.charges("spirit", "Steps of the spirit run", p.Spirit.Charges)
	v.Filling = v.part("filling", "fill", "Steps of reduction and filling", func(s plan.Step) bool { return s.Stage == "fill" })
	v.MashOpposite = v.weighMM()+figureMM+pxMM*float64(v.MashChart.H) <= pageMM
	if v.MashOpposite {
		v.sizes(&v.MashDay, 0, 1)
	} else {
		v.sizes(&v.MashDay, v.MashChart.H, 1)
	}
	v.sizes(&v.FermentLog, v.FermentChart.H, 3)
	v.StripOpposite = v.FermentLog.leftMM() >= figureHighMM(v.StripChart.H)
	if v.StripOpposite {
		v.FermentLog.Notes = 0
	}
	for i := range v.StripDays {
		chartPx := v.StripChart.H
		if v.StripOpposite || i > 0 {
			chartPx = 0
		}
		v.sizes(&v.StripDays[i], chartPx, 2)
	}
	for i := range v.SpiritDays {
		v.sizes(&v.SpiritDays[i], 0, 0) // its picture is opposite
	}
	v.sizes(&v.Filling, int((13+11*float64(p.Cask.Casks))/pxMM), 2) // the casks, below it
	v.Filling.Notes = 0
	v.settle()
	if v.fillingLeftMM()-v.blocksMM(v.blocks[onFilling]...) > notesMM {
		v.FillingNotes = 2
	}
}

// charges are the parts of a still, one a charge: what comes before the first is with the
// first, and what comes after the last with the last.
func (v *view) charges(stage, caption string, count int) []part {
	var out []part
	for i := range max(count, 1) {
		id, at := stage, 0
		if i > 0 {
			id = fmt.Sprintf("%s-%d", stage, i+1)
		}
		if count > 1 {
			at = i + 1
		}
		p := v.part(id, stage, caption, func(s plan.Step) bool {
			of := chargeOf(s)
			return (s.Stage == stage || stage == "strip" && emptied(s)) && (count <= 1 || of == i+1 || of == 0 && i == count-1)
		})
		p.Charge = at
		heat := stage + ".heat"
		if count > 1 {
			heat = fmt.Sprintf("%s.%d.heat", stage, i+1)
		}
		p.begins("heat on", heat)
		if len(p.Days) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// chargeOf is the charge that a step belongs to, from 1; 0 if it belongs to none alone.
func chargeOf(s plan.Step) int {
	if parts := strings.Split(s.ID, "."); len(parts) == 3 {
		n, _ := strconv.Atoi(parts[1])
		return n
	}
	return 0
}

// setting reports whether a step sets the fermenter, which ends the mash day.
func setting(s plan.Step) bool { return s.ID == "ferment.fill" || s.ID == "ferment.pitch" }

// emptied reports whether a step sees to the fermenter once the still has been charged
// from it, on strip day.
func emptied(s plan.Step) bool { return s.ID == "ferment.clean" }

func (v *view) part(id, stage, caption string, in func(plan.Step) bool) part {
	out := part{ID: id, Stage: stage, Caption: caption, Notes: 2, Columns: columnsOf(stage, v.Units)}
	numbers, said := v.numbers(), named{at: map[danger]bool{}}
	for _, s := range byRows(v.Schedule.Steps, in) {
		if n := len(out.Days); n == 0 || !measure.SameDay(out.Days[n-1].Date, s.Start) {
			out.Days = append(out.Days, day{Date: s.Start})
		}
		last := &out.Days[len(out.Days)-1]
		one := stepOf(s, &out, numbers, said)
		if n := len(last.Steps); n > 0 {
			one.AfterJug = jug(last.Steps[n-1].Step)
		}
		last.Steps = append(last.Steps, one)
	}
	out.Dated = len(out.Days) > 1
	for _, d := range out.Days {
		d.Steps[0].Dated = out.Dated
	}
	return out
}

// byRows are the steps of a part, so that the clocks of its rows run on: what a step has to
// read stands below it, by the clock of its end, so that what is done beside it and begins with
// it goes before.
func byRows(all []plan.Step, in func(plan.Step) bool) []plan.Step {
	var out []plan.Step
	for _, s := range all {
		if !in(s) {
			continue
		}
		out = append(out, s)
		if last := len(out) - 1; emptied(s) && last > 0 && out[last-1].Start == s.Start && len(out[last-1].Read) > 0 {
			out[last-1], out[last] = out[last], out[last-1]
		}
	}
	return out
}

// begins finds the step that a part's clock counts from.
func (p *part) begins(what, id string) {
	for _, d := range p.Days {
		for _, s := range d.Steps {
			if s.ID == id {
				p.Begin = &begin{what, measure.Clock(s.Start)}
			}
		}
	}
}

// numbers are the dangers of the plan by their keys, counted as the last page lists them.
func (v *view) numbers() map[string]care {
	out := map[string]care{}
	for i, c := range v.Cautions {
		out[c.Key] = care{i + 1, c.Title}
	}
	return out
}

// Sections are the parts of the sheet as the heads of their pages have them.
func (v *view) Sections() []section {
	if v.Short {
		return v.shortSections()
	}
	out := []section{{"weigh", "weigh out", ""}}
	add := func(p part, what string) {
		if len(p.Days) == 0 {
			return
		}
		if p.Charge > 0 {
			what += fmt.Sprintf(", charge %d", p.Charge)
		}
		out = append(out, section{p.ID, what, p.Date()})
	}
	add(v.MashDay, "mash day")
	add(v.FermentLog, "ferment log")
	for _, p := range v.StripDays {
		add(p, "strip day")
	}
	opposite := section{ID: "opposite", What: "cautions"}
	if len(v.SpiritDays) > 0 {
		opposite = section{"opposite", "cautions", v.SpiritDays[0].Date()}
	}
	out = append(out, opposite)
	for _, p := range v.SpiritDays {
		add(p, "spirit day")
	}
	add(v.Filling, "reduce and fill")
	if v.Card != nil {
		out = append(out, section{"card", "proofing card", v.Filling.Date()})
	}
	if len(v.Cask.Forecast) > 0 {
		what := "years in wood"
		if slices.Contains(v.blocks[onWood], law) {
			what += ", the law"
		}
		out = append(out, section{"wood", what, ""})
	}
	if len(v.blocks[onClosing]) > 0 {
		out = append(out, section{"closing", "the law", ""})
	}
	for i := range out {
		if out[i].Date == "" {
			out[i].Date = measure.Date(v.Batch.Start)
		}
	}
	return out
}

// section is a part of the sheet: the name of its pages, what it is, and its day.
type section struct{ ID, What, Date string }

// Days is the work day by day, for the cover.
func (v *view) Days() []workDay {
	var out []workDay
	for _, d := range v.Schedule.Days {
		w := workDay{Name: measure.Date(d.From), From: measure.Clock(d.From), To: measure.Clock(d.To), People: d.People}
		if !measure.SameDay(d.From, d.To) {
			w.To += " the next day"
		}
		for _, s := range d.Stages {
			w.What = strings.TrimPrefix(w.What+", "+stageNames[s], ", ")
		}
		if n := len(out); n > 0 && out[n-1].like(w) {
			out[n-1].Name = out[n-1].first + " to " + w.Name
			continue
		}
		w.first = plan.Moment(d.From).Format("Mon 2 Jan")
		out = append(out, w)
	}
	return out
}

// workDay is one day on which somebody is wanted.
type workDay struct {
	Name, From, To, What string
	People               int
	first                string // of days that are alike, the first
}

// like reports whether a day has the same work at the same hours.
func (d workDay) like(o workDay) bool {
	return d.From == o.From && d.To == o.To && d.What == o.What && d.People == o.People
}

var stageNames = map[string]string{
	"mash": "mash", "ferment": "ferment", "strip": "stripping run", "spirit": "spirit run", "fill": "reduce and fill", "cask": "rack",
}

// Fraction finds a fraction of the spirit run by name.
func (v *view) Fraction(name string) plan.Fraction {
	for _, r := range []plan.Run{v.Spirit, v.Strip} {
		for _, f := range r.Fractions {
			if f.Name == name {
				return f
			}
		}
	}
	return plan.Fraction{Name: name}
}

// In is where a stage is done: in the run that is opened, else as planned. Planned says
// that no run tells: then there is room for another vessel.
type in struct {
	Vessel  string
	Planned bool
}

// In is where a stage is done.
func (v *view) In(use string) in {
	planned := v.VesselOf(use).Name
	if v.Opened == nil {
		return in{planned, true}
	}
	for _, k := range v.Opened.Vessels {
		if k.Use == use {
			return in{k.Vessel, false}
		}
	}
	return in{planned, false}
}

// sampling is a day on which a cask is sampled, and what it should then hold.
type sampling struct {
	On string // 2026-09-12
	plan.CaskYear
}

// Samplings are the days on which the casks are sampled, each with the forecast of its
// month; at the end of the rest, with the last.
func (v *view) Samplings() []sampling {
	months := v.Cask.ByMonth
	if len(months) == 0 {
		return nil
	}
	var out []sampling
	for i, on := range v.Schedule.Samples {
		at := months[len(months)-1]
		if i < len(v.Schedule.Samples)-1 {
			years := float64(i+1) / 2 // twice a year
			for _, m := range months {
				if math.Abs(m.AgeYears-years) < 0.01 {
					at = m
				}
			}
		}
		out = append(out, sampling{on, at})
	}
	return out
}

// tank is a tank as the last page lists it, or those that share what waits in them.
type tank struct {
	plan.TankUse
	Name, What string
}

// Tanks are the tanks in which something of the batch waits.
func (v *view) Tanks() []tank {
	var out []tank
	for _, u := range v.Plant.Tanks {
		if u.MostL == 0 {
			continue
		}
		t := tank{u, strings.Join(u.Names, ", "), strings.ReplaceAll(words.And(u.For), "-", " ")}
		if len(u.For) > 1 {
			t.What += " together"
		}
		out = append(out, t)
	}
	return out
}

// Warnings are the notices that are more than notes: warnings, and promises that
// are not kept.
func (v *view) Warnings() []plan.Notice {
	var out []plan.Notice
	for _, n := range v.Notices {
		if n.Severity != "note" {
			out = append(out, n)
		}
	}
	return out
}

// coverWarnings is how many warnings a cover has room for.
const coverWarnings = 4

// FirstWarnings are those that stand on the cover: promises that are not kept first.
func (v *view) FirstWarnings() []plan.Notice {
	all := v.Warnings()
	sorting.Stable(all, func(a, b plan.Notice) int { return cmp.Compare(rank(a), rank(b)) })
	return all[:min(len(all), coverWarnings)]
}

// MoreWarnings is how many do not.
func (v *view) MoreWarnings() int { return max(len(v.Warnings())-coverWarnings, 0) }

func rank(n plan.Notice) int {
	if n.Severity == "error" {
		return 0
	}
	return 1
}
