package explain

import (
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
)

// BlockKind is what a Block of a document is.
type BlockKind uint8

// The blocks that the pages use; a document's other blocks are left out.
const (
	Paragraph BlockKind = iota
	Item                // of a list
	Heading
	Code // between fences
)

// Block is one piece of a Markdown document.
type Block struct {
	Kind  BlockKind
	Level int    // of a Heading
	Info  string // of Code: what stands after the fence
	Text  string // Code: as it stands. Others: in one line, their backquotes kept.
	Line  int    // of the document, from 1
}

// Blocks takes a Markdown document apart.
func Blocks(doc []byte) []Block {
	var out []Block
	root := goldmark.DefaultParser().Parse(text.NewReader(doc))
	_ = ast.Walk(root, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering || n.Type() != ast.TypeBlock {
			return ast.WalkContinue, nil
		}
		b := Block{}
		switch n := n.(type) {
		case *ast.Heading:
			b.Kind, b.Level = Heading, n.Level
		case *ast.Paragraph:
		case *ast.TextBlock: // what a list item holds
			b.Kind = Item
		case *ast.FencedCodeBlock:
			b.Kind = Code
			if n.Info != nil {
				b.Info = string(n.Info.Segment.Value(doc))
			}
		default:
			return ast.WalkContinue, nil
		}
		b.Text, b.Line = lines(n, doc)
		if b.Kind != Code {
			b.Text = strings.Join(strings.Fields(b.Text), " ")
		}
		out = append(out, b)
		return ast.WalkSkipChildren, nil
	})
	return out
}

// lines is the text of a block, and the line on which it begins.
func lines(n ast.Node, doc []byte) (string, int) {
	var b strings.Builder
	at := n.Lines()
	for i := range at.Len() {
		s := at.At(i)
		b.Write(s.Value(doc))
	}
	line := 0
	if at.Len() > 0 {
		line = 1 + strings.Count(string(doc[:at.At(0).Start]), "\n")
	}
	return b.String(), line
}
