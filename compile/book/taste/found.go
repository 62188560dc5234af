package taste

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"newmake/compile/stage/cask"
	"newmake/lang/record"
	"newmake/lang/sorting"
	"newmake/lang/tree"
	"newmake/lang/vocabulary"
)

// FoundFormat names the shape of what was found as JSON.
const FoundFormat = "newmake.tastings"

// Wanted is what is looked for among the tastings; what is empty matches all.
type Wanted struct {
	Words []string // each stands somewhere in a look or a verdict
	Of    string   // a cask, a run, a bottling, by its name
	By    string
	Batch string
}

// Source is where a sample comes from, as far as the records tell.
type Source struct {
	Batch  string // "" if nothing tells
	Run    string
	Filled record.Date // into the cask; zero of what is none
}

// Found is what was found among the tastings.
type Found struct {
	Format   string   `json:"format"`
	Version  string   `json:"version"`
	All      int      `json:"tastings"` // of the house
	Rows     []Row    `json:"rows"`     // in the order of their days
	Means    []Mean   `json:"scores"`
	Apart    []Apart  `json:"apart"` // what the batches of the rows differ in
	Cautions []string `json:"cautions"`
	// Courses are the rows once more, of one sample over the years.
	Courses []Course `json:"courses"`
	// Aromas are the words of the vocabulary that stand in the rows, by what they point to;
	// Unsorted is in how many rows with words none stands.
	Aromas   []Pointed `json:"aromas"`
	Unsorted int       `json:"unsorted"`
	Carried  []Carried `json:"carried"` // what the hearts of those batches hold, as planned; empty for a single batch
}

// Row is one look, or one verdict.
type Row struct {
	On    string   `json:"date"`
	Of    string   `json:"of"`
	Kind  string   `json:"kind"`
	Batch string   `json:"batch,omitempty"`
	Run   string   `json:"run,omitempty"`
	Nosed string   `json:"nosed,omitempty"`
	By    string   `json:"by,omitempty"`
	What  string   `json:"what"`
	Score *float64 `json:"score,omitempty"`
	Low   float64  `json:"low"`
	High  float64  `json:"high"`
	// LowSays and HighSays are what the ends of the scale mean, where somebody said.
	LowSays  string `json:"lowSays,omitempty"`
	HighSays string `json:"highSays,omitempty"`
	Words    string `json:"words,omitempty"`
	// Aromas are the words of the vocabulary that stand in Words.
	Aromas   []string `json:"aromas,omitempty"`
	Filled   string   `json:"filled,omitempty"`   // the date, of a cask
	AgeYears *float64 `json:"ageYears,omitempty"` // in wood
}

// Mean is the scores of one look at one batch, on one scale.
type Mean struct {
	Batch   string  `json:"batch"`
	Of      string  `json:"of"` // cask, hearts, new-make, bottling: wood is not tasted beside none
	What    string  `json:"what"`
	Low     float64 `json:"low"`
	High    float64 `json:"high"`
	N       int     `json:"scores"`
	Tasters int     `json:"tasters"`
	Mean    float64 `json:"mean"`
	Least   float64 `json:"least"`
	Most    float64 `json:"most"`
}

// Carried is how much of a congener the hearts of several batches hold to a litre of
// pure alcohol, where the charge of the still holds 1.
type Carried struct {
	Name    string  `json:"name"`
	Differs bool    `json:"differs"` // two of the ranges do not meet
	Batches []Holds `json:"batches"`
}

// Holds is what the hearts of one batch hold.
type Holds struct {
	Batch    string  `json:"batch"`
	Relative float64 `json:"relative"`
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
}

// Apart is what two batches differ in, by meaning.
type Apart struct {
	First  string   `json:"first"`
	Second string   `json:"second"`
	Edits  []string `json:"edits"`
}

// Fewest is how many scores a mean needs before it is worth a word, and from how many
// people (common practice; a trial, tasted blind, says how sure it is).
const (
	fewest        = 6
	fewestTasters = 3
)

// verdict is what a verdict is of.
const verdict = "verdict"

