package house

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// Library is the library of a house: entries of its own over those of the library that
// lies under it.
type Library struct {
	base  *Library                 // nil for the built-in library
	own   map[*schema.Field]*index // entries of the house
	texts *Texts
	known map[*schema.Field]func() []string // names of entries, its own first

	mu      sync.Mutex
	entries map[entryKey]*Entry
}

// lay indexes no entry yet, over the library of another house.
func (l *Library) lay(texts *Texts, base *House) {
	l.texts, l.own, l.entries = texts, map[*schema.Field]*index{}, map[entryKey]*Entry{}
	if base != nil {
		l.base = &base.Library
	}
	for _, f := range schema.Library {
		l.own[f] = newIndex(f.Name)
	}
	l.known = l.knownNames()
}

// Entry is one entry of the library: the house's own lines over those of the entry
// that it changes or begins from.
type Entry struct {
	Field *schema.Field
	Name  string
	Node  *tree.Node
	Doc   string    // the comment above it
	Decls []*Decl   // of the house that it is made of, its own first
	Under *Entry    // the entry of the same name in the library below, nil if there is none
	Diags diag.List // of laying it over what is under it
}

// entryKey finds an entry.
type entryKey struct {
	field *schema.Field
	name  string
}

// Entry gives an entry of the library, nil if there is none of that name. An entry
// that the house does not touch is the one of the library below.
func (l *Library) Entry(f *schema.Field, name string) *Entry {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.entry(f, name)
}

func (l *Library) entry(f *schema.Field, name string) *Entry {
	key := entryKey{f, tree.Key(name)}
	if e := l.entries[key]; e != nil {
		return e
	}
	var under *Entry
	if l.base != nil {
		under = l.base.Entry(f, name)
	}
	own := l.own[f].find(name)
	if own == nil {
		return under
	}
	e := &Entry{Field: f, Name: own.Name, Node: own.Node(), Doc: docOf(own.Node().Stmt), Decls: []*Decl{own}, Under: under}
	if e.Doc == "" && under != nil {
		e.Doc = under.Doc
	}
	l.entries[key] = e
	if first := l.circleOf(own); first != nil {
		e.Diags.Add(circle(f.Name, first.Node()))
		return e
	}
	below := under
	if from := e.Node.Get("parent"); from != nil {
		if below = l.entry(f, from.Text()); below == nil {
			e.Diags.Add(tree.UnknownName(f.Name, from, func() []string { return l.ownFirst(f) }))
		}
	}
	if below != nil {
		e.Node = overlay(below.Node, e.Node, &e.Diags)
		if below != under {
			e.Decls = append(e.Decls, below.Decls...)
		}
	}
	return e
}

// Under gives the declarations of the house on which an entry lies, nearest first, by
// their names alone.
func (l *Library) Under(d *Decl) []*Decl {
	var out []*Decl
	for len(out) <= mostVariants && d.Parent != "" {
		if d = l.own[d.Field].find(d.Parent); d == nil || slices.Contains(out, d) {
			break
		}
		out = append(out, d)
	}
	return out
}

// circleOf gives the first declaration of the circle to which one leads by what it
// begins from, nil if it leads to none. A chain that is too long counts as one.
func (l *Library) circleOf(d *Decl) *Decl {
	chain := []*Decl{d}
	for {
		last := chain[len(chain)-1]
		if last.Parent == "" {
			return nil
		}
		next := l.own[d.Field].find(last.Parent)
		if next == nil {
			return nil
		}
		if at := slices.Index(chain, next); at >= 0 {
			order := l.own[d.Field].order
			return slices.MinFunc(chain[at:], func(a, b *Decl) int { return slices.Index(order, a) - slices.Index(order, b) })
		}
		if chain = append(chain, next); len(chain) > mostVariants+1 {
			return last
		}
	}
}

// ownFirst lists the names of all entries of a sort, those of the house first.
func (l *Library) ownFirst(f *schema.Field) []string { return l.known[f]() }

// knownNames makes the lists of the names of entries, each when it is asked for.
func (l *Library) knownNames() map[*schema.Field]func() []string {
	known := make(map[*schema.Field]func() []string, len(schema.Library))
	for _, f := range schema.Library {
		known[f] = sync.OnceValue(func() []string {
			list := names(l.own[f].order)
			if l.base != nil {
				list = append(list, l.base.ownFirst(f)...)
			}
			return slices.Clip(list)
		})
	}
	return known
}

// EntryNames lists the names of all entries of a sort, in the order of the alphabet.
func (l *Library) EntryNames(f *schema.Field) []string { return sorted(slices.Clone(l.ownFirst(f))) }

// OwnEntries lists the entries of a sort that the house declares, in the order of
// the files and lines.
func (l *Library) OwnEntries(f *schema.Field) []*Decl { return l.own[f].order }

// Owns reports whether an entry is of the house's own lines, or changed by them.
func (l *Library) Owns(e *Entry) bool {
	return len(e.Decls) > 0 && l.own[e.Field].find(e.Name) == e.Decls[0]
}

// OwnsEntry reports whether the house itself declares an entry of a sort and a name, or
// changes the one below.
func (l *Library) OwnsEntry(f *schema.Field, name string) bool { return l.own[f].find(name) != nil }

// Declares reports whether there is an entry of a sort and a name.
func (l *Library) Declares(f *schema.Field, name string) bool {
	return l.own[f].find(name) != nil || l.base != nil && l.base.Declares(f, name)
}

// hasEntry reports whether there is an entry of a name, of whatever sort.
func (l *Library) hasEntry(name string) bool {
	for _, f := range schema.Library {
		if l.own[f].find(name) != nil {
			return true
		}
	}
	return l.base != nil && l.base.hasEntry(name)
}

// docOf is the comment directly above a declaration. What stands apart, with a
// blank line between, is about the file.
func docOf(st *lang.Stmt) string {
	line, _ := st.At.Position()
	first := len(st.Lead)
	for first > 0 {
		if above, _ := st.Lead[first-1].At.Position(); above != line-1 {
			break
		}
		line--
		first--
	}
	doc := make([]string, 0, len(st.Lead)-first)
	for _, c := range st.Lead[first:] {
		doc = append(doc, tree.CommentText(c.Text))
	}
	return strings.Join(doc, "\n")
}

// circle says that something begins from itself.
func circle(sort string, n *tree.Node) diag.Diagnostic {
	return diag.Diagnostic{
		Code: diag.CodeCycle, Summary: fmt.Sprintf("the %s %q begins from itself", sort, n.Text("name")), At: n.Get("parent").At(),
		Help: fmt.Sprintf("one in the circle has to stand on its own, without `from`; and no more than %d may follow one another", mostVariants),
	}
}
