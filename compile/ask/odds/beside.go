package odds

import "newmake/compile/plan"

// Beside is another batch, tried with the same luck.
type Beside struct {
	Batch   string       `json:"batch"`
	Shared  int          `json:"sharedConstants"` // drawn alike for both
	Alone   int          `json:"otherConstants"`  // that only one of them has
	Fills   *Odds        `json:"fills,omitempty"` // how often it fills its own casks; none of one that goes into no wood
	Casks   int          `json:"casks"`           // that it is to fill
	Numbers []Difference `json:"numbers"`
}

// Difference is a number of the other batch less the same of this one, draw by draw:
// 5, 50 and 95 % quantiles, and how often it is more.
type Difference struct {
	Key    string  `json:"key"`
	Name   string  `json:"name"`
	Stage  string  `json:"stage"`
	Unit   string  `json:"unit,omitempty"`
	Places int     `json:"places"`
	Low    float64 `json:"low"`
	Middle float64 `json:"middle"`
	High   float64 `json:"high"`
	More   Odds    `json:"more"`
}

// Beside holds another batch against this one. Both were tried with as many draws.
func (t *Trial) Beside(other *Trial) *Beside {
	b := &Beside{Batch: other.Batch.Name, Numbers: []Difference{}, Casks: other.wanted()}
	has := map[string]bool{}
	for _, c := range t.Draws.Of {
		has[c.Key()] = true
	}
	for _, c := range other.Draws.Of {
		if has[c.Key()] {
			b.Shared++
		}
	}
	b.Alone = len(t.Draws.Of) + len(other.Draws.Of) - 2*b.Shared
	if b.Casks > 0 {
		odds := other.fills()
		b.Fills = &odds
	}
	for k, m := range t.Numbers {
		var off []float64
		more := 0
		for i := range t.Runs {
			r, s := &t.Runs[i], &other.Runs[i]
			if !r.OK || !s.OK {
				continue
			}
			d := s.Values[k] - r.Values[k]
			off = append(off, d)
			if d > 0 {
				more++
			}
		}
		if len(off) == 0 {
			continue
		}
		low, middle, high := spread(off)
		b.Numbers = append(b.Numbers, Difference{
			Key: m.Key, Name: m.Name, Stage: m.Stage, Unit: m.Unit, Places: m.Places, More: oddsOf(more, len(off)),
			Low: plan.RoundTo(low, m.Places), Middle: plan.RoundTo(middle, m.Places), High: plan.RoundTo(high, m.Places),
		})
	}
	return b
}
