package bands

import (
	"cmp"
	"math"
	"slices"

	"newmake/compile/plan"
	"newmake/compile/stage/cask"
	"newmake/compile/stage/still"
	"newmake/lang/sorting"
)

// leastShare is the least share that is told, mostShares how many of one number.
const (
	leastShare = 0.02
	mostShares = 4
)

// number is a number of the summary as people speak of it.
type number struct {
	key, words string
	of         func(p *plan.Plan) plan.Quantity
}

func lotVolume(of func(p *plan.Plan) plan.Lot) func(p *plan.Plan) plan.Quantity {
	return func(p *plan.Plan) plan.Quantity { return of(p).Volume() }
}

func lotStrength(of func(p *plan.Plan) plan.Lot) func(p *plan.Plan) plan.Quantity {
	return func(p *plan.Plan) plan.Quantity { return of(p).Strength().At() }
}

func washStrength(of func(p *plan.Plan) plan.Lot) func(p *plan.Plan) plan.Quantity {
	return func(p *plan.Plan) plan.Quantity { return of(p).Strength().ByVolume() }
}

func wash(p *plan.Plan) plan.Lot     { return p.Ferment.Wash }
func lowWines(p *plan.Plan) plan.Lot { return p.Strip.Fraction(still.LowWines).Lot }
func hearts(p *plan.Plan) plan.Lot   { return p.Spirit.Fraction(still.Hearts).Lot }

func feints(p *plan.Plan) plan.Lot {
	if p.Spirit.Feints == nil {
		return plan.Lot{}
	}
	return *p.Spirit.Feints
}

func quantity(unit plan.Unit, of func(s *plan.Summary) float64) func(p *plan.Plan) plan.Quantity {
	return func(p *plan.Plan) plan.Quantity { return plan.Of(of(&p.Summary), unit) }
}

// numbers are all that the summary has, but for the casks and what is left over, which
// jump (filled).
var numbers = []number{
	{"originalGravitySG", "original gravity", quantity(plan.SG, func(s *plan.Summary) float64 { return s.OriginalGravitySG })},
	{"finalGravitySG", "final gravity", quantity(plan.SG, func(s *plan.Summary) float64 { return s.FinalGravitySG })},
	{"washVolumeL", "wash", lotVolume(wash)},
	{"washAbvPct", "wash, strength", washStrength(wash)},
	{"lowWinesVolumeL", "low wines", lotVolume(lowWines)},
	{"lowWinesAbvPct", "low wines, strength", washStrength(lowWines)},
	{"heartsVolumeL", "hearts", lotVolume(hearts)},
	{"heartsAbvPct", "hearts, strength", lotStrength(hearts)},
	{"heartsProofGallons", "hearts, proof gallons", quantity(plan.ProofGallon, func(s *plan.Summary) float64 { return s.HeartsProofGal })},
	{"pureAlcoholL", "hearts, pure alcohol", quantity(plan.PureLitre, func(s *plan.Summary) float64 { return s.PureAlcoholL })},
	{"feintsVolumeL", "feints", lotVolume(feints)},
	{"feintsAbvPct", "feints, strength", washStrength(feints)},
	{"caskEntryAbvPct", "entry strength", func(p *plan.Plan) plan.Quantity { return p.Cask.Entry.At() }},
	{"mashHours", "mash", quantity(plan.Hour, func(s *plan.Summary) float64 { return s.MashHours })},
	{"fermentHours", "ferment", quantity(plan.Hour, func(s *plan.Summary) float64 { return s.FermentHours })},
	{"stripHours", "stripping run", quantity(plan.Hour, func(s *plan.Summary) float64 { return s.StripHours })},
	{"spiritHours", "spirit run", quantity(plan.Hour, func(s *plan.Summary) float64 { return s.SpiritHours })},
	{"yieldLPAPerTonne", "yield, LPA a tonne", quantity(plan.Each, func(s *plan.Summary) float64 { return s.YieldLPAPerTonne })},
}

// summary is the bands of the numbers of the summary. One that nothing moves has none.
func (k *bench) summary() []plan.NumberBand {
	out := []plan.NumberBand{}
	for _, n := range numbers {
		_, m := k.moves(func(p *plan.Plan) float64 { return n.of(p).Value })
		s := k.spread(m)
		if s == (spread{}) {
			continue
		}
		q := n.of(k.middle)
		out = append(out, plan.NumberBand{Key: n.key, Words: n.words, Planned: q, Low: *moved(q, -s.down), High: *moved(q, s.up), Of: k.shares(m)})
	}
	return append(out, k.filled()...)
}

// filled are the casks, which jump, where the spirit that fills them goes in a line. What
// is left over is anything up to a cask where one more or less may be filled.
func (k *bench) filled() []plan.NumberBand {
	middle, m := k.moves(worth)
	s := k.spread(m)
	if math.IsNaN(middle) || s == (spread{}) {
		return nil
	}
	low, high := casks(max(0, middle-s.down)), casks(middle+s.up)
	size := k.middle.Cask.SizeL
	left := k.middle.Cask.Leftover.Volume()
	from, to := 0.0, cask.LeastFill*size
	if low == high {
		from, to = size*max(0, middle-s.down-low), size*max(0, middle+s.up-low)
	}
	of := k.shares(m)
	return []plan.NumberBand{
		{Key: "casksFilled", Words: "casks filled", Planned: plan.Of(float64(k.middle.Cask.Casks), plan.Each), Low: plan.Of(low, plan.Each), High: plan.Of(high, plan.Each), Of: of},
		{Key: "leftoverL", Words: "left over", Planned: left, Low: *moved(left, from-left.Value), High: *moved(left, to-left.Value), Of: of},
	}
}

// shares are what each constant has of a width, the greatest first: of the mean of the
// squares below and above.
func (k *bench) shares(m moves) []plan.Share {
	all := make([]plan.Share, 0, len(k.of))
	whole := 0.0
	for i, c := range k.of {
		part := square(min(m.low[i], m.high[i], 0)) + square(max(m.low[i], m.high[i], 0))
		whole += part
		all = append(all, plan.Share{Constant: c.Key(), Words: c.Words, SharePct: 100 * part})
	}
	for i := range all {
		all[i].SharePct /= whole
	}
	all = slices.DeleteFunc(all, func(s plan.Share) bool { return s.SharePct < 100*leastShare })
	sorting.Stable(all, func(a, b plan.Share) int { return cmp.Compare(b.SharePct, a.SharePct) })
	return all[:min(len(all), mostShares)]
}
