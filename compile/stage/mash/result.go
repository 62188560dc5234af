package mash

import (
	"newmake/compile/matter/starch"
	"newmake/lang/recipe"
)

// TheoryExtract is the dissolved matter, by dry matter, that complete
// conversion gives: the maltster's extract, or the parts with the starch as
// maltose, which is what most of it becomes.
func TheoryExtract(g *recipe.Grain) float64 {
	if g.Extract > 0 {
		return g.Extract
	}
	return g.Starch*starch.PerMaltose + g.Sugars + g.Solubles
}

// shares fills what a step says of starch and enzymes.
func (m *cooker) shares(s *Step) {
	s.GelatinizedShare, s.ConvertedShare = m.starchShares()
	s.AlphaLeft = share(m.tun.enzymes.Alpha+m.worts.enzymes.Alpha, m.alphaInDU)
	s.BetaLeft = share(m.tun.enzymes.BetaAll()+m.worts.enzymes.BetaAll(), m.betaInL)
	s.AddedLeft = share(addedLeft(&m.tun.enzymes)+addedLeft(&m.worts.enzymes), m.addedInAct)
}

func (m *cooker) starchShares() (gelatinized, converted float64) {
	raw := m.tun.starch.RawKg()
	gel := m.tun.starch.GelKg + m.worts.starch.GelKg + m.kept.starch.GelKg
	return share(m.startStarchKg-raw, m.startStarchKg), share(m.startStarchKg-raw-gel, m.startStarchKg)
}

func addedLeft(e *starch.Enzymes) float64 {
	sum := 0.0
	for i := range e.Added {
		sum += e.Added[i].Activity
	}
	return sum
}

func share(part, whole float64) float64 {
	if whole <= 0 {
		return 0
	}
	return min(1, max(0, part/whole))
}

// record adds a point to the curve, unless nothing has passed since the last, or more
// time than any mash is followed for.
func (m *cooker) record(b *body) {
	m.curveS = m.nowS + curveStepS
	if m.nowS > longestS {
		return
	}
	var s Step
	m.shares(&s)
	p := Point{m.nowS, b.tempC, s.ConvertedShare, s.GelatinizedShare, s.AlphaLeft, s.BetaLeft, s.AddedLeft}
	if n := len(m.res.Curve); n == 0 || m.res.Curve[n-1] != p {
		m.res.Curve = append(m.res.Curve, p)
	}
}

// wort is where the liquid is that goes on: in the tun, or what was run off from it.
func (m *cooker) wort() *body {
	if m.res.Lautered && !m.worts.empty() {
		return &m.worts
	}
	return &m.tun
}

// finish derives what is told of the whole mash.
func (m *cooker) finish() Result {
	r := &m.res
	out := m.wort()
	if out != &m.tun {
		r.Draff = m.tun.stream()
	}
	r.Out = out.stream()
	r.Enzymes = out.enzymes.Clone()
	r.PH = m.acid.pH()
	if m.wortPH > 0 {
		r.PH = m.wortPH
	}
	r.Kept = m.keptWorts()
	r.DurationS = m.nowS
	r.Gelatinized, r.Conversion = m.starchShares()
	r.ExtractKg = r.Out.ExtractKg()
	r.FermentableShare = share(r.Out.SugarKg(), r.ExtractKg)
	r.LiquorGristLPerKg = liquorGrist(m.in)
	r.HydrometerSG = r.Out.SG()
	alone := r.Out
	alone.BacksetKg = 0
	r.OriginalSG = alone.SG()
	return *r
}

// liquorGrist is the liquor in L per kg of grain up to the first drain.
func liquorGrist(in Input) float64 {
	liquorM3, grainKg := 0.0, 0.0
	for _, s := range in.Steps {
		switch s.Verb {
		case recipe.MashWater, recipe.MashBackset:
			liquorM3 += s.VolumeM3
		case recipe.MashAdd:
			for _, l := range s.Grains {
				grainKg += in.Bill.Lines[l].MassKg
			}
		case recipe.MashDrain:
			if grainKg > 0 {
				return 1000 * liquorM3 / grainKg
			}
		}
	}
	if grainKg == 0 {
		return 0
	}
	return 1000 * liquorM3 / grainKg
}
