package why

import (
	"slices"
	"strings"

	"newmake/compile/plan"
	"newmake/lang/spelling"
)

// value is one row of the table: a number that can be asked for.
type value struct {
	name   string
	also   []string // other names; a plan's own name in JSON is one
	title  string
	stage  stage // the last that bears on it
	model  model
	from   []string          // values that it came from
	inputs []source          // what bears on it in the texts
	given  bool              // a model gives it whole: no sum leads to it
	money  bool              // prices bear on it
	needs  func(*asked) bool // without which there is no such number
	amount func(*asked) plan.Quantity
	note   func(*asked) string
	work   func(*asked) []Line
}

// stage is a part of the work. What comes later moves nothing earlier.
type stage uint8

const (
	inGrain stage = iota
	inMash
	inFerment
	inStrip
	inSpirit
	inCask
)

// parts are the headings under which the values are listed.
var parts = []struct {
	title  string
	values []value
}{
	{"grain and mash", mashValues}, {"ferment", fermentValues}, {"stills", stillValues}, {"cask", caskValues}, {"house", houseValues},
}

// table is every value that a batch has, the years of its forecast with them.
func (a *asked) table() []value {
	var out []value
	for _, p := range parts {
		out = append(out, p.values...)
		if p.title == "cask" {
			for i, y := range a.p.Cask.Forecast {
				out = append(out, yearValue(i, y.AgeYears))
			}
		}
	}
	return slices.DeleteFunc(out, func(v value) bool { return v.needs != nil && !v.needs(a) })
}

// find gives the value of a name, capitals and hyphens aside.
func (a *asked) find(name string) (value, bool) {
	key := fold(name)
	for _, v := range a.table() {
		if fold(v.name) == key || slices.ContainsFunc(v.also, func(o string) bool { return fold(o) == key }) {
			return v, true
		}
	}
	return value{}, false
}

// near gives the names that are spelt nearly as one, best first, at most three.
func (a *asked) near(name string) []string {
	key := fold(name)
	limit := 1 + len(key)/4
	type found struct {
		name string
		off  int
	}
	var all []found
	for _, v := range a.table() {
		off := limit + 1
		for _, n := range append([]string{v.name}, v.also...) {
			n = fold(n)
			d := spelling.Distance(key, n)
			if len(key) > 2 && (strings.HasPrefix(n, key) || strings.HasPrefix(key, n)) {
				d = min(d, 1)
			}
			if d < len(n) {
				off = min(off, d)
			}
		}
		if off <= limit {
			all = append(all, found{v.name, off})
		}
	}
	slices.SortStableFunc(all, func(x, y found) int { return x.off - y.off })
	var out []string
	for _, f := range all[:min(3, len(all))] {
		out = append(out, f.name)
	}
	return out
}

// fold makes low-wines, Low wines, low_wines and lowWines one word.
func fold(s string) string {
	return strings.NewReplacer("-", "", "_", "", " ", "").Replace(strings.ToLower(s))
}
