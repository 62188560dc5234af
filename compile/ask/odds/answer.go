package odds

import (
	"cmp"
	"slices"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/lang/sorting"
)

// Format and Version name the shape of an answer as JSON. A minor version adds
// names and never takes one away.
const (
	Format  = "newmake.odds"
	Version = "1.0"
)

// Answer is how sure a batch is.
type Answer struct {
	Format   string `json:"format"`
	Version  string `json:"version"`
	Batch    string `json:"batch"`
	Units    string `json:"units"` // "us" or "si"
	Draws    int    `json:"draws"`
	Margin   int    `json:"marginIn100"` // of an odds of a half, 95 times in 100
	Failed   int    `json:"failed"`      // draws of which no batch came
	Rejected int    `json:"rejected"`    // figures beyond what can be, that were drawn again
	Planned  int    `json:"casksPlanned"`
	// CaskFullAt is the share of a cask from which on it counts as filled.
	CaskFullAt float64   `json:"caskFullAt"`
	Casks      []Casks   `json:"casks"`
	Promises   []Promise `json:"promises"`
	Numbers    []Number  `json:"numbers"`
	Shares     []Shares  `json:"shares"`
	Drawn      []Drawn   `json:"constants"`
	Change     *Change   `json:"change,omitempty"` // what fills the casks 9 times in 10; none where they are filled so often
	Beside     *Beside   `json:"beside,omitempty"`
	NotInIt    []string  `json:"notInIt"`
}

// Casks is how often so many casks, or more, are filled.
type Casks struct {
	Least int  `json:"least"`
	Odds  Odds `json:"odds"`
}

// Promise is how often a promise is kept.
type Promise struct {
	What     string        `json:"what"`
	Promised plan.Quantity `json:"promised"`
	Within   plan.Quantity `json:"tolerance"`
	Odds     Odds          `json:"odds"`
	Asked    *plan.Times   `json:"asked,omitempty"` // how often it is promised
	Verdict  string        `json:"verdict,omitempty"`
}

// Number is the spread of a number of the plan's summary: 5, 50 and 95 % quantiles.
type Number struct {
	Key     string  `json:"key"`
	Name    string  `json:"name"`
	Stage   string  `json:"stage"`
	Unit    string  `json:"unit,omitempty"`
	Places  int     `json:"places"`
	Planned float64 `json:"planned"`
	Low     float64 `json:"low"`
	Middle  float64 `json:"middle"`
	High    float64 `json:"high"`
}

// Shares tell what makes the spread of a number, the greatest first.
type Shares struct {
	Key  string  `json:"key"`
	Name string  `json:"name"`
	R2   float64 `json:"r2"` // how much of the spread the shares tell together
	Of   []Share `json:"of"`
}

// Share is one constant's part of the variance.
type Share struct {
	Constant string  `json:"constant"`
	Words    string  `json:"words"`
	Owner    string  `json:"owner"`
	Share    float64 `json:"share"`
}

// Drawn is a constant that was drawn: the range that holds 9 times in 10, and where
// that is from.
type Drawn struct {
	Constant string   `json:"constant"`
	Words    string   `json:"words"`
	Owner    string   `json:"owner"`
	Paths    []string `json:"paths"`
	Form     string   `json:"form"`
	Written  float64  `json:"asWritten"`
	Low      float64  `json:"low"`
	High     float64  `json:"high"`
	Why      string   `json:"why"`
}

// notInIt is what no draw knows of.
var notInIt = []string{
	"all other figures of the library: they stay as written",
	"the form of the models: one set of vapour and liquid, one law of growth",
	"what goes wrong: a stuck rake, a boiler that goes out, a ferment that is infected, a spill",
	"people who come late: the clock is the plan's",
	"what an instrument is off by: it moves no batch, and each reading",
	"alcohol lost by drips and vents where the house states no alcohol-lost: the still is taken as tight, as the plan takes it",
}

