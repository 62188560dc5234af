package explain

import (
	"regexp"
	"strings"
	"sync"
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

// beginnings are those of blocks, as far as the documents of this program use them
// (CommonMark 0.31, sections 4.2, 4.5, 4.6 and 5.2).
type beginnings struct{ heading, fence, item, html *regexp.Regexp }

// begun makes them when a page is asked for, and not at every start.
var begun = sync.OnceValue(func() beginnings {
	return beginnings{
		heading: regexp.MustCompile(`^ {0,3}(#{1,6})(?:[ \t]+(.*?))??(?:[ \t]+#+)?[ \t]*$`),
		fence:   regexp.MustCompile("^( *)(`{3,}|~{3,})[ \t]*([^`]*?)[ \t]*$"),
		item:    regexp.MustCompile(`^ *(?:[-*+]|\d{1,9}[.)])[ \t]+`),
		html:    regexp.MustCompile(`^ {0,3}</?[a-zA-Z!]`),
	}
})

// Blocks takes a Markdown document apart: headings, paragraphs, list items of one
// paragraph, and code between fences. It reads the documents that come with the
// program as CommonMark does, which the tests hold; it is no parser for others'.
func Blocks(doc []byte) []Block {
	r := blockReader{beginnings: begun(), lines: strings.Split(strings.TrimSuffix(string(doc), "\n"), "\n")}
	for r.at < len(r.lines) {
		r.block()
	}
	return r.out
}

type blockReader struct {
	beginnings
	lines []string
	at    int
	out   []Block
}

// block reads what begins at the next line.
func (r *blockReader) block() {
	line := r.lines[r.at]
	switch {
	case strings.TrimSpace(line) == "":
		r.at++
	case r.fence.MatchString(line):
		r.code()
	case r.heading.MatchString(line):
		m := r.heading.FindStringSubmatch(line)
		r.add(Block{Kind: Heading, Level: len(m[1]), Text: m[2], Line: r.at + 1})
		r.at++
	case r.html.MatchString(line): // to the next empty line
		for r.at < len(r.lines) && strings.TrimSpace(r.lines[r.at]) != "" {
			r.at++
		}
	case r.item.MatchString(line):
		r.text(Item, strings.TrimPrefix(line, r.item.FindString(line)))
	default:
		r.text(Paragraph, line)
	}
}

// text reads a paragraph, or an item of a list, which goes on to an empty line or
// to the next block.
func (r *blockReader) text(kind BlockKind, first string) {
	b := Block{Kind: kind, Text: first, Line: r.at + 1}
	for r.at++; r.at < len(r.lines) && !r.begins(); r.at++ {
		b.Text += " " + r.lines[r.at]
	}
	r.add(b)
}

// begins reports whether the next line begins a block inside a paragraph.
func (r *blockReader) begins() bool {
	line := r.lines[r.at]
	return strings.TrimSpace(line) == "" || r.fence.MatchString(line) || r.heading.MatchString(line) || r.item.MatchString(line)
}

// code reads what stands between fences.
func (r *blockReader) code() {
	m := r.fence.FindStringSubmatch(r.lines[r.at])
	b := Block{Kind: Code, Info: m[3]}
	for r.at++; r.at < len(r.lines); r.at++ {
		line := r.lines[r.at]
		if end := strings.TrimSpace(line); strings.HasPrefix(end, m[2]) && strings.Trim(end, m[2][:1]) == "" {
			r.at++
			break
		}
		if b.Line == 0 {
			b.Line = r.at + 1
		}
		for range m[1] { // what the fence is indented by
			line = strings.TrimPrefix(line, " ")
		}
		b.Text += line + "\n"
	}
	r.out = append(r.out, b)
}

func (r *blockReader) add(b Block) {
	b.Text = strings.Join(strings.Fields(b.Text), " ")
	r.out = append(r.out, b)
}
