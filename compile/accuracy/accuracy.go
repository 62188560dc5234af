// Package accuracy holds the models against published figures and writes the
// page that says how well they do: compile/ACCURACY.md.
//
//	go test ./compile/accuracy -update
//
// writes the page; without the flag the test fails if it is stale. Nothing here
// bounds an error: the tests of each package do that. This counts the points
// and tells the largest and the root-mean-square error, whatever they are, and
// sets beside them what the package, or the source, claims.
package accuracy

import (
	"fmt"
	"math"
	"strings"

	"newmake/compile/accuracy/published"
	"newmake/lang/recipe"
)

// Section is one subject of the page.
type Section struct {
	Title string
	Text  string // what to know before reading the table
	Rows  []Row
}

// Row is one source that a quantity is held against.
type Row struct {
	Quantity string
	Source   string // title and table
	Range    string
	Unit     string // of the errors
	published.Deviations
	Claim  float64 // largest error that newmake claims, 0 if it claims nothing
	Why    string  // why it claims this much, or why nothing
	Remark string
}

// guard reports whether the row validates no model: a table gives itself back, or
// arithmetic is held against arithmetic. It guards against a slip of the program.
func (r Row) guard() bool { return strings.HasPrefix(r.Why, "arithmetic") }

// over reports whether the model is worse than is claimed.
func (r Row) over() bool { return r.Claim > 0 && r.Max > r.Claim*(1+1e-9) }

// mashModel is the constants of the mash: the library's, or those that are tried.
func (m *measurer) mashModel() *recipe.Model {
	if m.tried != nil {
		return m.tried
	}
	return library().Models["mash"]
}

// Measure measures everything.
func Measure() ([]Section, error) {
	var all []Section
	for _, measure := range []func(*measurer) Section{
		density, gauging, equilibrium, heat, sugar, distillation, mashing, fermenting, maturing, batches,
	} {
		var m measurer
		s := measure(&m)
		if m.err != nil {
			return nil, fmt.Errorf("%s: %w", s.Title, m.err)
		}
		all = append(all, s)
	}
	return all, nil
}

// measurer reads tables and calls functions that may fail, and keeps the first
// failure, so that what is measured reads as a list.
type measurer struct {
	err   error
	tried *recipe.Model // constants of the mash in the place of the library's
}

func (m *measurer) fail(err error) {
	if m.err == nil {
		m.err = err
	}
}

// must is a value, or 0 with its error kept.
func (m *measurer) must(v float64, err error) float64 {
	if err != nil {
		m.fail(err)
		return 0
	}
	return v
}

// line is one row of a table, whose columns read as numbers.
type line struct {
	m *measurer
	published.Row
}

func (l line) num(column string) float64 { return l.m.must(l.Num(column)) }

// table holds a function against each row of a published table: got and want,
// and whether the row counts.
func (m *measurer) table(name string, f func(l line) (got, want float64, counts bool)) published.Deviations {
	var d published.Deviations
	rows, err := published.Read(name)
	if err != nil {
		m.fail(err)
		return d
	}
	for _, r := range rows {
		if got, want, counts := f(line{m, r}); counts {
			d.Add(got, want)
		}
	}
	return d
}

// points holds pairs of got and want against each other.
func points(pairs ...[2]float64) published.Deviations {
	var d published.Deviations
	for _, p := range pairs {
		d.Add(p[0], p[1])
	}
	return d
}

// grid holds two functions against each other at n+1 even steps from a to b.
func grid(a, b float64, n int, f func(v float64) (got, want float64)) published.Deviations {
	var d published.Deviations
	for i := range n + 1 {
		d.Add(f(a + (b-a)*float64(i)/float64(n)))
	}
	return d
}

// percent makes a pair relative, in percent of what is wanted.
func percent(got, want float64) (float64, float64) { return 100 * got / want, 100 }

// percents is points, relative in percent.
func percents(pairs ...[2]float64) published.Deviations {
	var d published.Deviations
	for _, p := range pairs {
		d.Add(percent(p[0], p[1]))
	}
	return d
}

// figures writes a number to two significant figures. Less than a millionth of
// a unit is rounding, on whatever processor.
func figures(v float64) string {
	if math.Abs(v) < 1e-6 {
		return "0"
	}
	places := 1 - int(math.Floor(math.Log10(math.Abs(v))))
	scale := math.Pow10(places)
	r := math.Round(v*scale*(1+1e-9)) / scale
	if math.Floor(math.Log10(math.Abs(r))) > math.Floor(math.Log10(math.Abs(v))) {
		places-- // 0.0996 is 0.10
	}
	return fmt.Sprintf("%.*f", max(0, places), r)
}
