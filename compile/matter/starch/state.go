package starch

import "newmake/compile/matter/stream"

// Water taken up on hydrolysis: kg of each product from 1 kg of starch, from
// molar masses (anhydroglucose 162.1406, water 18.01528 g/mol).
const (
	waterPerUnit = 18.01528 / 162.1406

	PerGlucose     = 1 + waterPerUnit   // 1.1111
	PerMaltose     = 1 + waterPerUnit/2 // 1.0556
	PerMaltotriose = 1 + waterPerUnit/3 // 1.0370
	// PerDextrin takes dextrins as ten glucose units long on average (from
	// memory: limit dextrins of wort are mostly 4 to 20 long). A length of 5
	// would make 1 % more of them.
	PerDextrin = 1 + waterPerUnit/10 // 1.0111
)

// Granules is the starch of one grain that is still in the granule.
type Granules struct {
	LowC, HighC float64 // gelatinization range
	Extract     float64 // share of the wort in which it was measured; 0: in water
	TotalKg     float64 // all that went in within reach of the water
	RawKg       float64 // of that, still in the granule
	HeldKg      float64 // in coarse particles, never reached
}

// State is the starch of a mash or wash and what has come of it. All masses
// are those weighed: sugars with the water that hydrolysis bound.
type State struct {
	WaterKg float64
	Raw     []Granules

	GelKg          float64 // gelatinized, not yet split
	DextrinKg      float64 // straight: the amylases split it further
	LimitDextrinKg float64 // closed by a branch that limit dextrinase opens
	ClosedKg       float64 // dextrin closed by branches that it does not
	MaltotrioseKg  float64
	MaltoseKg      float64
	GlucoseKg      float64 // and other monosaccharides

	// BesideKg is dissolved matter that does not come from starch. It counts towards
	// the thickness only, and is in none of the masses here.
	BesideKg float64
}

// StateOf is the starch side of a wort as it enters the fermenter. Starch still
// raw is left out: no fermenter gets hot enough to reach it.
func StateOf(w stream.Stream, e Enzymes) State {
	return State{
		WaterKg:        w.WaterKg,
		GelKg:          w.GelStarchKg,
		DextrinKg:      w.DextrinKg * (1 - e.BranchedShare - e.ClosedShare),
		LimitDextrinKg: w.DextrinKg * e.BranchedShare,
		ClosedKg:       w.DextrinKg * e.ClosedShare,
		MaltotrioseKg:  w.MaltotrioseKg,
		MaltoseKg:      w.MaltoseKg,
		GlucoseKg:      w.GlucoseKg,
		BesideKg:       w.SolublesKg + w.BacksetKg,
	}
}

// Into writes the state back to a stream and to the enzymes' shares of dextrin.
// Raw starch is written only when the state holds granules.
func (s *State) Into(w *stream.Stream, e *Enzymes) {
	w.WaterKg = s.WaterKg
	w.GelStarchKg = s.GelKg
	w.DextrinKg = s.dextrinsKg()
	w.MaltotrioseKg = s.MaltotrioseKg
	w.MaltoseKg = s.MaltoseKg
	w.GlucoseKg = s.GlucoseKg
	if len(s.Raw) > 0 {
		w.RawStarchKg = s.RawKg()
	}
	e.BranchedShare, e.ClosedShare = 0, 0
	if all := s.dextrinsKg(); all > 0 {
		e.BranchedShare, e.ClosedShare = s.LimitDextrinKg/all, s.ClosedKg/all
	}
}

func (s *State) dextrinsKg() float64 { return s.DextrinKg + s.LimitDextrinKg + s.ClosedKg }

// RawKg is all starch in the granule, within reach or not.
func (s *State) RawKg() float64 {
	sum := 0.0
	for i := range s.Raw {
		sum += s.Raw[i].RawKg + s.Raw[i].HeldKg
	}
	return sum
}

// StarchKg is everything counted as starch, without the water bound since.
func (s *State) StarchKg() float64 {
	return s.RawKg() + s.GelKg + s.dextrinsKg()/PerDextrin +
		s.MaltotrioseKg/PerMaltotriose + s.MaltoseKg/PerMaltose + s.GlucoseKg/PerGlucose
}

// MassKg is water and all that Run moves.
func (s *State) MassKg() float64 {
	return s.WaterKg + s.RawKg() + s.GelKg + s.dextrinsKg() +
		s.MaltotrioseKg + s.MaltoseKg + s.GlucoseKg
}
