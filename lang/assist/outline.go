package assist

import (
	"strings"

	"newmake/lang"
	"newmake/lang/tree"
)

// Symbol is a declaration, or a block or vessel in one.
type Symbol struct {
	Name, Detail string
	Word         string // that begins it
	At, Whole    Place
	Below        []Symbol
}

// Symbols are the declarations of the file, with their blocks.
func (s *Snapshot) Symbols() []Symbol {
	out := []Symbol{}
	for _, d := range s.File.Decls {
		if n := d.Node(); n != nil {
			out = append(out, symbol(n))
		}
	}
	return out
}

func symbol(n *tree.Node) Symbol {
	y := Symbol{Name: n.Field.Name, Word: n.Field.Name, At: n.At(), Whole: n.Whole()}
	if c := n.Get("name"); c != nil {
		y.Name, y.Detail, y.At = c.Text(), n.Field.Name, c.At()
	}
	if y.Name == "" { // a line that begins with a name, or an empty one
		if y.Name = strings.TrimSpace(n.At().Text()); y.Name == "" {
			y.Name = "?"
		}
	}
	for _, l := range n.Lines {
		if l.Field.Block != nil {
			y.Below = append(y.Below, symbol(l))
		}
	}
	return y
}

// Fold is a part of the text that can be folded away: lines from 1.
type Fold struct {
	First, Last int
	Comment     bool
}

// Folds are the blocks that go over several lines, and the runs of comments.
func (s *Snapshot) Folds() []Fold {
	out := []Fold{}
	src := s.File.Source
	lang.Walk(s.File.Syntax().Stmts, func(st *lang.Stmt, _ int) bool {
		if len(st.Lead) > 1 {
			first, last := src.LineOf(st.Lead[0].At.Start), src.LineOf(st.Lead[len(st.Lead)-1].At.Start)
			if last-first == len(st.Lead)-1 {
				out = append(out, Fold{first, last, true})
			}
		}
		if st.Block != nil {
			first, last := src.LineOf(st.Block.At.Start), src.LineOf(max(st.Block.At.End-1, st.Block.At.Start))
			if last-1 > first { // the closing brace stays in sight
				out = append(out, Fold{first, last - 1, false})
			}
		}
		return true
	})
	return out
}
