package season

import (
	"math"
	"slices"

	"newmake/compile"
	"newmake/compile/book/season/search"
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/report"
	"newmake/compile/stage/schedule"
	"newmake/compile/work"
	"newmake/lang/recipe"
)

// course is the work of a batch in blocks: tasks that follow one another without a wait.
type course struct {
	batch  *recipe.Batch
	n      *numbers.Batch
	plan   *plan.Plan
	blocks []block
	strip  int // the first block of the wash still
	fill   int // the block in which the batch is done: its casks are filled, or else the last
	dryMin int // minutes from the end of the mash that the batch asks for
}

// block is one of them.
type block struct {
	tasks     []task
	minutes   int
	after     int // the block that it follows; -1: none
	least     int // from the start of that to its own
	most      int // likewise; search.NoMost: it may wait
	newDay    bool
	now       bool
	beside    bool // not in the line of work
	meanwhile bool // nobody waits for it
	also      int  // a block that ends before it starts, besides the one it follows; -1: none
}

// task is one piece of work of a block, in minutes from its start.
type task struct {
	key, stage, vessel string
	title              plan.Phrase
	from, to           int
	attend             schedule.Attend
	people             int
	powerW             float64
}

// busyTo is until when its people are taken.
func (t task) busyTo() int {
	if t.attend == schedule.Begin {
		return min(t.to, t.from+beginsMin)
	}
	return t.to
}

// beginsMin is how long a person is taken by the start of what then goes on alone (common
// practice; as in a plan).
const beginsMin = 15

// courseOf is the work of a batch with the numbers that are given.
func courseOf(n *numbers.Batch) *course {
	p := report.Plan(n)
	c := &course{batch: n.Batch, n: n, plan: p, strip: -1}
	type place struct{ block, end int }
	ends := map[string]place{}
	var beside []work.Job
	previous, gapS, mayWait := -1, 0.0, true
	lastGapS, also := 0.0, -1 // of what goes on alone and what is done meanwhile
	var jobs []work.Job
	for _, j := range work.All(work.ToWashRun(n), n, p.Cask, p.Reduction) {
		if j.After != "" {
			beside = append(beside, j)
		} else {
			jobs = append(jobs, j)
		}
	}
	for i := 0; i < len(jobs); {
		j := jobs[i]
		if j.Attend == schedule.Unattended && j.Chain == "" { // it needs no more than its time
			if j.Stage == "cask" {
				break
			}
			gapS, lastGapS = gapS+j.DurationS, j.DurationS
			mayWait = j.Elastic
			i++
			continue
		}
		b := block{after: previous, newDay: j.NewDay, now: j.Now, most: search.NoMost, also: also, meanwhile: j.Meanwhile}
		first, at := i, 0.0
		for ; i < len(jobs) && (i == first || j.Chain != "" && jobs[i].Chain == j.Chain); i++ {
			b.add(&jobs[i], at)
			at += jobs[i].DurationS
		}
		b.minutes = minutesUp(at)
		if previous >= 0 {
			beforeS := gapS
			if j.Meanwhile {
				beforeS -= lastGapS
			}
			b.least = c.blocks[previous].minutes + minutesUp(beforeS)
			if !j.MayWait && !mayWait {
				b.most = b.least
			}
		}
		if j.Stage == "strip" && c.strip < 0 {
			c.strip, c.dryMin = len(c.blocks), minutesUp(gapS)
			b.most = b.least + washKeepsS/60
		}
		for _, t := range b.tasks {
			ends[t.key] = place{len(c.blocks), t.to}
		}
		if also = -1; j.Meanwhile {
			also = len(c.blocks)
		} else {
			previous, gapS, mayWait = len(c.blocks), 0, false
		}
		c.blocks = append(c.blocks, b)
	}
	c.fill = previous
	for _, j := range beside {
		at, ok := ends[j.After]
		if !ok {
			continue
		}
		b := block{after: at.block, least: at.end, most: search.NoMost, now: j.Now, beside: true, also: -1}
		if !j.MayWait {
			b.most = b.least
		}
		b.add(&j, 0)
		b.minutes = minutesUp(j.DurationS)
		ends[j.Key] = place{len(c.blocks), b.minutes}
		c.blocks = append(c.blocks, b)
	}
	return c
}

