package explain

import (
	"maps"
	"slices"
	"strings"

	"newmake/lang/check"
	"newmake/lang/recipe"
)

// libraryPages has one page for each entry of the built-in library: what it is. Its
// figures are for `newmake library`.
func libraryPages() []Page {
	s := check.Builtin().Library
	return slices.Concat(
		entries("grain", s.Grains, func(g *recipe.Grain) recipe.Entry { return g.Entry }),
		entries("yeast", s.Yeasts, func(y *recipe.Yeast) recipe.Entry { return y.Entry }),
		entries("enzyme", s.Enzymes, func(z *recipe.Enzyme) recipe.Entry { return z.Entry }),
		entries("wood", s.Woods, func(k *recipe.CaskWood) recipe.Entry { return k.Entry }),
		entries("standard", s.Standards, func(d *recipe.Standard) recipe.Entry { return d.Entry }),
		entries("country", s.Countries, func(c *recipe.Country) recipe.Entry { return c.Entry }),
	)
}

func entries[V any](sort string, all map[string]V, entry func(V) recipe.Entry) []Page {
	var out []Page
	for _, name := range slices.Sorted(maps.Keys(all)) {
		article := "a "
		if strings.IndexByte("aeiou", sort[0]) >= 0 {
			article = "an "
		}
		p := Page{Name: name, Sort: OfLibrary, Title: article + sort + " of the library"}
		if doc := about(entry(all[name]).Doc); doc != "" {
			p.Body = append(p.Body, Block{Kind: Paragraph, Text: doc})
		}
		p.Body = append(p.Body, Block{Kind: Paragraph, Text: "`newmake library " + name + "` shows its figures and their sources."})
		out = append(out, p)
	}
	return out
}

// about is the part of an entry's comment that is of the entry alone: its last
// paragraph, for what stands above that is the file's.
func about(doc string) string {
	paragraphs := strings.Split(doc, "\n\n")
	return strings.Join(strings.Fields(paragraphs[len(paragraphs)-1]), " ")
}
