package review

import (
	"cmp"
	"math"

	"newmake/compile/estimate/reconcile"
)

// balance sets up what must agree, from the fermenter to the casks. It is nil where nothing
// can be held against anything.
func (w *lots) balance(e Expected) *ledger {
	l := &ledger{strength: map[int]int{}}
	wash := l.fermented(w, e)
	low := l.stripped(w, e, wash)
	w.betweenGauges()
	hearts := pair{-1, -1}
	if len(w.fractions) > 0 && (w.charged.Given || w.lowWines.Given || w.whole.Given) {
		hearts = l.distilled(w, e, l.charged(w, e, low))
	}
	l.reduced(w, hearts)
	return l.ready()
}

// or is a lot to start from: as it was gauged, or else so many litres of so much.
func (g gauged) or(litres, pct float64) gauged {
	if g.VolumeL.Read() {
		litres = g.VolumeL.Is
	}
	if g.AbvPct.Read() {
		pct = g.AbvPct.Is
	}
	return gauged{VolumeL: number{Is: litres}, AbvPct: number{Is: pct}}
}

// fermented is the wash, held against the fall of the gravity and the wort in the fermenter.
func (l *ledger) fermented(w *lots, e Expected) (wash pair) {
	wash = l.lotOf("wash", "the wash", w.wash, w.wash.or(cmp.Or(w.wort.Is*e.WashShare, e.WashL), cmp.Or(e.AbvPerSG*(w.og.Is-w.fg.Is), e.WashAbvPct)))
	if w.og.Read() && w.fg.Read() && w.og.Is > w.fg.Is && e.AbvPerSG > 0 {
		fell := l.put("gravity", "the fall of the gravity", SG, number{Is: w.og.Is - w.fg.Is, SD: math.Hypot(w.og.SD, w.fg.SD)}, 0, false)
		per := l.put("strength-of-gravity", "the strength that a fall of 1 SG gives", Share, number{Is: e.AbvPerSG, SD: perSGShare * e.AbvPerSG}, 0, true)
		l.node("ferment", place{words: "of the ferment", of: "wash", abv: wash.abv}, // strength times volume is what was fermented
			wash.alcohol(-1), term{1, []int{wash.volume, fell, per}, 0.01})
	}
	if w.wort.Read() && e.WashShare > 0 {
		wort := l.put("wort", "the volume in the fermenter", Litres, w.wort, 0, false)
		share := l.put("wash-of-wort", "the share of it that reaches the still", Share, number{Is: e.WashShare, SD: washShare * e.WashShare}, 0, true)
		l.node("to the still", place{words: "on the way from the fermenter to the still", of: "wash", abv: wash.abv},
			wash.alcohol(-1), term{1, []int{wort, share, wash.abv}, 0.01})
	}
	return wash
}

// stripped is the low wines, held against the wash.
func (l *ledger) stripped(w *lots, e Expected, wash pair) (low pair) {
	low = l.lotOf("low-wines", "the low wines", w.lowWines, w.lowWines.or(w.charged.VolumeL.Is, w.charged.AbvPct.Is))
	if w.lowWines.Given && e.PotAleLPA >= 0 {
		pot := l.residue("pot-ale", "the alcohol that stayed in the wash still", e.PotAleLPA)
		gone := l.gone(w, inWashRun, low.abv, map[string]int{"wash": wash.abv})
		l.node(inWashRun, place{words: "in the wash run", of: "low wines", abv: low.abv},
			append(gone, wash.alcohol(1), low.alcohol(-1), pure(pot, -1))...)
	}
	return low
}

