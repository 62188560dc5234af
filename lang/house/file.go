package house

import (
	"bytes"
	"fmt"
	"slices"
	"sync"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// File is one text of the house. What it declares is known from its outline; what
// stands in a declaration is read when it is asked for.
type File struct {
	Source *diag.Source
	Path   string  // below the house, with slashes
	Decls  []*Decl // in the order of the text

	diags   diag.List    // of what is in no declaration
	lost    []*lang.Stmt // what is no declaration
	all     sync.Once    // of reading what is not read yet
	later   int          // declarations that are read when they are asked for
	library func(name string) bool
	house   *House                         // whose file it is, once that is indexed
	parse   func() (*lang.File, diag.List) // all of it
	units   func() (us, si int)
}

// Decl is one declaration. It has no name where that could not be read.
type Decl struct {
	File       *File
	Field      *schema.Field
	Name       string
	NameAt, At diag.Span
	Parent     string // what it varies, or begins from; "" if nothing
	Of         string // the batch that a run is of
	On         string // the date in its first line, as it is written
	Shared     bool   // another has its name
	Taken      bool   // another had its name before

	start int        // of the comments above it
	end   int        // of its block
	once  sync.Once  // of reading it
	read  func()     // reads it
	node  *tree.Node // with its place in the schema
	diags diag.List  // of its text and its shape

	lay  sync.Once
	laid *tree.Node // over what it varies
	over diag.List  // what laying it has shown
}

// Node is the declaration's tree.
func (d *Decl) Node() *tree.Node { d.read(); return d.node }

// HasWord reports whether a word may be in the declaration: it is in its text, without reading it.
func (d *Decl) HasWord(word string) bool {
	return bytes.Contains(d.File.Source.Text[d.start:d.end], []byte(word))
}

// Said is what there is to say of the declaration's text and shape.
func (d *Decl) Said() diag.List { d.read(); return d.diags }

// nameless reports whether the declaration lacks the name it should have: its own word
// may be misspelt.
func (d *Decl) nameless() bool { return d.NameAt.IsZero() && d.Node().Bad }

// Has reports whether a place is in the declaration's own text.
func (d *Decl) Has(at diag.Span) bool {
	return at.Src == d.File.Source && d.At.Start <= at.Start && at.Start < d.end
}

// Loose is what there is to say of the file outside its declarations.
func (f *File) Loose() diag.List { return f.diags }

// Said is all there is to say of the file's text and its shape.
func (f *File) Said() diag.List {
	f.all.Do(f.readAll)
	list := slices.Clone(f.diags)
	for _, d := range f.Decls {
		list = append(list, d.Said()...)
	}
	return list
}

// Syntax is the file's syntax tree.
func (f *File) Syntax() *lang.File { s, _ := f.parse(); return s }

// Units counts the quantities of the file in US customary units and in SI units.
func (f *File) Units() (us, si int) { return f.units() }

// text is a file that was read, or that stands in the overlay.
type text struct {
	path string // below the house, with slashes
	name string // as the user knows it
	data []byte
}

// open makes a file of a text. inLibrary says that the built-in library has a name.
func open(t text, inLibrary func(name string) bool) *File {
	f := bare(t)
	f.library = inLibrary
	counted := sync.OnceValue(f.reader) // asked for at each reading of a record
	f.Source.Units = func() quantity.System {
		if f.house == nil { // it is not yet among the files of one
			return f.reader()
		}
		return counted()
	}
	if parts, ok := lang.Outline(f.Source); ok {
		f.index(parts)
	} else {
		f.whole()
	}
	f.fewBatches()
	return f
}

// bare is a file of which nothing is known yet.
func bare(t text) *File {
	f := &File{Source: diag.NewSource(t.name, t.data), Path: t.path}
	f.parse = sync.OnceValues(func() (*lang.File, diag.List) { return lang.Parse(f.Source) })
	f.units = sync.OnceValues(f.countUnits)
	return f
}

// index enters the declarations that the outline tells, and reads the rest.
func (f *File) index(parts []lang.Part) {
	var others []lang.Part
	for _, p := range parts {
		if field, head := declares(p); field != nil {
			f.Decls = append(f.Decls, f.readLater(p, field, head))
			continue
		}
		if n := len(others); n > 0 && others[n-1].End == p.Start {
			others[n-1].End = p.End
		} else {
			others = append(others, p)
		}
	}
	var rest []*lang.Stmt
	var list diag.List
	for _, p := range others {
		file, said := lang.ParsePart(f.Source, p)
		rest, list = append(rest, file.Stmts...), append(list, said...)
	}
	f.readNow(rest, false, list)
	slices.SortStableFunc(f.Decls, func(a, b *Decl) int { return a.At.Start - b.At.Start })
}

// declares gives the declaration that a part is, if its first line tells all that
// the index needs; else nil.
func declares(p lang.Part) (*schema.Field, tree.Match) {
	if !p.Plain {
		return nil, tree.Match{}
	}
	f := schema.Language.Find(p.Word)
	if f == nil || f.Block == nil {
		return nil, tree.Match{}
	}
	m, ok := tree.Head(f, p.Head)
	if !ok {
		return nil, tree.Match{}
	}
	return f, m
}

// readLater enters a declaration that is read when it is asked for.
func (f *File) readLater(p lang.Part, field *schema.Field, head tree.Match) *Decl {
	f.later++
	d := &Decl{File: f, Field: field, At: p.At, start: p.Start, end: p.End}
	d.headed(&head)
	d.read = func() {
		d.once.Do(func() {
			file, list := lang.ParsePart(f.Source, p)
			nodes, _ := tree.Declarations(file.Stmts, f.library, &list)
			d.node, d.diags = nodes[0], list.Cap()
		})
	}
	return d
}

// headed takes from a declaration's first line what the index tells of it.
func (d *Decl) headed(head *tree.Match) {
	if c := head.Get("name"); c != nil {
		d.Name, d.NameAt = c.Text(), c.At()
	}
	if c := head.Get("parent"); c != nil {
		d.Parent = c.Text()
	}
	if c := head.Get("batch"); c != nil {
		d.Of = c.Text()
	}
	if c := head.Get("date"); c != nil {
		d.On = c.Text()
	}
}

// readAll reads the declarations that are not read yet: many in one go.
func (f *File) readAll() {
	const few = 2
	if f.later <= few {
		for _, d := range f.Decls {
			d.read()
		}
		return
	}
	file, list := f.parse()
	nodes, _ := tree.Declarations(file.Stmts, f.library, &list)
	byStart := make(map[int]*tree.Node, len(nodes))
	for _, n := range nodes {
		byStart[n.At().Start] = n
	}
	list.Sort()
	for _, d := range f.Decls {
		for len(list) > 0 && list[0].At.Start < d.start {
			list = list[1:]
		}
		end := 0
		for end < len(list) && list[end].At.Start < d.end {
			end++
		}
		d.once.Do(func() { d.node, d.diags = byStart[d.At.Start], slices.Clip(list[:end]) })
		list = list[end:]
	}
}

// whole reads a text whose outline does not tell what it declares.
func (f *File) whole() {
	s, list := f.parse()
	f.readNow(s.Stmts, s.Adrift, list)
}

// readNow enters declarations that are read already. Where the text is adrift, which
// line belongs where is not known: the braces come first.
func (f *File) readNow(stmts []*lang.Stmt, adrift bool, list diag.List) {
	said := &list
	if adrift {
		said = new(diag.List)
	}
	nodes, lost := tree.Declarations(stmts, f.library, said)
	f.lost = lost
	begun := len(f.Decls)
	for _, n := range nodes {
		n.Bad = n.Bad || adrift
		d := &Decl{File: f, Field: n.Field, At: n.At(), start: n.At().Start, end: n.Whole().End, node: n, read: func() {}}
		d.once.Do(func() {})
		d.headed(&n.Match)
		f.Decls = append(f.Decls, d)
	}
	own := f.Decls[begun:]
	for _, d := range list.Cap() {
		if i := slices.IndexFunc(own, func(o *Decl) bool { return o.Has(d.At) }); i >= 0 {
			own[i].diags = append(own[i].diags, d)
		} else {
			f.diags = append(f.diags, d)
		}
	}
}

// MostBatches is how many batches a file may declare: each is computed when the
// file is checked.
const MostBatches = 100

// fewBatches leaves the batches of a file out if they are too many.
func (f *File) fewBatches() {
	isBatch := func(d *Decl) bool { return d.Field == schema.Batch }
	seen := 0
	for _, d := range f.Decls {
		if !isBatch(d) {
			continue
		}
		if seen++; seen > MostBatches {
			f.diags.Add(diag.Diagnostic{
				Code: diag.CodeTooLong, Summary: fmt.Sprintf("this file has more than %d batches; here is the next", MostBatches), At: d.At,
				Help: "split it into several files of one house",
			})
			for _, d := range f.Decls {
				if isBatch(d) {
					f.lost = append(f.lost, d.Node().Stmt)
				}
			}
			f.Decls = slices.DeleteFunc(f.Decls, isBatch)
			return
		}
	}
}

// countUnits counts the quantities of the file by the family of their units.
func (f *File) countUnits() (us, si int) {
	us, si = countUnits(f.lost)
	for _, d := range f.Decls {
		a, b := countUnits([]*lang.Stmt{d.Node().Stmt})
		us, si = us+a, si+b
	}
	return us, si
}

func countUnits(stmts []*lang.Stmt) (us, si int) {
	for _, s := range stmts {
		a, b := ItemUnits(s.Items)
		us, si = us+a, si+b
		if s.Block != nil {
			a, b := countUnits(s.Block.Stmts)
			us, si = us+a, si+b
		}
	}
	return us, si
}

// reader is the system in which whoever reads the file counts: that of the file, or else
// of the house. It does not ask for declarations, for it is asked while they are read.
func (f *File) reader() quantity.System {
	file, _ := f.parse()
	if us, si := countUnits(file.Stmts); us != si || f.house == nil {
		return mostOf(us, si)
	}
	us, si := 0, 0
	for _, d := range f.house.Plants {
		if d.File != f {
			file, _ := d.File.parse()
			a, b := countUnits(file.Stmts)
			us, si = us+a, si+b
		}
	}
	return mostOf(us, si)
}

// mostOf is the system of which there is more; Both for as much of one as of the other.
func mostOf(us, si int) quantity.System {
	switch {
	case us > si:
		return quantity.US
	case si > us:
		return quantity.SI
	}
	return quantity.Both
}

// ItemUnits counts the quantities of a line by the family of their units.
func ItemUnits(items []lang.Item) (us, si int) {
	for i := range items {
		u, ok := quantity.Lookup(items[i].Unit)
		switch {
		case !ok:
		case u.System == quantity.US:
			us++
		case u.System == quantity.SI:
			si++
		}
	}
	return us, si
}

// Heads lists the words with which the file's outermost statements begin: those of
// its declarations, and then those of what is none.
func (f *File) Heads() []string {
	var out []string
	for _, d := range f.Decls {
		out = append(out, d.Field.Name)
	}
	for _, s := range f.lost {
		if len(s.Items) > 0 {
			out = append(out, s.Items[0].Text)
		}
	}
	return out
}
