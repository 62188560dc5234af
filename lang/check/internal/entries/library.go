// Package entries reads the entries of a library, each as it is asked for.
package entries

import (
	"fmt"
	"slices"
	"sync"

	"newmake/lang/carried"
	"newmake/lang/check/internal/fields"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/parallel"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// Library reads the entries of a house's library as they are asked for, each once.
type Library struct {
	house *house.House
	base  *Library // reads what the house does not touch; nil for the built-in library

	carried bool // it is the built-in library, which the program carries as it was read

	made parallel.OnceEach[key, *Entry]
}

// key finds an entry.
type key struct {
	field *schema.Field
	name  string // as names are compared
}

// Entry is one entry, read.
type Entry struct {
	Name  string
	Decls []*house.Decl // of which it is made, where they may have anything wrong

	Value any       // *recipe.Grain, *recipe.Yeast, ...
	Diags diag.List // of laying it over what is under it, and of reading it
}

// over is the library of a house over the one that lies under it.
func over(h *house.House, base *Library) *Library {
	return &Library{house: h, base: base}
}

// Builtin is the library that comes with the program. An entry that is not carried yet,
// since it was written a moment ago, is read from the text.
var Builtin = sync.OnceValue(func() *Library { return &Library{house: house.Builtin(), carried: true} })

// Of is a library over the one that lies under it.
func Of(h *house.House) *Library {
	switch h.Base() {
	case nil:
		return over(h, nil)
	case house.Builtin():
		return over(h, Builtin())
	}
	return over(h, Of(h.Base()))
}

// House is the house whose library it is.
func (s *Library) House() *house.House { return s.house }

// Find gives an entry, read; nil if there is none.
func (s *Library) Find(f *schema.Field, name string) *Entry {
	for !s.house.OwnsEntry(f, name) {
		if s = s.base; s == nil {
			return nil
		}
	}
	return s.made.Get(key{f, tree.Key(name)}, func() *Entry {
		if s.carried {
			if value := carried.Entry(f.Name, tree.Key(name), s.text); value != nil {
				return &Entry{Name: name, Value: value}
			}
		}
		return s.read(s.house.Entry(f, name))
	})
}

// text is a text of the library by the name of its file.
func (s *Library) text(file string) *diag.Source {
	i := slices.IndexFunc(s.house.Files, func(f *house.File) bool { return f.Source.Name == file })
	return s.house.Files[i].Source
}

// read reads an entry for its meaning.
func (s *Library) read(in *house.Entry) *Entry {
	f, n := in.Field, in.Node
	m := &Entry{Name: in.Name, Decls: in.Decls, Diags: slices.Clone(in.Diags)}
	e := m.head(in, s.house.Base() != nil)
	if f.Block.Any == nil || len(f.Block.Fields) > 0 {
		tree.Missing(&m.Diags, n, fmt.Sprintf("the %s `%s`", f.Name, e.Name))
	}
	said := len(m.Diags)
	switch f {
	case schema.Grain:
		m.Value = grain(n, e, &m.Diags)
	case schema.Yeast:
		m.Value = yeast(n, e, &m.Diags)
	case schema.Enzyme:
		m.Value = enzyme(n, e, &m.Diags)
	case schema.CaskWood:
		m.Value = caskWood(n, e)
	case schema.Model:
		m.Value = model(n, e, in.Under, &m.Diags)
	case schema.Standard:
		m.Value = standard(n, e, s.house, &m.Diags)
	case schema.Country:
		m.Value = country(n, e, &m.Diags)
	case schema.Aroma:
		m.Value = aroma(n, e)
	}
	if n.Bad {
		m.Diags = m.Diags[:said] // what is wrong with it is said
	}
	return m
}

// head is what every entry carries: its doc and the source of each figure.
func (m *Entry) head(in *house.Entry, own bool) recipe.Entry {
	n := in.Node
	e := recipe.Entry{
		Name: in.Name, House: own, Doc: in.Doc, At: n.At(),
		Source: make(map[string]string, len(n.Lines)), Where: make(map[string]diag.Span, len(n.Lines)),
	}
	for _, l := range n.Lines {
		word := l.Field.Name
		if word == "" {
			word = l.Text("name")
		}
		e.Where[word] = l.At()
		if source := l.Comment(); source != "" && e.Source[word] == "" {
			e.Source[word] = source
		}
	}
	e.Within = fields.Within(n, &m.Diags)
	return e
}

// All gives every entry of a sort, read, in the order of the alphabet.
func (s *Library) All(f *schema.Field) []*Entry {
	var out []*Entry
	for _, name := range s.house.EntryNames(f) {
		out = append(out, s.Find(f, name))
	}
	return out
}

// OwnIn gives the entries that the house declares in some of its files, and those that
// lie on such, read.
func (s *Library) OwnIn(in map[*house.File]bool) []*Entry {
	var out []*Entry
	for _, f := range schema.Library {
		for _, d := range s.house.OwnEntries(f) {
			if in[d.File] || slices.ContainsFunc(s.house.Under(d), func(u *house.Decl) bool { return in[u.File] }) {
				out = append(out, s.Find(f, d.Name))
			}
		}
	}
	return out
}

// Recipes gives all of the library.
func (s *Library) Recipes() recipe.Library {
	return recipe.Library{
		Grains: Mapped[recipe.Grain](s, schema.Grain), Yeasts: Mapped[recipe.Yeast](s, schema.Yeast), Enzymes: Mapped[recipe.Enzyme](s, schema.Enzyme),
		Woods: Mapped[recipe.CaskWood](s, schema.CaskWood), Standards: Mapped[recipe.Standard](s, schema.Standard), Models: Mapped[recipe.Model](s, schema.Model),
		Countries: Mapped[recipe.Country](s, schema.Country), Aromas: Mapped[recipe.Aroma](s, schema.Aroma),
	}
}

// Mapped gives the entries of a sort by their names.
func Mapped[T any](s *Library, f *schema.Field) map[string]*T {
	out := map[string]*T{}
	for _, m := range s.All(f) {
		out[m.Name] = m.Value.(*T)
	}
	return out
}

// BushelKg is what a trade bushel of a grain weighs, 0 where the library does not say.
func (s *Library) BushelKg(grain string) float64 {
	e := s.Find(schema.Grain, grain)
	if e == nil {
		return 0
	}
	return e.Value.(*recipe.Grain).TestWeightKg
}
