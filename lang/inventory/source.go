package inventory

import (
	"newmake/lang/record"
	"newmake/lang/tree"
)

// Source is something that spirit is drawn from: one of a vat, a cask from its fill to its
// end, and a run.
type Source struct {
	Vat  *record.Vat
	Life *record.Life
	Run  *record.Run
}

// sorts are the words that may stand before a name to say what it is of, in the order in
// which one without a word is looked for.
var sorts = []string{"vat", "cask", "run"}

// Source finds what has a name on the day on which something is drawn from it. sort is the
// word before the name, "" if there is none. It is false if nothing has the name by then.
//
// A cask is the first life of its serial that had begun by then and had not ended before: on
// a day on which it is emptied and filled again, the old spirit is drawn.
func (c *Inventory) Source(name, sort string, on record.Date) (Source, bool) {
	if name == "" {
		return Source{}, false
	}
	if sort == "" {
		for _, s := range sorts {
			if found, ok := c.Source(name, s, on); ok {
				return found, true
			}
		}
		return Source{}, false
	}
	c.index()
	k := tree.Key(name)
	switch sort {
	case "vat":
		v := c.vats[k]
		return Source{Vat: v}, v != nil
	case "cask":
		for _, l := range c.lives[k] {
			if end := l.Over(); l.Filled().Compare(on) <= 0 && (end == nil || end.On.Compare(on) >= 0) {
				return Source{Life: l}, true
			}
		}
	case "run":
		r := c.numbers[k]
		return Source{Run: r}, r != nil
	}
	return Source{}, false
}

// FilledBy is the life of a cask that a line of a run's fill began or went on with, nil if
// it is no such line.
func (c *Inventory) FilledBy(v *record.Visit) *record.Life {
	c.index()
	return c.fills[v]
}

// LivesOf are those of a serial, in the order of their fills.
func (c *Inventory) LivesOf(serial string) []*record.Life {
	c.index()
	return c.lives[tree.Key(serial)]
}

// index sorts what is there by its names, once.
func (c *Inventory) index() {
	c.once.Do(func() {
		c.numbers, c.vats = map[string]*record.Run{}, map[string]*record.Vat{}
		c.lives, c.fills = map[string][]*record.Life{}, map[*record.Visit]*record.Life{}
		for _, r := range c.Runs {
			c.numbers[tree.Key(r.Number)] = r
		}
		for _, v := range c.Vats {
			c.vats[tree.Key(v.Name)] = v
		}
		for _, l := range c.Lives {
			k := tree.Key(l.Serial)
			c.lives[k] = append(c.lives[k], l)
			for _, f := range l.Fills {
				c.fills[f.Visit] = l
			}
		}
	})
}
