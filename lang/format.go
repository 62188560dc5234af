package lang

import (
	"bytes"
	"strings"

	"newmake/lang/diag"
)

// Format gives a text in the one canonical layout. It changes layout only:
// spaces, indents, blank lines beyond one, the byte order mark. Line endings
// stay what most of the file's lines have.
//
// A text with errors is refused: the result is nil and the list says why. So is
// a text that would not read the same, or not stay the same if formatted again;
// that would be a fault in newmake, and the file is better left alone.
func Format(src *diag.Source) ([]byte, diag.List) {
	_, list := Parse(src)
	if list.HasErrors() {
		return nil, list
	}
	tokens := Tokens(src.Text)
	out := layOut(src.Text, tokens)
	after := Tokens(out)
	if !sameTokens(src.Text, out, tokens, after) || !bytes.Equal(layOut(out, after), out) {
		list.Add(diag.Diagnostic{Code: diag.CodeNotLaidOut, At: src.Span(0, 0),
			Summary: "this file cannot be laid out without changing it, so it was left alone",
			Help:    "please report it: this is a fault in newmake"})
		return nil, list
	}
	return out, list
}

// layOut formats the tokens of a text.
func layOut(text []byte, tokens []Token) []byte {
	rows := rowsOf(text, tokens)
	rows = dropBlanks(rows)
	for start := 0; start < len(rows); {
		end := start + 1
		if rows[start].kind == rowStmt {
			for end < len(rows) && sameRun(&rows[start], &rows[end]) {
				end++
			}
		}
		align(rows[start:end])
		start = end
	}
	ending := majorityEnding(text)
	out := bytes.NewBuffer(make([]byte, 0, len(text)+len(text)/8)) // of nothing it is an empty text, not none
	for i := range rows {
		rows[i].write(out)
		out.WriteString(ending)
	}
	return out.Bytes()
}

// majorityEnding is CR LF if most lines end so, and LF otherwise.
func majorityEnding(text []byte) string {
	if crlf := bytes.Count(text, []byte("\r\n")); 2*crlf > bytes.Count(text, []byte("\n")) {
		return "\r\n"
	}
	return "\n"
}

// rowKind is what stands on a row of the layout.
type rowKind uint8

const (
	rowBlank   rowKind = iota
	rowComment         // a comment alone
	rowClose           // a closing brace
	rowStmt            // a statement on its own, or the first row of one
	rowMore            // a further row of a statement that a comma carries on
)

// row is one line of the result.
type row struct {
	kind    rowKind
	depth   int
	block   bool     // its statement has a block
	tokens  []Token  // of the statement, without the comment
	keys    []string // the columns on the left: a word, or a time and a word
	keyed   string   // a letter for each: see split
	number  string   // a plain number that the rest begins with
	rest    string   // what follows the columns
	comment string

	keyWidths   []int // columns that each key is padded to
	gap         int   // columns after a key
	restCol     int   // column, after the indent, where the rest begins
	numberWidth int   // columns that the number is padded to
	commentCol  int   // column where the comment begins
}

// rowsOf parts tokens into rows.
func rowsOf(text []byte, tokens []Token) []row {
	rows := make([]row, 0, countLineEnds(tokens)+1)
	depth, first, carried := 0, -1, false // first: where the open statement began
	for len(tokens) > 0 {
		n := 0
		for n < len(tokens) && tokens[n].Kind != TokNewline {
			n++
		}
		r := row{depth: depth, tokens: tokens[:n]}
		if n > 0 && tokens[n-1].Kind == TokComment {
			c := tokens[n-1]
			r.comment = strings.TrimRight(string(text[c.Start:c.End]), " \t")
			r.tokens = tokens[:n-1]
		}
		tokens = tokens[min(n+1, len(tokens)):]
		switch {
		case len(r.tokens) == 0 && r.comment == "":
			if carried {
				continue // no paragraph begins inside a statement
			}
		case len(r.tokens) == 0:
			r.kind = rowComment
			if carried {
				r.kind = rowMore
			}
		case carried:
			r.kind = rowMore
			r.rest = spaced(text, r.tokens)
		case r.tokens[0].Kind == TokClose:
			r.kind = rowClose
			r.depth = max(depth-1, 0)
			r.rest = spaced(text, r.tokens)
		default:
			r.kind, first = rowStmt, len(rows)
			r.split(text)
		}
		if k := len(r.tokens); k > 0 {
			carried = r.tokens[k-1].Kind == TokComma
			for _, t := range r.tokens {
				switch t.Kind {
				case TokOpen:
					depth++
					if first >= 0 && first < len(rows) {
						rows[first].block = true
					}
					r.block = true
				case TokClose:
					depth = max(depth-1, 0)
				}
			}
		}
		rows = append(rows, r)
	}
	return rows
}

