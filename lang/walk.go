package lang

// Walk calls fn for each statement in the order of the text, with its depth
// from 0, and for those of its block unless fn says false.
func Walk(stmts []*Stmt, fn func(s *Stmt, depth int) bool) { walk(stmts, 0, fn) }

func walk(stmts []*Stmt, depth int, fn func(*Stmt, int) bool) {
	for _, s := range stmts {
		if fn(s, depth) && s.Block != nil {
			walk(s.Block.Stmts, depth+1, fn)
		}
	}
}

// Head is the statement's first word, "" if it begins with something else.
func (s *Stmt) Head() string {
	if len(s.Items) == 0 || s.Items[0].Kind != Word {
		return ""
	}
	return s.Items[0].Text
}

// Args are the items after the first.
func (s *Stmt) Args() []Item {
	if len(s.Items) == 0 {
		return nil
	}
	return s.Items[1:]
}

// Stmts are the statements of the block, none if there is no block.
func (s *Stmt) Stmts() []*Stmt {
	if s.Block == nil {
		return nil
	}
	return s.Block.Stmts
}

// String is the item as it would be written, for a message.
func (i Item) String() string {
	if !i.At.IsZero() {
		return i.At.Text()
	}
	return i.Text
}