// Answer counts what came of the draws.
func (t *Trial) Answer(u measure.Units) *Answer {
	a := &Answer{
		Format: Format, Version: Version, Batch: t.Batch.Name, Units: "us", Draws: len(t.Runs), Margin: oddsOf(len(t.Runs)/2, len(t.Runs)).margin(),
		Failed: t.Failed, Rejected: t.Draws.Rejected, Planned: t.Plan.Cask.Casks, CaskFullAt: cask.LeastFill,
		Casks: t.casks(), Promises: t.promises(), Numbers: t.numbers(), Shares: t.shares(), Drawn: t.drawn(), NotInIt: notInIt,
	}
	if u == measure.SI {
		a.Units = "si"
	}
	return a
}

// wanted is how many casks a batch is to fill: those of the plan, and one at least.
// Of a batch that goes into no wood it is none.
func (t *Trial) wanted() int {
	if t.Plan.Cask.SizeL == 0 {
		return 0
	}
	return max(1, t.Plan.Cask.Casks)
}

// fills is how often a batch fills the casks that it is to.
func (t *Trial) fills() Odds {
	n := t.wanted()
	return t.odds(func(r *Run) bool { return r.Casks >= n })
}

// Broken reports whether a promise of so many runs is broken.
func (a *Answer) Broken() bool {
	return slices.ContainsFunc(a.Promises, func(p Promise) bool { return p.Verdict == plan.PromiseBroken })
}

func (t *Trial) casks() []Casks {
	out := []Casks{}
	if t.wanted() == 0 {
		return out
	}
	most := t.wanted()
	for _, r := range t.Runs {
		most = max(most, r.Casks)
	}
	for n := 1; n <= most; n++ {
		out = append(out, Casks{n, t.odds(func(r *Run) bool { return r.Casks >= n })})
	}
	return out
}

func (t *Trial) promises() []Promise {
	out := []Promise{}
	for i, e := range t.Plan.Promises {
		p := Promise{What: e.What, Promised: e.Promised.Rounded(), Within: e.Tolerance.Rounded(), Odds: t.odds(func(r *Run) bool { return r.Kept[i] }), Asked: e.Times}
		if e.Times != nil {
			p.Verdict = p.Odds.against(e.Times.Share())
		}
		out = append(out, p)
	}
	return out
}

func (t *Trial) numbers() []Number {
	out := []Number{}
	if t.Failed == len(t.Runs) {
		return out
	}
	for k, m := range t.Numbers {
		n := Number{Key: m.Key, Name: m.Name, Stage: m.Stage, Unit: m.Unit, Places: m.Places, Planned: plan.RoundTo(m.Of(t.Plan), m.Places)}
		low, middle, high := spread(t.column(func(r *Run) float64 { return r.Values[k] }))
		n.Low, n.Middle, n.High = plan.RoundTo(low, m.Places), plan.RoundTo(middle, m.Places), plan.RoundTo(high, m.Places)
		out = append(out, n)
	}
	return out
}

// sharesShown is the least share that is told.
const sharesShown = 0.01

func (t *Trial) shares() []Shares {
	out := []Shares{}
	z := t.scores()
	for k, m := range t.Numbers {
		f, ok := shares(z, t.column(func(r *Run) float64 { return r.Values[k] }))
		if !ok {
			continue
		}
		s := Shares{Key: m.Key, Name: m.Name, R2: plan.RoundTo(f.R2, 3), Of: []Share{}}
		for j, c := range t.Draws.Of {
			if f.Share[j] >= sharesShown {
				s.Of = append(s.Of, Share{c.Key(), c.Words, c.Owner.String(), plan.RoundTo(f.Share[j], 3)})
			}
		}
		sorting.Stable(s.Of, func(a, b Share) int { return cmp.Compare(b.Share, a.Share) })
		out = append(out, s)
	}
	return out
}

func (t *Trial) drawn() []Drawn {
	out := []Drawn{}
	for _, c := range t.Draws.Of {
		d := Drawn{Constant: c.Key(), Words: c.Words, Owner: c.Owner.String(), Paths: []string{}, Form: c.Form.String(), Why: c.Why}
		low, high := c.Range()
		d.Written, d.Low, d.High = figures(c.AsWritten), figures(low), figures(high)
		for _, p := range c.Paths {
			d.Paths = append(d.Paths, p.String())
		}
		out = append(out, d)
	}
	return out
}
