package compile

import (
	"fmt"
	"slices"
	"strings"
	"time"
	_ "time/tzdata" // a plan must not hang on the machine's zones

	"newmake/compile/plan"
	"newmake/compile/stage/schedule"
	"newmake/lang/diag"
)

// stands is how long the wash is in the fermenter by the clock, which the work up
// to the wash run tells. Where there is no clock it is as long as it ferments.
func (c *compiler) stands() float64 {
	zone, err := time.LoadLocation(c.b.Plant.Zone)
	if err != nil {
		return c.fermentS()
	}
	s := c.b.Start
	start, err := schedule.Civil(s.Year, s.Month, s.Day, s.Hour, s.Minute, zone)
	if err != nil {
		return c.fermentS()
	}
	line, _ := c.split()
	for _, slot := range schedule.Run(schedule.Input{Start: start, Shift: c.b.Plant.Shift, Crew: c.b.Plant.Crew, Zone: zone, Tasks: tasks(line)}) {
		if slot.Key == "ferment.run" {
			return slot.End.Sub(slot.Start).Seconds()
		}
	}
	return c.fermentS()
}

// schedule puts the work on the clock.
func (c *compiler) schedule() bool {
	p := c.b.Plant
	zone, err := time.LoadLocation(p.Zone)
	if err != nil || p.Zone == "Local" {
		c.tell(diag.Diagnostic{
			Code: diag.CodeUnknownZone, At: p.At, Summary: fmt.Sprintf("the zone %q is not known", p.Zone),
			Help: `write a name like "America/New_York" or "Europe/London"`,
		})
		return false
	}
	s := c.b.Start
	start, err := schedule.Civil(s.Year, s.Month, s.Day, s.Hour, s.Minute, zone)
	if err != nil {
		c.tell(diag.Diagnostic{
			Code: diag.CodeNoSuchStart, At: c.where("start"), Summary: fmt.Sprintf("the start is not one moment in %s: %v", p.Zone, err),
			Help: "start an hour earlier or later",
		})
		return false
	}
	main, beside := c.split()
	slots := schedule.Run(schedule.Input{Start: start, Shift: p.Shift, Crew: p.Crew, Zone: zone, Tasks: tasks(main)})
	steps := make([]plan.Step, 0, 2*len(slots))
	for i, slot := range slots {
		steps = append(steps, c.step(main[i], slot))
		if slot.Key == "ferment.run" {
			steps = append(steps, c.rounds(slot, zone)...)
		}
	}
	all := slices.Clone(slots)
	for _, w := range beside {
		at := slices.IndexFunc(all, func(s schedule.Slot) bool { return s.Key == w.after })
		if at < 0 {
			continue
		}
		slot := schedule.Run(schedule.Input{Start: all[at].End, Shift: p.Shift, Zone: zone, Tasks: []schedule.Task{w.Task}})[0]
		all = append(all, slot)
		steps = append(steps, c.step(w, slot))
	}
	slices.SortStableFunc(steps, func(a, b plan.Step) int { return plan.Moment(a.Start).Compare(plan.Moment(b.Start)) })
	c.p.Batch.Start = rfc3339(start)
	c.p.Schedule = scheduleOf(steps, slots, start)
	c.p.Schedule.Vessels = occupancy(all)
	c.scheduleTold(all)
	c.costWork()
	return true
}

// split parts the line of work from what is done beside it.
func (c *compiler) split() (line, beside []work) {
	for _, w := range c.work {
		if w.after != "" {
			beside = append(beside, w)
		} else {
			line = append(line, w)
		}
	}
	return line, beside
}

func tasks(all []work) []schedule.Task {
	out := make([]schedule.Task, len(all))
	for i, w := range all {
		out[i] = w.Task
	}
	return out
}

var attendWords = map[schedule.Attend]string{
	schedule.Unattended: plan.Alone, schedule.Begin: plan.Begin, schedule.Throughout: plan.Throughout,
}

// step is a piece of work on the clock, as the run sheet has it.
func (c *compiler) step(w work, s schedule.Slot) plan.Step {
	out := plan.Step{
		ID: s.Key, Stage: s.Stage, Vessel: s.Vessel, Start: rfc3339(s.Start), End: rfc3339(s.End),
		DurationMin: s.End.Sub(s.Start).Minutes(), Do: w.do, Attend: attendWords[s.Attend], Cautions: w.cautions,
		WaitMin: s.Wait.Minutes(), WaitWhy: s.WaitWhy, OutOfShift: s.OutOfShift.Minutes(), Line: c.line(w.path),
	}
	if s.Attend != schedule.Unattended {
		out.People = max(s.People, 1)
	}
	for _, r := range w.read {
		if r.atS >= 0 {
			r.At = rfc3339(s.Start.Add(time.Duration(r.atS * float64(time.Second))))
		}
		out.Read = append(out.Read, r.Reading)
	}
	return out
}

