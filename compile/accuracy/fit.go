package accuracy

import (
	"fmt"
	"io"
	"maps"

	"newmake/compile/estimate/leastsquares"
)

// fitted are the constants of `model mash` that no publication gives alone.
var fitted = []string{
	"beta-half-life", "beta-tail", "beta-tail-half-life", "alpha-half-life",
	"branched", "closed", "alpha-on-starch", "alpha-on-dextrin", "alpha-to-glucose", "alpha-to-maltose",
	"beta-on-dextrin", "beta-to-maltotriose", "limit-on-branch",
	"limit-half-life", "limit-bound-half-life", "limit-release",
}

// priorShare is how far a constant may lie off the library's value, as a standard
// deviation: the rows alone do not tell all of them apart.
const priorShare = 0.3

// target is a published number, how sure it is put, and what the model makes of it.
type target struct {
	what, source string
	value, sd    float64
	model        func(m *measurer) float64
}

// targets are what the constants are fitted to. The standard deviations are half of the
// source's own range, or from memory where it has none.
func targets() []target {
	const (
		muller   = "Muller, Brewing Research Foundation 1991, as quoted in a public posting"
		weblog   = "Chandrasekhar, as quoted in a public weblog (2014)"
		practice = "common practice"
		early    = "Rittenauer et al., Foods 10 (2021) 1733; whether its mash was warmed up to the rest was not read"
	)
	two := malts{{"two-row-malt", 1}}
	beta := func(rests ...float64) func(m *measurer) float64 {
		return func(m *measurer) float64 {
			s := m.held(two, 2.5, 65, rests...).Steps
			return 100 * s[len(s)-1].BetaLeft
		}
	}
	sugar := func(tempC, minutes float64) func(m *measurer) float64 {
		return func(m *measurer) float64 {
			return 100 * m.held(two, 4, tempC, minutes).Out.SugarKg() / m.held(two, 4, 65, 60).Out.SugarKg()
		}
	}
	level := func(tempC float64) func(m *measurer) float64 {
		return func(m *measurer) float64 { return 100 * m.litresPerTonne(tempC) / m.litresPerTonne(64) }
	}
	boiled := func(tempC float64) func(m *measurer) float64 {
		return func(m *measurer) float64 { return m.attenuation(tempC) }
	}
	return []target{
		{"beta-amylase left after 10 min at 65 C, %", muller, 50, 2, beta(10)},
		{"after 30 min", muller, 17, 2, beta(10, 20)},
		{"after 60 min", muller, 8, 1, beta(10, 20, 30)},
		{"apparent attenuation of boiled wort, 65 C, %", weblog, 82, 3, boiled(65)},
		{"70 C", weblog, 70, 3, boiled(70)},
		{"75 C", weblog, 50, 3, boiled(75)},
		{"80 C", weblog, 30, 3, boiled(80)},
		{"alcohol of unboiled wash, 61 C, that of 64 C being 100", practice, 100, 1.5, level(61)},
		{"66 C", practice, 100, 1.5, level(66)},
		{"fermentable extract of the laboratory's mash, %", "common practice, by the relation of Bringhurst et al., J. Inst. Brew. 102 (1996) 433", 87, 1, func(m *measurer) float64 { return m.laboratory().fermentable }},
		{"sugars of wort, % of its carbohydrate", "MEBAK B-590.12.139", 76, 1, func(m *measurer) float64 { w := m.wort(); return 100 * w.SugarKg() / carbohydrate(w) }},
		{"maltose", practice, 50, 3, func(m *measurer) float64 { w := m.wort(); return 100 * w.MaltoseKg / carbohydrate(w) }},
		{"maltotriose", practice, 15, 1.5, func(m *measurer) float64 { w := m.wort(); return 100 * w.MaltotrioseKg / carbohydrate(w) }},
		{"glucose", practice, 15, 1.5, func(m *measurer) float64 { w := m.wort(); return 100 * w.GlucoseKg / carbohydrate(w) }},
		{"sugar after 10 min at 63 C, % of 60 min at 65", early, 97.5, 8, sugar(63, 10)},
		{"at 58.6 C", early, 61.7, 8, sugar(58.6, 10)},
	}
}

