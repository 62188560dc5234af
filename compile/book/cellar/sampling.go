package cellar

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"newmake/compile/stage/cask"
	"newmake/lang/record"
	"newmake/lang/sorting"
)

// Lot is casks of one batch that were filled in one year, of which some stand for all: how
// many of them are sampled and weighed next, which, and what that can tell.
type Lot struct {
	Batch   string   `json:"batch"`
	Year    int      `json:"year"`
	Casks   int      `json:"casks"`
	Take    int      `json:"take"` // still: those that were sampled for the day are done
	On      string   `json:"date"`
	Serials []string `json:"serials"` // those to take, from each place and tier by its share of the lot
	// MeanPct is how near the mean alcohol of a cask is then known, 9 times in 10.
	MeanPct float64 `json:"meanPct"`
	// SeesPct is how often a fault of one cask in ten is among those taken.
	SeesPct float64 `json:"seesPct"`
}

// What a plan of sampling is to tell: the mean alcohol of a cask of the lot to one part in
// a hundred (common practice: finer than a dip tells of one cask); and never of fewer casks
// than three, since two that differ do not say which is odd.
const (
	wantedOfMean = 0.01
	fewestTaken  = 3
	oddShare     = 0.1
)

// Empty says that by the forecast nothing is left in a cask, though no line says that it was emptied.
func (r *Row) Empty() bool { return r.Now.VolumeL == 0 }

// sampling plans which casks are sampled next. Of a lot of many not each one is: so many
// are taken that the mean is known well enough, by Cochran, Sampling Techniques, 3rd ed.
// (1977), from memory: n0 = (z s/d)^2 and n = n0/(1 + n0/N) (section 4.4), the standard error
// of the mean s/sqrt(n) sqrt(1 - n/N) (2.6), and each stratum by its share (5.5). s is how
// casks of one house differ in what they have lost.
func (c *Cellar) sampling() {
	type head struct {
		batch string
		year  int
	}
	at := map[head][]*Row{}
	var heads []head
	for i := range c.Casks {
		r := &c.Casks[i]
		if r.Empty() {
			r.Sample = ""
			continue
		}
		h := head{r.Batch, r.year()}
		if at[h] == nil {
			heads = append(heads, h)
		}
		at[h] = append(at[h], r)
	}
	sorting.Stable(heads, func(a, b head) int { return cmp.Or(cmp.Compare(a.batch, b.batch), cmp.Compare(a.year, b.year)) })
	for _, h := range heads {
		rows := at[h]
		n, mean := taken(rows)
		if n >= len(rows) {
			continue // each one is
		}
		due := dueOf(rows, n)
		left := slices.DeleteFunc(slices.Clone(rows), func(r *Row) bool { return cask.SampledFor(due, r.sampled) })
		for _, r := range rows {
			r.Sample = ""
		}
		take := max(0, min(len(left), n-(len(rows)-len(left))))
		picked := pick(left, take)
		l := Lot{Batch: h.batch, Year: h.year, Casks: len(rows), Take: take, On: due.String(), MeanPct: to(100*mean, 2), SeesPct: to(100*sees(len(rows), n), 1), Serials: []string{}}
		for i, r := range left {
			if picked[i] {
				r.Sample = l.On
				l.Serials = append(l.Serials, r.Serial)
			}
		}
		c.Lots = append(c.Lots, l)
	}
}

// taken is how many casks of a lot are taken, and how near the mean is then known, as a
// share of it.
func taken(rows []*Row) (n int, mean float64) {
	size := float64(len(rows))
	var now, lost float64
	for _, r := range rows {
		now += r.Now.PureL / size
		lost += max(0, r.PutInL-r.Now.PureL) / size
	}
	if !(now > 0) {
		return len(rows), 0
	}
	s := caskSpread * lost / now
	n0 := math.Pow(z90*s/wantedOfMean, 2)
	n = min(len(rows), max(fewestTaken, int(math.Ceil(n0/(1+n0/size)-1e-9))))
	return n, z90 * s / math.Sqrt(float64(n)) * math.Sqrt(1-float64(n)/size)
}

// sees is how often at least one of the odd casks, one in ten, is among those taken: one
// less the hypergeometric chance of none.
func sees(casks, n int) float64 {
	odd := max(1, int(math.Round(oddShare*float64(casks))))
	none := 1.0
	for i := range n {
		none *= math.Max(0, float64(casks-odd-i)) / float64(casks-i)
	}
	return 1 - none
}

// dueOf is when the lot is sampled next: half a year after half of as many were sampled as
// are wanted now.
func dueOf(rows []*Row, n int) record.Date {
	filled, restS := rows[0].filled, rows[0].restS
	var sampled []record.Date
	for _, r := range rows {
		if r.filled.Compare(filled) < 0 {
			filled, restS = r.filled, r.restS
		}
		if !r.sampled.IsZero() {
			sampled = append(sampled, r.sampled)
		}
	}
	slices.SortFunc(sampled, func(a, b record.Date) int { return b.Compare(a) })
	last := filled
	if i := (n+1)/2 - 1; i < len(sampled) {
		last = sampled[i]
	}
	return cask.NextSampling(filled, last, restS)
}

// pick chooses the casks: of each place and tier by its share of the lot, the greatest
// remainders first; in each those that were sampled longest ago, spread evenly over its
// casks as they are listed.
func pick(rows []*Row, n int) []bool {
	strata := map[string][]int{}
	var names []string
	for i, r := range rows {
		name := r.Place + "\x00" + strings.Join(r.Spot[min(1, len(r.Spot)):], "\x00") // of row and tier the tier: heights differ, rows do not
		if strata[name] == nil {
			names = append(names, name)
		}
		strata[name] = append(strata[name], i)
	}
	slices.Sort(names)
	share := func(name string) float64 { return float64(n) * float64(len(strata[name])) / float64(len(rows)) }
	from := map[string]int{}
	left := n
	for _, name := range names {
		from[name] = int(share(name))
		left -= from[name]
	}
	byRest := slices.Clone(names)
	slices.SortStableFunc(byRest, func(a, b string) int {
		return cmp.Compare(share(b)-math.Floor(share(b)), share(a)-math.Floor(share(a)))
	})
	for _, name := range byRest {
		if left > 0 && from[name] < len(strata[name]) {
			from[name]++
			left--
		}
	}
	out := make([]bool, len(rows))
	for _, name := range names {
		all := strata[name]
		slices.SortStableFunc(all, func(a, b int) int { return rows[a].sampled.Compare(rows[b].sampled) })
		for want := from[name]; want > 0; {
			oldest := all
			for i := range all {
				if rows[all[i]].sampled != rows[all[0]].sampled {
					oldest = all[:i]
					break
				}
			}
			take := min(want, len(oldest))
			for i := range take {
				out[oldest[(2*i+1)*len(oldest)/(2*take)]] = true
			}
			want -= take
			all = all[len(oldest):]
		}
	}
	return out
}
