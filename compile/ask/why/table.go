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
	si     string   // its name to a reader of litres, if that is another: one of also
	inUS   string   // its name to a reader of gallons, if that is another: one of also
	us     bool     // readers of gallons alone count in it: it is not listed for others
	also   []string // other names; a plan's own name in JSON is one
	title  string
	stage  stage // the last that bears on it
	model  Model
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

// part is a heading with the values under it.
type part struct {
	title  string
	values []value
}

// parts are those of any batch.
var parts = []part{
	{"grain and mash", mashValues}, {"ferment", fermentValues}, {"stills", stillValues}, {"cask", caskValues}, {"house", houseValues},
}

// parts are the values that a batch has, the years of its forecast with them.
func (a *asked) parts() []part {
	out := slices.Clone(parts)
	for i := range out {
		all := slices.Clone(out[i].values)
		if out[i].title == "cask" {
			for i, y := range a.p.Cask.Forecast {
				all = append(all, yearValue(i, y.AgeYears))
			}
		}
		out[i].values = slices.DeleteFunc(all, func(v value) bool { return v.needs != nil && !v.needs(a) })
	}
	return out
}

// table is every value that a batch has.
func (a *asked) table() []value {
	var out []value
	for _, p := range a.parts() {
		out = append(out, p.values...)
	}
	return out
}

// named is the value's name to a reader.
func (v value) named(a *asked) string {
	if v.si != "" && !a.us() {
		return v.si
	}
	if v.inUS != "" && a.us() {
		return v.inUS
	}
	return v.name
}

// called reports whether a name is one of the value's, capitals and hyphens aside.
func (v value) called(name string) bool {
	is := func(o string) bool { return fold(o) == fold(name) }
	return is(v.name) || slices.ContainsFunc(v.also, is)
}

// find gives the value of a name.
func (a *asked) find(name string) (value, bool) {
	all := a.table()
	if i := slices.IndexFunc(all, func(v value) bool { return v.called(name) }); i >= 0 {
		return all[i], true
	}
	return value{}, false
}

// near gives the names that are spelt nearly as one, best first, at most three.
func (a *asked) near(name string) []string {
	key := fold(name)
	limit := 1 + len(key)/4
	var near spelling.Ranked
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
			near.Add(v.name, off)
		}
	}
	return near.First(3)
}

// fold makes low-wines, Low wines, low_wines and lowWines one word.
func fold(s string) string {
	return strings.NewReplacer("-", "", "_", "", " ", "").Replace(strings.ToLower(s))
}
