package taste

import (
	"math"

	"newmake/lang/record"
	"newmake/lang/tree"
)

// Format and Version name the shape of an answer as JSON. A minor version adds names and
// never takes one away.
const (
	Format  = "newmake.trial"
	Version = "1.0"
)

// What a trial is judged by (common practice in sensory analysis).
const (
	level    = .05 // how often guessing may pass for a difference
	sure     = .8  // how often a difference should be found, to be called findable
	coverage = .9  // how often a range holds what it is of
)

// shares are shares of tasters who tell samples apart, for which the needed answers are
// said: a half is plain to many, a fifth is a subtle difference.
var shares = []float64{.5, .3, .2}

// mostNeeded is how many answers are worth counting up to.
const mostNeeded = 1000

// Judged is what a trial can find, and what it found.
type Judged struct {
	Format     string      `json:"format"`
	Version    string      `json:"version"`
	Trial      string      `json:"trial"`
	On         string      `json:"date"`
	Method     Method      `json:"method"`
	Samples    []string    `json:"samples"`
	Expecting  []string    `json:"expecting,omitempty"`
	Level      float64     `json:"level"`
	Beforehand *Beforehand `json:"beforehand,omitempty"` // what can be found, of a difference test
	Counted    *Counted    `json:"counted,omitempty"`    // answers of a difference test
	Ranked     *Ranked     `json:"ranked,omitempty"`     // answers of a ranking
	Answers    []Answer    `json:"answers"`
	Serving    []Set       `json:"serving"` // who gets what; empty where nobody is named to taste
	Tasters    []string    `json:"tasters"`
	Nosed      string      `json:"nosed,omitempty"` // the strength, as it is written
	Notes      []string    `json:"notes"`
	Sitting    *Sitting    `json:"sitting,omitempty"` // where somebody gets more cups than one sitting bears
}

// Sitting is how a trial of many cups is parted.
type Sitting struct {
	Cups     int `json:"cups"` // of one taster, together
	Most     int `json:"most"` // that one sitting bears
	Sets     int `json:"setsEach"`
	Sittings int `json:"sittings"`
}

// cupsASitting is how many cups of spirit a nose takes at one sitting (common practice: six
// to eight).
const cupsASitting = 8

// sitting parts the sets of a taster into sittings, nil where one is enough. A set is never
// parted: the cups of one are held against each other.
func sitting(m Method, samples, sets int) *Sitting {
	cups := map[Method]int{Triangle: 3, DuoTrio: 3, Paired: 2, Ranking: samples}[m]
	if cups == 0 || sets*cups <= cupsASitting {
		return nil
	}
	each := max(1, cupsASitting/cups)
	return &Sitting{Cups: sets * cups, Most: cupsASitting, Sets: each, Sittings: (sets + each - 1) / each}
}

// Beforehand is what so many answers can find.
type Beforehand struct {
	Answers  int      `json:"answers"`
	Least    int      `json:"least"`              // right answers that show a difference; more than Answers: none do
	Findable *float64 `json:"findable,omitempty"` // the share of tasters telling apart that is found 8 times in 10; none if no share is
	Needed   []Needed `json:"needed"`
}

// Needed is how many answers find a share of tasters who tell apart.
type Needed struct {
	Share   float64 `json:"share"`
	Answers int     `json:"answers"`
}

// Answer is what one taster said.
type Answer struct {
	By    string    `json:"by"`
	Right int       `json:"right"`
	N     int       `json:"answers"`
	Ranks []float64 `json:"ranks,omitempty"`
	Words string    `json:"words,omitempty"`
}

// Counted is what the answers of a difference test show.
type Counted struct {
	Right     int     `json:"right"`
	N         int     `json:"answers"`
	P         float64 `json:"p"` // how often guessing gives as much
	Differ    bool    `json:"differ"`
	TellApart Share   `json:"tellApart"` // share of answers that came from telling apart; of a pair either way, share for the first
	Several   bool    `json:"several"`   // somebody answered more than once
}

// Ranked is what a ranking shows.
type Ranked struct {
	Sums      []float64 `json:"rankSums"`
	Friedman  float64   `json:"friedman"`
	P         float64   `json:"p"`
	Exact     bool      `json:"exact"`
	Differ    bool      `json:"differ"`
	Least     float64   `json:"leastDifference"` // of two rank sums
	Pairs     []Pair    `json:"pairs"`           // those that differ
	Agreement float64   `json:"agreement"`       // Kendall's W
	Page      *Page     `json:"page,omitempty"`  // of the order that was expected
	Several   bool      `json:"several"`         // somebody ranked more than once
}

