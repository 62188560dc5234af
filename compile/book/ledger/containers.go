package ledger

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"newmake/lang/check"
	"newmake/lang/quantity"
)

// Container is a cask or a bottle as a store calls it: `cask`, `used-cask`, `750 mL bottle`.
type Container struct {
	Bottle bool
	Used   bool    // of a cask, that its wood has held something before
	SizeM3 float64 // 0: not said
}

// ContainerOf reads a name of a store. It is not ok of what is no cask and no bottle.
func ContainerOf(name string) (c Container, ok bool) {
	words := strings.Fields(strings.ToLower(strings.ReplaceAll(name, "-", " ")))
	if len(words) > 2 {
		size, err := strconv.ParseFloat(words[0], 64)
		u, known := quantity.Lookup(words[1])
		if err != nil || !known || u.Measures[0].Kind != quantity.Volume {
			return c, false
		}
		c.SizeM3, words = size*u.Measures[0].Factor, words[2:]
	}
	if len(words) == 2 && (words[0] == "used" || words[0] == "new") {
		c.Used, words = words[0] == "used", words[1:]
		if words[0] != "cask" && words[0] != "casks" {
			return c, false
		}
	}
	if len(words) != 1 {
		return c, false
	}
	switch words[0] {
	case "cask", "casks":
		return c, true
	case "bottle", "bottles":
		c.Bottle = true
		return c, true
	}
	return c, false
}

// holds says that what a store calls so is of the kind and the size of what was filled, where
// both say one.
func (c Container) holds(filled Container) bool {
	return c.Bottle == filled.Bottle &&
		(c.SizeM3 == 0 || filled.SizeM3 == 0 || math.Abs(c.SizeM3-filled.SizeM3) < sameSize*c.SizeM3)
}

// sameSize is how far two sizes may lie apart and still be one, as a share: 53 gal and 200 L.
const sameSize = 0.01

// filled is how many of a container were taken on a day.
type filled struct {
	Container
	undeclared bool // a cask of which nobody wrote whether it was new
	n          int64
}

// containers are the steps of the casks that were first filled, and of the bottles. A cask
// that was in the house before and is filled again came out of no store.
func containers(t *check.Cellar) []step {
	var out []step
	seen := map[string]bool{}
	for _, l := range t.Lives {
		if len(l.Fills) == 0 || seen[l.Serial] {
			continue
		}
		seen[l.Serial] = true
		c := Container{}
		if l.Cask != nil {
			c.Used, c.SizeM3 = l.Cask.Used, l.Cask.SizeM3
		}
		out = append(out, step{on: l.Filled(), rank: 1, filled: &filled{c, l.Cask == nil, 1}})
	}
	for _, b := range t.Bottlings {
		for i := range b.Bottles {
			if w := &b.Bottles[i]; w.Word == "bottles" && w.N > 0 {
				out = append(out, step{on: cmp.Or(w.On, b.On), rank: 1, filled: &filled{Container: Container{Bottle: true, SizeM3: w.EachM3}, n: int64(w.N)}})
			}
		}
	}
	return out
}

// fill takes casks or bottles from what the stores have of them, the oldest first. What no
// store has was never written as bought, and is no lot of it.
func (s *stores) fill(f *filled) {
	n := f.n
	for _, p := range s.piles {
		c, ok := ContainerOf(p.what)
		if ok && p.unit == "count" && p.there > 0 && n > 0 && c.holds(f.Container) && (f.undeclared || c.Used == f.Used) {
			part := min(n, p.there)
			p.there, p.used, n = p.there-part, p.used+part, n-part
		}
	}
}
