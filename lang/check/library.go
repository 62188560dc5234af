package check

import (
	"fmt"
	"slices"
	"sync"

	"newmake/lang/carried"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// library reads the entries of a house's library as they are asked for, each once.
type library struct {
	house *house.House
	base  *library // reads what the house does not touch; nil for the built-in library

	carried bool // it is the built-in library, which the program carries as it was read

	made onceEach[libraryKey, libraryEntry]
}

// libraryKey finds an entry.
type libraryKey struct {
	field *schema.Field
	name  string // as names are compared
}

// libraryEntry is one entry, read.
type libraryEntry struct {
	name  string
	decls []*house.Decl // of which it is made, where they may have anything wrong

	value any       // *recipe.Grain, *recipe.Yeast, ...
	diags diag.List // of laying it over what is under it, and of reading it
}

func newLibrary(h *house.House, base *library) *library {
	return &library{house: h, base: base}
}

// builtin is the library that comes with the program. An entry that is not carried yet,
// since it was written a moment ago, is read from the text.
var builtin = sync.OnceValue(func() *library { return &library{house: house.Builtin(), carried: true} })

// libraryOf is a library over the one that lies under it.
func libraryOf(h *house.House) *library {
	switch h.Base() {
	case nil:
		return newLibrary(h, nil)
	case house.Builtin():
		return newLibrary(h, builtin())
	}
	return newLibrary(h, libraryOf(h.Base()))
}

// find gives an entry, read; nil if there is none.
func (s *library) find(f *schema.Field, name string) *libraryEntry {
	for !s.house.OwnsEntry(f, name) {
		if s = s.base; s == nil {
			return nil
		}
	}
	return s.made.get(libraryKey{f, tree.Key(name)}, func() *libraryEntry {
		if s.carried {
			if value := carried.Entry(f.Name, tree.Key(name), s.text); value != nil {
				return &libraryEntry{name: name, value: value}
			}
		}
		return s.read(s.house.Entry(f, name))
	})
}

// text is a text of the library by the name of its file.
func (s *library) text(file string) *diag.Source {
	i := slices.IndexFunc(s.house.Files, func(f *house.File) bool { return f.Source.Name == file })
	return s.house.Files[i].Source
}

// read reads an entry for its meaning.
func (s *library) read(in *house.Entry) *libraryEntry {
	f, n := in.Field, in.Node
	m := &libraryEntry{name: in.Name, decls: in.Decls, diags: slices.Clone(in.Diags)}
	e := m.head(in, s.house.Base() != nil)
	if f.Block.Any == nil || len(f.Block.Fields) > 0 {
		tree.Missing(&m.diags, n, fmt.Sprintf("the %s `%s`", f.Name, e.Name))
	}
	said := len(m.diags)
	switch f {
	case schema.Grain:
		m.value = grain(n, e, &m.diags)
	case schema.Yeast:
		m.value = yeast(n, e, &m.diags)
	case schema.Enzyme:
		m.value = enzyme(n, e, &m.diags)
	case schema.CaskWood:
		m.value = caskWood(n, e)
	case schema.Model:
		m.value = model(n, e, in.Under, &m.diags)
	case schema.Standard:
		m.value = standard(n, e, s.house, &m.diags)
	case schema.Country:
		m.value = country(n, e, &m.diags)
	case schema.Aroma:
		m.value = aroma(n, e)
	}
	if n.Bad {
		m.diags = m.diags[:said] // what is wrong with it is said
	}
	return m
}

// head is what every entry carries: its doc and the source of each figure.
func (m *libraryEntry) head(in *house.Entry, own bool) recipe.Entry {
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
	e.Within = between(n, &m.diags)
	return e
}

// all gives every entry of a sort, read, in the order of the alphabet.
func (s *library) all(f *schema.Field) []*libraryEntry {
	var out []*libraryEntry
	for _, name := range s.house.EntryNames(f) {
		out = append(out, s.find(f, name))
	}
	return out
}

// own gives the entries that the house declares in some of its files, and those that
// lie on such, read.
func (s *library) own(in map[*house.File]bool) []*libraryEntry {
	var out []*libraryEntry
	for _, f := range schema.Library {
		for _, d := range s.house.OwnEntries(f) {
			if in[d.File] || slices.ContainsFunc(s.house.Under(d), func(u *house.Decl) bool { return in[u.File] }) {
				out = append(out, s.find(f, d.Name))
			}
		}
	}
	return out
}

// recipes gives all of the library.
func (s *library) recipes() recipe.Library {
	return recipe.Library{
		Grains: mapped[recipe.Grain](s, schema.Grain), Yeasts: mapped[recipe.Yeast](s, schema.Yeast), Enzymes: mapped[recipe.Enzyme](s, schema.Enzyme),
		Woods: mapped[recipe.CaskWood](s, schema.CaskWood), Standards: mapped[recipe.Standard](s, schema.Standard), Models: mapped[recipe.Model](s, schema.Model),
		Countries: mapped[recipe.Country](s, schema.Country), Aromas: mapped[recipe.Aroma](s, schema.Aroma),
	}
}

// mapped gives the entries of a sort by their names.
func mapped[T any](s *library, f *schema.Field) map[string]*T {
	out := map[string]*T{}
	for _, m := range s.all(f) {
		out[m.name] = m.value.(*T)
	}
	return out
}

// Library gives all of the house's library: the built-in one with its own over it.
func (h *House) Library() recipe.Library { return h.library.recipes() }

// Base is a library that houses build on.
type Base struct {
	*house.House
	Library recipe.Library
}

// Builtin is the library that comes with the program, all of it.
var Builtin = sync.OnceValue(func() *Base { return &Base{House: house.Builtin(), Library: builtin().recipes()} })
