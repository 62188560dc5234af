package recording

import (
	"strings"

	"newmake/lang/diag"
)

// Entered is a visit as it is typed on a screen, with a value for each of its blanks
// that was read.
type Entered struct {
	Values []Value
	Day    string // 2026-03-03; "" if the record says it
	Clock  string // 10:04; "" if nobody said
	By     string
	Remark string
}

// Value is what was read for a blank.
type Value struct {
	Blank  string // the ID of the plan
	Read   string // "191", "1.034", "none", with a unit where it is another than the blank's
	Sample string // the temperature of the sample, "" if nobody said
}

// Enter is the page with a visit that was typed. The error says what is wrong with it,
// and nothing has changed then: all of it is taken, or none.
func (p *Page) Enter(e Entered) (*Page, error) {
	units := map[string]string{}
	for _, l := range p.Lines() {
		for _, r := range l.Blanks {
			if r.Blank != nil {
				units[r.Blank.ID] = p.Unit(r)
			}
		}
	}
	rows := map[string]*row{}
	for _, v := range e.Values {
		unit, open := units[v.Blank]
		switch {
		case !open:
			return nil, diag.Refuse("the record has no open blank for this reading: it was filled in meanwhile, or the run was opened on another plan")
		case rows[v.Blank] != nil:
			return nil, diag.Refuse("a reading was sent twice")
		case strings.TrimSpace(v.Read) == "":
			return nil, diag.Refuse("type a value, or none")
		}
		r := &row{at: "not taken", actual: strings.TrimSpace(v.Read), unit: unit, sample: strings.TrimSpace(v.Sample), by: strings.TrimSpace(e.By), remark: strings.TrimSpace(e.Remark)}
		if err := r.said(strings.TrimSpace(e.Day + " " + e.Clock)); err != nil {
			return nil, err
		}
		rows[v.Blank] = r
	}
	if len(rows) == 0 {
		return nil, diag.Refuse("type a value, or none")
	}
	next, _, err := p.fillRows(rows)
	return next, err
}
