package lang

import "strings"

// sameTree says whether two parsed texts mean the same and have the same
// comments in the same places.
func sameTree(a, b *File) bool {
	return sameStmts(a.Stmts, b.Stmts) && sameComments(a.Tail, b.Tail)
}

func sameStmts(a, b []*Stmt) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !sameStmt(a[i], b[i]) {
			return false
		}
	}
	return true
}

func sameStmt(a, b *Stmt) bool {
	if len(a.Items) != len(b.Items) || (a.Block == nil) != (b.Block == nil) || a.Bad != b.Bad {
		return false
	}
	for i := range a.Items {
		if !a.Items[i].Same(b.Items[i]) {
			return false
		}
	}
	if !sameComments(a.Lead, b.Lead) || !sameComments(a.Inner, b.Inner) || !sameComment(a.Trail, b.Trail) {
		return false
	}
	return a.Block == nil || sameStmts(a.Block.Stmts, b.Block.Stmts) &&
		sameComments(a.Block.Tail, b.Block.Tail) && sameComment(a.Block.Trail, b.Block.Trail)
}

// Same says whether two items mean the same, wherever they stand.
func (i Item) Same(j Item) bool {
	return i.Kind == j.Kind && i.Text == j.Text && i.Num == j.Num && i.Value == j.Value && i.High == j.High && i.Unit == j.Unit
}

func sameComments(a, b []Comment) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if !sameComment(&a[i], &b[i]) {
			return false
		}
	}
	return true
}

func sameComment(a, b *Comment) bool {
	if a == nil || b == nil {
		return a == b
	}
	return strings.TrimRight(a.Text, " \t") == strings.TrimRight(b.Text, " \t")
}
