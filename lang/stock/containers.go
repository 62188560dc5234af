package stock

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"newmake/lang/quantity"
	"newmake/lang/record"
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

// holds reports whether what a store calls so is of the kind and the size of what was filled, where
// both say one.
func (c Container) holds(filled Container) bool {
	return c.Bottle == filled.Bottle &&
		(c.SizeM3 == 0 || filled.SizeM3 == 0 || math.Abs(c.SizeM3-filled.SizeM3) < sameSize*c.SizeM3)
}

// sameSize is how far two sizes may lie apart and still be one, as a share: 53 gal and 200 L.
const sameSize = 0.01

// Filled is how many casks or bottles of a kind were filled on a day.
type Filled struct {
	Container
	On         record.Date
	Undeclared bool // a cask of which nobody wrote whether it was new
	N          int64
}

// FilledOf are the casks that were first filled, and the bottles. A cask that was in the house
// before and is filled again came out of no store.
func FilledOf(lives []*record.Life, bottlings []*record.Bottling) []Filled {
	var out []Filled
	seen := map[string]bool{}
	for _, l := range lives {
		if len(l.Fills) == 0 || seen[l.Serial] {
			continue
		}
		seen[l.Serial] = true
		c := Container{}
		if l.Cask != nil {
			c.Used, c.SizeM3 = l.Cask.Used, l.Cask.SizeM3
		}
		out = append(out, Filled{c, l.Filled(), l.Cask == nil, 1})
	}
	for _, b := range bottlings {
		for i := range b.Bottles {
			if w := &b.Bottles[i]; w.Word == "bottles" && w.N > 0 {
				out = append(out, Filled{Container: Container{Bottle: true, SizeM3: w.EachM3}, On: cmp.Or(w.On, b.On), N: int64(w.N)})
			}
		}
	}
	return out
}

// from reports whether what was filled may be of a lot. What no store has was never written as bought,
// and is no lot of it.
func (f *Filled) from(l *Lot) bool {
	c, _ := ContainerOf(l.What)
	return c.holds(f.Container) && (f.Undeclared || c.Used == f.Used)
}
