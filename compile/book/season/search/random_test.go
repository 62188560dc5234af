package search

import (
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// models is where the random instances are written for MiniZinc, by .ci/solver.
var models = flag.String("models", "", "folder into which the random instances are written as MiniZinc models")

// instances is how many random instances the independent solver has solved.
const instances = 60

// randomProblem makes a small problem with a bit of everything.
func randomProblem(seed uint64) *Problem {
	r := &random{state: seed * 7919}
	p := &Problem{Horizon: 24 + r.below(8)}
	if seed%6 == 5 { // so short that it often cannot be done at all
		p.Horizon = 8 + r.below(4)
	}
	one := r.below(2) + 1
	for range one {
		p.Resources = append(p.Resources, Resource{[]Step{{0, 1}}})
	}
	twins := len(p.Resources)
	p.Resources = append(p.Resources, Resource{[]Step{{0, 1}}}, Resource{[]Step{{0, 1}}})
	crew := len(p.Resources)
	steps := []Step{{0, 3}}
	if r.below(2) == 0 { // somebody is away
		at := 4 + r.below(8)
		steps = append(steps, Step{at, 2}, Step{at + 3, 3})
	}
	p.Resources = append(p.Resources, Resource{steps})
	if r.below(2) == 0 {
		var shifts []Window
		for t := r.below(3); t+7 < p.Horizon; t += 9 {
			shifts = append(shifts, Window{t, t + 7})
		}
		p.Calendars = append(p.Calendars, shifts)
	}
	jobs := 2 + r.below(2)
	for j := range jobs {
		job := Job{Optional: r.below(3) == 0}
		c := -1
		if r.below(2) == 0 {
			c = len(p.Choices)
			p.Choices = append(p.Choices, Choice{[]int{twins, twins + 1}})
			job.Choices = []int{c}
		}
		first := len(p.Activities)
		for i := range 2 + r.below(2) {
			a := len(p.Activities)
			act := Activity{Duration: 1 + r.below(4), Latest: p.Horizon}
			if r.below(3) > 0 {
				act.Uses = append(act.Uses, Use{Named(r.below(one)), 0, act.Duration, 1})
			}
			if r.below(2) == 0 {
				from := r.below(act.Duration)
				act.Uses = append(act.Uses, Use{Named(crew), from, act.Duration, 1 + r.below(2)})
			}
			if len(p.Calendars) > 0 && r.below(2) == 0 {
				act.Within = []During{{0, 0, act.Duration}}
			}
			p.Activities = append(p.Activities, act)
			job.Activities = append(job.Activities, a)
			if i > 0 {
				l := Lag{a - 1, a, p.Activities[a-1].Duration + r.below(3), NoMost}
				if r.below(2) == 0 {
					l.Most = l.Least + r.below(5)
				}
				p.Lags = append(p.Lags, l)
			}
		}
		last := len(p.Activities) - 1
		if c >= 0 {
			job.Holds = []int{len(p.Holds)}
			p.Holds = append(p.Holds, Hold{Chosen(c), first, 0, last, p.Activities[last].Duration, 1})
		}
		p.Jobs = append(p.Jobs, job)
		if job.Optional {
			p.Costs = append(p.Costs, Cost{Kind: Absent, Level: 0, Weight: 1 + int64(r.below(3)), Job: j})
		}
		switch r.below(4) {
		case 0:
			p.Costs = append(p.Costs, Cost{Kind: Late, Level: 0, Weight: 1, A: last, At: 5 + r.below(8)})
		case 1:
			p.Costs = append(p.Costs, Cost{Kind: Over, Level: 1, Weight: 1, A: first, B: last, At: 2 + r.below(6)})
		case 2:
			p.Costs = append(p.Costs, Cost{Kind: Moved, Level: 1, Weight: 2, A: first, At: r.below(12)})
		}
		p.Costs = append(p.Costs, Cost{Kind: Start, Level: 2, Weight: 1, A: last})
	}
	if r.below(3) == 0 {
		p.Costs = append(p.Costs, Cost{Kind: Makespan, Level: 1, Weight: 1})
	}
	return p
}

// radix brings the three levels of a random instance into one number.
const radix = 400

func oneNumber(v Vector) int64 { return (v[0]*radix+v[1])*radix + v[2] }

// miniZinc writes a problem for an independent solver, straight from its definition.
func miniZinc(p *Problem) string {
	var b strings.Builder
	say := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	say(`include "cumulative.mzn";`)
	jobOf, _ := p.jobs()
	for j, job := range p.Jobs {
		least := 1
		if job.Optional {
			least = 0
		}
		say("var %d..1: p%d;", least, j)
	}
	for a, act := range p.Activities {
		say("var %d..%d: s%d;", act.Earliest, p.latest(a), a)
	}
	for c, choice := range p.Choices {
		var set []string
		for _, o := range choice.Options {
			set = append(set, strconv.Itoa(o))
		}
		say("var {%s}: c%d;", strings.Join(set, ","), c)
	}
	for _, l := range p.Lags {
		say("constraint p%d = 1 -> s%d - s%d >= %d;", jobOf[l.From], l.To, l.From, l.Least)
		if l.Most < NoMost {
			say("constraint p%d = 1 -> s%d - s%d <= %d;", jobOf[l.From], l.To, l.From, l.Most)
		}
	}
	for a, act := range p.Activities {
		for _, d := range act.Within {
			var or []string
			for _, w := range p.Calendars[d.Calendar] {
				or = append(or, fmt.Sprintf("(s%d + %d >= %d /\\ s%d + %d <= %d)", a, d.From, w.Open, a, d.To, w.Close))
			}
			say("constraint p%d = 1 -> (%s);", jobOf[a], strings.Join(append(or, "false"), " \\/ "))
		}
	}
	for r, res := range p.Resources {
		var s, d, q []string
		most := 0
		for _, c := range res.Capacity {
			most = max(most, c.Amount)
		}
		for i, c := range res.Capacity { // what is not there is taken by a task that always runs
			end := p.Horizon + 100
			if i+1 < len(res.Capacity) {
				end = res.Capacity[i+1].At
			}
			if c.Amount < most {
				s, d, q = append(s, strconv.Itoa(c.At)), append(d, strconv.Itoa(end-c.At)), append(q, strconv.Itoa(most-c.Amount))
			}
		}
		amount := func(w Which, n, job int) (string, bool) {
			if w >= 0 {
				return fmt.Sprintf("%d*p%d", n, job), int(w) == r
			}
			return fmt.Sprintf("%d*p%d*bool2int(c%d = %d)", n, job, int(^w), r), true
		}
		for a, act := range p.Activities {
			for _, u := range act.Uses {
				if n, ok := amount(u.Of, u.Amount, jobOf[a]); ok {
					s, d, q = append(s, fmt.Sprintf("s%d+%d", a, u.From)), append(d, strconv.Itoa(u.To-u.From)), append(q, n)
				}
			}
		}
		for _, h := range p.Holds {
			if n, ok := amount(h.Of, h.Amount, jobOf[h.From]); ok {
				s = append(s, fmt.Sprintf("s%d+%d", h.From, h.FromTime))
				d = append(d, fmt.Sprintf("max(0, s%d+%d-s%d-%d)", h.To, h.ToTime, h.From, h.FromTime))
				q = append(q, n)
			}
		}
		if len(s) > 0 {
			say("constraint cumulative([%s], [%s], [%s], %d);", strings.Join(s, ","), strings.Join(d, ","), strings.Join(q, ","), most)
		}
	}
	levels := [3][]string{{"0"}, {"0"}, {"0"}}
	var ends []string
	for a, act := range p.Activities {
		ends = append(ends, fmt.Sprintf("p%d*(s%d+%d)", jobOf[a], a, act.Duration))
	}
	for _, c := range p.Costs {
		var term string
		switch c.Kind {
		case Absent:
			term = fmt.Sprintf("%d*(1-p%d)", c.Weight, c.Job)
		case Late:
			term = fmt.Sprintf("%d*p%d*bool2int(s%d > %d)", c.Weight, jobOf[c.A], c.A, c.At)
		case Over:
			term = fmt.Sprintf("%d*p%d*max(0, s%d-s%d-%d)", c.Weight, jobOf[c.A], c.B, c.A, c.At)
		case Elsewhere:
			term = fmt.Sprintf("%d*p%d*bool2int(c%d != %d)", c.Weight, c.Job, c.A, c.At)
		case Start:
			term = fmt.Sprintf("%d*p%d*s%d", c.Weight, jobOf[c.A], c.A)
		case Moved:
			term = fmt.Sprintf("%d*p%d*bool2int(s%d != %d)", c.Weight, jobOf[c.A], c.A, c.At)
		case Makespan:
			term = fmt.Sprintf("%d*max([%s])", c.Weight, strings.Join(ends, ","))
		}
		levels[c.Level] = append(levels[c.Level], term)
	}
	say("var int: cost = (%s)*%d + (%s)*%d + (%s);", strings.Join(levels[0], "+"), radix*radix, strings.Join(levels[1], "+"), radix, strings.Join(levels[2], "+"))
	say("solve minimize cost;")
	say(`output ["\(cost)\n"];`)
	return b.String()
}

// TestAgainstMiniZinc: what is proved best of small random problems is what MiniZinc with
// Gecode proved (`.ci/solver`, which makes the table anew). No heuristic is better, none is
// worse than greedy, and what each gives keeps all the rules.
func TestAgainstMiniZinc(t *testing.T) {
	if *models != "" {
		for i := range instances {
			require.NoError(t, os.WriteFile(filepath.Join(*models, fmt.Sprintf("%03d.mzn", i)), []byte(miniZinc(randomProblem(uint64(i)))), 0o644))
		}
		return
	}
	f, err := os.Open(filepath.Join("testdata", "minizinc.csv"))
	require.NoError(t, err)
	defer f.Close()
	read := csv.NewReader(f)
	read.Comment = '#'
	rows, err := read.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, instances+1)
	solved, found := 0, 0
	for _, row := range rows[1:] {
		seed, err := strconv.ParseUint(row[0], 10, 64)
		require.NoError(t, err)
		p := randomProblem(seed)
		require.NoError(t, p.Valid())
		proof := Exact(p, nil, 2_000_000)
		require.True(t, proof.Proved, "instance %d", seed)
		if row[1] == "none" {
			assert.Nil(t, proof.Best, "instance %d", seed)
			continue
		}
		solved++
		want, err := strconv.ParseInt(row[1], 10, 64)
		require.NoError(t, err)
		require.NotNil(t, proof.Best, "instance %d", seed)
		require.NoError(t, Check(p, proof.Best), "instance %d", seed)
		assert.Equal(t, want, oneNumber(proof.Best.Cost), "instance %d", seed)
		if greedy, ok := Greedy(p); ok {
			require.NoError(t, Check(p, greedy), "instance %d", seed)
			better, ok := Improve(p, greedy, 200)
			require.True(t, ok)
			require.NoError(t, Check(p, better), "instance %d", seed)
			assert.False(t, greedy.Cost.Less(better.Cost), "instance %d", seed)
			assert.False(t, better.Cost.Less(proof.Best.Cost), "instance %d", seed)
			if better.Cost == proof.Best.Cost {
				found++
			}
		}
	}
	assert.Greater(t, solved, instances/2)
	t.Logf("%d have a schedule, of %d the search found the best", solved, found)
}

