package still

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/monotone"
	"newmake/lang/recipe"
)

// congenerNames are those of the library entry `model congener`, as the trade
// meets them: early comers first.
var congenerNames = [width]string{
	"acetaldehyde", "ethyl-acetate", "methanol", "propanol", "isobutanol", "isoamyl-alcohols", "acetic-acid", "furfural",
}

// volatility is the logarithm of that of a trace of something against ethanol, by
// where the mole fraction of ethanol in the liquid stands on the series' axis.
type volatility func(place float64) float64

// volatilityPoint is a trace's volatility in liquid of a mole fraction of ethanol.
type volatilityPoint struct{ x, alpha float64 }

// readPoints reads the rows of all congeners from the model: `NAME-x050` is one's
// volatility against ethanol in liquid with 0.050 mole fraction of ethanol.
func readPoints(m *recipe.Model) (points [width][]volatilityPoint, err error) {
	fault := "" // of several faults, that of the first key is said, so that it is always the same
	for key, v := range m.Values {
		i, digits := congenerOf(key)
		if i < 0 || fault != "" && fault < key {
			continue
		}
		thousandths, not := strconv.Atoi(digits)
		switch {
		case not != nil || thousandths < 0 || thousandths > 1000:
			fault, err = key, fmt.Errorf("`model congener`: `%s` must end in the thousandths of ethanol in the liquid, -x000 to -x1000", key)
		case !(v > 0 && v < 1e4):
			fault, err = key, fmt.Errorf("`model congener`: `%s` is %g: a volatility lies above 0 and below 10,000", key, v)
		default:
			points[i] = append(points[i], volatilityPoint{float64(thousandths) / 1000, v})
		}
	}
	return points, err
}

// congenerOf tells which congener a key is of, below 0 if of none, and the digits
// after its -x.
func congenerOf(key string) (i int, digits string) {
	at := strings.LastIndex(key, "-x")
	if at < 0 {
		return -1, ""
	}
	return slices.Index(congenerNames[:], key[:at]), key[at+len("-x"):]
}

// volatilityThrough is the curve through the points of a congener. Its logarithm
// follows a monotone cubic in the series' own stretched scale; beyond the first and
// the last point it stays.
func volatilityThrough(name string, points []volatilityPoint, m *recipe.Model) (volatility, error) {
	if len(points) < 2 {
		return nil, fmt.Errorf("`model congener` needs two points or more for %s, `%s-x000` and up", name, name)
	}
	slices.SortFunc(points, func(a, b volatilityPoint) int { return cmp.Compare(a.x, b.x) })
	for i := 1; i < len(points); i++ {
		if points[i].x == points[i-1].x {
			return nil, fmt.Errorf("`model congener` has %s at %.0f thousandths twice: write each point once, with three digits", name, 1000*points[i].x)
		}
	}
	factor := 1.0
	if f, ok := m.Values[name+"-factor"]; ok {
		factor = f
	}
	if !(factor > 0 && factor < 100) {
		return nil, fmt.Errorf("`model congener`: `%s-factor` is %g: it must be above 0 and below 100", name, factor)
	}
	room := make([]float64, 2*len(points))
	t, ln := room[:len(points)], room[len(points):]
	for i, p := range points {
		t[i], ln[i] = place(p.x), math.Log(p.alpha*factor)
	}
	curve, err := monotone.Fit(t, ln)
	if err != nil {
		return nil, fmt.Errorf("`model congener`: %s: %w", name, err)
	}
	return curve.At, nil
}

// spout is the series of ln K of traces, where K is the mole ratio in the spout's
// vapour to that in the pot. In the pot K is a y/x; in the head each trace
// condenses with the liquid of that place,
//
//	d ln z / dl = 1 - 1/K    l = ln(V0/V)
//
// so that with all volatilities f times as great ln K is ln f + open - held/f.
type spout struct {
	open, held *series // held is nil without a head
}

// spoutRatio makes them.
func (b *boil) spoutRatio(traces *[width]volatility) spout {
	var open, held [order]row
	l := -math.Log1p(-b.reflux)
	for k, path := range b.paths {
		steps := len(path) - 1
		for j, x := range path {
			where := place(x)
			lnEthanol := math.Log(b.pot.vapour(x) / x)
			// By Simpson's rule.
			weight := float64(2 + 2*(j%2))
			if j == 0 || j == steps {
				weight = 1
			}
			for i, alpha := range traces {
				lnK := alpha(where) + lnEthanol
				if j == 0 {
					open[k][i] = lnK + l
				}
				if steps > 0 {
					held[k][i] += weight * l / float64(3*steps) * exponential.Exp(-lnK)
				}
			}
		}
	}
	s := spout{open: fit(&open)}
	if b.reflux > 0 {
		s.held = fit(&held)
	}
	return s
}

// ratios are K at a mole fraction of the pot, for each factor of the volatilities.
func (s spout) ratios(x float64, factors []factor, out []row) {
	t := place(x)
	open := s.open.at(t)
	var held row
	if s.held != nil {
		held = s.held.at(t)
	}
	for f, by := range factors {
		for i := range out[f] {
			out[f][i] = by.times * exponential.Exp(open[i]-by.inverse*held[i])
		}
	}
}

// factor is one by which all volatilities are multiplied.
type factor struct{ times, inverse float64 }

func factorOf(times float64) factor { return factor{times, 1 / times} }
