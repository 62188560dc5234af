package review

import (
	"errors"
	"math"

	"newmake/compile/estimate/reconcile"
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/lang/record"
)

// Expected is what a balance takes from the model where nobody reads it: what stays
// behind in the stills, and how gravities go with strength.
type Expected struct {
	StripCharges, SpiritCharges int     // of the stills
	PotAleLPA                   float64 // alcohol that the wash run leaves
	LeesLPA                     float64 // alcohol that the spirit run leaves
	FeintsLPA                   float64 // alcohol in the feints that go into the charge, where nobody gauged them
	WashShare                   float64 // litres of wash to the still for a litre of wort to the fermenter
	AbvPerSG                    float64 // % abv of the wash for each unit of gravity that the ferment takes
	// The wash, to begin with where nothing of it was read.
	WashL, WashAbvPct float64
	// AbvPct is the strength of each fraction, for those whose volume alone was read.
	AbvPct map[string]float64
	// VolumeL is how much of each of the cuts comes over.
	VolumeL map[string]float64
}

// How sure that is, as one standard deviation of the figure itself (common practice:
// the stop of a run is a few per cent early or late; yeast and wort differ by a few per
// cent in the alcohol that a point of gravity gives; what foams over or stays in a
// fermenter is a per cent or so).
const (
	residueShare = 0.4
	perSGShare   = 0.02
	washShare    = 0.015
	fractionSD   = 4 // % abv
	feintsShare  = 0.1
	cutShare     = 0.3 // foreshots that nobody measured
)

// Balance is what came and went of the alcohol, reconciled.
type Balance struct {
	Flows []Flow
	// Checks is how many balances the readings have beyond what they determine, and
	// Scatter what is left of them: a chi-square with as many degrees of freedom where
	// no reading is wrong, which goes above Limit in one run of twenty.
	Checks  int
	Scatter float64
	Limit   float64
	Gross   []Finding // the largest first
}

// Balanced reports whether the readings agree as well as readings do.
func (b *Balance) Balanced() bool { return b.Scatter <= b.Limit }

// Flow is one thing that the balance counts.
type Flow struct {
	ID     string // low-wines.volume
	Words  string // the volume of the low wines
	Unit   Unit
	Said   float64 // as read, brought to 20 C; NaN where nobody did
	SD     float64
	Best   float64 // in accord with all the others; NaN where nothing tells it
	BestSD float64
	Model  bool    // said by the model, not by an instrument
	ABV    float64 // of what a volume is of; 0 where nothing tells it
}

// Unit is what a flow is counted in.
type Unit uint8

// Units of flows.
const (
	Litres Unit = iota // at 20 C
	AbvPct
	LPA   // litres of pure alcohol
	SG    // a difference of gravities
	Share // of one volume to another, or of a strength to a gravity
)

// Finding is a break in the balance, with all that would explain it about as well.
type Finding struct{ Causes []Cause }

// Cause is one of them: a reading that is wrong, or alcohol that was not written down.
type Cause struct {
	Flow  string // the flow's ID; "" if something is missing
	Place string // where alcohol is missing: of the wash run, of the low wines that waited
	Words string
	Unit  Unit
	Model bool    // nobody read it: the model says it
	By    float64 // how much too high the reading is, or how much is missing, in LPA
	SD    float64
	// Litres is By as a volume of what is missing there; 0 of a reading.
	Litres float64
	Of     string  // the lot that this would be: low wines
	ABV    float64 // of that lot, or as of the Flow
}

const level = 0.05 // of all tests of one run together

// ledger collects what is balanced.
type ledger struct {
	about []Flow
	flows []reconcile.Flow
	nodes []reconcile.Node
	place []place
	// strength is the flow of the strength of what a volume is of.
	strength map[int]int
}

// place is what a node is about: where alcohol may be missing, and as what lot it
// would be.
type place struct {
	words string
	of    string
	abv   int // the flow of that lot's strength
}

// put adds a flow. guess is about what it is where nobody read it.
func (l *ledger) put(id, words string, unit Unit, n number, guess float64, model bool) int {
	f := reconcile.Flow{Name: id, Read: n.Is, SD: n.SD, Unread: !n.Read()}
	a := Flow{ID: id, Words: words, Unit: unit, Said: n.Is, SD: n.SD, Model: model}
	if f.Unread {
		f.Read, a.Said = guess, math.NaN()
	}
	l.flows, l.about = append(l.flows, f), append(l.about, a)
	return len(l.flows) - 1
}

