package recording

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"unicode"

	"newmake/compile/blank"
	"newmake/lang/diag"
	"newmake/lang/pattern"
)

// columns are those of the sheet's table that a person fills in, and those by which
// they are understood.
var columns = []string{"blank", "unit", "actual", "at_temperature", "time", "by"}

// FillTable fills the blanks from the table of the plan's steps, once it has been
// filled in. What stands in the record already stays. It says how many blanks were
// filled, and which rows have a value for which the record has no line. The error says in which
// row something is wrong, and nothing is filled then.
func (p *Page) FillTable(in io.Reader) (then *Page, filled int, left []string, err error) {
	rows, err := readTable(in)
	if err != nil {
		return nil, 0, nil, err
	}
	if err := p.knows(rows); err != nil {
		return nil, 0, nil, err
	}
	if then, filled, err = p.fillRows(rows); err != nil {
		return nil, 0, nil, err
	}
	for id := range then.answered() {
		delete(rows, id)
	}
	for _, row := range slices.SortedFunc(maps.Values(rows), func(a, b *row) int { return a.number - b.number }) {
		left = append(left, row.at)
	}
	return then, filled, left, nil
}

// knows refuses a table with rows of which no blank is known, neither to the plan nor to the
// record: it is the table of something else, and what was read would be lost.
func (p *Page) knows(rows map[string]*row) error {
	known := map[string]bool{}
	if p.Planned != nil {
		for _, b := range p.Planned.Blanks {
			known[b.ID] = true
		}
	}
	for _, l := range p.Lines() {
		for _, r := range l.Blanks {
			if r.Blank != nil {
				known[r.Blank.ID] = true
			}
		}
	}
	var first *row
	var id string
	for name, w := range rows {
		if known[name] {
			return nil
		}
		if first == nil || w.number < first.number {
			first, id = w, name
		}
	}
	if first == nil {
		return nil
	}
	return diag.Refuse("%s: the plan of this run has no blank %q, and none of the others of this table: it is the table of another plan", first.at, id)
}

// answered are the blanks of the plan that the record has an answer for.
func (p *Page) answered() map[string]bool {
	out := map[string]bool{}
	if p.Planned != nil {
		for _, a := range blank.Match(p.Planned, p.Run).Answers {
			out[a.Blank.ID] = true
		}
	}
	return out
}

// fillRows fills the blanks that rows are for, line by line.
func (p *Page) fillRows(rows map[string]*row) (*Page, int, error) {
	filled := 0
	for done := map[string]bool{}; ; {
		lines := p.Lines()
		i := slices.IndexFunc(lines, func(l Line) bool {
			return slices.ContainsFunc(l.Blanks, func(r Room) bool { return r.Blank != nil && rows[r.Blank.ID] != nil && !done[r.Blank.ID] })
		})
		if i < 0 {
			return p, filled, nil
		}
		l, t, at := lines[i], typed{}, ""
		for _, r := range l.Blanks {
			value := "-"
			if r.Blank != nil && rows[r.Blank.ID] != nil {
				row := rows[r.Blank.ID]
				done[r.Blank.ID] = true
				filled++
				value, at = row.value(), row.at
				if t.clock == "" && l.Timed {
					t.day, t.clock = row.day, row.clock
				}
				if row.by != "" {
					t.tail = "by " + quoted(row.by)
				}
				if row.remark != "" {
					t.tail = strings.TrimSpace(t.tail + " " + quoted(row.remark))
				}
			}
			t.values = append(t.values, value)
		}
		next, err := p.fill(l, t)
		if err != nil {
			var list diag.List
			if errors.As(err, &list) && len(list) > 0 {
				return nil, 0, diag.Refuse("%s: %s; %s", at, list[0].Summary, strings.SplitN(list[0].Help, "\n", 2)[0])
			}
			return nil, 0, fmt.Errorf("%s: %w", at, err)
		}
		p = next
	}
}

// row is what was written in a row of the table.
type row struct {
	at                                   string // the row, for what is said of it
	number                               int
	actual, unit, sample, day, clock, by string
	remark                               string
}

// value is what was read, as one would type it.
func (r *row) value() string {
	out := r.actual
	if out != "none" && isNumber().MatchString(out) && r.unit != "" {
		out += " " + r.unit
	}
	if r.sample != "" && out != "none" {
		out += " at " + r.sample
	}
	return out
}