// dropBlanks takes out blank rows at the ends of the text and of blocks, and all
// but one in a row.
func dropBlanks(rows []row) []row {
	out := rows[:0]
	for i, r := range rows {
		if r.kind == rowBlank {
			if len(out) == 0 || out[len(out)-1].kind == rowBlank || out[len(out)-1].opens() {
				continue
			}
			next := i + 1
			for next < len(rows) && rows[next].kind == rowBlank {
				next++
			}
			if next == len(rows) || rows[next].kind == rowClose {
				continue
			}
		}
		out = append(out, r)
	}
	return out
}

// opens reports whether a block begins at the end of the row.
func (r *row) opens() bool {
	n := len(r.tokens)
	return n > 0 && r.tokens[n-1].Kind == TokOpen
}

// split parts a statement's row into its columns and the rest. A time is one column
// for its day and one for its clock, and a word or a name may follow: keyed has d, c
// and w for them.
func (r *row) split(text []byte) {
	t := r.tokens
	is := func(i int, k TokenKind) bool { return i < len(t) && t[i].Kind == k }
	word := func(i int) string { return string(text[t[i].Start:t[i].End]) }
	keys := 0
	if is(0, TokDate) || is(0, TokWord) && IsDay(word(0)) && (is(1, TokClock) || is(1, TokWord)) {
		keys, r.keyed = 1, "d"
	}
	if is(keys, TokClock) {
		keys, r.keyed = keys+1, r.keyed+"c"
		if is(keys, TokClock) { // the offset from UTC
			keys, r.keyed = keys+1, r.keyed+"o"
		}
	}
	if is(keys, TokWord) && (keys == 0 || word(keys) != "none") || keys == 0 && is(keys, TokString) {
		keys, r.keyed = keys+1, r.keyed+"w"
	}
	if len(t) > keys && (t[keys].Kind == TokComma || t[keys].Kind == TokSlash || t[keys].Kind == TokOpen || r.hasBlock()) {
		keys, r.keyed = 0, ""
	}
	for _, k := range t[:keys] {
		r.keys = append(r.keys, string(text[k.Start:k.End]))
	}
	t = t[keys:]
	if keys > 0 && !r.timed() && len(t) > 0 && t[0].Kind == TokNumber && (len(t) == 1 || tightAfter(t[0].Kind, t[1].Kind) == false) {
		r.number = string(text[t[0].Start:t[0].End])
		t = t[1:]
	}
	r.rest = spaced(text, t)
}

// timed reports whether a row begins with a day or a clock. What is read on such rows is
// of many kinds, so their numbers are in no column.
func (r *row) timed() bool { return r.keyed != "" && r.keyed != "w" }

// hasBlock reports whether a brace stands on the row.
func (r *row) hasBlock() bool {
	for _, t := range r.tokens {
		if t.Kind == TokOpen {
			return true
		}
	}
	return false
}

// spaced joins tokens with the spaces of the layout.
func spaced(text []byte, tokens []Token) string {
	var b strings.Builder
	for i, t := range tokens {
		if i > 0 && !tight(tokens, i) && !priced(text, tokens, i) {
			b.WriteByte(' ')
		}
		b.Write(text[t.Start:t.End])
	}
	return b.String()
}

// priced reports whether token i belongs to an amount whose currency stands before it: the
// number of £540, and what it buys of £0.48/kg.
func priced(text []byte, tokens []Token, i int) bool {
	word := func(i int) string { return string(text[tokens[i].Start:tokens[i].End]) }
	switch {
	case tokens[i].Kind == TokUnit:
		return i > 1 && word(i)[0] == '/' && priced(text, tokens, i-1)
	case tokens[i].Kind != TokNumber || i == 0:
		return false
	}
	return tokens[i-1].Kind == TokUnit && isCurrencySign(word(i-1)) && (i == 1 || tokens[i-2].Kind != TokNumber)
}

// tight reports whether no space stands before token i.
func tight(tokens []Token, i int) bool {
	prev, this := tokens[i-1].Kind, tokens[i].Kind
	if this == TokSlash {
		return prev == TokNumber && i+1 < len(tokens) && tokens[i+1].Kind == TokNumber
	}
	if prev == TokSlash {
		return this == TokNumber && i >= 2 && tokens[i-2].Kind == TokNumber
	}
	return tightAfter(prev, this)
}

// tightAfter reports whether a token keeps close to the one before it.
func tightAfter(prev, this TokenKind) bool {
	return this == TokComma || this == TokSlash || this == TokRange || prev == TokRange ||
		prev == TokOpen && this == TokClose
}
