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
func (h *House) Entry(f *schema.Field, name string) *Entry {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.entry(f, name)
}

func (h *House) entry(f *schema.Field, name string) *Entry {
	key := entryKey{f, tree.Key(name)}
	if e := h.entries[key]; e != nil {
		return e
	}
	var under *Entry
	if h.base != nil {
		under = h.base.Entry(f, name)
	}
	own := h.library[f].find(name)
	if own == nil {
		return under
	}
	e := &Entry{Field: f, Name: own.Name, Node: own.Node(), Doc: docOf(own.Node().Stmt), Decls: []*Decl{own}, Under: under}
	if e.Doc == "" && under != nil {
		e.Doc = under.Doc
	}
	h.entries[key] = e
	if first := h.circleOf(own); first != nil {
		e.Diags.Add(circle(f.Name, first.Node()))
		return e
	}
	below := under
	if from := e.Node.Get("parent"); from != nil {
		if below = h.entry(f, from.Text()); below == nil {
			e.Diags.Add(tree.UnknownName(f.Name, from, func() []string { return h.ownFirst(f) }))
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
func (h *House) Under(d *Decl) []*Decl {
	var out []*Decl
	for len(out) <= mostVariants && d.Parent != "" {
		if d = h.library[d.Field].find(d.Parent); d == nil || slices.Contains(out, d) {
			break
		}
		out = append(out, d)
	}
	return out
}

// circleOf gives the first declaration of the circle to which one leads by what it
// begins from, nil if it leads to none. A chain that is too long counts as one.
func (h *House) circleOf(d *Decl) *Decl {
	chain := []*Decl{d}
	for {
		last := chain[len(chain)-1]
		if last.Parent == "" {
			return nil
		}
		next := h.library[d.Field].find(last.Parent)
		if next == nil {
			return nil
		}
		if at := slices.Index(chain, next); at >= 0 {
			order := h.library[d.Field].order
			return slices.MinFunc(chain[at:], func(a, b *Decl) int { return slices.Index(order, a) - slices.Index(order, b) })
		}
		if chain = append(chain, next); len(chain) > mostVariants+1 {
			return last
		}
	}
}

// ownFirst lists the names of all entries of a sort, those of the house first.
func (h *House) ownFirst(f *schema.Field) []string { return h.known[f]() }

// knownNames makes the lists of the names of entries, each when it is asked for.
func (h *House) knownNames() map[*schema.Field]func() []string {
	known := make(map[*schema.Field]func() []string, len(schema.Library))
	for _, f := range schema.Library {
		known[f] = sync.OnceValue(func() []string {
			list := names(h.library[f].order)
			if h.base != nil {
				list = append(list, h.base.ownFirst(f)...)
			}
			return slices.Clip(list)
		})
	}
	return known
}

// EntryNames lists the names of all entries of a sort, in the order of the alphabet.
func (h *House) EntryNames(f *schema.Field) []string { return sorted(slices.Clone(h.ownFirst(f))) }

// OwnEntries lists the entries of a sort that the house declares, in the order of
// the files and lines.
func (h *House) OwnEntries(f *schema.Field) []*Decl { return h.library[f].order }

// Owns says that an entry is of the house's own lines, or changed by them.
func (h *House) Owns(e *Entry) bool {
	return len(e.Decls) > 0 && h.library[e.Field].find(e.Name) == e.Decls[0]
}

// Base is the house whose library lies under this one's, nil for the built-in library.
func (h *House) Base() *House { return h.base }

// Declares says that there is an entry of a sort and a name.
func (h *House) Declares(f *schema.Field, name string) bool {
	return h.library[f].find(name) != nil || h.base != nil && h.base.Declares(f, name)
}

// hasEntry says that there is an entry of a name, of whatever sort.
func (h *House) hasEntry(name string) bool {
	for _, f := range schema.Library {
		if h.library[f].find(name) != nil {
			return true
		}
	}
	return h.base != nil && h.base.hasEntry(name)
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
