package check

import (
	"fmt"
	"io/fs"
	"slices"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// stock reads the entries of a house's stock as they are asked for, each once.
type stock struct {
	house *house.House
	base  *stock // reads what the house does not touch; nil for the built-in stock

	mu   sync.Mutex
	made map[*house.Entry]*stocked
}

// stocked is one entry, read.
type stocked struct {
	entry *house.Entry

	once  sync.Once
	value any // *recipe.Grain, *recipe.Yeast, ...
	diags diag.List
}

func newStock(h *house.House, base *stock) *stock {
	return &stock{house: h, base: base, made: map[*house.Entry]*stocked{}}
}

// builtin is the stock that comes with the program.
var builtin = sync.OnceValue(func() *stock { return newStock(house.Builtin(), nil) })

// stockOf is a stock over the one that lies under it.
func stockOf(h *house.House) *stock {
	switch h.Base() {
	case nil:
		return newStock(h, nil)
	case house.Builtin():
		return newStock(h, builtin())
	}
	return newStock(h, stockOf(h.Base()))
}

// find gives an entry, read; nil if there is none.
func (s *stock) find(f *schema.Field, name string) *stocked {
	e := s.house.Entry(f, name)
	if e == nil {
		return nil
	}
	for !s.house.Owns(e) {
		s = s.base
	}
	s.mu.Lock()
	made := s.made[e]
	if made == nil {
		made = &stocked{entry: e}
		s.made[e] = made
	}
	s.mu.Unlock()
	made.once.Do(func() { made.read(s) })
	return made
}

// read reads an entry for its meaning.
func (m *stocked) read(s *stock) {
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
	case schema.CaskKind:
		m.value = caskKind(n, e)
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
func (m *stocked) head(own bool) recipe.Entry {
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
	return e
}

// all gives every entry of a sort, read, in the order of the alphabet.
func (s *stock) all(f *schema.Field) []*stocked {
	var out []*stocked
	for _, name := range s.house.EntryNames(f) {
		out = append(out, s.find(f, name))
	}
	return out
}

// own gives the entries that the house declares in some of its files, and those that
// lie on such, read.
func (s *stock) own(in map[*house.File]bool) []*stocked {
	var out []*stocked
	for _, f := range schema.Stock {
		for _, d := range s.house.OwnEntries(f) {
			if in[d.File] || slices.ContainsFunc(s.house.Under(d), func(u *house.Decl) bool { return in[u.File] }) {
				out = append(out, s.find(f, d.Name))
			}
		}
	}
	return out
}

// recipes gives all of the stock.
func (s *stock) recipes() recipe.Stock {
	return recipe.Stock{
		Grains: mapped[recipe.Grain](s, schema.Grain), Yeasts: mapped[recipe.Yeast](s, schema.Yeast), Enzymes: mapped[recipe.Enzyme](s, schema.Enzyme),
		Casks: mapped[recipe.CaskKind](s, schema.CaskKind), Standards: mapped[recipe.Standard](s, schema.Standard), Models: mapped[recipe.Model](s, schema.Model),
	}
}

// mapped gives the entries of a sort by their names.
func mapped[T any](s *stock, f *schema.Field) map[string]*T {
	out := map[string]*T{}
	for _, m := range s.all(f) {
		out[m.entry.Name] = m.value.(*T)
	}
	return out
}

// Stock gives all of the house's stock: the built-in one with its own over it.
func (h *House) Stock() recipe.Stock { return h.stock.recipes() }

// Library is a stock that houses build on.
type Library struct {
	*house.House
	Stock recipe.Stock
	Diags diag.List // what is wrong with it
}

// Builtin is the stock that comes with the program, read whole.
var Builtin = sync.OnceValue(func() *Library { return library(builtin()) })

// NewLibrary reads a stock from the .batch files of a file system.
func NewLibrary(fsys fs.FS) *Library { return library(stockOf(house.LoadStock(fsys))) }

func library(s *stock) *Library {
	l := &Library{House: s.house, Stock: s.recipes(), Diags: slices.Concat(s.house.Loading(), s.house.General())}
	for _, f := range s.house.Files {
		l.Diags = append(l.Diags, f.Said()...)
	}
	for _, f := range schema.Stock {
		for _, m := range s.all(f) {
			l.Diags = append(append(l.Diags, m.entry.Diags...), m.diags...)
		}
	}
	return l
}