// with is a measurer whose mash has these constants.
func with(names []string, values []float64) *measurer {
	model := *library().Models["mash"]
	model.Values = maps.Clone(model.Values)
	for i, name := range names {
		model.Values[name] = values[i]
	}
	return &measurer{tried: &model}
}

// mashProblem is the fit of some constants of the mash to some targets, each constant
// known beforehand as the library has it, to a share.
func mashProblem(names []string, all []target, share float64) *leastsquares.Problem {
	p := &leastsquares.Problem{}
	for _, name := range names {
		v := library().Models["mash"].Values[name]
		p.Constants = append(p.Constants, leastsquares.Constant{Name: name, Value: v, SD: share * v, Low: 0.05 * v, High: 4 * v})
	}
	p.Residuals = func(values []float64) ([]float64, error) {
		m := with(names, values)
		r := make([]float64, len(all))
		for i, t := range all {
			r[i] = (t.model(m) - t.value) / t.sd
		}
		return r, m.err
	}
	return p
}

// mashFit is the constants of the mash fitted to their published rows.
type mashFit struct {
	rows    []target
	problem *leastsquares.Problem
	before  []float64 // residuals with the library's values, in standard deviations
	fit     *leastsquares.Fit
	known   *leastsquares.Posterior
}

// fitMash fits them by least squares, from the library's values.
func fitMash() (*mashFit, error) {
	f, err := unfittedMash()
	if err != nil {
		return nil, err
	}
	if f.fit, err = f.problem.Fit(leastsquares.Options{Most: 12, Patience: 3, Tolerance: 0.05}); err != nil {
		return nil, err
	}
	if f.known, err = f.fit.Posterior(); err != nil {
		return nil, err
	}
	return f, nil
}

// unfittedMash is what the rows say of the library as it is.
func unfittedMash() (*mashFit, error) {
	f := &mashFit{rows: targets()}
	f.problem = mashProblem(fitted, f.rows, priorShare)
	start := make([]float64, len(f.problem.Constants))
	for i, c := range f.problem.Constants {
		start[i] = c.Value
	}
	var err error
	if f.before, err = f.problem.Residuals(start); err != nil {
		return nil, err
	}
	return f, nil
}

// FitMash fits the constants of the mash and writes the library's values and the fitted,
// with the residuals of both.
func FitMash(w io.Writer) error {
	f, err := fitMash()
	if err != nil {
		return err
	}
	f.write(w)
	return nil
}

func (f *mashFit) write(w io.Writer) {
	all, p, before, fit, known := f.rows, f.problem, f.before, f.fit, f.known
	fmt.Fprintf(w, "Constants of the mash by least squares: %d rows, %d constants, each put as known to %.0f %% (from memory), for the rows do not tell all of them apart.\n", len(all), len(p.Constants), 100*priorShare)
	fmt.Fprintf(w, "%s after %d steps; sum of squares of the rows %.2f, of the library %.2f.\n\n", fit.Status, fit.Steps, fit.ReadingsSum, sumOfSquares(before))
	fmt.Fprintf(w, "%-24s %12s %12s %12s %8s\n", "constant (SI)", "library", "fitted", "+/-", "off, SD")
	for i, c := range p.Constants {
		fmt.Fprintf(w, "%-24s %12.5g %12.5g %12.2g %8.1f\n", c.Name, c.Value, fit.Values[i], known.SD[i], (c.Value-fit.Values[i])/known.SD[i])
	}
	fmt.Fprintf(w, "\n%-56s %9s %6s %9s %9s  %s\n", "row", "published", "+/-", "library", "fitted", "source")
	for i, t := range all {
		fmt.Fprintf(w, "%-56s %9.1f %6.1f %9.1f %9.1f  %s\n", t.what, t.value, t.sd, t.value+before[i]*t.sd, t.value+fit.Residuals[i]*t.sd, t.source)
	}
}

func sumOfSquares(r []float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += x * x
	}
	return sum
}
