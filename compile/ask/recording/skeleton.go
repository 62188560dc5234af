// Package recording opens the record of a run and fills it: the skeleton that a plan
// gives, what a person types visit by visit, and the sheet's table once it has been
// filled in. It changes texts; it writes no file and asks nobody.
package recording

import (
	"fmt"
	"strings"

	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/record"
)

// Head is what a run is called and of.
type Head struct {
	Number string
	Batch  string
	Date   string // 2026-03-03
	Sheet  string // the sheet's foot; "" if there is none
}

// Skeleton is the text of a run in which nothing has been read yet: a line for each
// visit, with the words of what to read there. What the plan says, and when, stands in
// the remarks alone, so that nothing planned can be taken for what happened.
func Skeleton(h Head, p *blank.Planned, u measure.Units) ([]byte, error) {
	s := &skeleton{u: u}
	s.line("run %s of %s on %s {", quoted(h.Number), quoted(h.Batch), h.Date)
	if h.Sheet != "" {
		s.line("sheet %s", quoted(h.Sheet))
	}
	s.used(p)
	for _, stage := range record.StageNames {
		s.stage(stage, p)
	}
	s.line("}")
	out, list := lang.Format(diag.NewSource("record", []byte(s.b.String())))
	if list.HasErrors() {
		return nil, list
	}
	return out, nil
}

type skeleton struct {
	u measure.Units
	b strings.Builder
}

func (s *skeleton) line(format string, args ...any) { fmt.Fprintf(&s.b, format+"\n", args...) }

// quoted is a name as it is written.
func quoted(name string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`, "\t", `\t`).Replace(name) + `"`
}

// name is a name with quotes only where it needs them.
func name(text string) string {
	if f, list := lang.Parse(diag.NewSource("name", []byte(text))); len(list) == 0 && len(f.Stmts) == 1 && len(f.Stmts[0].Items) == 1 && f.Stmts[0].Items[0].Kind == lang.Word {
		return text
	}
	return quoted(text)
}

// used has a line for each thing to weigh out that goes into the batch; what is read as it
// is put in, as the water to reduce with, has its line there.
func (s *skeleton) used(p *blank.Planned) {
	s.line("used {")
	for _, b := range p.Blanks {
		if b.Stage == plan.Used && b.Step != "fill.reduce" && b.Step != "fill.soak" {
			s.line("%s  # %s", name(b.What), s.u.Quantity(b.Should))
		}
	}
	s.line("}")
}

// stage writes a block with a line for each visit of its vessel.
func (s *skeleton) stage(stage record.StageName, p *blank.Planned) {
	visits := visitsOf(stage, p)
	if len(visits) == 0 {
		return
	}
	vessel := ""
	for _, v := range visits {
		if v.blanks[0].Vessel != "" {
			vessel = v.blanks[0].Vessel
			break
		}
	}
	if vessel != "" && stage != record.Fill {
		s.line("%s in %s {", stage, quoted(vessel))
	} else {
		s.line("%s {", stage)
	}
	day := ""
	casks := func() {
		if due, values := caskOf(p, s.u); values != "" && stage == record.Fill {
			s.line("# a line for each cask, planned %s %s: into \"its serial\" %s", due[:len("2026-03-03")], measure.Clock(due), values)
		}
	}
	for i, v := range visits {
		if v.word == "left" {
			casks()
			casks = func() {}
		}
		due := v.blanks[0].Due
		when := ""
		if on := due[:len("2026-03-03")]; v.word == "" || on != day && (stage != record.Mash || i > 0) {
			when, day = on+" ", on
		} else {
			day = on
		}
		var labels, should []string
		for _, b := range v.blanks {
			labels = append(labels, string(b.Kind))
			should = append(should, asTyped(s.u.Quantity(b.Should)))
		}
		s.line("%s%s %s  # planned %s: %s", when, v.word, strings.Join(labels, ", "), measure.Clock(due), strings.Join(should, ", "))
	}
	casks()
	s.line("}")
}

// filling is the step in which casks are filled.
const filling = "fill.cask"

// caskOf is when casks are to be filled, and what is to be written of each behind its serial, as
// planned; nothing where none are.
func caskOf(p *blank.Planned, u measure.Units) (due, values string) {
	should := map[string]plan.Quantity{}
	for _, b := range p.Blanks {
		if b.Step != filling {
			continue
		}
		if due = b.Due; b.Kind == record.Volume {
			values = u.Quantity(b.Should)
		}
		should[b.What] = b.Should
	}
	if gross, net := should["gross"], should["net"]; values != "" && gross.Value > net.Value {
		values += ", tare " + u.Quantity(plan.Of(gross.Value-net.Value, plan.Kilogram)) + ", gross " + u.Quantity(gross)
	}
	return due, values
}

// asTyped is a quantity in the order in which it is written in a record: 5.2 pH.
func asTyped(should string) string {
	if number, ok := strings.CutPrefix(should, "pH "); ok {
		return number + " pH"
	}
	return should
}

// visit is one visit of a vessel, as a plan has it.
type visit struct {
	word   string // with the names that belong to it; "" of a round
	blanks []plan.Blank
}

// visitsOf parts the blanks of a stage into visits: those of one step and one time.
func visitsOf(stage record.StageName, p *blank.Planned) []visit {
	var out []visit
	step, due := "", ""
	for _, b := range p.Blanks {
		if b.Stage != string(stage) {
			continue
		}
		if b.Step == step && b.Due == due {
			last := &out[len(out)-1]
			last.blanks = append(last.blanks, b)
			continue
		}
		word, ok := wordOf(b, p)
		if !ok {
			continue
		}
		if step, due = b.Step, b.Due; b.Step == "fill.reduce" {
			for _, w := range p.Blanks {
				if w.Stage == plan.Used && w.Step == b.Step {
					w.Due = b.Due
					out = append(out, visit{"reduce", []plan.Blank{w}})
				}
			}
		}
		out = append(out, visit{word, []plan.Blank{b}})
	}
	return out
}

// wordOf is the word that a visit of a record begins with, for the step of a plan.
func wordOf(b plan.Blank, p *blank.Planned) (string, bool) {
	hourly := b.ID != b.Step+"."+string(b.Kind)
	step := b.Step[strings.LastIndex(b.Step, ".")+1:]
	switch b.Stage {
	case "mash":
		nth := map[string]int{}
		for _, m := range p.Mash {
			nth[m.Verb]++
			if m.ID != b.Step {
				continue
			}
			if m.Verb == "add" || m.Verb == "dose" {
				var names []string
				for _, a := range m.Adds {
					names = append(names, name(a))
				}
				return m.Verb + " " + strings.Join(names, ", "), len(names) > 0
			}
			return m.Verb, true
		}
		return "", false
	case "ferment":
		switch step {
		case "fill":
			return "pump", true
		case "pitch":
			return "pitch", true
		}
		return "", strings.HasPrefix(b.Step, "ferment.round.")
	case "strip", "spirit":
		word, known := map[string]string{
			"charge": "charge", "heat": "first-drop", "collect": "off", "foreshots": "to heads", "heads": "to hearts", "hearts": "to tails", "tails": "off",
			"stop": map[string]string{"strip": "low-wines", "spirit": "feints"}[b.Stage],
		}[step]
		if hourly {
			return "", known
		}
		return word, known
	case "fill":
		word, known := map[string]string{"gauge": "hearts", "reduce": "gauge", "keep": "left"}[step]
		return word, known
	}
	return "", false
}
