// Package weeks shows the plan of a season: on one screen, as a page with one picture
// of vessels, people and boiler, as sheets for the wall, as a calendar that updates in
// place, and as rows for a spreadsheet. It computes nothing.
package weeks

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// say speaks of a season.
type say struct {
	s *season.Season
	u measure.Units
}

func of(s *season.Season) say {
	u := measure.US
	if s.Units == "si" {
		u = measure.SI
	}
	return say{s, u}
}

// day is a date or a time as Tue 7 Apr.
func day(s string) string {
	if t := moment(s); !t.IsZero() {
		return t.Format("Mon 2 Jan")
	}
	return s
}

// moment reads a time or a date. A date is its midnight in UTC.
func moment(s string) time.Time {
	if len(s) == len(time.DateOnly) {
		t, _ := time.Parse(time.DateOnly, s)
		return t
	}
	return plan.Moment(s)
}

// dateOf is the day of a time, on its own clock.
func dateOf(s string) string {
	if len(s) < len(time.DateOnly) {
		return ""
	}
	return s[:len(time.DateOnly)]
}

// closed says that a day is closed, and why where that is said.
func closed(why string) string {
	if why == "" {
		return "closed"
	}
	return "closed, " + diag.Safe(why)
}

// span is the first and the last day of the season.
func (v say) span() string {
	from, to := moment(v.s.From), moment(v.s.To)
	if from.Year() == to.Year() {
		return from.Format("Mon 2 Jan") + " to " + to.Format("Mon 2 Jan 2006")
	}
	return from.Format("Mon 2 Jan 2006") + " to " + to.Format("Mon 2 Jan 2006")
}

// outcome is what comes of the season, in a line.
func (v say) outcome() string {
	m := v.s.Summary
	alcohol := fmt.Sprintf("%s proof gallons", measure.Number(m.ProofGallons, 0))
	if v.s.Units == "si" {
		alcohol = fmt.Sprintf("%s L of pure alcohol", measure.Number(m.PureAlcoholL, 0))
	}
	casks := words.Count(m.CasksFilled, "cask")
	if m.CasksAfter > 0 {
		casks += fmt.Sprintf(" (%d later)", m.CasksAfter)
	}
	return fmt.Sprintf("%s, %s, %s.", words.CountOf(m.Batches, "batch", "batches"), casks, alcohol)
}

// verdict says if what is asked for is met, and how much better a plan could be.
func (v say) verdict() string {
	if len(v.s.Tried) > 0 {
		return "Tried for this plan alone: " + diag.Safe(join(v.s.Tried)) + ". " + v.met()
	}
	return v.met()
}

// met is the verdict on the plan as it stands.
func (v say) met() string {
	missed := 0
	for _, d := range v.s.Demands {
		if !d.Met {
			missed++
		}
	}
	asked := "All that is asked for is met."
	switch {
	case len(v.s.Demands) == 0:
		return "Nothing is asked for."
	case missed > 0:
		asked = fmt.Sprintf("%s of what is asked for %s not met.", words.Count(missed, "line"), map[bool]string{true: "is", false: "are"}[missed == 1])
	}
	if len(v.s.LeftOut) > 0 {
		return asked + " Of the others: " + strings.ToLower(v.gap()[:1]) + v.gap()[1:]
	}
	return asked + " " + v.gap()
}

// gap says how far the plan is from the best that there can be.
func (v say) gap() string {
	g := v.s.Gap
	if g.Proved || g.Most <= g.Met {
		// What is proved is batches. How many casks they fill goes by what flows into them, too.
		if slices.ContainsFunc(v.s.Demands, func(d season.Demanded) bool { return !d.Met && d.Wanted == season.WantedCasks }) {
			return "Proved: no plan has more of these batches in time."
		}
		return "Proved best: no plan meets more."
	}
	text := fmt.Sprintf("At most %s more possible", words.CountOf(g.Most-g.Met, "batch is", "batches are"))
	if g.By != "" && g.By != season.ByDemand {
		text += "; what limits it is " + v.limit(g.By)
	}
	return text + "."
}

// limit is what stands in the way, in words.
func (v say) limit(by string) string {
	if w := map[string]string{
		"boiler": "the boiler", "crew": "the people who are there", "people": "the people who are there", "shift": "the hours of work", "shifts": "the hours of work",
		"demand": "what is asked for", "fermenter": "the fermenters", "fermenters": "the fermenters", "cooker": "the cooker", "still": "the stills", "wait": "how long a wash may stand", "days": "the days of the season", "dates": "the time that there is", "closed": "that the house is closed", season.ByBatch: "that its batch cannot be planned",
	}[by]; w != "" {
		return w
	}
	for _, x := range v.s.Vessels {
		if x.Name == by {
			return diag.Safe(by)
		}
	}
	return diag.Safe(by)
}

