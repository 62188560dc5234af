package compare

import (
	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/notice"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"slices"
)

// Format and Version name the shape of a comparison as JSON. A minor version
// adds names and never takes one away.
const (
	Format  = "newmake.diff"
	Version = "1.0"
)

// Comparison is two batches, one against the other.
type Comparison struct {
	Old Side `json:"old"`
	New Side `json:"new"`

	Units    string    `json:"units"` // of the outcomes: us or si
	Same     bool      `json:"noChangeInMeaning"`
	Notes    []string  `json:"notes,omitempty"` // what changed without effect
	Bill     []BillRow `json:"bill,omitempty"`  // when a weight or a share changed
	Edits    []Edit    `json:"edits"`
	Why      *Why      `json:"why,omitempty"`
	Gained   []Word    `json:"gained,omitempty"`
	Lost     []Word    `json:"lost,omitempty"`
	Moments  []Moment  `json:"moments,omitempty"`
	Outcomes []Outcome `json:"outcomes,omitempty"` // none when no plan could be made
	Missing  string    `json:"missing,omitempty"`  // why there are none
	Unpriced *Unpriced `json:"unpriced,omitempty"` // what the money of the outcomes leaves out
}

// Unpriced are things that have no price, and so count as nothing: those of both sides, and
// those of one alone, for which the money of the two does not compare.
type Unpriced struct {
	Both []string `json:"both,omitempty"`
	Old  []string `json:"old,omitempty"`
	New  []string `json:"new,omitempty"`
}

// unpricedOf says what the money of two plans leaves out, nil where nothing is.
func unpricedOf(a, b *plan.Plan) *Unpriced {
	if a.Cost == nil || b.Cost == nil || len(a.Cost.Unpriced)+len(b.Cost.Unpriced) == 0 {
		return nil
	}
	u := &Unpriced{}
	for _, what := range a.Cost.Unpriced {
		if slices.Contains(b.Cost.Unpriced, what) {
			u.Both = append(u.Both, what)
		} else {
			u.Old = append(u.Old, what)
		}
	}
	for _, what := range b.Cost.Unpriced {
		if !slices.Contains(a.Cost.Unpriced, what) {
			u.New = append(u.New, what)
		}
	}
	return u
}

// Side is one of the two.
type Side struct {
	Label string `json:"label"` // as it was asked for: HEAD~1:ferry-landing.batch
	Batch string `json:"batch"`

	recipe  *recipe.Batch
	checked diag.List
}

// SideOf makes a side of a checked batch and what was said of it.
func SideOf(label string, b *recipe.Batch, checked diag.List) Side {
	return Side{Label: label, Batch: b.Name, recipe: b, checked: checked}
}

// Options of Batches.
type Options struct {
	Units measure.Units
	NoWhy bool // leave the attribution out
	// Measured says that what is new was weighed and gauged, and not written in a recipe: it
	// is said to the places of its instrument, and by how much more or less it is.
	Measured bool
	Memo     *compile.Memo // of stages, to be shared between comparisons; nil is one of its own
}

// Batches compares two batches by meaning, computes both, and takes what changed
// in the plan apart.
func Batches(old, new Side, o Options) *Comparison {
	d := find(old.recipe, new.recipe, say{o.Units, o.Measured})
	c := &Comparison{Old: old, New: new, Units: "us", Same: d.Same(), Notes: d.Notes, Edits: d.Edits}
	if o.Units == measure.SI {
		c.Units = "si"
	}
	if c.Edits == nil {
		c.Edits = []Edit{}
	}
	if !d.bill.same {
		c.Bill = d.Bill
	}
	if c.Same {
		return c
	}
	memo := o.Memo
	if memo == nil {
		memo = &compile.Memo{}
	}
	a, listA := memo.Compile(old.recipe)
	b, listB := memo.Compile(new.recipe)
	if a == nil || b == nil {
		c.Missing = missing(a, listA, listB)
		return c
	}
	c.Outcomes = outcomesOf(a, b, o.Units)
	c.Unpriced = unpricedOf(a, b)
	c.Moments = momentsOf(a, b)
	c.Gained, c.Lost = gainedAndLost(wordsOf(a, notice.Together(old.checked, listA)), wordsOf(b, notice.Together(new.checked, listB)))
	if !o.NoWhy {
		if len(c.Changed()) > 0 {
			putWithin(c.Outcomes, new.recipe)
		}
		c.Why = d.why(memo, c.Changed(), o.Units)
	}
	return c
}

func missing(a *plan.Plan, listA, listB diag.List) string {
	which, list := "the new batch", listB
	if a == nil {
		which, list = "the old batch", listA
	}
	for _, d := range list {
		if d.Severity == diag.Error {
			return which + " cannot be computed: " + d.Summary
		}
	}
	return which + " cannot be computed"
}

// Changed lists the outcomes that changed.
func (c *Comparison) Changed() []Outcome {
	var out []Outcome
	for _, o := range c.Outcomes {
		if o.Changed() {
			out = append(out, o)
		}
	}
	return out
}

// Find gives an outcome by its key.
func (c *Comparison) Find(key string) (Outcome, bool) {
	for _, o := range c.Outcomes {
		if o.Key == key {
			return o, true
		}
	}
	return Outcome{}, false
}
