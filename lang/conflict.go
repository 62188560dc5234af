package lang

import (
	"bytes"
	"fmt"
	"slices"

	"newmake/lang/diag"
)

// conflict is a part of a text in which git has left both sides of a merge.
type conflict struct {
	start, end int // whole lines, from `<<<<<<<` to `>>>>>>>`
	upper      int // where the side begins that is read
	lower      int // where it ends
}

// The marks that git puts around the sides of a conflict, and what the sides had in
// common where it is asked to show that.
var (
	markOurs   = []byte("<<<<<<<")
	markCommon = []byte("|||||||")
	markParts  = []byte("=======")
	markTheirs = []byte(">>>>>>>")
)

// conflicts finds the conflicts of a text that have all their marks.
func conflicts(text []byte) []conflict {
	if !bytes.Contains(text, markTheirs) {
		return nil
	}
	var out []conflict
	var c conflict
	parted, open := false, false
	for at := 0; at < len(text); {
		end := len(text)
		if n := bytes.IndexAny(text[at:], "\r\n"); n >= 0 {
			end = at + n + 1
			if text[end-1] == '\r' && end < len(text) && text[end] == '\n' {
				end++
			}
		}
		line := text[at:end]
		switch {
		case isMark(line, markOurs):
			c, open, parted = conflict{start: at, upper: end}, true, false
		case open && !parted && c.lower == 0 && isMark(line, markCommon):
			c.lower = at
		case open && !parted && isMark(line, markParts):
			parted = true
			if c.lower == 0 {
				c.lower = at
			}
		case open && parted && isMark(line, markTheirs):
			c.end, open = end, false
			out = append(out, c)
		}
		at = end
	}
	return out
}

// isMark reports whether a line is a mark, alone or with a name after it.
func isMark(line, mark []byte) bool {
	rest, ok := bytes.CutPrefix(line, mark)
	return ok && (len(rest) == 0 || rest[0] == ' ' || rest[0] == '\r' || rest[0] == '\n')
}

// upperSides are the tokens of a text without the marks of its conflicts and without
// their lower sides, so that what the conflicts do not touch is read as usual. Each conflict
// is reported as an error, whatever its sides hold.
func upperSides(src *diag.Source, tokens []Token) ([]Token, diag.List) {
	found := conflicts(src.Text)
	if len(found) == 0 {
		return tokens, nil
	}
	var list diag.List
	for _, c := range found {
		first, _ := src.Position(c.start)
		last, _ := src.Position(c.end - 1)
		mark := src.LineSpan(first)
		list.Add(diag.Diagnostic{
			Code: diag.CodeConflict, At: mark,
			Summary: fmt.Sprintf("a merge has left both of its sides here, lines %d to %d", first, last),
			Help:    "keep the lines of one side, or make one of both, and take out the lines of marks; until then the upper side is read",
		})
	}
	return slices.DeleteFunc(slices.Clone(tokens), func(t Token) bool {
		at := int(t.Start)
		return slices.ContainsFunc(found, func(c conflict) bool { return at >= c.start && at < c.end && !(at >= c.upper && at < c.lower) })
	}), list
}
