package check

import (
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
)

// file is one text of the house: parsed, and shaped by the table.
type file struct {
	*lang.File
	path  string // below the house, with slashes
	decls []*node
	lost  []*lang.Stmt // what is no declaration
	diags diag.List    // of the text and its shape alone
	units func() recipe.System
}

// text is a file that was read, or that stands in the overlay.
type text struct {
	path string // below the house, with slashes
	name string // as the user knows it
	data []byte
}

// parse makes a file of a text.
func parse(t text, stock func(name string) bool) *file {
	f := &file{path: t.path}
	f.File, f.diags = lang.Parse(diag.NewSource(t.name, t.data))
	f.units = sync.OnceValue(func() recipe.System { return majority(f.Stmts) })
	said := &f.diags
	if f.Adrift { // which line belongs where is not known: the braces come first
		said = new(diag.List)
	}
	f.decls, f.lost = shaper{diags: said, match: new(matcher), stock: stock}.block(f.Stmts, schema.Language, "")
	for _, n := range f.decls {
		n.bad = n.bad || f.Adrift
	}
	f.fewBatches()
	f.diags = f.diags.Cap()
	return f
}

// MostBatches is how many batches a file may declare: each is computed when the
// file is checked.
const MostBatches = 50

// fewBatches leaves the batches of a file out if they are too many.
func (f *file) fewBatches() {
	isBatch := func(n *node) bool { return n.field == schema.Batch }
	seen := 0
	for _, n := range f.decls {
		if !isBatch(n) {
			continue
		}
		if seen++; seen > MostBatches {
			f.diags.Add(diag.Diagnostic{
				Code: diag.CodeTooLong, Summary: fmt.Sprintf("this file has more than %d batches; here is the next", MostBatches), At: n.at(),
				Help: "split it into several files of one house",
			})
			for _, n := range f.decls {
				if isBatch(n) {
					f.lost = append(f.lost, n.stmt)
				}
			}
			f.decls = slices.DeleteFunc(f.decls, isBatch)
			return
		}
	}
}

// parseAll parses texts side by side and gives the files in the same order.
func parseAll(texts []text, stock func(name string) bool) []*file {
	files := make([]*file, len(texts))
	each(len(texts), func(i int) { files[i] = parse(texts[i], stock) })
	return files
}

// each calls do for every index below n, on all processors.
func each(n int, do func(i int)) {
	workers := min(n, runtime.GOMAXPROCS(0))
	if workers < 2 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for range workers {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	all.Wait()
}

// majority finds the family of units in which most quantities are written.
func majority(stmts []*lang.Stmt) recipe.System { return systemOf(countUnits(stmts)) }

// systemOf is the family of which there are more; US if there are as many of both.
func systemOf(us, si int) recipe.System {
	if si > us {
		return recipe.SI
	}
	return recipe.US
}

func countUnits(stmts []*lang.Stmt) (us, si int) {
	for _, s := range stmts {
		a, b := itemUnits(s.Items)
		us, si = us+a, si+b
		if s.Block != nil {
			a, b := countUnits(s.Block.Stmts)
			us, si = us+a, si+b
		}
	}
	return us, si
}

func itemUnits(items []lang.Item) (us, si int) {
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
