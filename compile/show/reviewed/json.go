package reviewed

import (
	"math"
	"time"

	"newmake/compile/ask/compare"
	"newmake/compile/ask/review"
	"newmake/compile/plan"
	"newmake/lang/record"
)

// Document is a review as JSON. Numbers are in SI: C, m3, fractions by volume at 20 C,
// seconds; a number that is not known is left out.
type Document struct {
	Format  string `json:"format"`
	Version string `json:"version"`
	Run     string `json:"run"`
	Batch   string `json:"batch"`
	Day     string `json:"day"`
	Recipe  string `json:"recipe,omitempty"` // which text of the batch it is set against, where that is not today's

	Readings []Reading           `json:"readings"`
	Marks    []Mark              `json:"marks"` // readings that a picture of the plan has a place for
	Balance  *Balance            `json:"balance,omitempty"`
	Done     *compare.Comparison `json:"doneOtherwise,omitempty"` // the plan against the batch as it was made
	Small    []string            `json:"smallThings"`             // done otherwise, and too little to be gauged in the hearts
	Hearts   *Hearts             `json:"hearts,omitempty"`        // as they were gauged; absent until then
	Ahead    *Ahead              `json:"ahead,omitempty"`         // of a run that is not done
	Untold   []Untold            `json:"untold"`
}

// Reading is one of them.
type Reading struct {
	Words   string   `json:"words"`
	Stage   string   `json:"stage"`
	Kind    string   `json:"kind"`
	Said    float64  `json:"said"`
	Plan    *float64 `json:"plan,omitempty"`
	Done    *float64 `json:"asDone,omitempty"`
	SD      float64  `json:"standardDeviation"` // of said less asDone, where all is right
	Within  bool     `json:"within"`
	Outcome bool     `json:"outcome,omitempty"`
	When    string   `json:"when,omitempty"`
}

// Mark is a reading with its place on a picture: by the clock in a mash, by the hours since
// the pitch in a ferment, by the litres that had come over in a run of a still.
type Mark struct {
	Stage string   `json:"stage"`
	Of    string   `json:"of"`
	When  string   `json:"when,omitempty"`
	Hours *float64 `json:"hours,omitempty"`
	OverL *float64 `json:"overL,omitempty"`
	Said  float64  `json:"said"`
	Off   bool     `json:"off,omitempty"` // it is not what it should be
}

// Balance is that of the alcohol.
type Balance struct {
	Checks   int       `json:"checks"`
	Scatter  float64   `json:"chiSquare"`
	Limit    float64   `json:"limit"`
	Balanced bool      `json:"balanced"`
	Flows    []Flow    `json:"flows"`
	Breaks   [][]Cause `json:"breaks"`
}

// Flow is one thing that is balanced: litres at 20 C, or % abv.
type Flow struct {
	ID    string   `json:"id"`
	Words string   `json:"words"`
	Said  *float64 `json:"said,omitempty"`
	Best  *float64 `json:"inAccord,omitempty"`
	Model bool     `json:"model,omitempty"`
}

// Cause is what would explain a break.
type Cause struct {
	Flow   string  `json:"flow,omitempty"`
	Place  string  `json:"place,omitempty"`
	By     float64 `json:"by"`
	SD     float64 `json:"standardDeviation"`
	Litres float64 `json:"litres,omitempty"`
}

// Hearts is the pure alcohol of the hearts, in m3 at 20 C: as they were gauged, by which the
// books go, as planned, and as it should have come of what was done.
type Hearts struct {
	Gauged float64 `json:"gauged"`
	Plan   float64 `json:"plan"`
	Done   float64 `json:"asDone"`
}

// Ahead is what is to come.
type Ahead struct {
	From   string   `json:"from"`
	Coming []Coming `json:"coming"`
	LPA    float64  `json:"heartsLPA"`
	SD     float64  `json:"standardDeviation"`
	Casks  int      `json:"casks"`
}

