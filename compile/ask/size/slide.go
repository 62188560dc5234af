package size

import (
	"math"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// Slide is the end of the hearts as something to be moved to either side of where it
// is, in the measure in which the cut is written.
type Slide struct {
	Unit     string  // "% abv", "proof", "gal", "F", "% of charge"
	From, To float64 // in the unit; From is the smaller
	Step     float64
	Now      float64 // where the batch has it

	cutter
	si func(v float64) float64
}

// slideSteps is the most steps of a range: as many as a finger can tell apart.
const slideSteps = 160

// NewSlide is that of a batch. The error says why it has none.
func NewSlide(b *recipe.Batch, u measure.Units) (*Slide, error) {
	s := &Slide{cutter: cutter{batch: b, memo: &compile.Memo{}}}
	from, to, err := s.span()
	if err != nil {
		return nil, diag.Refuse("%v", err)
	}
	k := b.Spirit.HeartsTo
	by := func(unit string, kind quantity.Kind) func(float64) float64 {
		s.Unit = unit
		s.si = func(v float64) float64 { x, _ := quantity.ToSI(v, unit, kind); return x }
		return func(x float64) float64 { v, _ := quantity.FromSI(x, unit, kind); return v }
	}
	times := func(unit string, n float64) func(float64) float64 {
		s.Unit = unit
		s.si = func(v float64) float64 { return v / n }
		return func(x float64) float64 { return x * n }
	}
	var shown func(float64) float64
	var now float64
	us := u == measure.US
	switch k.By {
	case recipe.ByVolume:
		shown, now = by(map[bool]string{true: "gal", false: "L"}[us], quantity.Volume), k.VolumeM3
	case recipe.ByVapourTemp:
		shown, now = by(map[bool]string{true: "F", false: "C"}[us], quantity.Temperature), k.TempC
	case recipe.ByShare:
		shown, now = times("% of charge", 100), k.Share
	case recipe.ByTime:
		shown, now = by("min", quantity.Duration), k.TimeS
	default:
		if shown, now = times(map[bool]string{true: "% abv", false: "% vol"}[us], 100), k.Strength.Value; k.Strength.Basis == recipe.Proof {
			shown = times("proof", 200)
		}
	}
	low, high := shown(from), shown(to)
	if low > high {
		low, high = high, low
	}
	s.Now = shown(now)
	if s.Now <= low || s.Now >= high {
		return nil, diag.Refuse("the hearts end where the run does")
	}
	side := min(s.Now-low, high-s.Now) // as far to one side as to the other
	s.Step = quantity.RoundUp(2 * side / slideSteps)
	s.From, s.To = math.Ceil((s.Now-side)/s.Step)*s.Step, math.Floor((s.Now+side)/s.Step)*s.Step
	return s, nil
}

// Holds reports whether a cut lies within the range.
func (s *Slide) Holds(v float64) bool {
	return v >= s.From-1e-9 && v <= s.To+1e-9
}

// At is the plan with the hearts ending somewhere else. The error is a diag.Refusal,
// which says why there is none.
func (s *Slide) At(v float64) (*plan.Plan, error) {
	if !s.Holds(v) {
		return nil, diag.Refuse("the hearts can end between %s and %s %s", measure.Number(s.From, s.places()), measure.Number(s.To, s.places()), s.Unit)
	}
	p, list := s.memo.Compile(s.with(s.si(v)))
	if d := InTheWay(list); d != nil {
		return nil, diag.Refuse("%s", d.Summary)
	}
	if p == nil {
		return nil, diag.Refuse("the batch cannot be computed at that cut")
	}
	p.Round()
	return p, nil
}

// Words is a place of the cut as it is said.
func (s *Slide) Words(v float64) string { return measure.Number(v, s.places()) + " " + s.Unit }

func (s *Slide) places() int { return max(0, -int(math.Floor(math.Log10(s.Step)+1e-9))) }
