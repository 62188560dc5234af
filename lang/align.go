package lang

import (
	"bytes"
	"strings"

	"newmake/lang/diag"
)

// Limits of alignment, in columns. What is wider takes no part in it, so that
// one long line does not push the others across the page.
const (
	indentWidth = 2
	maxKey      = 24
	mostKeys    = 4 // a day, a clock, its offset, a word
	maxNumber   = 12
	maxCode     = 60 // where a comment may still be aligned
)

// sameRun reports whether a row carries on the run that begins with first: one-line
// statements of the same shape, with nothing between them. Of those that begin with
// a time some have a word after it and some have none.
func sameRun(first, r *row) bool {
	switch r.kind {
	case rowMore:
		return true
	case rowStmt:
		return !first.block && !r.block && r.depth == first.depth &&
			r.timed() == first.timed() && strings.TrimSuffix(r.keyed, "w") == strings.TrimSuffix(first.keyed, "w") &&
			(r.timed() || r.keyed == first.keyed)
	}
	return false
}

// align sets the columns of a run of rows.
func align(run []row) {
	stmts, numbers := 0, true
	widths := make([]int, mostKeys)
	numberWidth := 0
	for i := range run {
		r := &run[i]
		if r.kind != rowStmt {
			continue
		}
		stmts++
		for k, key := range r.keys {
			if w := diag.Width(key); w <= maxKey && r.hasAfter(k) {
				widths[k] = max(widths[k], w)
			}
		}
		if r.number == "" || len(r.number) > maxNumber {
			numbers = numbers && r.number == "" && r.rest == ""
		}
		numberWidth = max(numberWidth, len(r.number))
	}
	gap := 2
	if stmts == 1 {
		gap = 1
	}
	if !numbers {
		numberWidth = 0
	}
	var last *row
	for i := range run {
		r := &run[i]
		if r.kind == rowMore && last != nil {
			r.restCol = last.restCol
			continue
		}
		r.keyWidths, r.gap, r.numberWidth = widths, gap, numberWidth
		r.restCol = r.columnOfRest()
		last = r
	}
	alignComments(run)
}

// hasAfter reports whether something follows key k on its row.
func (r *row) hasAfter(k int) bool { return k+1 < len(r.keys) || r.number != "" || r.rest != "" }

// columnOfRest is the column after the indent where the rest begins. If there
// are no columns, further rows are set in by two indents.
func (r *row) columnOfRest() int {
	if len(r.keys) == 0 {
		return 2 * indentWidth
	}
	col := 0
	for k, key := range r.keys {
		col += max(diag.Width(key), r.keyWidths[k]) + r.gap
	}
	return col
}

// alignComments puts the comments of a run in one column.
func alignComments(run []row) {
	col := 0
	for i := range run {
		r := &run[i]
		if w := diag.Width(r.code()); r.comment != "" && r.hasCode() && w <= maxCode {
			col = max(col, w)
		}
	}
	for i := range run {
		run[i].commentCol = col + 2
	}
}

func (r *row) hasCode() bool { return len(r.tokens) > 0 }

// code is the row without its comment.
func (r *row) code() string {
	var b strings.Builder
	pad(&b, r.depth*indentWidth)
	switch {
	case r.kind == rowMore:
		pad(&b, r.restCol)
	case r.kind == rowStmt:
		for k, key := range r.keys {
			b.WriteString(key)
			if r.hasAfter(k) {
				pad(&b, max(r.keyWidths[k]-diag.Width(key), 0)+r.gap)
			}
		}
		if r.number != "" {
			pad(&b, r.numberWidth-len(r.number))
			b.WriteString(r.number)
			if r.rest != "" && r.rest[0] != ',' {
				b.WriteByte(' ')
			}
		}
	}
	b.WriteString(r.rest)
	return b.String()
}

func pad(b *strings.Builder, n int) {
	for ; n > 0; n-- {
		b.WriteByte(' ')
	}
}

// write writes the row without its line ending.
func (r *row) write(out *bytes.Buffer) {
	if r.kind == rowBlank {
		return
	}
	code := r.code()
	out.WriteString(code)
	if r.comment == "" {
		return
	}
	if r.hasCode() {
		n := max(r.commentCol-diag.Width(code), 2)
		out.WriteString(strings.Repeat(" ", n))
	}
	out.WriteString(r.comment)
}
