package still

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/compile/matter/exponential"
	"newmake/compile/matter/monotone"
	"newmake/lang/recipe"
)

// congenerNames are those of the stock entry `model congener`, as the trade
// meets them: early comers first.
var congenerNames = [width]string{
	"acetaldehyde", "ethyl-acetate", "methanol", "propanol", "isobutanol", "isoamyl-alcohols", "acetic-acid", "furfural",
}

// volatility is that of a trace of something against ethanol, by where the mole
// fraction of ethanol in the liquid stands on the series' axis.
type volatility func(place float64) float64

func (v volatility) at(x float64) float64 { return v(place(x)) }

// readVolatility reads one congener's row from the model: `NAME-x050` is its
// volatility against ethanol in liquid with 0.050 mole fraction of ethanol.
// Between the points its logarithm follows a monotone cubic in the series' own
// stretched scale; beyond the last point it stays.
func readVolatility(m *recipe.Model, name string) (volatility, error) {
	type point struct{ x, alpha float64 }
	var points []point
	for _, key := range slices.Sorted(maps.Keys(m.Values)) { // so that of two faults the same one is said
		v := m.Values[key]
		digits, ok := strings.CutPrefix(key, name+"-x")
		if !ok {
			continue
		}
		thousandths, err := strconv.Atoi(digits)
		if err != nil || thousandths < 0 || thousandths > 1000 {
			return nil, fmt.Errorf("`model congener`: `%s` must end in the thousandths of ethanol in the liquid, -x000 to -x1000", key)
		}
		if !(v > 0 && v < 1e4) {
			return nil, fmt.Errorf("`model congener`: `%s` is %g: a volatility lies above 0 and below 10,000", key, v)
		}
		points = append(points, point{float64(thousandths) / 1000, v})
	}
	if len(points) < 2 {
		return nil, fmt.Errorf("`model congener` needs two points or more for %s, `%s-x000` and up", name, name)
	}
	slices.SortFunc(points, func(a, b point) int {
		if a.x < b.x {
			return -1
		}
		return 1
	})
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
	t, ln := make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		t[i], ln[i] = place(p.x), math.Log(p.alpha*factor)
	}
	curve, err := monotone.Fit(t, ln)
	if err != nil {
		return nil, fmt.Errorf("`model congener`: %s: %w", name, err)
	}
	return func(at float64) float64 {
		return exponential.Exp(curve.At(min(max(at, t[0]), t[len(t)-1])))
	}, nil
}

// spoutRatio makes the series of ln K of traces, where K is the mole ratio in
// the spout's vapour to that in the pot; one for each factor that all their
// volatilities are multiplied by. In the pot K is a y/x; in the head each trace
// condenses with the liquid of that place,
//
//	d ln z / dl = 1 - 1/K    l = ln(V0/V)
func (b *boil) spoutRatio(traces *[width]volatility, factors ...float64) []*series {
	rows := make([][order]row, len(factors))
	var path []float64
	ratio := make([]row, 0, 32)
	for k, x := range nodeX {
		path = b.pot.headPath(path[:0], x, b.reflux)
		ratio = ratio[:0]
		for _, at := range path {
			ethanol := b.pot.vapour(at) / at
			var r row
			where := place(at)
			for i, alpha := range traces {
				r[i] = alpha(where) * ethanol
			}
			ratio = append(ratio, r)
		}
		for f, factor := range factors {
			for i := range traces {
				rows[f][k][i] = math.Log(factor*ratio[0][i]) + b.gainInHead(ratio, i, factor)
			}
		}
	}
	out := make([]*series, len(factors))
	for f := range rows {
		out[f] = fit(&rows[f])
	}
	return out
}

// gainInHead is the integral of 1 - 1/K along the head, by Simpson's rule.
func (b *boil) gainInHead(ratio []row, i int, factor float64) float64 {
	steps := len(ratio) - 1
	if steps == 0 {
		return 0
	}
	sum := 0.0
	for j := range ratio {
		weight := float64(2 + 2*(j%2))
		if j == 0 || j == steps {
			weight = 1
		}
		sum += weight * (1 - 1/(factor*ratio[j][i]))
	}
	return sum * -math.Log1p(-b.reflux) / float64(3*steps)
}
