package tasted

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"newmake/compile/book/taste"
	"newmake/compile/show/columns"
	"newmake/compile/show/csv"
	"newmake/lang/diag"
	"newmake/lang/words"
)

// courses shows each sample that was tasted on several days over the years.
func courses(t *columns.Writer, f *taste.Found) {
	first := true
	for i := range f.Courses {
		c := &f.Courses[i]
		if len(c.Days) < 2 {
			continue
		}
		if first {
			t.Heading("OVER THE YEARS")
			first = false
		} else {
			t.Gap()
		}
		t.Para(0, 2, diag.Safe(title(c)))
		head, rows := table(c)
		width := 2
		for col := range head {
			w := columns.Width(head[col])
			for _, r := range rows {
				w = max(w, columns.Width(r[col]))
			}
			width += w + 2
		}
		room := max(columns.Page-width, 24)
		tab := columns.Table{Left: map[int]bool{len(head): true}}
		tab.Row(append(head, "words")...)
		for j, r := range rows {
			lines := columns.Wrap(diag.Safe(said(&c.Days[j])), room)
			tab.Row(append(r, lines[0])...)
			for _, l := range lines[1:] {
				tab.Row(append(make([]string, len(r)), l)...)
			}
		}
		tab.Write(t)
	}
}

// title names a sample, and where it comes from.
func title(c *taste.Course) string {
	s := sample(c.Of, c.Run, c.Batch)
	if c.Filled != "" {
		s += ", filled " + c.Filled
	}
	return s
}

// table is the days of a course: the date, the age of what was in wood, a column a scale,
// and how many tasted.
func table(c *taste.Course) (head []string, rows [][]string) {
	head = []string{"date"}
	aged := c.Filled != ""
	if aged {
		head = append(head, "years")
	}
	for _, s := range c.Scales {
		head = append(head, diag.Safe(columns.Cut(s.What, 16))+" of "+scaleEnd(s.Low, s.High))
	}
	head = append(head, "tasters")
	for _, d := range c.Days {
		row := []string{d.On}
		if aged {
			row = append(row, fmt.Sprintf("%.1f", *d.AgeYears))
		}
		for _, m := range d.Means {
			cell := ""
			if m != nil {
				cell = fmt.Sprintf("%.1f", *m)
			}
			row = append(row, cell)
		}
		rows = append(rows, append(row, fmt.Sprint(d.Tasters)))
	}
	return head, rows
}

// said is what was said on a day: the words of the vocabulary, or where none stands the
// looks as they were written; and the verdicts.
func said(d *taste.Day) string {
	parts := d.Aromas
	if len(parts) == 0 {
		parts = d.Words
	}
	out := strings.Join(parts, ", ")
	for _, v := range d.Verdicts {
		if out != "" {
			out += "; "
		}
		out += v
	}
	return out
}

// pointed shows the words of the vocabulary by what they point to.
func pointed(t *columns.Writer, f *taste.Found) {
	if len(f.Aromas) == 0 {
		return
	}
	t.Heading("WORDS, AND WHAT THEY POINT TO")
	for _, p := range f.Aromas {
		t.Item("  "+diag.Safe(columns.Cut(p.Aroma, 12)), 16, diag.Safe(p.Cause+"."))
		for _, w := range p.Words {
			t.Item("", 18, diag.Safe(w.Word+" "+spoken(f, w)))
		}
	}
	t.Para(2, 2, "A word points to a cause and proves none. What no source is named for is common practice."+unsorted(f))
}

func unsorted(f *taste.Found) string {
	if f.Unsorted == 0 {
		return ""
	}
	return " In " + words.Count(f.Unsorted, "note") + " no word of the vocabulary stands."
}

// spoken is how often a word was said, of which batches, and what smells so.
func spoken(f *taste.Found, w taste.Spoken) string {
	s := "once"
	if w.Times > 1 {
		s = words.Count(w.Times, "time")
	}
	if len(f.Batches()) > 1 {
		var of []string
		for _, b := range w.Batches {
			of = append(of, fmt.Sprintf("%s %d", batchOf(b.Batch), b.Times))
		}
		s += " (" + strings.Join(of, ", ") + ")"
	}
	if w.Of != "" {
		s += ": " + w.Of
		if w.Source != "" {
			s += " (" + w.Source + ")"
		}
	}
	if i := slices.IndexFunc(f.Carried, func(c taste.Carried) bool { return w.Planned != "" && c.Name == w.Planned }); i >= 0 {
		if f.Carried[i].Differs {
			return s + "; the plans of the batches differ in it, see below"
		}
		return s + "; as planned the batches carry the same of it"
	}
	return s
}

var lookColumns = []csv.Column[taste.Row]{
	{Name: "date", Cell: func(r taste.Row) string { return r.On }},
	{Name: "kind", Cell: func(r taste.Row) string { return r.Kind }},
	{Name: "of", Cell: func(r taste.Row) string { return csv.Text(r.Of) }},
	{Name: "batch", Cell: func(r taste.Row) string { return csv.Text(r.Batch) }},
	{Name: "run", Cell: func(r taste.Row) string { return csv.Text(r.Run) }},
	{Name: "filled", Cell: func(r taste.Row) string { return r.Filled }},
	{Name: "age_years", Cell: func(r taste.Row) string { return optional(r.AgeYears) }},
	{Name: "nosed_at", Cell: func(r taste.Row) string { return csv.Text(r.Nosed) }},
	{Name: "by", Cell: func(r taste.Row) string { return csv.Text(r.By) }},
	{Name: "what", Cell: func(r taste.Row) string { return csv.Text(r.What) }},
	{Name: "score", Cell: func(r taste.Row) string { return optional(r.Score) }},
	{Name: "low", Cell: func(r taste.Row) string { return end(r, r.Low) }},
	{Name: "high", Cell: func(r taste.Row) string { return end(r, r.High) }},
	{Name: "words", Cell: func(r taste.Row) string { return csv.Text(r.Words) }},
	{Name: "aromas", Cell: func(r taste.Row) string { return csv.Text(strings.Join(r.Aromas, ", ")) }},
}

func optional(x *float64) string {
	if x == nil {
		return ""
	}
	return csv.Number(*x)
}

func end(r taste.Row, x float64) string {
	if r.Score == nil {
		return ""
	}
	return csv.Number(x)
}

// FoundCSV writes the looks and verdicts for a spreadsheet (RFC 4180), a row each.
func FoundCSV(w io.Writer, f *taste.Found) error { return csv.WriteRows(w, lookColumns, f.Rows) }
