package lang

import (
	"slices"
	"strings"

	"newmake/lang/diag"
)

// mostMends is how many braces of a text are put right before it is left as it
// is.
const mostMends = 4

// mends are braces that a text is read with, or without, so that one mistake does not
// spoil the reading of what follows it.
type mends struct {
	open  []int // ends of lines that lack a `{`
	close []int // starts of lines before which the innermost block lacks its `}`
	drop  []int // braces that close nothing
}

// nesting is how the lines of a text nest by their braces, with some mended.
type nesting struct {
	src    *diag.Source
	lines  []codeLine
	mended mends

	open    []openBlock
	extras  int        // braces that close nothing
	extra   int        // the first of them, -1 if there is none
	deep    int        // the first brace that stands deeper than the block it closes, -1
	misnest *openBlock // a block whose brace closes another, going by indents
	misAt   int        // that brace
	flat    bool       // the indents do not show how the text is nested
}

// openBlock is a block whose closing brace has not come yet.
type openBlock struct {
	line   int   // that opens it, an index
	at     int   // offset of the brace
	indent int   // of that line
	inner  []int // lines that stand directly in it
}

// balance finds the braces that are missing or too many, says so, and gives the
// mends with which the text reads as its indents show it. Where they do not show
// it, adrift is true.
func balance(src *diag.Source, lines []codeLine) (m mends, list diag.List, adrift bool) {
	n := nest(src, lines, mends{})
	for n.wrong() != 0 {
		d, mended := n.unbalanced()
		list.Add(*d)
		better := n
		if mended != nil && len(list) <= mostMends {
			better = nest(src, lines, *mended)
		}
		if better.wrong() >= n.wrong() {
			return n.mended, list, n.flat
		}
		n = better
	}
	return n.mended, list, false
}

func nest(src *diag.Source, lines []codeLine, m mends) *nesting {
	n := &nesting{src: src, lines: lines, mended: m, extra: -1, deep: -1}
	for i := range lines {
		l := &lines[i]
		if slices.Contains(m.close, l.start) && len(n.open) > 0 {
			n.open = n.open[:len(n.open)-1]
		}
		if l.tokens[0].Kind != TokClose && len(n.open) > 0 {
			b := &n.open[len(n.open)-1]
			b.inner = append(b.inner, i)
			n.flat = n.flat || l.indent <= b.indent
		}
		for _, t := range l.tokens {
			switch t.Kind {
			case TokOpen:
				n.open = append(n.open, openBlock{line: i, at: int(t.Start), indent: l.indent})
			case TokClose:
				n.close(i, int(t.Start))
			}
		}
		if slices.Contains(m.open, l.end) {
			n.open = append(n.open, openBlock{line: i, at: l.end - 1, indent: l.indent})
		}
	}
	return n
}

func (n *nesting) close(line, at int) {
	if slices.Contains(n.mended.drop, at) {
		return
	}
	if len(n.open) == 0 {
		if n.extras++; n.extra < 0 {
			n.extra = at
		}
		return
	}
	last := n.open[len(n.open)-1]
	n.open = n.open[:len(n.open)-1]
	switch indent := indentAt(n.src.Text, at); {
	case n.misnest == nil && indent < last.indent:
		n.misnest, n.misAt = &last, at
	case n.deep < 0 && indent > last.indent && line != last.line:
		n.deep = at
	}
}

// wrong counts the blocks that are never closed and the braces that close nothing.
func (n *nesting) wrong() int { return n.extras + len(n.open) }

