package check

import (
	"fmt"
	"slices"

	"newmake/lang/diag"
	"newmake/lang/recipe"
)

var standardField = &Field{
	Name: "standard", Shape: stockName, Repeat: true, Key: "name", Example: "standard bourbon",
	Doc: "A standard of identity: what the law asks of a whisky that carries a name, so far as a program can test it.",
	Block: &Block{Fields: []*Field{
		{Name: "title", Shape: "TEXT", Need: true, Example: `title "Bourbon whisky"`, Doc: "The name on the label."},
		{Name: "law", Shape: "TEXT", Need: true, Example: `law "27 CFR 5.143"`, Doc: "The law that says so."},
		{
			Name: "grain", Shape: `NAME ("," NAME)* ["malted"] ("at" "least" SHARE|"some")`, Repeat: true, Example: "grain corn at least 51 %",
			Doc: "The least share of the bill, by weight, of a grain or a cereal; `any` is all grain.", Limits: []Limit{aShare},
		},
		{Name: "enzymes", Shape: `"own"`, Example: "enzymes own", Doc: "No enzymes but those of the grain."},
		{Name: "off-still", Shape: `("under"|"over"|"at" "most") STRENGTH`, Repeat: true, Example: "off-still at most 160 proof", Doc: "Strength of the whole run, before it is reduced."},
		{Name: "entry", Shape: `"at" "most" STRENGTH`, Example: "entry at most 125 proof", Doc: "Strength at which it goes into wood."},
		{
			Name: "wood", Shape: `("new"|"used"|"charred"|"uncharred"|"oak"|"any"|"none"|"or")* ["at" "most" VOLUME]`, Example: "wood new charred oak",
			Doc: "The wood it rests in; alternatives are joined by `or`, and `none` means that it need not.",
		},
		{Name: "age", Shape: `"at" "least" DURATION`, Example: "age at least 2 years", Doc: "Time in wood."},
		{Name: "bottled", Shape: `"at" "least" STRENGTH`, Example: "bottled at least 80 proof", Doc: "Strength in the bottle."},
		{Name: "made-in", Shape: "TEXT", Example: `made-in "United States"`, Doc: "Where it has to be made: stated, not tested."},
		{Name: "note", Shape: "TEXT", Repeat: true, Example: `note "nothing added but water"`, Doc: "What no program can test."},
	}},
}

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
			diags.Add(unknownName("grain or cereal", name, known))
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

// woodText writes a wood for a reader.
func woodText(w recipe.Wood) string {
	if w.None {
		return "no wood at all"
	}
	of := w.Of
	if of == "" {
		of = "wood"
	}
	text := of
	for _, part := range []string{w.Char, w.Use} {
		if part != "" {
			text = fmt.Sprintf("%s %s", part, text)
		}
	}
	return text
}
