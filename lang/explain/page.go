// Package explain holds the pages that `newmake explain` shows: one for every
// diagnostic, written by hand; one for every word of the language and every
// unit, made from the tables that the checker uses; and one for every term of
// the trade that they lean on, written by hand again.
//
// The hand-written ones are Markdown, in pages/, a family of codes to a file.
// A page is a heading of the second level with the code or the term, and what
// follows it. Their examples are run by a test: what a page calls wrong gives
// the page's code and no other, and what it calls right gives no error.
package explain

import (
	"embed"
	"io/fs"
	"strings"
	"sync"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/wording"
)

//go:embed pages/*.md
var files embed.FS

// Sort says what a page is about.
type Sort string

// The sorts, in the order in which pages of one name are shown.
const (
	OfCode    Sort = "code"
	OfTerm    Sort = "term"
	OfLine    Sort = "line"  // a word that begins a line
	OfWord    Sort = "word"  // a word inside a line
	OfValue   Sort = "value" // the name of a sort of value, as in a line's form
	OfUnit    Sort = "unit"
	OfLibrary Sort = "library"
)

// Page is what there is to say about one code or word.
type Page struct {
	Name  string
	Also  []string // other names that lead here
	Sort  Sort
	Title string
	Body  []Block
}

// Pages is every page: the codes in order, then the terms, then what the tables
// give. Examples are as they are written, and limits in the units of both systems.
var Pages = sync.OnceValue(func() []Page { return pagesFor(quantity.Both) })

// PagesFor are the pages for a reader who counts in a system.
func PagesFor(reader quantity.System) []Page {
	switch reader {
	case quantity.US:
		return inUS()
	case quantity.SI:
		return inSI()
	}
	return Pages()
}

var (
	inUS = sync.OnceValue(func() []Page { return pagesFor(quantity.US) })
	inSI = sync.OnceValue(func() []Page { return pagesFor(quantity.SI) })
)

func pagesFor(reader quantity.System) []Page {
	var out []Page
	written := written(reader)
	for _, i := range diag.Table {
		for _, p := range written {
			if p.Name == string(i.Code) {
				p.Sort, p.Title, p.Also = OfCode, i.Title, []string{i.Name}
				out = append(out, p)
			}
		}
	}
	for _, p := range written {
		if p.Sort == OfTerm {
			out = append(out, p)
		}
	}
	return append(out, tablePages(reader)...)
}

// family is the codes that begin alike.
type family struct{ prefix, title string }

// families gives what each family of codes is about: the title of its file, whose
// name begins with the digits of the family.
func families() []family {
	var out []family
	names, _ := fs.Glob(files, "pages/[0-9]*.md")
	for _, name := range names {
		doc, _ := files.ReadFile(name)
		title, _, _ := strings.Cut(strings.TrimPrefix(string(doc), "# "), "\n")
		out = append(out, family{"NM" + strings.TrimPrefix(name, "pages/")[:2], title})
	}
	return out
}

// written reads the pages in pages/. Those whose name is not a code are terms. What
// they say and their examples are in the units of a system, but for what is about a unit.
func written(reader quantity.System) []Page {
	var out []Page
	names, _ := fs.Glob(files, "pages/*.md")
	for _, name := range names {
		doc, _ := files.ReadFile(name)
		terms := strings.HasPrefix(name, "pages/term")
		open := false
		for _, b := range Blocks(doc) {
			switch {
			case b.Kind == Heading && b.Level == 2:
				called := strings.Split(b.Text, " | ")
				p := Page{Name: called[0], Also: called[1:]}
				if terms {
					p.Sort = OfTerm
				}
				out = append(out, p)
				open = true
			case b.Kind == Heading:
				open = false
			case open:
				last := &out[len(out)-1]
				_, ofUnit := quantity.Lookup(last.Name)
				switch e, _ := ReadInfo(b.Info); {
				case e.Units || ofUnit:
				case b.Kind == Code && e.Lang == "newmake":
					b.Text = wording.Restated(b.Text, reader)
				case b.Kind != Code:
					b.Text = wording.Prose(b.Text, reader)
				}
				last.Body = append(last.Body, b)
			}
		}
	}
	return out
}