// charged is what went into the spirit still: the low wines, with all that was charged
// beside them.
func (l *ledger) charged(w *lots, e Expected, low pair) []term {
	charge := low
	if w.charged.Given {
		charge = l.lotOf("charge", "the low wines as they were charged", w.charged, w.charged.or(w.lowWines.VolumeL.Is, w.lowWines.AbvPct.Is))
		if w.lowWines.Given {
			l.node(asLowWinesWaited, place{words: "while the low wines waited", of: "low wines", abv: low.abv},
				append(l.gone(w, asLowWinesWaited, low.abv, nil), low.alcohol(1), charge.alcohol(-1))...)
		}
	}
	w.chargedAbv = charge.abv
	terms := []term{charge.alcohol(1)}
	for _, in := range []struct {
		id, words string
		gauged
	}{{"feints-in", "the feints that were charged", w.feintsIn}, {"else-in", "what else was charged", w.extra}} {
		if in.Given {
			terms = append(terms, l.lotOf(in.id, in.words, in.gauged, in.or(0, 0)).alcohol(1))
		}
	}
	if !w.feintsIn.Given && e.FeintsLPA > 0 {
		terms = append(terms, pure(l.put("feints-in", "the alcohol of the feints that were charged", LPA, number{e.FeintsLPA, feintsShare * e.FeintsLPA}, 0, true), 1))
	}
	if !w.whole.Given {
		return terms
	}
	whole := l.lotOf("charge", "what was charged", w.whole, w.whole.or(0, 0))
	if w.lowWines.Given {
		terms = append(terms, l.gone(w, asCharged, low.abv, nil)...)
		l.node(asCharged, place{words: "as the still was charged", of: "low wines", abv: low.abv}, append(terms, whole.alcohol(-1))...)
	}
	return []term{whole.alcohol(1)}
}

// distilled is the hearts; with the other fractions they are held against what was charged.
// Where nothing tells of the hearts there are none, and nothing is held.
func (l *ledger) distilled(w *lots, e Expected, terms []term) (hearts pair) {
	hearts = pair{-1, -1}
	strengths := map[string]int{"low-wines": w.chargedAbv}
	for _, f := range w.parts() {
		unread := !f.AbvPct.Read() && f.id != "hearts"
		if unread { // small, and gauged by nobody: as the model has it
			f.AbvPct = number{Is: e.AbvPct[f.id], SD: fractionSD}
		}
		p := l.lotOf(f.id, f.words, f.gauged, f.or(e.VolumeL[f.id], e.AbvPct[f.id]))
		l.about[p.abv].Model = unread
		terms = append(terms, p.alcohol(-1))
		strengths[f.id] = p.abv
		if f.id == "hearts" {
			hearts = p
		}
	}
	for _, id := range w.ungauged(e) {
		g := gauged{AbvPct: number{Is: e.AbvPct[id], SD: fractionSD}, Given: true}
		if id == "foreshots" { // small, and thrown away: as the model has it
			g.VolumeL = number{Is: e.VolumeL[id], SD: max(cutShare*e.VolumeL[id], 0.1)}
		}
		p := l.lotOf(id, "the "+id, g, gauged{VolumeL: number{Is: e.VolumeL[id]}, AbvPct: g.AbvPct})
		l.about[p.volume].Model, l.about[p.abv].Model = true, true
		terms = append(terms, p.alcohol(-1))
	}
	if hearts.volume < 0 && w.hearts.Given {
		hearts = l.lotOf("hearts", "the hearts", w.hearts, w.hearts)
		terms = append(terms, hearts.alcohol(-1))
		w.hearts.Given = false // they are this lot, and were gauged once
	}
	if hearts.volume >= 0 {
		terms = append(terms, l.gone(w, inSpiritRun, hearts.abv, strengths)...)
		l.node(inSpiritRun, place{words: "in the spirit run", of: "hearts", abv: hearts.abv},
			append(terms, pure(l.residue("lees", "the alcohol that stayed in the spirit still", e.LeesLPA), -1))...)
	}
	return hearts
}

// residue is alcohol that stays in a still, as the model has it.
func (l *ledger) residue(id, words string, lpa float64) int {
	return l.put(id, words, LPA, number{Is: lpa, SD: max(residueShare*lpa, 0.1)}, 0, true)
}