// readTable reads the rows in which something was filled in, by their blanks.
func readTable(in io.Reader) (map[string]*row, error) {
	text, err := io.ReadAll(io.LimitReader(in, mostTable))
	if err != nil {
		return nil, err
	}
	all, continental, err := cellsOf(text)
	if err != nil {
		return nil, err
	}
	if len(all) == 0 {
		return nil, diag.Refuse("this table is empty")
	}
	place := map[string]int{}
	for i, name := range all[0] {
		place[strings.TrimPrefix(strings.TrimSpace(name), "\ufeff")] = i
	}
	for _, name := range columns {
		if _, ok := place[name]; !ok {
			return nil, diag.Refuse("this table has no column %q: fill in the table that `newmake plan BATCH -o steps.csv` gives", name)
		}
	}
	out := map[string]*row{}
	for i, cells := range all[1:] {
		get := func(name string) string {
			if k := place[name]; k < len(cells) {
				return strings.TrimPrefix(strings.TrimSpace(cells[k]), "'") // a mark that keeps a cell from being a formula
			}
			return ""
		}
		at := fmt.Sprintf("row %d", i+2)
		w := &row{at: at, number: i + 2, actual: get("actual"), unit: get("unit"), sample: get("at_temperature"), by: get("by")}
		if w.actual == "" {
			continue
		}
		for _, name := range columns {
			if n := len(get(name)); n > mostCell {
				return nil, diag.Refuse("%s: %d characters stand under %q, and no reading or remark is so long", at, n, name)
			}
		}
		if continental {
			w.actual, w.sample = point(w.actual), point(w.sample)
		}
		id := get("blank")
		switch {
		case id == "":
			return nil, diag.Refuse("%s: it has a value and no blank to write it in", at)
		case out[id] != nil:
			return nil, diag.Refuse("%s: the blank %s stands in %s too", at, id, out[id].at)
		}
		if err := w.said(get("time")); err != nil {
			return nil, err
		}
		out[id] = w
	}
	return out, nil
}

// mostTable is more than any sheet has, in bytes.
const mostTable = 4 << 20

// mostCell is more than anybody writes in a cell, in bytes.
const mostCell = 10000

// cellsOf takes a table apart, as spreadsheets write it: the cells parted by commas,
// semicolons or tabs, as its first row shows. continental says that it writes numbers with a
// decimal comma, as programs do that part cells by semicolons.
func cellsOf(text []byte) (all [][]string, continental bool, err error) {
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		return nil, false, diag.Refuse("this table is in UTF-16: save it as CSV in UTF-8")
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	if first, rest, _ := bytes.Cut(text, []byte("\n")); bytes.HasPrefix(first, []byte("sep=")) { // for the spreadsheet alone
		text = rest
	}
	first, _, _ := bytes.Cut(text, []byte("\n"))
	r := csv.NewReader(bytes.NewReader(bytes.ToValidUTF8(text, []byte("?"))))
	r.FieldsPerRecord = -1
	for _, sep := range []rune{';', '\t'} {
		if bytes.Count(first, []byte(string(sep))) > bytes.Count(first, []byte(string(r.Comma))) {
			r.Comma = sep
		}
	}
	if all, err = r.ReadAll(); err != nil {
		return nil, false, diag.Refuse("this is no table: %v", err)
	}
	return all, r.Comma == ';', nil
}

var decimalComma = pattern.Of(`^(-?[0-9]+),([0-9]+)\b`)

// point is a number with a decimal comma as it is written here.
func point(text string) string { return decimalComma().ReplaceAllString(text, "$1.$2") }

// clockOf is a time of a table by the 24-hour clock; "" if it is none.
func clockOf(words []string) string {
	clock := words[0]
	if !typedClock().MatchString(clock) || len(words) > 2 {
		return ""
	}
	if len(words) == 1 {
		return clock
	}
	var hour int
	var rest string
	if n, _ := fmt.Sscanf(clock, "%d:%s", &hour, &rest); n != 2 || hour < 1 || hour > 12 {
		return ""
	}
	switch strings.ToLower(strings.ReplaceAll(words[1], ".", "")) {
	case "am":
		hour %= 12
	case "pm":
		hour = hour%12 + 12
	default:
		return ""
	}
	return fmt.Sprintf("%02d:%s", hour, rest)
}

// said checks what was written in a row, and takes its time apart.
func (r *row) said(when string) error {
	r.remark = strings.Join(strings.Fields(r.remark), " ") // a record has it on one line
	for _, typed := range []string{r.actual, r.sample} {
		if strings.ContainsAny(typed, "\"{}#") || strings.ContainsFunc(typed, unicode.IsControl) {
			return diag.Refuse("%s: %q is no value", r.at, typed)
		}
	}
	for _, of := range []struct{ what, typed string }{{"name of who read it", r.by}, {"remark", r.remark}} {
		if strings.ContainsFunc(of.typed, unicode.IsControl) {
			return diag.Refuse("%s: the %s, %q, has a sign that cannot be written: type it in letters", r.at, of.what, of.typed)
		}
	}
	words := strings.Fields(strings.Replace(when, "T", " ", 1))
	if len(words) > 0 && typedDate().MatchString(words[0]) {
		r.day, words = words[0], words[1:]
	}
	if len(words) == 0 {
		return nil
	}
	if m := dottedClock().FindStringSubmatch(words[0]); m != nil {
		return diag.Refuse("%s: a clock is written %s:%s", r.at, m[1], m[2])
	}
	if r.clock = clockOf(words); r.clock == "" {
		return diag.Refuse("%s: %q is no time: write it as 10:04", r.at, strings.Join(words, " "))
	}
	return nil
}