// unbalanced says what is wrong with the braces first of all. The mends are those
// of this reading and one more, nil if it is not plain which: the indents have to
// show it.
func (n *nesting) unbalanced() (*diag.Diagnostic, *mends) {
	m := mends{slices.Clone(n.mended.open), slices.Clone(n.mended.close), slices.Clone(n.mended.drop)}
	if n.extras > 0 {
		lacks := n.lacksOpen()
		d := n.extraBrace(lacks)
		switch {
		case lacks != nil:
			m.open = append(m.open, lacks.end)
		case n.deep >= 0:
			d.At = n.src.Span(n.deep, n.deep+1)
			m.drop = append(m.drop, n.deep)
		default:
			return d, nil
		}
		return d, &m
	}
	culprit := n.open[len(n.open)-1]
	if n.misnest != nil {
		culprit = *n.misnest
	}
	d := n.unclosed(culprit)
	at := n.endOf(culprit)
	if at < 0 {
		return d, nil
	}
	m.close = append(m.close, at)
	return d, &m
}

func (n *nesting) extraBrace(lacks *codeLine) *diag.Diagnostic {
	d := &diag.Diagnostic{Code: diag.CodeExtraBrace, At: n.src.Span(n.extra, n.extra+1),
		Summary: "this `}` closes nothing",
		Help:    "take it out, or find the line above that lacks its `{`"}
	if d := n.poundSign(lacks); d != nil {
		return d
	}
	if lacks != nil {
		d.Related = []diag.Related{{At: n.src.Span(lacks.start, lacks.end), Text: "a `{` may be missing at the end of this line"}}
		d.Fix = &diag.Fix{At: n.src.Span(lacks.end, lacks.end), Text: " {", Label: "put a `{` there", Guess: true}
	}
	return d
}

// poundSign reports a line whose `{` is lost in a remark, since `#` was written for
// pounds: `bill 790# {`. It is nil for any other line. It is the only report of its line.
func (n *nesting) poundSign(l *codeLine) *diag.Diagnostic {
	if l == nil || l.past <= l.end || l.tokens[len(l.tokens)-1].Kind != TokNumber {
		return nil
	}
	remark := string(n.src.Text[l.end:l.past])
	if after, ok := strings.CutPrefix(remark, "#"); !ok || !strings.HasPrefix(strings.TrimLeft(after, " \t"), "{") {
		return nil
	}
	l.spoilt = true
	return &diag.Diagnostic{Code: diag.CodeUnknownUnit, At: n.src.Span(l.end, l.end+1),
		Summary: "`#` begins a remark here, and the `{` after it is lost",
		Help:    "a pound is `lb`: write `" + string(n.src.Text[l.start:l.end]) + " lb {`",
		Fix:     &diag.Fix{At: n.src.Span(l.end, l.end+1), Text: " lb", Label: "write ` lb` for `#`"}}
}

func (n *nesting) unclosed(b openBlock) *diag.Diagnostic {
	d := &diag.Diagnostic{Code: diag.CodeUnclosedBlock, At: n.src.Span(b.at, b.at+1),
		Summary: "this block is never closed",
		Help:    "put a `}` on a line of its own where the block ends"}
	if n.misnest != nil {
		d.Related = []diag.Related{{At: n.src.Span(n.misAt, n.misAt+1), Text: "this `}` stands further left, as if for an outer block"}}
	}
	return d
}

// lacksOpen finds a line without a block after which the next is indented
// deeper, as if it had one.
func (n *nesting) lacksOpen() *codeLine {
	var before *codeLine
	for i := range n.lines {
		l := &n.lines[i]
		if l.tokens[0].Kind == TokClose {
			continue
		}
		if before != nil && l.indent > before.indent && !slices.Contains(n.mended.open, before.end) &&
			!slices.ContainsFunc(before.tokens, func(t Token) bool { return t.Kind == TokOpen }) {
			return before
		}
		before = l
	}
	return nil
}

// endOf finds the start of the line before which a block ends, going by the
// indents: the first in it that stands no deeper than the line that opens it,
// after some that do. It is -1 if there is none.
func (n *nesting) endOf(b openBlock) int {
	for i, line := range b.inner {
		switch l := &n.lines[line]; {
		case l.indent > b.indent:
		case i == 0:
			return -1
		default:
			return l.start
		}
	}
	if n.misnest != nil {
		return n.misAt
	}
	return -1
}
