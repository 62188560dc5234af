package compare

import (
	"strings"

	"newmake/compile/plan"
)

// Moment is a time of the work that a distiller plans a day around.
type Moment struct {
	Key   string  `json:"key"`
	Name  string  `json:"name"`
	Old   string  `json:"old,omitempty"` // RFC 3339, in the plant's zone
	New   string  `json:"new,omitempty"`
	Hours float64 `json:"changeHours"`
}

// moments are the ones that are compared, by the step that begins or ends then.
var moments = []struct {
	key, name, stage, step string
	end                    bool
}{
	{"pitch", "yeast pitched", "ferment", "pitch", false},
	{"stripFrom", "wash still: stand by from", "strip", "heat", false},
	{"stripTo", "wash still: until", "strip", "stop", true},
	{"spiritFrom", "spirit still: stand by from", "spirit", "heat", false},
	{"heartsFrom", "turn to the hearts", "spirit", "hearts", false},
	{"heartsTo", "turn from the hearts", "spirit", "hearts", true},
	{"spiritTo", "spirit still: until", "spirit", "stop", true},
}

// momentsOf finds what moved. The last is the end of the work.
func momentsOf(old, new *plan.Plan) []Moment {
	var out []Moment
	add := func(key, name, a, b string) {
		if a == b {
			return
		}
		m := Moment{Key: key, Name: name, Old: a, New: b}
		if a != "" && b != "" {
			m.Hours = plan.RoundTo(plan.Moment(b).Sub(plan.Moment(a)).Hours(), 2)
		}
		out = append(out, m)
	}
	for _, m := range moments {
		add(m.key, m.name, when(old, m.stage, m.step, m.end), when(new, m.stage, m.step, m.end))
	}
	add("end", "the last cask is filled", old.Schedule.End, new.Schedule.End)
	return out
}

// when is a step's time. Of the charges of a run (strip.1.heat, strip.2.heat) it
// is the first one's start and the last one's end.
func when(p *plan.Plan, stage, step string, end bool) string {
	at := ""
	for _, s := range p.Schedule.Steps {
		if s.Stage != stage || !strings.HasPrefix(s.ID, stage+".") || !strings.HasSuffix(s.ID, "."+step) {
			continue
		}
		if !end {
			return s.Start
		}
		at = s.End
	}
	return at
}