// reduced sets the hearts, as they stood in the spirit house, against what was
// reduced and filled: in alcohol, and with the water in weight.
func (l *ledger) reduced(w *lots, from pair) {
	hearts := from
	if w.hearts.Given {
		hearts = l.lotOf("hearts-gauged", "the hearts before they were reduced", w.hearts, w.hearts)
		if from.volume >= 0 {
			l.node(asHeartsWaited, place{words: "while the hearts waited", of: "hearts", abv: hearts.abv},
				append(l.gone(w, asHeartsWaited, hearts.abv, nil), from.alcohol(1), hearts.alcohol(-1))...)
		}
	}
	if !w.entry.Given {
		return
	}
	entry := l.lotOf("entry", "the spirit at entry", w.entry, w.entry)
	if hearts.volume >= 0 {
		gone := l.gone(w, inReduction, entry.abv, nil)
		l.node(inReduction, place{words: "in the reduction", of: "spirit", abv: entry.abv}, append(gone, hearts.alcohol(1), entry.alcohol(-1))...)
		if w.water.Read() {
			water := l.put("water", "the water that reduced it", Litres, w.water, 0, false)
			l.weighed(hearts, water, entry, gone)
		}
	}
	if terms := l.filled(w, entry); terms != nil {
		terms = append(terms, l.gone(w, atFilling, entry.abv, nil)...)
		l.node(atFilling, place{words: "at the filling", of: "spirit", abv: entry.abv}, terms...)
	}
}

// filled is the spirit at entry against what was filled and what was left; nil where nothing
// was, or nobody knows how much.
func (l *ledger) filled(w *lots, entry pair) []term {
	if len(w.casks) == 0 && !w.left.Given {
		return nil
	}
	terms := []term{entry.alcohol(1)}
	out := func(id, words string, n number) {
		flow := l.put(id, words, Litres, n, 0, false)
		l.strength[flow] = entry.abv
		terms = append(terms, term{-1, []int{flow, entry.abv}, 0.01})
	}
	for i, c := range w.casks {
		if !c.Read() {
			return nil
		}
		out("cask", caskWords(i, len(w.casks)), c)
	}
	switch {
	case !w.left.Given:
	case !w.left.VolumeL.Read():
		return nil
	case w.left.AbvPct.Read():
		terms = append(terms, l.lotOf("left", "what was left", w.left, w.left).alcohol(-1))
	default: // it is of the same spirit
		out("left", "the volume of what was left", w.left.VolumeL)
	}
	return terms
}

// weighed is the reduction in weight, which volumes do not keep.
func (l *ledger) weighed(hearts pair, water int, entry pair, gone []term) {
	n := len(l.flows)
	l.place = append(l.place, place{words: "of water in the reduction", of: "water", abv: -1})
	l.nodes = append(l.nodes, reconcile.Node{Name: "reduction, by weight", Over: func(x []float64) (float64, []float64) {
		h, hv, ha := massKg(x[hearts.volume], x[hearts.abv])
		w, wv, _ := massKg(x[water], 0)
		e, ev, ea := massKg(x[entry.volume], x[entry.abv])
		slopes := make([]float64, n)
		slopes[hearts.volume], slopes[hearts.abv] = hv, ha
		slopes[water] = wv
		slopes[entry.volume], slopes[entry.abv] = -ev, -ea
		over := h + w - e
		for _, t := range gone {
			g, gv, ga := massKg(x[t.flows[0]], x[entry.abv])
			over -= g
			slopes[t.flows[0]] = -gv
			slopes[entry.abv] -= ga
		}
		return over, slopes
	}})
}

func caskWords(i, of int) string {
	if of == 1 {
		return "the volume in the cask"
	}
	return "the volume in cask " + string(rune('1'+i))
}

// ready fits the slopes of nodes to all flows, of which some came later.
func (l *ledger) ready() *ledger {
	if len(l.nodes) == 0 {
		return nil
	}
	for i := range l.nodes {
		over := l.nodes[i].Over
		l.nodes[i].Over = func(x []float64) (float64, []float64) {
			y, slopes := over(x)
			return y, append(slopes, make([]float64, len(x)-len(slopes))...)
		}
	}
	return l
}
