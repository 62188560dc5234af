package recording

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// Page is the text of a run beside what was planned of it.
type Page struct {
	Text    []byte
	Name    string // of its file, for what is said of it
	Run     *record.Run
	Diags   diag.List
	Planned *blank.Planned

	casks  int // offset at which a line of a cask is put in; -1 if nothing is filled
	number string
	around logbook.Around
	units  measure.Units
}

// Line is a visit, or a weight, that has blanks.
type Line struct {
	What   string // "mash: heat", "used: corn"
	Blanks []Room
	At     diag.Span // of the line
	Timed  bool      // it may have a clock, and has none
	Goes   bool      // it is to say into which tank it went, and does not

	stage record.StageName
	word  string
}

// Room is one blank on a line: a word that stands there without a value.
type Room struct {
	Blank *plan.Blank // nil of a word that no blank of the plan asks for
	Kind  record.What
	At    diag.Span
}

// Read reads the text in which a run stands.
func Read(name string, text []byte, number string, planned *blank.Planned, around logbook.Around, u measure.Units) (*Page, error) {
	p := &Page{Text: text, Name: name, Planned: planned, number: number, around: around, units: u}
	src := diag.NewSource(name, text)
	file, list := lang.Parse(src)
	nodes, _ := tree.Declarations(file.Stmts, nil, &list)
	for _, n := range nodes {
		if n.Field != schema.Run || tree.Key(n.Text("name")) != tree.Key(number) {
			continue
		}
		var said diag.List
		p.casks = -1
		for _, l := range n.Lines {
			if l.Field.Name == string(record.Fill) && l.Stmt.Block != nil {
				p.casks = strings.LastIndexByte(string(text[:l.Whole().End-1]), '\n') + 1
			}
		}
		p.Run, said = logbook.Run(n, around)
		list = append(list, said...)
	}
	list.Sort()
	p.Diags = list
	if p.Run == nil && list.HasErrors() { // the text could not be read so far
		return nil, list
	}
	if p.Run == nil {
		return nil, diag.Refuse("%s has no run %q", name, number)
	}
	return p, nil
}

// Lines are the lines that have blanks, in the order of the sheet.
func (p *Page) Lines() []Line {
	of := map[diag.Span]*plan.Blank{}
	if p.Planned != nil {
		filled := blank.Match(p.Planned, p.Run)
		for _, a := range filled.Blank {
			of[a.Reading.Place] = a.Blank
		}
	}
	var out []Line
	for i := range p.Run.Used {
		u := &p.Run.Used[i]
		if u.Amount.State == record.Blank {
			end := diag.Span{Src: u.At.Src, Start: u.At.End, End: u.At.End}
			out = append(out, Line{What: "used: " + u.What, At: u.At, Blanks: []Room{{of[u.Amount.Place], u.Amount.What, end}}})
		}
	}
	for i := range p.Run.Visits {
		v := &p.Run.Visits[i]
		l := Line{What: p.called(v), At: v.At, Timed: v.When.Clock == "", Goes: v.Word == "left" && v.To == "", stage: p.Run.Stages[v.Stage].Name, word: v.Word}
		for j := range v.Read {
			if o := &v.Read[j]; o.State == record.Blank {
				l.Blanks = append(l.Blanks, Room{of[o.Place], o.What, o.Place})
			}
		}
		if len(l.Blanks) > 0 {
			out = append(out, l)
		}
	}
	return out
}

// called is a visit in words.
func (p *Page) called(v *record.Visit) string {
	words := []string{string(p.Run.Stages[v.Stage].Name) + ":"}
	if v.Word != "" {
		words = append(words, v.Word)
	}
	if v.Word == "to" {
		words = append(words, v.Of)
	}
	if v.Nth > 1 && len(v.Names) == 0 && p.Run.Stages[v.Stage].Name == record.Mash {
		words = append(words, fmt.Sprint(v.Nth))
	}
	words = append(words, strings.Join(v.Names, ", "))
	if v.Word == "" {
		words = append(words, "on "+v.When.Date.String())
	}
	return strings.TrimSpace(strings.Join(words, " "))
}

// TakesCasks reports whether a cask can be written down: the run has come to its filling, and none is
// there yet, or more may be; and that not something else than casks is to be filled.
func (p *Page) TakesCasks() bool { return p.casks >= 0 && (p.Planned == nil || p.fillsCasks()) }