// lotOf adds the two flows of a lot.
func (l *ledger) lotOf(id, words string, g gauged, guess gauged) pair {
	p := pair{
		l.put(id+".volume", "the volume of "+words, Litres, g.VolumeL, guess.VolumeL.Is, false),
		l.put(id+".strength", "the strength of "+words, AbvPct, g.AbvPct, guess.AbvPct.Is, false),
	}
	l.strength[p.volume] = p.abv
	return p
}

// pair is a lot by the places of its two flows.
type pair struct{ volume, abv int }

// term is one part of a balance: so many litres at a strength, or so many of pure
// alcohol, or a product of three flows.
type term struct {
	sign  float64
	flows []int
	scale float64
}

func (p pair) alcohol(sign float64) term { return term{sign, []int{p.volume, p.abv}, 0.01} }

func pure(flow int, sign float64) term { return term{sign, []int{flow}, 1} }

// node adds a balance of products.
func (l *ledger) node(name string, at place, terms ...term) {
	l.place = append(l.place, at)
	n := len(l.flows)
	l.nodes = append(l.nodes, reconcile.Node{Name: name, Over: func(x []float64) (float64, []float64) {
		over, slopes := 0.0, make([]float64, n)
		for _, t := range terms {
			all := t.sign * t.scale
			for _, f := range t.flows {
				all *= x[f]
			}
			over += all
			for i, f := range t.flows {
				part := t.sign * t.scale
				for j, g := range t.flows {
					if j != i {
						part *= x[g]
					}
				}
				slopes[f] += part
			}
		}
		return over, slopes
	}})
}

// massKg is the weight of so many litres at a strength, and its slopes.
func massKg(litres, abvPct float64) (kg, byLitre, byPct float64) {
	density := func(pct float64) float64 {
		w, err := fluid.MassFracFromABV(min(max(pct, 0), 100) / 100)
		if err != nil {
			return math.NaN()
		}
		return fluid.Density(w, lot.ReferenceC) / lot.LitresPerM3
	}
	const step = 0.01
	d := density(abvPct)
	return litres * d, d, litres * (density(abvPct+step) - density(abvPct-step)) / (2 * step)
}

// balances reconciles what was gauged of one run. It is nil where no balance has what
// it wants.
func balances(run *record.Run, b *bench, e Expected) (*Balance, error) {
	l := written(b, run, e).balance(e)
	if l == nil {
		return nil, nil
	}
	found, last, err := reconcile.GrossErrors(l.flows, l.nodes, level, l.possible)
	if errors.Is(err, reconcile.ErrNothingToCheck) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	first, err := reconcile.Solve(l.flows, l.nodes)
	if err != nil {
		return nil, err
	}
	out := &Balance{Flows: l.about, Checks: first.Rank, Scatter: first.Global, Limit: reconcile.Chi2(first.Rank, level)}
	for i := range out.Flows {
		f := &out.Flows[i]
		if of, ok := l.strength[i]; ok {
			f.ABV = last.Flows[of] / 100
		}
		if f.Best, f.BestSD = last.Flows[i], last.SD[i]; !last.Known[i] {
			f.Best, f.BestSD = math.NaN(), math.NaN()
		}
	}
	for _, f := range found {
		var finding Finding
		for _, c := range f {
			finding.Causes = append(finding.Causes, l.cause(c, last))
		}
		out.Gross = append(out.Gross, finding)
	}
	return out, nil
}

// possible reports whether a reading without the error would be one that can be.
func (l *ledger) possible(c reconcile.Cause) bool {
	if c.Flow < 0 {
		return true
	}
	is := l.flows[c.Flow].Read - c.By
	return is >= 0 && (l.about[c.Flow].Unit != AbvPct || is <= mostAbvPct)
}

// mostAbvPct is about that of the azeotrope: no still of the trade gives more.
const mostAbvPct = 97.0

func (l *ledger) cause(c reconcile.Cause, at *reconcile.Reconciled) Cause {
	if c.Flow >= 0 {
		f := l.about[c.Flow]
		return Cause{Flow: f.ID, Words: f.Words, Unit: f.Unit, Model: f.Model, By: c.By, SD: c.SD, ABV: f.ABV}
	}
	p := l.place[c.Node]
	out := Cause{Place: p.words, Unit: LPA, By: c.By, SD: c.SD, Of: p.of}
	if p.abv >= 0 && at.Flows[p.abv] > 0 {
		out.ABV = at.Flows[p.abv] / 100
		out.Litres = c.By / out.ABV
	}
	return out
}
