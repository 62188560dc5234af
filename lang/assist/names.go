package assist

import (
	"slices"

	"newmake/lang/house"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// name is something that a house calls by a name.
type name struct{ sort, key string }

// vessels are the words that declare a vessel of a plant.
var vessels = []string{"cooker", "mash-tun", "fermenter", "still", "tank", "rack-house"}

// nameOf gives what a capture names; false if it names nothing that is declared.
// declares says that it is the declaration itself.
func nameOf(path []*tree.Node, c *tree.Capture) (n name, declares, ok bool) {
	field := path[len(path)-1].Field
	for _, slot := range field.Slots() {
		if slot.Name != c.Slot {
			continue
		}
		sort := ""
		for _, t := range schema.SlotTypes {
			if t.Name == slot.Type {
				sort = t.Names
			}
		}
		switch {
		case sort == "":
		case sort != "name":
			return name{sort, tree.Key(c.Text())}, false, true
		case len(path) == 1 && c.Slot == "name":
			return name{field.Name, tree.Key(c.Text())}, true, true
		case len(path) == 1 && c.Slot == "parent":
			return name{field.Name, tree.Key(c.Text())}, false, true
		case len(path) == 2 && path[0].Field == schema.Plant && c.Slot == "name" && slices.Contains(vessels, field.Name):
			return name{"vessel", tree.Key(c.Text())}, true, true
		}
	}
	return name{}, false, false
}

// nameAt is the name that stands at a place of the text.
func (s *Snapshot) nameAt(offset int) (name, bool) {
	p, ok := s.at(offset)
	if !ok || p.cap == nil {
		return name{}, false
	}
	n, _, ok := nameOf(p.path, p.cap)
	return n, ok
}

// Definition gives the places where the name at a place is declared. A name of the
// built-in library has none: `newmake library` shows it.
func (s *Snapshot) Definition(offset int) []Place {
	n, ok := s.nameAt(offset)
	if !ok {
		return nil
	}
	var out []Place
	eachName(s.declaring(n), func(path []*tree.Node, c *tree.Capture) {
		if other, declares, ok := nameOf(path, c); ok && declares && other == n {
			out = append(out, c.At())
		}
	})
	return out
}

// declaring are the declarations in which a name may be declared: found by the
// index, without reading the rest of the house.
func (s *Snapshot) declaring(n name) []*house.Decl {
	switch n.sort {
	case "vessel":
		return s.House.Plants
	case schema.Plant.Name:
		return s.House.Plants
	case schema.Batch.Name:
		if d := s.House.Find(n.key); d != nil {
			return []*house.Decl{d}
		}
		return nil
	}
	for _, f := range schema.Library {
		if f.Name == n.sort {
			return s.House.OwnEntries(f)
		}
	}
	if f := schema.Language.Find(n.sort); f != nil && f.Past {
		if d := s.House.PastNamed(f, n.key); d != nil {
			return []*house.Decl{d}
		}
	}
	return nil
}

// References gives every place of the house where the name at a place stands, in the
// order of the files and lines; without its declarations if they are not asked for.
func (s *Snapshot) References(offset int, declarations bool) []Place {
	n, ok := s.nameAt(offset)
	if !ok {
		return nil
	}
	var out []Place
	for _, f := range s.House.Files {
		eachName(f.Decls, func(path []*tree.Node, c *tree.Capture) {
			if other, declares, ok := nameOf(path, c); ok && other == n && (declarations || !declares) {
				out = append(out, c.At())
			}
		})
	}
	return out
}

// eachName sees every capture of some declarations.
func eachName(decls []*house.Decl, see func(path []*tree.Node, c *tree.Capture)) {
	var walk func(path []*tree.Node)
	walk = func(path []*tree.Node) {
		n := path[len(path)-1]
		for i := range n.Match.Caps {
			see(path, &n.Match.Caps[i])
		}
		for _, l := range n.Lines {
			walk(append(path, l))
		}
	}
	for _, d := range decls {
		if n := d.Node(); n != nil {
			walk([]*tree.Node{n})
		}
	}
}

// names lists what may be written where a sort of name is wanted, the house's own
// first where there are many.
func (s *Snapshot) names(sort string) []string {
	var out []string
	switch sort {
	case "plant":
		out = s.House.PlantNames()
	case "batch":
		out = s.House.Batches()
	case "vessel":
		eachName(s.House.Plants, func(path []*tree.Node, c *tree.Capture) {
			if n, declares, ok := nameOf(path, c); ok && declares && n.sort == "vessel" {
				out = append(out, c.Text())
			}
		})
	case "cask":
		for _, d := range s.House.Past(schema.OwnCask) {
			out = append(out, d.Name)
		}
	}
	for _, f := range schema.Library {
		if f.Name == sort {
			out = s.House.EntryNames(f)
		}
	}
	return out
}
