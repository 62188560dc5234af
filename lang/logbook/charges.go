//go:build !js

package logbook

import "newmake/lang/record"

// charges numbers the charges of each still. A line that charges it begins another one where
// the one before has come over, or what goes in has gone in: what a charge is made of has a line
// for each, from wherever it comes. Where nobody wrote that it was charged, one begins with its
// fire or its first drop.
func charges(run *record.Run) {
	at := map[record.StageName]*charge{}
	for i := range run.Visits {
		v := &run.Visits[i]
		name := run.Stages[v.Stage].Name
		if name != record.Strip && name != record.Spirit {
			continue
		}
		now := at[name]
		if now == nil {
			now = &charge{}
			at[name] = now
		}
		now.line(v)
		v.Charge = now.nth
	}
}

// charge is the charge at hand.
type charge struct {
	nth     int
	in      [][2]string // what went in, and from where
	dropped bool        // its first drop has come
	over    bool        // it runs, or did
	off     bool        // it was turned off, and its lots were gauged
}

func (c *charge) next() { *c = charge{nth: c.nth + 1} }

func (c *charge) line(v *record.Visit) {
	switch v.Word {
	case "charge":
		of := [2]string{v.Of, v.From}
		again := c.nth == 0 || c.over
		for _, o := range c.in {
			again = again || o == of
		}
		if again {
			c.next()
		}
		c.in = append(c.in, of)
	case "fire":
		if c.nth == 0 || c.off {
			c.next()
		}
	case "first-drop":
		if c.nth == 0 || c.off || c.dropped {
			c.next()
		}
		c.dropped, c.over = true, true
	case "to", "off", "low-wines", "foreshots", "heads", "hearts", "tails", "feints", "":
		if c.nth == 0 {
			c.next()
		}
		c.over = true
		c.off = c.off || v.Word == "off"
	}
}