func (b *block) add(j *work.Job, atS float64) {
	t := j.Task
	one := task{
		key: t.Key, title: j.InWords(), stage: t.Stage, vessel: t.Vessel, from: int(math.Round(atS / 60)), to: minutesUp(atS + t.DurationS),
		attend: t.Attend, powerW: t.Power,
	}
	if n := len(b.tasks); n > 0 { // they follow one another
		one.from = b.tasks[n-1].to
	}
	if t.Attend != schedule.Unattended {
		one.people = max(t.People, 1)
	}
	one.to = max(one.to, one.from)
	b.tasks = append(b.tasks, one)
}

// minutesUp is seconds in whole minutes, with a margin for the last bit of a float.
func minutesUp(s float64) int { return int(math.Ceil(s/60 - 1e-6)) }

// numbersOf is a batch as it is in a house at work.
func numbersOf(b *recipe.Batch, memo *numbers.Memo) (*numbers.Batch, error) {
	return compile.Numbers(b, memo, compile.Calculated)
}

// fermenters are those that hold the wash of a batch; all that it may go into, if none
// does.
func (c *course) fermenters() []*recipe.Vessel {
	var out []*recipe.Vessel
	for _, v := range c.batch.Ferm.Vessels {
		if c.n.Fermented.WortM3 <= v.HoldsM3*numbers.FillMost(v) {
			out = append(out, v)
		}
	}
	if out == nil {
		return c.batch.Ferm.Vessels
	}
	return out
}

// tanks are those of the plant that hold an amount alone; ok is false where the plant
// says nothing of such tanks, or none holds it.
func tanks(p *recipe.Plant, of recipe.Contents, m3 float64) (out []*recipe.Tank, ok bool) {
	for _, t := range p.TanksFor(of) {
		if t.HoldsM3 >= m3 {
			out = append(out, t)
		}
	}
	return out, len(out) > 0
}

// wantsBackset says that the recipe's mash takes backset.
func wantsBackset(b *recipe.Batch) float64 {
	m3 := 0.0
	for _, s := range b.Mash.Steps {
		if s.Verb == recipe.MashBackset {
			m3 += s.VolumeM3
		}
	}
	return m3
}

// usesKept says that the recipe's mash takes the last water of the one before, leavesKept
// that it leaves some.
func usesKept(b *recipe.Batch) bool {
	return slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.KeptM3 > 0 })
}

func leavesKept(b *recipe.Batch) bool {
	return slices.ContainsFunc(b.Mash.Steps, func(s recipe.MashStep) bool { return s.NextMash })
}

// intoFermenter is the first minute of the mash at which the fermenter is wanted.
func (c *course) intoFermenter() int {
	name := c.n.Fermented.Vessel.Name
	for _, t := range c.blocks[0].tasks {
		if t.vessel == name {
			return t.from
		}
		if !c.n.Mashed.InFermenter {
			continue
		}
		for i, s := range c.n.Mash.Steps {
			if (s.Verb == recipe.MashDrain || s.Verb == recipe.MashSparge) && t.key == plan.MashStepID(i) {
				return t.from
			}
		}
	}
	return 0
}

// stage gives the first and the last task of a stage that is done in a vessel.
func (c *course) stage(stage, vessel string) (first, last [2]int, ok bool) {
	for i, b := range c.blocks {
		for _, t := range b.tasks {
			if t.stage != stage || t.vessel != vessel {
				continue
			}
			if !ok {
				first, ok = [2]int{i, t.from}, true
			}
			if last[0] != i || t.to > last[1] {
				last = [2]int{i, t.to}
			}
		}
	}
	return first, last, ok
}