// wanted is a demand in words.
func (v say) wanted(d season.Demanded) string {
	of := diag.Safe(d.Batch)
	by := ""
	if d.By != "" {
		by = " by " + day(d.By)
	}
	switch d.Wanted {
	case "casks":
		if d.For != "" {
			by = " for " + diag.Safe(d.For) + by
		}
		return words.Count(d.Amount, "cask") + " of " + of + by
	case "days":
		return words.CountOf(d.Amount, "mash", "mashes") + " of " + of + " on the days that are named"
	}
	return words.CountOf(d.Amount, "mash", "mashes") + " of " + of + by
}

// comes is what comes of a demand.
func (v say) comes(d season.Demanded) string {
	if d.Met {
		text := "met"
		if d.When != "" {
			text += ", the last on " + day(d.When)
		}
		return text
	}
	text := fmt.Sprintf("NOT MET: %d of %d", d.Made, d.Amount)
	if d.Limit != "" {
		text += "; what limits it is " + v.limit(d.Limit)
	}
	switch {
	case d.Least == nil:
	case d.Enough:
		text += ". The least change that would do: " + v.thing(*d.Least)
	default:
		text += fmt.Sprintf(". Of what was tried, %s brings most, and is not enough", v.thing(*d.Least))
	}
	return text
}

// thing is one thing more, or a change of what is asked.
func (v say) thing(r season.Relief) string {
	n := measure.Number(r.Amount, 0)
	switch r.What {
	case "boiler":
		return n + " kW more from the boiler"
	case "crew":
		return words.CountOf(int(r.Amount), "person more", "people more")
	case "day":
		return "work on " + diag.Safe(r.Name)
	case season.Opened:
		return "no closure " + days(r)
	case season.Back:
		name := diag.Safe(r.Name)
		for _, x := range v.s.Closures {
			if x.Person == r.Name {
				return name + " there on all days"
			}
		}
		return name + " in use on all days"
	case "by":
		return fmt.Sprintf("%s later", words.Count(int(r.Amount), "day"))
	case "casks":
		return fmt.Sprintf("%s fewer", words.Count(int(r.Amount), "cask"))
	case "fermenter":
		return words.Count(int(r.Amount), "fermenter") + " more"
	}
	if r.Name != "" {
		return "a second " + diag.Safe(r.Name)
	}
	return "one " + diag.Safe(r.What) + " more"
}

// days are those of a closure.
func days(r season.Relief) string {
	from := moment(r.Name)
	if r.Amount <= 1 {
		return "on " + from.Format("Mon 2 Jan")
	}
	return "from " + from.Format("Mon 2 Jan") + " to " + from.AddDate(0, 0, int(r.Amount)-1).Format("Mon 2 Jan")
}

// brings is what one thing more would bring.
func brings(r season.Relief) string {
	var all []string
	if r.Batches > 0 {
		all = append(all, words.CountOf(r.Batches, "batch", "batches")+" more")
	}
	if r.WaitH >= 0.5 {
		all = append(all, measure.Hours(r.WaitH)+" less that a wash stands past its time")
	}
	if len(all) == 0 {
		return "nothing"
	}
	return words.And(all)
}

// relief is the line of a bottleneck.
func (v say) relief(r season.Relief) string {
	thing := v.thing(r)
	return strings.ToUpper(thing[:1]) + thing[1:] + " would bring " + brings(r) + "."
}

// bottleneck names the best of what one thing more would bring.
func (v say) bottleneck() string {
	if narrow := v.narrow(); narrow != "" {
		if v.s.Capacity > 0 {
			return fmt.Sprintf("%s, as far as was found. %s", v.room(), narrow)
		}
		return narrow
	}
	if len(v.s.Bottlenecks) == 0 {
		return ""
	}
	var tried []string
	for _, r := range v.s.Bottlenecks {
		tried = append(tried, v.thing(r))
	}
	return "No bottleneck: " + words.Or(tried) + " would bring no batch more of those that are asked for."
}

// narrow names the bottleneck alone, "" where there is none.
func (v say) narrow() string {
	for _, r := range v.s.Bottlenecks {
		if r.Batches > 0 || r.WaitH >= 0.5 {
			return "The bottleneck: " + v.thing(r) + " would bring " + brings(r) + "."
		}
	}
	return ""
}

// room is how many batches these weeks have room for from the mash to the cask, and how
// many of the plan are filled later.
func (v say) room() string {
	text := "These weeks have room for " + words.CountOf(v.s.Capacity, "batch", "batches") + " from mash to cask"
	late := 0
	for _, r := range v.s.Runs {
		if r.Filled != "" && dateOf(r.Filled) > v.s.To {
			late++
		}
	}
	if late > 0 {
		text += fmt.Sprintf(" (%d of the %d %s filled later)", late, len(v.s.Runs), map[bool]string{true: "is", false: "are"}[late == 1])
	}
	return text
}

// mashDays are the days of the week on which a batch can be mashed.
func mashDays(w season.Weekdays) []string {
	var can []string
	for _, d := range w.Days {
		if d.Can {
			can = append(can, d.Day[:min(3, len(d.Day))])
		}
	}
	return can
}

