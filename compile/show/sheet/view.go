package sheet

import (
	"html/template"
	"strings"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show/chart"
)

// view is what the templates see: the plan, and its steps laid out by the parts
// of the sheet.
type view struct {
	*plan.Plan
	Units  measure.Units
	Stale  bool
	Style  template.HTML
	Policy string

	DaysChart, MashChart, FermentChart, StripChart, SpiritChart, CaskChart chart.Chart
	MashDay, FermentLog, StripDay, SpiritDay, Filling, Wood                part
}

// part is the steps of one part of the sheet.
type part struct {
	Caption string // of the table
	Notes   int    // lines to write on below the steps
	Dated   bool   // each step says its day; otherwise each day has a heading
	Days    []day
}

// day is the steps of one day, in order.
type day struct {
	Name  string
	Steps []plan.Step
}

func (v *view) fill() {
	p, u := v.Plan, v.Units
	v.DaysChart, v.MashChart, v.FermentChart = chart.Days(p, u), chart.Mash(p, u), chart.Ferment(p, u)
	v.StripChart, v.SpiritChart, v.CaskChart = chart.Strip(p, u), chart.Spirit(p, u), chart.Cask(p, u)
	v.MashDay = v.part("Steps of the mash day", func(s plan.Step) bool { return s.Stage == "mash" || setting(s) })
	v.FermentLog = v.part("Readings of the ferment", func(s plan.Step) bool { return s.Stage == "ferment" && !setting(s) && !emptied(s) })
	v.FermentLog.Dated, v.FermentLog.Notes = true, 1
	v.StripDay = v.part("Steps of the stripping run", func(s plan.Step) bool { return s.Stage == "strip" || emptied(s) })
	v.SpiritDay = v.part("Steps of the spirit run", func(s plan.Step) bool { return s.Stage == "spirit" })
	v.Filling = v.part("Steps of reduction and filling", func(s plan.Step) bool { return s.Stage == "fill" })
	v.Filling.Notes = 0 // below the casks
	v.Wood = v.part("Steps in the rack house", func(s plan.Step) bool { return s.Stage == "cask" })
}

// setting says if a step sets the fermenter, which ends the mash day.
func setting(s plan.Step) bool { return s.ID == "ferment.fill" || s.ID == "ferment.pitch" }

// emptied says if a step sees to the fermenter once the still has been charged
// from it, on strip day.
func emptied(s plan.Step) bool { return s.ID == "ferment.clean" }

func (v *view) part(caption string, in func(plan.Step) bool) part {
	out := part{Caption: caption, Notes: 2}
	for _, s := range v.Schedule.Steps {
		if !in(s) {
			continue
		}
		name := measure.LongDate(s.Start)
		if n := len(out.Days); n == 0 || out.Days[n-1].Name != name {
			out.Days = append(out.Days, day{Name: name})
		}
		last := &out.Days[len(out.Days)-1]
		last.Steps = append(last.Steps, s)
	}
	return out
}

// Days is the work day by day, for the cover.
func (v *view) Days() []workDay {
	var out []workDay
	for _, d := range v.Schedule.Days {
		w := workDay{Name: measure.LongDate(d.From), From: measure.Clock(d.From), To: measure.Clock(d.To), People: d.People}
		if !measure.SameDay(d.From, d.To) {
			w.To += " the next day"
		}
		for _, s := range d.Stages {
			w.What = strings.TrimPrefix(w.What+", "+stageNames[s], ", ")
		}
		out = append(out, w)
	}
	return out
}

// workDay is one day on which somebody is wanted.
type workDay struct {
	Name, From, To, What string
	People               int
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

// VesselOf is the vessel of a use.
func (v *view) VesselOf(use string) plan.Vessel {
	for _, k := range v.Plant.Vessels {
		if k.Use == use {
			return k
		}
	}
	return plan.Vessel{}
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