func (p *Page) fillsCasks() bool {
	return slices.ContainsFunc(p.Planned.Blanks, func(b plan.Blank) bool { return b.Step == filling })
}

// Cask is when a cask is to be filled, and what is to be written of it behind its serial, as
// planned; "" where nobody says.
func (p *Page) Cask() (due, values string) {
	if p.Planned == nil {
		return "", ""
	}
	return caskOf(p.Planned, p.units)
}

// AddCask is the page with a cask that was filled, typed as its serial and then its
// volume, its tare and its gross weight as far as they are known.
func (p *Page) AddCask(text string) (*Page, error) {
	t, err := parse(strings.ReplaceAll(text, `"`, " "))
	if err != nil {
		return nil, err
	}
	words := strings.Fields(strings.Join(t.values, " "))
	if len(words) == 0 {
		return nil, diag.Refuse("type the serial of the cask first")
	}
	serial, values := words[0], words[1:]
	kinds := []record.What{record.Volume, record.Tare, record.Gross}
	if len(values) > len(kinds) {
		return nil, diag.Refuse("after its serial a cask has a volume, a tare and a gross weight")
	}
	var parts []string
	for i, v := range values {
		if !isNumber().MatchString(v) {
			return nil, diag.Refuse("%q is no number: type the serial, the volume, the tare and the gross weight", v)
		}
		word := string(kinds[i]) + " "
		if i == 0 {
			word = ""
		}
		parts = append(parts, word+v+" "+p.Unit(Room{Kind: kinds[i]}))
	}
	line := strings.TrimSpace(strings.TrimSpace(t.day+" "+t.clock) + " into " + quoted(serial) + " " + strings.Join(parts, ", "))
	return p.with([]edit{{p.casks, p.casks, "    " + line + "\n"}})
}

// Unit is the unit in which a blank is written, where nobody writes another.
func (p *Page) Unit(r Room) string {
	if r.Blank != nil {
		should := r.Blank.Should
		if should.Unit == plan.Kilogram || should.Unit == plan.Litre { // what is said in ounces is typed in ounces
			_, unit, _ := strings.Cut(p.units.Quantity(should), " ")
			return unit
		}
		_, unit := p.units.Value(should)
		return unit
	}
	us := map[record.What]string{
		record.Temperature: "F", record.Vapour: "F", record.Volume: "gal", record.Receiver: "gal", record.Water: "gal", record.Mass: "lb",
		record.Gross: "lb", record.Tare: "lb", record.Strength: "proof", record.Spout: "% abv", record.Flow: "gal/h", record.Gravity: "SG", record.PH: "pH",
	}
	si := map[record.What]string{
		record.Temperature: "C", record.Vapour: "C", record.Volume: "L", record.Receiver: "L", record.Water: "L", record.Mass: "kg",
		record.Gross: "kg", record.Tare: "kg", record.Strength: "% vol", record.Flow: "L/h",
	}
	if p.units == measure.SI && si[r.Kind] != "" {
		return si[r.Kind]
	}
	return us[r.Kind]
}

// Sample is how warm a sample may be, as it is typed: in the unit that Fill reads it in.
func (p *Page) Sample() string {
	if p.units == measure.SI {
		return "19"
	}
	return "66"
}

// Should is what a blank should say, "" if the plan does not say.
func (p *Page) Should(r Room) string {
	if r.Blank == nil {
		return ""
	}
	return asTyped(p.units.Quantity(r.Blank.Should))
}

// edit is a change of the text.
type edit struct {
	start, end int
	text       string
}

// with is the page with changes, given from the last to the first. The error is a
// diag.List where the text would then have an error that it has not now.
func (p *Page) with(edits []edit) (*Page, error) {
	text := string(p.Text)
	for _, e := range edits {
		text = text[:e.start] + e.text + text[e.end:]
	}
	next, err := Read(p.Name, []byte(text), p.number, p.Planned, p.around, p.units)
	if err != nil {
		return nil, err
	}
	had := map[string]int{}
	for _, d := range p.Diags {
		had[string(d.Code)+d.Summary]++
	}
	var fresh diag.List
	for _, d := range next.Diags {
		if key := string(d.Code) + d.Summary; d.Severity == diag.Error && had[key] == 0 {
			fresh = append(fresh, d)
		} else {
			had[key]--
		}
	}
	if len(fresh) > 0 {
		return nil, fresh
	}
	return next, nil
}
