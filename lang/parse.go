package lang

import (
	"slices"

	"newmake/lang/diag"

	"github.com/alecthomas/participle/v2/lexer"
)

// Parse reads a text into a tree. It always returns a File, and never more than
// one syntax error for a line. Where one brace is missing or one too many, and
// the indents show which, the tree is the one that was meant.
func Parse(src *diag.Source) (file *File, list diag.List) {
	if d, ok := checkSize(src); !ok {
		return &File{Source: src}, diag.List{d}
	}
	withTokens(src.Text, 0, func(tokens []Token) {
		read, both := upperSides(src, tokens)
		file, list = parse(src, 0, len(src.Text), read)
		if len(both) > 0 {
			list = append(both, list...)
			list.Sort()
		}
	})
	return file, list
}

// ParsePart reads one part of a text (see Outline). Places are those in the text.
func ParsePart(src *diag.Source, p Part) (file *File, list diag.List) {
	withTokens(src.Text[:p.End], p.Start, func(tokens []Token) { file, list = parse(src, p.Start, p.End, tokens) })
	return file, list
}

// parse is the way of a text, or of what stands in it between two offsets: tokens,
// lines, braces that balance, the grammar, and what the grammar does not say.
func parse(src *diag.Source, start, end int, tokens []Token) (*File, diag.List) {
	if d, ok := checkNesting(src, tokens); !ok {
		return &File{Source: src}, diag.List{d}
	}
	if d, ok := checkLength(src, tokens); !ok {
		return &File{Source: src}, diag.List{d}
	}
	list, text := checkChars(src, start, end, tokens), src.String()
	lines := codeLines(src.Text, tokens)
	spoil(lines, list)
	mended, braces, adrift := balance(src, lines)
	read, err := readTree(&balanced{text: text, lines: lines, mended: mended})
	if err != nil { // its tokens are balanced, and items take anything
		return &File{Source: src}, diag.List{{Code: diag.CodeUnknownChar, At: src.Span(0, 0), Summary: "this text was not understood",
			Help: "please report it: this is a fault in newmake", Reason: err.Error()}}
	}
	file := &File{Source: src, Adrift: adrift, Stmts: (&builder{src: src, lines: lines}).statements(read.Statements)}
	markBad(file.Stmts, lines)
	attachComments(file, text, tokens)
	for i := range lines {
		if f := lines[i].fault(); f != nil {
			list.Add(f.diagnostic(src))
		}
	}
	list = append(list, braces...)
	list = append(list, pointsForThousands(file)...)
	list.Sort()
	return file, list.Cap()
}

func readTree(tokens *balanced) (*file, error) {
	lex, err := lexer.Upgrade(tokens)
	if err != nil {
		return nil, err
	}
	return grammar().ParseFromLexer(lex)
}

// spoil marks the lines with a character that is an error, and finds what may not
// share a line in the others. Lines and errors come in the order of the text.
func spoil(lines []codeLine, chars diag.List) {
	for i := range lines {
		l := &lines[i]
		for len(chars) > 0 && chars[0].At.Start < l.start {
			chars = chars[1:]
		}
		for _, d := range chars {
			if d.At.Start >= l.past {
				break
			}
			l.spoilt = l.spoilt || d.Severity == diag.Error
		}
		l.checkLayout()
	}
}

// fault is the one mistake that is reported of a line, nil if there is none.
func (l *codeLine) fault() *fault {
	switch {
	case l.spoilt:
		return nil
	case l.layout == nil || l.item != nil && l.item.start < l.layoutAt:
		return l.item
	}
	return l.layout
}

// bad reports whether the statements of a line have an error of their own.
func (l *codeLine) bad() bool { return l.spoilt || l.item != nil || l.layout != nil }

func (f *fault) diagnostic(src *diag.Source) diag.Diagnostic {
	d := diag.Diagnostic{Code: f.code, Summary: f.summary, Help: f.help, Reason: f.reason, At: src.Span(f.start, f.end)}
	if f.fix != nil {
		d.Fix = &diag.Fix{At: src.Span(f.fix.start, f.fix.end), Text: f.fix.text, Label: f.fix.label, Guess: f.fix.guess}
	}
	return d
}

// builder makes the tree of what the grammar read: statements with their places.
// What is wrong with their items goes to their lines; both come in the order of
// the text.
type builder struct {
	src   *diag.Source
	lines []codeLine // from the one at hand on
}

func (b *builder) statements(read []statement) []*Stmt {
	if len(read) == 0 {
		return nil
	}
	room, list := make([]Stmt, len(read)), make([]*Stmt, len(read))
	for i := range read {
		list[i] = &room[i]
		b.statement(&read[i], list[i])
	}
	return list
}

func (b *builder) statement(read *statement, s *Stmt) {
	at := int(read.Items.at)
	s.Items, s.At = read.Items.list, b.src.Span(at, at+1)
	for i := range s.Items {
		s.Items[i].At.Src = b.src
		s.At.End = s.Items[i].At.End
	}
	for b.lines[0].end <= at {
		b.lines = b.lines[1:]
	}
	if line := &b.lines[0]; line.item == nil {
		line.item = read.Items.fault
	}
	if read.Block != nil {
		s.Block = &Block{At: b.src.Span(int(read.Block.Open), int(read.Block.Close)), Stmts: b.statements(read.Block.Statements)}
	}
}

// markBad marks the statements of lines in which something is wrong.
func markBad(stmts []*Stmt, lines []codeLine) {
	if !slices.ContainsFunc(lines, func(l codeLine) bool { return l.bad() }) {
		return
	}
	Walk(stmts, func(s *Stmt, _ int) bool {
		for lines[0].end <= s.At.Start {
			lines = lines[1:]
		}
		s.Bad = lines[0].bad()
		return true
	})
}
