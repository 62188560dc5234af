package lang

import "newmake/lang/diag"

// The grammar takes a block whether or not its braces and statements stand on
// lines of their own. What may share a line is told here, in better words than a
// parser has:
//
//	line = "}" | items [ "{" [ [ items ] "}" ] ] .

// checkLayout finds what may not share the line with what stands before it.
func (l *codeLine) checkLayout() {
	rest := l.tokens
	items := func() bool {
		n := 0
		for n < len(rest) && rest[n].Kind != TokOpen && rest[n].Kind != TokClose {
			n++
		}
		rest = rest[n:]
		return n > 0
	}
	wrong := func(t Token, shows int, summary, help string) {
		l.layout = &fault{code: diag.CodeBlockLine, start: int(t.Start), end: int(t.End), summary: summary, help: help}
		l.layoutAt = shows
	}
	if rest[0].Kind != TokClose {
		named := items()
		if len(rest) == 0 {
			return
		}
		open := rest[0]
		rest = rest[1:]
		switch {
		case open.Kind == TokClose:
			wrong(open, int(open.Start), "a `}` stands alone on its line", "put the `}` on a line of its own, below the block")
			return
		case !named:
			wrong(open, int(open.Start), "this block has no name", "write what the block is before the `{` on the same line, as in `bill 940 lb {`")
			l.layout.code = diag.CodeNoStatement
			return
		case len(rest) == 0:
			return
		}
		items()
		if len(rest) == 0 || rest[0].Kind != TokClose {
			wrong(open, l.end, "a block that holds more than one line begins on the next line",
				"end the line after `{`, or close the block with `}` on the same line")
			if len(rest) > 0 {
				l.layoutAt = int(rest[0].Start)
			}
			return
		}
	}
	if rest = rest[1:]; len(rest) > 0 {
		wrong(rest[0], int(rest[0].Start), "nothing may follow `}` on its line", "put what follows `}` on a line of its own")
	}
}
