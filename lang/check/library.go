package check

import (
	"fmt"
	"slices"
	"sync"

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

	made onceEach[*house.Entry, libraryEntry]
}

// libraryEntry is one entry, read.
type libraryEntry struct {
	entry *house.Entry

	value any // *recipe.Grain, *recipe.Yeast, ...
	diags diag.List
}

func newLibrary(h *house.House, base *library) *library {
	return &library{house: h, base: base}
}

// builtin is the library that comes with the program.
var builtin = sync.OnceValue(func() *library { return newLibrary(house.Builtin(), nil) })

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
	e := s.house.Entry(f, name)
	if e == nil {
		return nil
	}
	for !s.house.Owns(e) {
		s = s.base
	}
	return s.made.get(e, func() *libraryEntry {
		m := &libraryEntry{entry: e}
		m.read(s)
		return m
	})
}

// read reads an entry for its meaning.
func (m *libraryEntry) read(s *library) {
	f, n := m.entry.Field, m.entry.Node
	e := m.head(s.house.Base() != nil)
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
		m.value = model(n, e, m.entry.Under, &m.diags)
	case schema.Standard:
		m.value = standard(n, e, s.house, &m.diags)
	}
	if n.Bad {
		m.diags = m.diags[:said] // what is wrong with it is said
	}
}

// head is what every entry carries: its doc and the source of each figure.
func (m *libraryEntry) head(own bool) recipe.Entry {
	n := m.entry.Node
	e := recipe.Entry{
		Name: m.entry.Name, House: own, Doc: m.entry.Doc, At: n.At(),
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
	}
}

// mapped gives the entries of a sort by their names.
func mapped[T any](s *library, f *schema.Field) map[string]*T {
	out := map[string]*T{}
	for _, m := range s.all(f) {
		out[m.entry.Name] = m.value.(*T)
	}
	return out
}

// Library gives all of the house's library: the built-in one with its own over it.
func (h *House) Library() recipe.Library { return h.library.recipes() }

// Base is a library that houses build on.
type Base struct {
	*house.House
	Library recipe.Library
	Diags   diag.List // what is wrong with it
}

// Builtin is the library that comes with the program, read whole.
var Builtin = sync.OnceValue(func() *Base { return baseOf(builtin()) })

func baseOf(s *library) *Base {
	l := &Base{House: s.house, Library: s.recipes(), Diags: slices.Concat(s.house.Loading(), s.house.General())}
	for _, f := range s.house.Files {
		l.Diags = append(l.Diags, f.Said()...)
	}
	for _, f := range schema.Library {
		for _, m := range s.all(f) {
			l.Diags = append(append(l.Diags, m.entry.Diags...), m.diags...)
		}
	}
	return l
}