// inTime counts the optional jobs that cost nothing at the first level.
func inTime(p *Problem, s *Placed) int {
	n := 0
	for j, job := range p.Jobs {
		if !job.Optional || !s.Present[j] {
			continue
		}
		ok := true
		for i := range p.Costs {
			c := &p.Costs[i]
			if c.Kind == Late && c.Level == 0 && slices.Contains(job.Activities, c.A) && s.Start[c.A] > c.At {
				ok = false
			}
		}
		if ok {
			n++
		}
	}
	return n
}

// TestBoundIsOne: no schedule has more jobs in time than the bound says, of random problems
// in which shifts, people and vessels are scarce; and it says less than all of them often
// enough to be worth having.
func TestBoundIsOne(t *testing.T) {
	tight, exact := 0, 0
	for seed := range uint64(60) {
		r := &random{state: seed*31 + 5}
		p := &Problem{Horizon: 60}
		for range 2 {
			p.Resources = append(p.Resources, Resource{[]Step{{0, 1}}})
		}
		p.Resources = append(p.Resources, Resource{[]Step{{0, 1 + r.below(2)}}})
		var shifts []Window
		for at := r.below(4); at+10 < p.Horizon; at += 20 {
			shifts = append(shifts, Window{at, at + 10})
		}
		p.Calendars = [][]Window{shifts}
		for j := range 4 {
			first := len(p.Activities)
			job := Job{Optional: true, Choices: []int{j}, Holds: []int{j}, Alike: 1}
			p.Choices = append(p.Choices, Choice{[]int{0, 1}})
			for i := range 2 {
				d := 5 + i
				p.Activities = append(p.Activities, Activity{Duration: d, Uses: []Use{{Named(2), 0, d, 1}}, Within: []During{{0, 0, d}}})
				job.Activities = append(job.Activities, first+i)
			}
			p.Lags = append(p.Lags, Lag{first, first + 1, 12 + r.below(2), 30})
			p.Holds = append(p.Holds, Hold{Chosen(j), first, 0, first + 1, 6, 1})
			p.Jobs = append(p.Jobs, job)
			p.Costs = append(p.Costs, Cost{Kind: Absent, Weight: 1, Job: j}, Cost{Kind: Start, Level: 1, Weight: 1, A: first + 1})
		}
		require.NoError(t, p.Valid())
		found, _ := Improve(p, nil, 60)
		require.NoError(t, Check(p, found))
		limit := Bound(p, inTime(p, found), 200)
		require.GreaterOrEqual(t, limit.Most, inTime(p, found), "problem %d", seed)
		if limit.Most < len(p.Jobs) {
			tight++
		}
		if limit.Most == inTime(p, found) {
			exact++
		}
		q := randomProblem(seed)
		if s, ok := Greedy(q); ok {
			better, _ := Improve(q, s, 50)
			require.GreaterOrEqual(t, Bound(q, 0, 60).Most, inTime(q, better), "instance %d", seed)
		}
	}
	t.Logf("the bound is below all jobs in %d, and what was found in %d of 60", tight, exact)
	assert.Greater(t, tight, 30)
	assert.Greater(t, exact, 30)
}

// FuzzSearch: whatever the problem, what is found keeps its rules, and more effort is
// never worse.
func FuzzSearch(f *testing.F) {
	for seed := range uint64(8) {
		f.Add(seed+1000, uint8(20))
	}
	f.Fuzz(func(t *testing.T, seed uint64, steps uint8) {
		p := randomProblem(seed)
		require.NoError(t, p.Valid())
		greedy, ok := Greedy(p)
		if !ok {
			return
		}
		require.NoError(t, Check(p, greedy))
		some, _ := Improve(p, greedy, int(steps))
		more, _ := Improve(p, greedy, 2*int(steps))
		require.NoError(t, Check(p, some))
		require.NoError(t, Check(p, more))
		require.False(t, some.Cost.Less(more.Cost))
		again, _ := Improve(p, greedy, int(steps))
		require.Equal(t, some, again)
	})
}

// Greedy places the jobs one after the other in their order, each as soon as it can be.
// ok is false where one that is not optional finds no place.
func Greedy(p *Problem) (s *Placed, ok bool) {
	d := newDesk(p)
	ok = d.greedy()
	return d.placed(), ok
}
