package compile

import (
	"newmake/compile/numbers"
	"newmake/compile/plan"
	"newmake/compile/work"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// Memo computes many batches that are much alike. A stage whose inputs have been
// seen before is not run again: a changed cut leaves mash, ferment and stripping run
// as they were. It may be used from several goroutines, and what it gives does
// not hang on their order.
type Memo struct{ stages numbers.Memo }

// Compile is Compile for what is to be calculated with and not printed: its
// numbers are not rounded, and the first batch of a house without feints is left
// out.
func (m *Memo) Compile(b *recipe.Batch) (*plan.Plan, diag.List) {
	return compiled(b, &m.stages, Calculated, work.Hours{})
}

// Stages are what it keeps, for who wants numbers alone beside its plans.
func (m *Memo) Stages() *numbers.Memo { return &m.stages }

// Checks says of many batches what Compile has to say, without their plans. A
// house makes the same few recipes on other days, so the last stages computed are
// kept. It may be used from several goroutines.
type Checks struct{ stages *numbers.Memo }

// stagesKept is how many results of each stage Checks keeps: enough for the
// recipes of a house, and little memory however many batches there are.
const stagesKept = 32

// NewChecks makes a Checks.
func NewChecks() *Checks { return &Checks{numbers.Keeping(stagesKept)} }

// Check gives the list that Compile gives with the plan.
func (k *Checks) Check(b *recipe.Batch) diag.List {
	_, list := compiled(b, k.stages, Checked, work.Hours{})
	return list
}
