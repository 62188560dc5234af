// Package assist is what an editor asks of a text: what stands at a place, what may
// be written there, where a name is declared and used, how the text is parted. Each
// answer is a function of a snapshot, a house as it was loaded with the texts that
// the editor holds; nothing is computed of a batch, and nothing is changed.
//
// Places are bytes of the snapshot's own source. A line that cannot be read blinds
// nothing but itself: completion goes by the tokens before it.
package assist

import (
	"path/filepath"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/tree"
)

// Snapshot is one file of a house.
type Snapshot struct {
	House *check.House
	File  *house.File
}

// Units is the system in which whoever reads the file counts.
func (s *Snapshot) Units() quantity.System { return s.File.Source.Span(0, 0).Units() }

// Of finds a file of a house by its path, nil if the house has none of that name.
func Of(h *check.House, path string) *Snapshot {
	if h == nil {
		return nil
	}
	for _, f := range h.Files {
		if filepath.Clean(f.Source.Name) == filepath.Clean(path) {
			return &Snapshot{h, f}
		}
	}
	return nil
}

// spot is what stands at a place.
type spot struct {
	path []*tree.Node // the lines around it, outermost first
	cap  *tree.Capture
}

// node is the innermost line.
func (p spot) node() *tree.Node { return p.path[len(p.path)-1] }

// at finds what stands at a place; false outside the declarations.
func (s *Snapshot) at(offset int) (spot, bool) {
	var p spot
	for _, d := range s.File.Decls {
		if !d.Has(s.File.Source.Span(offset, offset)) || d.Node() == nil {
			continue
		}
		p.path = []*tree.Node{d.Node()}
		for down := true; down; {
			down = false
			for _, l := range p.node().Lines {
				if whole := l.Whole(); whole.Start <= offset && offset <= whole.End {
					p.path, down = append(p.path, l), true
					break
				}
			}
		}
		caps := p.node().Match.Caps
		for i := range caps {
			if at := caps[i].At(); at.Src == s.File.Source && at.Start <= offset && offset <= at.End {
				if p.cap = &caps[i]; offset < at.End {
					break
				}
			}
		}
		return p, true
	}
	return p, false
}

// onLine reports whether a place is on the innermost line itself, and not only between
// its braces.
func (p spot) onLine(offset int) bool {
	at := p.node().At()
	return at.Start <= offset && offset <= at.End
}

// comment is the text above a line, and beside it.
func comment(n *tree.Node) string {
	text := ""
	line, _ := n.At().Position()
	for i := len(n.Stmt.Lead) - 1; i >= 0; i-- {
		if above, _ := n.Stmt.Lead[i].At.Position(); above != line-1 {
			break
		}
		line--
		text = tree.CommentText(n.Stmt.Lead[i].Text) + "\n" + text
	}
	if text == "" {
		return n.Comment()
	}
	return text
}

// Place is somewhere in a file of the house.
type Place = diag.Span
