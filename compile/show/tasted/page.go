package tasted

import (
	_ "embed"
	"fmt"
	"io"

	"newmake/compile/book/taste"
	"newmake/compile/show/markup"
	"newmake/lang/diag"
	"newmake/lang/words"
)

//go:embed found.css
var foundCSS string

// foundView is what was found, as its page shows it.
type foundView struct {
	markup.Look
	Title  string
	Tables []foundTable
	Notes  []string
}

// foundTable is a table of the page. The first cell of a row is its head.
type foundTable struct {
	Caption string
	Head    []string
	Rows    [][]foundCell
	Says    []string
}

type foundCell struct{ Head, Text string }

func (t *foundTable) row(cells ...string) {
	row := make([]foundCell, len(cells))
	for i, c := range cells {
		row[i] = foundCell{t.Head[i], diag.Safe(c)}
	}
	t.Rows = append(t.Rows, row)
}

// FoundHTML writes what was found as one page that needs nothing else: each sample over the
// years, what the words point to, the scores, what differs, and every look.
func FoundHTML(w io.Writer, f *taste.Found) error {
	v := foundView{Look: markup.LookOf(foundCSS), Title: words.Count(f.All, "tasting") + " of the house", Notes: f.Cautions}
	if len(f.Rows) == 0 {
		v.Notes = []string{"Nothing of the kind stands in them."}
	}
	for i := range f.Courses {
		c := &f.Courses[i]
		t := foundTable{Caption: diag.Safe(title(c))}
		head, rows := table(c)
		t.Head = append(head, "words, verdict")
		for j, r := range rows {
			t.row(append(r, said(&c.Days[j]))...)
		}
		v.Tables = append(v.Tables, t)
	}
	if len(f.Aromas) > 0 {
		t := foundTable{Caption: "Words, and what they point to", Head: []string{"word", "how often", "points to"}, Says: []string{"A word points to a cause and proves none. What no source is named for is common practice." + unsorted(f)}}
		for _, p := range f.Aromas {
			for _, word := range p.Words {
				t.row(word.Word, spoken(f, word), p.Aroma+": "+p.Cause)
			}
		}
		v.Tables = append(v.Tables, t)
	}
	if len(f.Means) > 0 {
		t := foundTable{Caption: "Scores", Head: []string{"look", "of", "mean", "least to most", "scores", "tasters"}}
		for _, m := range f.Means {
			t.row(m.What, kinds[m.Of]+batchOf(m.Batch), fmt.Sprintf("%.1f of %s", m.Mean, scaleEnd(m.Low, m.High)), number(m.Least)+" to "+number(m.Most), fmt.Sprint(m.N), fmt.Sprint(m.Tasters))
		}
		v.Tables = append(v.Tables, t)
	}
	for _, a := range f.Apart {
		t := foundTable{Caption: diag.Safe("What differs: " + a.First + " / " + a.Second)}
		for _, e := range a.Edits {
			t.Says = append(t.Says, diag.Safe(e))
		}
		if len(a.Edits) == 0 {
			t.Says = []string{"Nothing in the text."}
		}
		v.Tables = append(v.Tables, t)
	}
	if len(f.Carried) > 0 {
		t := foundTable{Caption: "What the hearts carry beside alcohol, as planned", Head: []string{"what", "of", "where the charge holds 1", "range"}}
		t.Says = []string{carriedAlike}
		for _, c := range f.Carried {
			if !c.Differs {
				continue
			}
			t.Says = []string{carriedSays}
			for _, b := range c.Batches {
				t.row(c.Name, b.Batch, fmt.Sprintf("%.2f", b.Relative), fmt.Sprintf("%.2f to %.2f", b.Low, b.High))
			}
		}
		v.Tables = append(v.Tables, t)
	}
	if len(f.Rows) > 0 {
		t := foundTable{Caption: "Every look", Head: []string{"date", "of", "look", "by", "score", "words"}}
		for _, r := range f.Rows {
			t.row(r.On, r.Of, r.What, r.By, score(r), r.Words)
		}
		v.Tables = append(v.Tables, t)
	}
	var out markup.Page
	writeFound(&out, says{}, &v)
	_, err := io.WriteString(w, out.String())
	return err
}

func batchOf(name string) string {
	if name == "" {
		return "of no known batch"
	}
	return name
}
