package entries

import (
	"slices"
	"sync"

	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// standard reads one standard of identity.
func standard(n *tree.Node, e recipe.Entry, h *house.House, diags *diag.List) *recipe.Standard {
	s := &recipe.Standard{Entry: e, Title: n.Word("title"), Law: n.Word("law"), Country: n.Word("country")}
	if c := n.Line("country"); c != nil && !h.Declares(schema.Country, s.Country) {
		diags.Add(tree.UnknownName("country", c.Get("name"), func() []string { return h.EntryNames(schema.Country) }))
		s.Country = ""
	}
	for _, l := range n.Lines {
		if l.Bad {
			continue
		}
		c := recipe.Condition{Law: l.Comment(), Of: s.Title, OfLaw: s.Law, At: l.At()}
		if c.Law == "" {
			c.Law = s.Law
		}
		switch l.Field.Name {
		case "grain":
			grainCondition(&c, l, h, diags)
		case "enzymes":
			c.Test = recipe.EnzymesOwn
		case "off-still":
			c.Strength = fields.Strength(l.Get("strength"))
			c.Test = recipe.OffStillMost
			if l.Has("under") {
				c.Test = recipe.OffStillUnder
			} else if l.Has("over") {
				c.Test = recipe.OffStillOver
			}
		case "entry":
			c.Test, c.Strength = recipe.EntryMost, fields.Strength(l.Get("strength"))
		case "wood":
			c.Test, c.Woods, c.SizeM3 = recipe.WoodIs, woods(l), l.Num("volume")
		case "age":
			c.Test, c.AgeS = recipe.AgeLeast, l.Num("duration")
		case "bottled":
			c.Test, c.Strength = recipe.BottledAt, fields.Strength(l.Get("strength"))
			if l.Has("least") {
				c.Test = recipe.BottledLeast
			}
		case "still":
			c.Test, c.Text = recipe.StillIs, "pot"
			if l.Has("column") {
				c.Text = "column"
			}
		case "label":
			c.Test, c.AgeS, c.Text = recipe.LabelUnder, l.Num("duration"), l.Text("text")
			if l.Has("used") {
				c.Test = recipe.LabelUsed
			}
		case "distilled":
			c.Test = recipe.OneSeason
		case "not":
			if c.Test, c.Other = recipe.IsNot, otherStandard(l.Get("standard"), h, diags); c.Other == nil {
				continue
			}
		case "parts":
			c.Test, c.Share = recipe.PartsLeast, l.Num("share")
			for _, name := range l.Match.All("standard") {
				if !h.Declares(schema.Standard, name.Text()) {
					diags.Add(tree.UnknownName("standard of identity", name, func() []string { return h.EntryNames(schema.Standard) }))
					continue
				}
				c.Others = append(c.Others, name.Text())
			}
		case "made-in":
			c.Test, c.Text = recipe.MadeIn, l.Text("text")
		case "note":
			s.Notes = append(s.Notes, l.Text("text"))
			continue
		default:
			continue
		}
		s.Conditions = append(s.Conditions, c)
	}
	return s
}

// otherStandard reads a standard that a line of another one names. Mistakes in its own lines
// are reported with its own declaration. The standards that it names in turn do not count,
// so that two may exclude each other.
func otherStandard(name *tree.Capture, h *house.House, diags *diag.List) *recipe.Standard {
	if !h.Declares(schema.Standard, name.Text()) {
		diags.Add(tree.UnknownName("standard of identity", name, func() []string { return h.EntryNames(schema.Standard) }))
		return nil
	}
	e := h.Entry(schema.Standard, name.Text())
	other := *e.Node
	other.Lines = slices.DeleteFunc(slices.Clone(other.Lines), func(l *tree.Node) bool { return l.Field.Name == "not" || l.Field.Name == "parts" })
	return standard(&other, recipe.Entry{Name: name.Text()}, h, &diag.List{})
}

func grainCondition(c *recipe.Condition, l *tree.Node, h *house.House, diags *diag.List) {
	c.Test, c.Share, c.Malted = recipe.GrainLeast, l.Num("share"), l.Has("malted")
	c.Unmalted = l.Has("unmalted")
	switch {
	case l.Has("some"):
		c.Test = recipe.GrainSome
	case l.Has("most"):
		c.Test = recipe.GrainMost
	}
	cereals := sync.OnceValue(func() []string { return cereals(h) })
	for _, name := range l.Match.All("name") {
		if word := name.Text(); word != "any" && !h.Declares(schema.Grain, word) && !slices.Contains(cereals(), word) {
			diags.Add(tree.UnknownName("grain or cereal", name, cereals))
			continue
		}
		c.Grains = append(c.Grains, name.Text())
	}
}

// cereals lists what a standard may call grain: the names of the grains, the cereals
// that they are, and any.
func cereals(h *house.House) []string {
	var known []string
	for _, name := range h.EntryNames(schema.Grain) {
		known = append(known, name, h.Entry(schema.Grain, name).Node.Word("cereal"))
	}
	slices.Sort(known)
	return append(slices.Compact(known), "any")
}

// woods reads the alternatives of a wood line.
func woods(l *tree.Node) []recipe.Wood {
	var out []recipe.Wood
	w, begun := recipe.Wood{}, false
	for i := range l.Match.Caps {
		switch word := l.Match.Caps[i].Slot; word {
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
