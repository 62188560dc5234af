package explain

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
)

// Every page is read as CommonMark has it, and so is every document beside the
// code, but for one thing: an item of a list with empty lines between its items is
// an Item too.
func TestBlocksAreCommonMark(t *testing.T) {
	pages, others := 0, 0
	err := filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		require.NoError(t, err)
		if d.IsDir() && (d.Name() == ".git" || d.Name() == "testdata" || d.Name() == "node_modules") {
			return fs.SkipDir
		}
		if filepath.Ext(path) != ".md" {
			return nil
		}
		doc, err := os.ReadFile(path)
		require.NoError(t, err)
		want, got := commonMark(doc), Blocks(doc)
		if strings.Contains(filepath.ToSlash(path), "explain/pages/") {
			pages++
		} else {
			others++
			for i := range min(len(want), len(got)) {
				if want[i].Kind == Paragraph && got[i].Kind == Item {
					want[i].Kind = Item
				}
			}
		}
		assert.Empty(t, cmp.Diff(want, got), path)
		return nil
	})
	require.NoError(t, err)
	assert.Greater(t, pages, 10)
	assert.Greater(t, others, 3)
}

// commonMark takes a Markdown document apart by a parser of all of CommonMark.
func commonMark(doc []byte) []Block {
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
