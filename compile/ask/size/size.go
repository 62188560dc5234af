package size

import (
	"fmt"
	"math"
	"strconv"

	"newmake/compile"
	"newmake/compile/lot"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
	"newmake/lang/words"
)

// Target is what the batch is to give.
type Target struct {
	What  string  // as a person says it: "2 casks"
	Value float64 // in the unit of Of
	Of    func(p *plan.Plan) float64
	// Over is how far above Value is aimed at, as a share of it: casks are
	// counted in whole ones, and one that lacks a spoonful is not full.
	Over float64
	// Met says that a plan as it is written fills what is counted in whole ones;
	// nil where nothing is.
	Met func(p *plan.Plan) bool
}

const litresPerM3 = 1000

// Casks is so many casks filled, of a batch that is gauged in the US (gallons at
// 60 F) or not (litres at 20 C).
func Casks(n float64, gauge recipe.System) Target {
	what := words.Count(int(n), "cask")
	met := func(p *plan.Plan) bool { return p.Cask.Casks >= int(n) && p.Cask.LastFill == nil }
	return Target{What: what, Value: n, Over: 2e-4, Met: met, Of: func(p *plan.Plan) float64 {
		if p.Cask.SizeL == 0 || p.Reduction == nil {
			return 0
		}
		return lot.VolumeM3(gauge, p.Reduction.To) * litresPerM3 / p.Cask.SizeL
	}}
}

// plainly writes a number as people do, with no power of ten.
func plainly(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// bottles is so many bottles of a batch that goes into no wood.
func bottles(n float64, gauge recipe.System) Target {
	met := func(p *plan.Plan) bool { return p.Cask.Bottles >= int(n) }
	return Target{What: words.Count(int(n), "bottle"), Value: n, Over: 2e-4, Met: met, Of: func(p *plan.Plan) float64 {
		if p.Cask.BottleL == 0 || p.Reduction == nil {
			return 0
		}
		return lot.Bottles(gauge, p.Reduction.To, p.Cask.BottleL)
	}}
}

// proofGallons is so many proof gallons of hearts.
func proofGallons(pg float64) Target {
	return Target{What: plainly(pg) + " proof gallons of hearts", Value: pg, Of: func(p *plan.Plan) float64 {
		return HeartsOf(p).ProofGallons
	}}
}

// pureAlcohol is so many litres of pure alcohol in the hearts.
func pureAlcohol(litres float64) Target {
	return Target{What: plainly(litres) + " LPA of hearts", Value: litres, Of: func(p *plan.Plan) float64 {
		return HeartsOf(p).PureL
	}}
}

// wash is a volume of wash: in litres at 20 C or, gauged as in the US, in gallons
// at 60 F.
func wash(volume float64, gallons bool, what string) Target {
	return Target{What: what + " of wash", Value: volume, Of: func(p *plan.Plan) float64 {
		if gallons {
			return p.Ferment.Wash.WineGallons
		}
		return p.Ferment.Wash.VolumeL
	}}
}

// massOf is a weight of one grain of the bill.
func massOf(name string, kg float64, what string) Target {
	return Target{What: what + " of " + name, Value: kg, Of: func(p *plan.Plan) float64 {
		for _, g := range p.Bill.Lines {
			if g.Name == name {
				return g.MassKg
			}
		}
		return 0
	}}
}

// Answer is the size that was found.
type Answer struct {
	Factor float64 // times the batch
	Batch  *recipe.Batch
	Plan   *plan.Plan // not rounded
	Diags  diag.List  // of the plan
}

// none says that there is no answer, and why.
type none struct {
	Target  string
	Why     string
	Limit   *diag.Diagnostic // what stands in the way; nil if no size gives it
	Largest *Largest         // that fits, nil if none does
	Least   float64          // what can be had, where no size gives the target
	Most    float64
}

func (n *none) Error() string { return n.Target + ": " + n.Why }

// How far a batch is looked for, in times of what is written.
const (
	smallest = 1e-3
	largest  = 1e3
	grow     = 1.6
)

// solver computes sizes of one batch.
type solver struct {
	batch *recipe.Batch
	memo  *compile.Memo
}

// at is the batch at a size. The plan is nil if it cannot be computed.
func (s solver) at(f float64) *Answer {
	b := s.batch.Scale(f)
	p, list := s.memo.Compile(b)
	return &Answer{Factor: f, Batch: b, Plan: p, Diags: list}
}

// Solve finds the size of a batch that gives a target. The error is a *none.
func Solve(b *recipe.Batch, t Target, memo *compile.Memo) (*Answer, error) {
	s := solver{b, memo}
	want := t.Value * (1 + t.Over)
	gap := func(f float64) float64 {
		a := s.at(f)
		if a.Plan == nil {
			return math.NaN()
		}
		return t.Of(a.Plan) - want
	}
	lo, hi, flo, fhi, err := bracket(gap, t, want)
	if err != nil {
		return nil, err
	}
	f := root(gap, lo, flo, hi, fhi, 1e-7*hi, 1e-7*math.Abs(want))
	a := s.at(f)
	if a.Plan == nil || math.Abs(t.Of(a.Plan)-want) > 1e-3*math.Abs(want) {
		return nil, &none{Target: t.What, Why: "the plan passes over it: a batch a little smaller gives less, one a little larger gives more, and none gives it"}
	}
	if d := InTheWay(a.Diags); d != nil {
		return nil, &none{Target: t.What, Why: d.Summary, Limit: d, Largest: s.largestBelow(f)}
	}
	return a, nil
}

// bracket finds two sizes between which the target lies, from the batch as it is
// upwards or downwards.
func bracket(gap func(float64) float64, t Target, want float64) (lo, hi, flo, fhi float64, err error) {
	at, f := 1.0, gap(1)
	if math.IsNaN(f) {
		return 0, 0, 0, 0, &none{Target: t.What, Why: "the batch cannot be computed as it is"}
	}
	step := grow
	if f > 0 {
		step = 1 / grow
	}
	for next := at * step; next >= smallest && next <= largest; next *= step {
		g := gap(next)
		if math.IsNaN(g) {
			return 0, 0, 0, 0, &none{Target: t.What, Why: fmt.Sprintf("a batch %.2f times as large cannot be computed, and one %.2f times as large does not give it", next, at), Least: f + want, Most: f + want}
		}
		if (g > 0) != (f > 0) {
			if step > 1 {
				return at, next, f, g, nil
			}
			return next, at, g, f, nil
		}
		at, f = next, g
	}
	return 0, 0, 0, 0, &none{Target: t.What, Why: "no size of this batch gives it", Least: f + want, Most: f + want}
}

// InTheWay is the first thing that keeps a batch from being made. A promise is
// none: it was made of another size.
func InTheWay(list diag.List) *diag.Diagnostic {
	for i := range list {
		if list[i].Severity == diag.Error && list[i].Code != diag.CodePromiseBroken {
			return &list[i]
		}
	}
	return nil
}