// Pair is two samples that differ, the one that ranks first first.
type Pair struct {
	First  string `json:"first"`
	Second string `json:"second"`
}

// Page is the test of an order.
type Page struct {
	L     float64 `json:"l"`
	P     float64 `json:"p"`
	Exact bool    `json:"exact"`
	Shown bool    `json:"shown"`
}

// Judge says what a trial can find, who gets which cup, and what its answers show.
func Judge(t *record.Trial) *Judged {
	j := &Judged{Format: Format, Version: Version, Trial: t.Name, On: t.On.String(), Method: Method(t.Method), Level: level,
		Samples: []string{}, Tasters: []string{}, Notes: []string{}, Answers: []Answer{}}
	for _, s := range t.Compare {
		j.Samples = append(j.Samples, s.String())
	}
	for _, i := range t.Expecting {
		j.Expecting = append(j.Expecting, j.Samples[i])
	}
	j.Tasters = append(j.Tasters, t.Tasters...)
	if t.Nosed != nil {
		j.Nosed = t.Nosed.Num + " " + t.Nosed.Unit
	}
	for _, n := range t.Notes {
		j.Notes = append(j.Notes, n.Words)
	}
	j.Serving = serving(j.Method, len(t.Compare), len(t.Tasters), t.Sets, t.Name+" "+j.On)
	n, sets := 0, 0
	if len(t.Tasters) > 0 {
		sets = t.Sets
	}
	for _, a := range t.Answers {
		sets = max(sets, a.N)
		j.Answers = append(j.Answers, Answer{a.By, a.Right, a.N, a.Ranks, a.Words})
		n += a.N
	}
	j.Sitting = sitting(j.Method, len(t.Compare), sets)
	if j.Method == Ranking {
		if len(t.Answers) > 1 {
			j.Ranked = ranked(j, t)
		}
		return j
	}
	test := testOf(j.Method, len(t.Expecting) > 0)
	planned := len(t.Tasters) * t.Sets
	if n > 0 {
		j.Counted, planned = counted(test, j.Answers), n
	}
	if planned > 0 {
		j.Beforehand = beforehand(test, planned)
	}
	return j
}

func beforehand(t Test, n int) *Beforehand {
	b := &Beforehand{Answers: n, Least: t.Least(n, level), Needed: []Needed{}}
	if d := t.Findable(n, level, sure); !math.IsInf(d, 1) {
		d = math.Ceil(d*100) / 100 // not less than can be found
		b.Findable = &d
	}
	for _, s := range shares {
		b.Needed = append(b.Needed, Needed{s, t.Needed(level, s, sure, mostNeeded)})
	}
	return b
}

func counted(t Test, all []Answer) *Counted {
	c := &Counted{}
	seen := map[string]bool{}
	for _, a := range all {
		c.Right += a.Right
		c.N += a.N
		c.Several = c.Several || a.N > 1 || seen[tree.Key(a.By)]
		seen[tree.Key(a.By)] = true
	}
	c.P = t.P(c.Right, c.N)
	c.Differ = c.P <= level
	if c.TellApart = t.discriminators(c.Right, c.N, coverage); t.TwoSided {
		c.TellApart = interval(c.Right, c.N, coverage)
	}
	return c
}

func ranked(j *Judged, t *record.Trial) *Ranked {
	var ranks Ranks
	seen, several := map[string]bool{}, false
	for _, a := range t.Answers {
		ranks = append(ranks, a.Ranks)
		several = several || seen[tree.Key(a.By)]
		seen[tree.Key(a.By)] = true
	}
	r := &Ranked{Sums: ranks.Sums(), Least: leastDifference(len(ranks), len(t.Compare), level), Agreement: ranks.Agreement(), Pairs: []Pair{}, Several: several}
	r.Friedman, r.P, r.Exact = ranks.Friedman()
	r.Differ = r.P <= level
	if r.Differ {
		for a := range r.Sums {
			for b := range r.Sums {
				if r.Sums[b]-r.Sums[a] >= r.Least {
					r.Pairs = append(r.Pairs, Pair{j.Samples[a], j.Samples[b]})
				}
			}
		}
	}
	if len(t.Expecting) > 0 {
		p := &Page{}
		p.L, p.P, p.Exact = ranks.Page(t.Expecting)
		p.Shown = p.P <= level
		r.Page = p
	}
	return r
}