// Coming is one event.
type Coming struct {
	Words string  `json:"words"`
	At    string  `json:"at"`
	SDs   float64 `json:"standardDeviationSeconds"`
}

// Untold is a reading that the run lacks and that would have told most, the most telling
// first.
type Untold struct {
	Words  string  `json:"words"`
	Part   float64 `json:"part"`             // of the variance of the hearts that the readings leave, beside those before it
	ToCome bool    `json:"toCome,omitempty"` // the run has not come to it yet
}

// Format of the document.
const Format = "newmake.review"

var kinds = map[review.Kind]string{
	review.Temperature: "temperature", review.Gravity: "gravity", review.PH: "pH", review.Volume: "volume", review.Strength: "strength",
	review.Rate: "flow", review.Duration: "duration",
}

// Of is a review as a document.
func Of(a *review.Answer) Document {
	d := Document{Format: Format, Version: "1.0", Run: a.Run, Batch: a.Batch, Day: a.Day.String(), Recipe: a.Note, Readings: []Reading{}, Marks: []Mark{}, Done: a.Done, Small: append([]string{}, a.Small...), Untold: []Untold{}}
	for _, l := range a.Lines {
		r := Reading{Words: l.Words, Stage: string(l.Stage), Kind: kinds[l.Kind], Said: rounded(l.Said), Plan: known(l.Plan), Done: known(l.Made), SD: rounded(l.SD), Within: l.Within(), Outcome: l.Outcome}
		if !l.When.IsZero() {
			r.When = l.When.Format(time.RFC3339)
		}
		d.Readings = append(d.Readings, r)
	}
	for _, m := range a.Marks {
		x := Mark{Stage: string(m.Stage), Of: string(m.What), Said: rounded(m.Said), Off: m.Off}
		if !m.When.IsZero() {
			x.When = m.When.Format(time.RFC3339)
		}
		switch m.Stage {
		case record.Ferment:
			x.Hours = known(m.AfterS / 3600)
		case record.Strip, record.Spirit:
			x.OverL = known(1000 * m.OverM3)
		}
		d.Marks = append(d.Marks, x)
	}
	if b := a.Balance; b != nil {
		d.Balance = &Balance{Checks: b.Checks, Scatter: rounded(b.Scatter), Limit: rounded(b.Limit), Balanced: b.Balanced(), Flows: []Flow{}, Breaks: [][]Cause{}}
		for _, f := range b.Flows {
			d.Balance.Flows = append(d.Balance.Flows, Flow{f.ID, f.Words, known(f.Said), known(f.Best), f.Model})
		}
		for _, f := range b.Gross {
			all := []Cause{}
			for _, c := range f.Causes {
				all = append(all, Cause{c.Flow, c.Place, rounded(c.By), rounded(c.SD), rounded(c.Litres)})
			}
			d.Balance.Breaks = append(d.Balance.Breaks, all)
		}
	}
	if h := a.Hearts; h != nil {
		d.Hearts = &Hearts{rounded(h.Said), rounded(h.Plan), rounded(h.Made)}
	}
	if h := a.Ahead; h != nil {
		d.Ahead = &Ahead{From: h.From.Format(time.RFC3339), Coming: []Coming{}, LPA: rounded(h.HeartsLPA), SD: rounded(h.SD), Casks: h.Casks}
		for _, c := range h.Coming {
			d.Ahead.Coming = append(d.Ahead.Coming, Coming{c.Words, c.At.Format(time.RFC3339), math.Round(c.SD)})
		}
	}
	for _, u := range a.Untold {
		d.Untold = append(d.Untold, Untold{u.Words, rounded(u.Part), u.ToCome})
	}
	return d
}

// rounded keeps four significant places and more than any instrument has: results that
// differ in the last bits of a processor are the same document.
func rounded(v float64) float64 {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return plan.RoundTo(v, max(0, 5-int(math.Ceil(math.Log10(math.Abs(v))))))
}

func known(v float64) *float64 {
	if math.IsNaN(v) {
		return nil
	}
	v = rounded(v)
	return &v
}
