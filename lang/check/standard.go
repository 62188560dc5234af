package check

import (
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// standard reads one standard of identity.
func standard(n *node, e recipe.Entry, stock recipe.Stock, diags *diag.List) *recipe.Standard {
	s := &recipe.Standard{Entry: e, Title: n.word("title"), Law: n.word("law")}
	for _, l := range n.lines {
		if l.bad {
			continue
		}
		c := recipe.Condition{Law: l.comment(), At: l.at()}
		if c.Law == "" {
			c.Law = s.Law
		}
		switch l.field.Name {
		case "grain":
			grainCondition(&c, l, stock, diags)
		case "enzymes":
			c.Test = recipe.EnzymesOwn
		case "off-still":
			c.Strength = l.get("strength").strength()
			c.Test = recipe.OffStillMost
			if l.has("under") {
				c.Test = recipe.OffStillUnder
			} else if l.has("over") {
				c.Test = recipe.OffStillOver
			}
		case "entry":
			c.Test, c.Strength = recipe.EntryMost, l.get("strength").strength()
		case "wood":
			c.Test, c.Woods, c.SizeM3 = recipe.WoodIs, woods(l), l.num("volume")
		case "age":
			c.Test, c.AgeS = recipe.AgeLeast, l.num("duration")
		case "bottled":
			c.Test, c.Strength = recipe.BottledLeast, l.get("strength").strength()
		case "made-in":
			c.Test, c.Text = recipe.MadeIn, l.text("text")
		case "note":
			s.Notes = append(s.Notes, l.text("text"))
			continue
		default:
			continue
		}
		s.Conditions = append(s.Conditions, c)
	}
	return s
}

func grainCondition(c *recipe.Condition, l *node, stock recipe.Stock, diags *diag.List) {
	c.Test, c.Share, c.Malted = recipe.GrainLeast, l.num("share"), l.has("malted")
	if l.has("some") {
		c.Test = recipe.GrainSome
	}
	var known []string
	for _, g := range stock.Grains {
		known = append(known, g.Name, g.Cereal)
	}
	slices.Sort(known)
	known = append(slices.Compact(known), "any")
	for _, name := range l.m.all("name") {
		if !slices.Contains(known, name.text()) {
			diags.Add(unknownName("grain or cereal", name, func() []string { return known }))
			continue
		}
		c.Grains = append(c.Grains, name.text())
	}
}

// woods reads the alternatives of a wood line.
func woods(l *node) []recipe.Wood {
	var out []recipe.Wood
	w, begun := recipe.Wood{}, false
	for i := range l.m.caps {
		switch word := l.m.caps[i].slot; word {
		case "new", "used":
			w.Use, begun = word, true
		case "charred", "uncharred":
			w.Char, begun = word, true
		case "oak":
			w.Of, begun = word, true
		case "any":
			begun = true
		case "none":
			w.None, begun = true, true
		case "or":
			out, w, begun = append(out, w), recipe.Wood{}, false
		}
	}
	if begun {
		out = append(out, w)
	}
	return out
}