func scheduleOf(steps []plan.Step, slots []schedule.Slot, start time.Time) plan.Schedule {
	out := plan.Schedule{Start: rfc3339(start), Steps: steps}
	end := start
	for _, s := range slots {
		if s.Stage != "cask" && s.End.After(end) {
			end = s.End
		}
		out.OutOfShiftH += s.OutOfShift.Hours()
	}
	out.End, out.ElapsedHours = rfc3339(end), end.Sub(start).Hours()
	for _, s := range steps {
		hours := s.DurationMin / 60
		if s.Attend == plan.Begin {
			hours = min(hours, 0.25)
		}
		out.PeopleHours += hours * float64(s.People)
	}
	return out
}

// occupancy is each vessel's time, until it is clean again.
func occupancy(slots []schedule.Slot) []plan.Occupancy {
	out := []plan.Occupancy{}
	for _, u := range schedule.Occupancy(slots) {
		out = append(out, plan.Occupancy{
			Vessel: u.Vessel, Use: u.Stage, From: rfc3339(u.From), To: rfc3339(u.To), Hours: u.To.Sub(u.From).Hours(),
		})
	}
	return out
}

// scheduleTold says what of the work does not fall as one would like.
func (c *compiler) scheduleTold(slots []schedule.Slot) {
	if first := slots[0]; first.Wait > 0 {
		c.tell(diag.Diagnostic{
			Code: diag.CodeStartWaits, At: c.where("start"),
			Summary: fmt.Sprintf("work begins at %s, not as written: %s", first.Start.Format("Mon 2 Jan 15:04"), first.WaitWhy),
			Help:    "start on a working day, early enough for the whole mash day",
		})
	}
	over := map[string]time.Duration{}
	var stages []string
	for _, s := range slots {
		if s.OutOfShift > 0 {
			if over[s.Stage] == 0 {
				stages = append(stages, s.Stage)
			}
			over[s.Stage] += s.OutOfShift
		}
		if s.Key == "strip.charge" && s.Wait.Seconds() > standsLongS {
			c.tell(diag.Diagnostic{
				Code: diag.CodeStandsLong, At: c.where("ferment.for", "ferment"),
				Summary: fmt.Sprintf("the wash stands for %.0f h before it is run: %s", s.Wait.Hours(), s.WaitWhy),
				Help:    "change the start or the time of the ferment", Reason: "it goes on souring, and loses alcohol to the air",
			})
		}
	}
	for _, stage := range stages {
		c.tell(diag.Diagnostic{
			Code: diag.CodeOutOfShift, At: c.where(stage, "start"),
			Summary: fmt.Sprintf("%.1f h of the %s lie outside the shift", over[stage].Hours(), stage),
			Help:    "a longer shift that day, more heat or cooling, or a smaller batch",
			Reason:  "the work cannot be left half done",
		})
	}
	for _, k := range schedule.Conflicts(slots, c.b.Plant.Crew, c.b.Plant.BoilerW) {
		c.conflict(k)
	}
}

func (c *compiler) conflict(k schedule.Conflict) {
	at := k.From.Format("Mon 2 Jan 15:04")
	what := workNames(k.Keys)
	switch k.Kind {
	case schedule.Crew:
		c.tell(diag.Diagnostic{
			Code: diag.CodeCrewShort, At: c.where("start"),
			Summary: fmt.Sprintf("%s: %s: %.0f people are wanted, and the crew is %.0f", at, what, k.Need, k.Have),
			Help:    "have somebody in that day",
		})
	case schedule.Boiler:
		c.tell(diag.Diagnostic{
			Code: diag.CodeBoilerShared, At: c.where("start"),
			Summary: fmt.Sprintf("%s: %s: %s are wanted together, and the boiler gives %s", at, what, c.say.Power(k.Need/1000), c.say.Power(k.Have/1000)),
			Help:    "run them one after the other",
		})
	case schedule.Vessel:
		c.tell(diag.Diagnostic{
			Code: diag.CodeVesselTaken, At: c.where("start"), Summary: fmt.Sprintf("%s: %q is wanted by %s at once", at, k.Vessel, what),
			Help: "use another vessel",
		})
	}
}

// workNames says what work is going on, once each.
func workNames(keys []string) string {
	var out []string
	for _, key := range keys {
		if name := workName(key); !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return strings.Join(out, " and ")
}

// workName is a piece of work in words.
func workName(key string) string {
	switch stage, what, _ := strings.Cut(key, "."); {
	case key == "mash.clean":
		return "cleaning the cooker"
	case key == "mash.draff":
		return "digging out the draff"
	case key == "ferment.clean":
		return "cleaning the fermenter"
	case what == "clean":
		return "cleaning the still"
	case stage == "strip":
		return "the wash run"
	case stage == "spirit":
		return "the spirit run"
	case key == "ferment.fill", key == "ferment.pitch":
		return "setting the ferment"
	case stage == "fill" && what == "cask":
		return "filling the casks"
	case stage == "fill":
		return "gauging and reducing"
	default:
		return "the " + stage
	}
}

// rfc3339 writes a time as the sheet has it: to the minute.
func rfc3339(t time.Time) string { return t.Round(time.Minute).Format(time.RFC3339) }
