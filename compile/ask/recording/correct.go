package recording

import (
	"fmt"
	"slices"
	"strings"

	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/lang/diag"
	"newmake/lang/record"
)

// Correct is the page with slips of the pen put right: of each blank the value that
// stands in the record, the temperature of its sample, and the time of its line, as far
// as they are typed otherwise. What was read stays as it was written; a line that begins
// `corrected` is put beside it, with the day on which that was done. The error says what
// is wrong, and nothing has changed then.
func (p *Page) Correct(e Entered, on record.Date) (*Page, error) {
	next := p
	for _, v := range e.Values {
		r := &row{at: "not taken", actual: strings.TrimSpace(v.Read), sample: strings.TrimSpace(v.Sample), by: strings.TrimSpace(e.By), remark: strings.TrimSpace(e.Remark)}
		if err := r.said(strings.TrimSpace(e.Clock)); err != nil {
			return nil, err
		}
		var err error
		if next, err = next.correct(v.Blank, r, on); err != nil {
			return nil, err
		}
	}
	if len(next.Run.Corrections) == len(p.Run.Corrections) {
		return nil, diag.Refuse("type what it should have been, or none")
	}
	return next, nil
}

// correct puts right what was read for one blank.
func (p *Page) correct(id string, r *row, on record.Date) (*Page, error) {
	was, ok := p.answer(id)
	if !ok {
		return nil, diag.Refuse("the record has no reading here to correct")
	}
	if len(was.More) > 0 {
		return nil, diag.Refuse("it came of several sacks, each with a line of its own: correct that line in the record")
	}
	end := " on " + on.String()
	if r.by != "" {
		end += " by " + quoted(r.by)
	}
	if r.remark != "" {
		end += " " + quoted(r.remark)
	}
	next := p
	put := func(old, new string, by func(*blank.Answer) *record.Correction) (err error) {
		if now, ok := next.answer(id); old != new && ok {
			next, err = next.beside(now, old+" to "+new+end, by)
		}
		return err
	}
	sample, sampled := sampleOf(was.Reading)
	if r.sample != "" && r.actual != "none" {
		if !sampled {
			return nil, diag.Refuse("no temperature of a sample stands in the record to be corrected: correct the line there")
		}
		if err := put(sample.String(), p.warmth(r.sample), func(a *blank.Answer) *record.Correction { return a.Reading.AtCorrected }); err != nil {
			return nil, err
		}
	}
	if r.actual != "" {
		old, held := was.Reading.Holds()
		if !held {
			return nil, diag.Refuse("what was read here is taken back already: add a line to the record")
		}
		new := r.actual
		if isNumber().MatchString(new) {
			new += " " + p.unitOf(old, was)
		}
		if err := put(old.String(), new, func(a *blank.Answer) *record.Correction { return a.Reading.Corrected }); err != nil {
			return nil, err
		}
	}
	if r.clock != "" {
		if was.Visit == nil || was.Visit.When.Clock == "" {
			return nil, diag.Refuse("no time stands in the record to be corrected: write it there")
		}
		if err := put(was.Visit.When.Clock, r.clock, nil); err != nil {
			return nil, err
		}
	}
	return next, nil
}

// unitOf is the unit of a number that is typed without one: that of the page, where it
// is of the kind that was written, or else the one that was.
func (p *Page) unitOf(old record.Value, a blank.Answer) string {
	if unit := p.Unit(Room{Blank: a.Blank, Kind: a.Reading.What}); unit != "" && a.Reading.What == record.What(a.Blank.Kind) {
		return unit
	}
	return old.Unit
}

// warmth is the temperature of a sample with its unit.
func (p *Page) warmth(typed string) string {
	if isNumber().MatchString(typed) {
		return typed + map[bool]string{true: " C", false: " F"}[p.units == measure.SI]
	}
	return typed
}

// sampleOf is what holds of a sample's temperature, as it is written.
func sampleOf(r *record.Reading) (record.Value, bool) {
	switch {
	case r.AtCorrected != nil:
		return r.AtCorrected.New, !r.AtCorrected.Withdrawn
	case r.At != nil:
		return *r.At, true
	}
	return record.Value{}, false
}

// clockNow is the time of a visit as it holds.
func clockNow(v *record.Visit) string {
	switch {
	case v == nil:
		return ""
	case v.When.Corrected != nil:
		return v.When.Corrected.NewClock
	}
	return v.When.Clock
}

// answer is what was read for a blank.
func (p *Page) answer(id string) (blank.Answer, bool) {
	if p.Planned == nil {
		return blank.Answer{}, false
	}
	all := blank.Match(p.Planned, p.Run).Answers
	i := slices.IndexFunc(all, func(a blank.Answer) bool { return a.Blank.ID == id })
	if i < 0 {
		return blank.Answer{}, false
	}
	return all[i], true
}

// beside puts a correction under the line that it is of, with as many of the line's words
// as leave no doubt which value is meant. by is what then corrects the reading: it must be
// this line. It is nil of a time, by which the reading may answer another blank.
func (p *Page) beside(a blank.Answer, what string, by func(*blank.Answer) *record.Correction) (*Page, error) {
	at := a.Reading.Place
	if a.Visit != nil {
		at = a.Visit.At
	} else if a.Used != nil {
		at = a.Used.At
	}
	start := strings.LastIndexByte(string(p.Text[:at.Start]), '\n') + 1
	indent := string(p.Text[start:at.Start])
	if strings.TrimSpace(indent) != "" {
		indent = "    "
	}
	end := len(p.Text)
	if i := strings.IndexByte(string(p.Text[at.End:]), '\n'); i >= 0 {
		end = at.End + i + 1
	}
	for { // behind what was corrected before
		line, _, more := strings.Cut(string(p.Text[end:]), "\n")
		if !more || !strings.HasPrefix(strings.TrimSpace(line), "corrected ") {
			break
		}
		end += len(line) + 1
	}
	var first error
	for _, which := range names(a) {
		line := indent + "corrected " + which + " " + what + "\n"
		next, err := p.with([]edit{{end, end, line}})
		if err != nil {
			if first == nil {
				first = err
			}
			continue
		}
		if by == nil {
			return next, nil
		}
		if now, ok := next.answer(a.Blank.ID); ok {
			if c := by(&now); c != nil && c.Place.Start >= end && c.Place.Start < end+len(line) {
				return next, nil
			}
		}
	}
	if list, ok := first.(diag.List); ok && len(list) > 0 && list[0].Code != diag.CodeCorrection {
		return nil, list
	}
	return nil, diag.Refuse("it can't be told from other lines which value this corrects: correct it in the record")
}

// names are the ways in which a correction may name the line of a reading, the shortest
// first.
func names(a blank.Answer) []string {
	if a.Used != nil {
		return []string{name(a.Used.What)}
	}
	v := a.Visit
	words := []string{v.Word}
	if v.Of != "" && v.Word == "to" {
		words = append(words, v.Of)
	}
	for _, n := range v.Names {
		words = append(words, name(n))
	}
	if v.Word == "into" {
		words = append(words, quoted(v.To))
	}
	line := strings.Join(words, " ")
	timed := strings.TrimSpace(v.When.Clock + " " + line)
	dated := fmt.Sprintf("%s %s", v.When.Date, timed)
	label := " " + string(a.Reading.What)
	return []string{timed, timed + label, dated, dated + label}
}
