// Package starchtest reads the stock for tests of the mash and of starch, so
// that they run on the numbers that ship. It knows only lines of a name, a
// number or a range, and a unit: the checker, which reads the whole language,
// is above these packages and may not be leaned on to test them.
package starchtest

import (
	"fmt"
	"io/fs"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/stdlib"
)

// Model is `model mash` of the stock.
func Model(t testing.TB) *recipe.Model {
	e := read(t, "model-mash.batch", "model mash")
	m := &recipe.Model{Entry: recipe.Entry{Name: "mash"}, Values: map[string]float64{}}
	for name, l := range e {
		m.Values[name] = l.low
	}
	return m
}

// Grain is a grain of the stock.
func Grain(t testing.TB, name string) *recipe.Grain {
	e := read(t, "grain.batch", "grain "+name)
	return &recipe.Grain{
		Entry:  recipe.Entry{Name: name},
		Cereal: e["cereal"].text, Malted: e["malted"].text == "yes", Roasted: e["roasted"].text == "yes",
		Moisture: e["moisture"].low, Starch: e["starch"].low, Sugars: e["sugars"].low,
		Extract: e["extract"].low, Solubles: e["solubles"].low,
		GelLowC: e["gelatinizes"].low, GelHighC: e["gelatinizes"].high,
		LintnerPower: e["power"].low, AlphaDU: e["alpha"].low,
	}
}

// Enzyme is an enzyme of the stock.
func Enzyme(t testing.TB, name string) *recipe.Enzyme {
	e := read(t, "enzyme.batch", "enzyme "+name)
	return &recipe.Enzyme{
		Entry: recipe.Entry{Name: name},
		Does:  recipe.EnzymeKind(e["does"].text), ActivityPerKg: e["activity"].low,
		OptimumC: e["optimum"].low, LowC: e["range"].low, HighC: e["range"].high, MostC: e["dies-above"].low,
		HalfLifeS: e["half-life"].low, HalfLifeC: e["half-life"].at, DeathJMol: e["death-energy"].low,
		PHLow: e["acidity"].low, PHHigh: e["acidity"].high,
		DoseLow: e["dose"].low, DoseHigh: e["dose"].high,
	}
}

// line is what stands after a name: a word, or a number or range in SI, with
// the temperature after "at".
type line struct {
	text          string
	low, high, at float64
}

var (
	declared = regexp.MustCompile(`^(\w[\w -]*?)\s*\{`)
	aLine    = regexp.MustCompile(`^\s+([\w-]+)\s+([^#]+?)\s*(?:#.*)?$`)
	aValue   = regexp.MustCompile(`^(\d+(?:\.\d+)?)(?:\.\.(\d+(?:\.\d+)?))?\s*([^\d\s]\S*)?(?:\s+at\s+([\d.]+) C)?$`)
)

func read(t testing.TB, file, header string) map[string]line {
	t.Helper()
	text, err := fs.ReadFile(stdlib.FS, file)
	if err != nil {
		t.Fatal(err)
	}
	entry := map[string]line{}
	inside, found := false, false
	for _, l := range strings.Split(string(text), "\n") {
		if m := declared.FindStringSubmatch(l); m != nil {
			inside = m[1] == header
			found = found || inside
			continue
		}
		if m := aLine.FindStringSubmatch(l); m != nil && inside && !strings.HasPrefix(m[1], "#") {
			v, err := value(m[2])
			if err != nil {
				t.Fatalf("%s: %s: %v", header, l, err)
			}
			entry[m[1]] = v
		}
	}
	if !found {
		t.Fatalf("%s holds no %s", file, header)
	}
	return entry
}

func value(s string) (line, error) {
	m := aValue.FindStringSubmatch(s)
	if m == nil {
		return line{text: s}, nil
	}
	l := line{text: s}
	for i, to := range []*float64{&l.low, &l.high} {
		if m[i+1] == "" {
			continue
		}
		x, err := strconv.ParseFloat(m[i+1], 64)
		if err == nil && m[3] != "" {
			x, err = toSI(x, m[3])
		}
		if err != nil {
			return l, err
		}
		*to = x
	}
	if m[4] != "" {
		l.at, _ = strconv.ParseFloat(m[4], 64)
	}
	return l, nil
}

// toSI takes a unit for the first thing that it measures.
func toSI(x float64, unit string) (float64, error) {
	u, ok := quantity.Lookup(unit)
	if !ok {
		return 0, fmt.Errorf("no unit %q", unit)
	}
	return quantity.ToSI(x, unit, u.Measures[0].Kind)
}