// Search finds tastings. madeBy says where a sample comes from.
func Search(all []*record.Tasting, w Wanted, words *vocabulary.Words, madeBy func(*record.Tasting) Source) *Found {
	f := &Found{Format: FoundFormat, Version: Version, All: len(all), Rows: []Row{}, Means: []Mean{}, Apart: []Apart{}, Cautions: []string{}, Carried: []Carried{}, Courses: []Course{}, Aromas: []Pointed{}}
	for _, t := range all {
		from := madeBy(t)
		if w.Of != "" && !strings.EqualFold(t.Of.Name, w.Of) || w.Batch != "" && !strings.EqualFold(from.Batch, w.Batch) {
			continue
		}
		base := Row{On: t.On.String(), Of: t.Of.String(), Kind: string(t.Of.Kind), Batch: from.Batch, Run: from.Run}
		if !from.Filled.IsZero() {
			age := float64(from.Filled.DaysTo(t.On)) * 86400 / cask.YearS
			base.Filled, base.AgeYears = from.Filled.String(), &age
		}
		if t.Nosed != nil {
			base.Nosed = t.Nosed.Num + " " + t.Nosed.Unit
		}
		for _, r := range rowsOf(t, base) {
			if (w.By == "" || strings.EqualFold(r.By, w.By)) && r.says(w.Words) {
				f.Rows = append(f.Rows, r)
			}
		}
	}
	sorting.Stable(f.Rows, func(a, b Row) int { return cmp.Compare(a.On, b.On) })
	f.means()
	f.points(words)
	f.courses()
	f.cautions()
	return f
}

// Batches lists the batches of what was found, each once, in the order of the rows.
func (f *Found) Batches() []string {
	var out []string
	for _, r := range f.Rows {
		if r.Batch != "" && !slices.Contains(out, r.Batch) {
			out = append(out, r.Batch)
		}
	}
	return out
}

func rowsOf(t *record.Tasting, base Row) []Row {
	var out []Row
	for _, l := range t.Looks {
		r := base
		r.By, r.What, r.Words = l.By, l.What, l.Words
		if l.Score != nil {
			v := l.Score.Value
			r.Score, r.Low, r.High = &v, l.Score.Low, l.Score.High
			r.LowSays, r.HighSays = l.Score.LowSays, l.Score.HighSays
		}
		out = append(out, r)
	}
	for _, v := range t.Verdicts {
		r := base
		r.By, r.What, r.Words = v.By, verdict, v.Says()
		if v.Words != "" {
			r.Words += ": " + v.Words
		}
		out = append(out, r)
	}
	return out
}

// says says that each word stands in the row.
func (r Row) says(all []string) bool {
	text := strings.ToLower(r.What + " " + r.Words)
	for _, w := range all {
		if !strings.Contains(text, strings.ToLower(w)) {
			return false
		}
	}
	return true
}

// means puts the scores of one look at one batch, on one scale, into one line.
func (f *Found) means() {
	at, tasters := map[string]int{}, map[string]map[string]bool{}
	for _, r := range f.Rows {
		if r.Score == nil {
			continue
		}
		key := fmt.Sprint(tree.Key(r.Batch), "\x00", r.Kind, "\x00", tree.Key(r.What), "\x00", r.Low, "\x00", r.High)
		if _, ok := at[key]; !ok {
			at[key], tasters[key] = len(f.Means), map[string]bool{}
			f.Means = append(f.Means, Mean{Batch: r.Batch, Of: r.Kind, What: r.What, Low: r.Low, High: r.High, Least: *r.Score, Most: *r.Score})
		}
		m := &f.Means[at[key]]
		m.Mean = (m.Mean*float64(m.N) + *r.Score) / float64(m.N+1)
		m.N++
		m.Least, m.Most = min(m.Least, *r.Score), max(m.Most, *r.Score)
		tasters[key][tree.Key(r.By)] = true
		m.Tasters = len(tasters[key])
	}
	sorting.Stable(f.Means, func(a, b Mean) int { return cmp.Compare(a.What, b.What) })
}

// cautions says what cannot be concluded.
func (f *Found) cautions() {
	batches := f.Batches()
	few := slices.ContainsFunc(f.Means, func(m Mean) bool { return m.N < fewest || m.Tasters < fewestTasters })
	switch {
	case len(f.Means) == 0:
	case few:
		f.Cautions = append(f.Cautions, fmt.Sprintf("There are too few scores to conclude anything: a mean is worth a word from %d scores of %d people on.", fewest, fewestTasters))
	}
	if len(batches) > 1 {
		f.Cautions = append(f.Cautions, "Who knew what was in the glass tasted that too. Whether two batches differ is told by a trial, tasted blind: newmake explain trial.")
	}
}