// mashable says on which days of the week a batch can be mashed at all.
func mashable(w season.Weekdays) string {
	can := mashDays(w)
	why := map[string][]string{}
	var order []string
	for _, d := range w.Days {
		short := d.Day[:min(3, len(d.Day))]
		if d.Can {
			continue
		}
		if why[d.Why] == nil {
			order = append(order, d.Why)
		}
		why[d.Why] = append(why[d.Why], short)
	}
	text := diag.Safe(w.Batch) + " can be mashed on " + words.And(can)
	if len(can) == 0 {
		text = diag.Safe(w.Batch) + " can be mashed on no day of the week"
	}
	for _, reason := range order {
		text += "; not on " + words.Or(why[reason])
		if reason != "" {
			text += ": " + diag.Safe(reason)
		}
	}
	return text + "."
}

// conflict is a conflict in words.
func (v say) conflict(c season.Conflict) string {
	var runs []string
	seen := map[string]bool{}
	for _, m := range c.Tasks {
		if !seen[m.Run] {
			seen[m.Run] = true
			runs = append(runs, diag.Safe(v.run(m.Run)))
		}
	}
	when := measure.DayAndClock(c.From) + " to " + measure.DayAndClock(c.To)
	of := words.And(runs)
	switch c.Kind {
	case "vessel":
		return fmt.Sprintf("%s is wanted by %s at one time, %s", diag.Safe(c.Vessel), of, when)
	case "boiler":
		return fmt.Sprintf("%s kW are wanted of the boiler, which gives %s, %s: %s", measure.Number(c.Need, 0), measure.Number(c.Have, 0), when, of)
	case "crew":
		return fmt.Sprintf("%s are wanted and %s there, %s: %s", words.CountOf(int(c.Need), "person", "people"), words.CountOf(int(c.Have), "is", "are"), when, of)
	case "shift":
		return fmt.Sprintf("work falls out of the shift, %s: %s", when, of)
	case "wait":
		return fmt.Sprintf("a wash stands longer than it may, %s: %s", when, of)
	}
	return fmt.Sprintf("%s, %s: %s", diag.Safe(c.Kind), when, of)
}

// inTheWay is what stands first, for it is not as it should be: conflicts, and batches that
// are left out.
func (v say) inTheWay() []string {
	out := v.leftOut()
	for _, c := range v.s.Conflicts {
		out = append(out, v.conflict(c))
	}
	return out
}

// leftOut says of each batch that is not planned why, and what of it is in the house.
func (v say) leftOut() []string {
	var out []string
	for _, l := range v.s.LeftOut {
		text := fmt.Sprintf("%s cannot be planned: %s", diag.Safe(l.Batch), diag.Safe(l.Why))
		if n := len(l.Runs); n > 0 {
			text += fmt.Sprintf("; its %s, begun, %s left out, and what %s in is taken to be free", "run"+map[bool]string{true: "s"}[n > 1]+" "+diag.Safe(words.And(l.Runs)),
				map[bool]string{true: "are", false: "is"}[n > 1], map[bool]string{true: "they stand", false: "it stands"}[n > 1])
		}
		out = append(out, text)
	}
	return out
}

// run names a run: its number with its batch.
func (v say) run(number string) string {
	for _, r := range v.s.Runs {
		if r.Number == number {
			return "run " + number + " (" + r.Batch + ")"
		}
	}
	return "run " + number
}

// changeSaid is something that is otherwise than printed.
func changeSaid(c season.Change) string {
	name := diag.Safe("run " + c.Run + " of " + c.Batch)
	switch {
	case c.What == "dropped":
		return name + " is dropped"
	case c.What == "new":
		return name + " is new, on " + day(c.Is)
	}
	return fmt.Sprintf("%s: %s on %s, was %s", name, diag.Safe(c.What), measure.DayAndClock(c.Is), measure.DayAndClock(c.Was))
}

// letters gives each batch a letter, in the order in which the season names them.
func (v say) letters() (of map[string]rune, order []string) {
	of = map[string]rune{}
	add := func(batch string) {
		if _, ok := of[batch]; !ok && len(order) < 26 {
			of[batch] = 'A' + rune(len(order))
			order = append(order, batch)
		}
	}
	for _, d := range v.s.Demands {
		add(d.Batch)
	}
	for _, r := range v.s.Runs {
		add(r.Batch)
	}
	return of, order
}

// stageWords are the stages as one speaks of them on a wall.
var stageWords = map[string]string{"mash": "mash", "ferment": "ferment", "strip": "stripping run", "spirit": "spirit run", "fill": "fill casks"}

func stageWord(name string, cleaning bool) string {
	if cleaning {
		return "clean after the " + stageWord(name, false)
	}
	if w := stageWords[name]; w != "" {
		return w
	}
	return diag.Safe(name)
}
