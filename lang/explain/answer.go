package explain

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Answer is what there is on a word: whole pages, or the titles of many.
type Answer struct {
	Word  string
	Pages []Page
	Near  []string // names like the word, if it has no page
	index bool
	brief bool // say what there is, and how much, in a page
}

// Everything is the titles of all pages.
func Everything() Answer { return Answer{Pages: Pages(), index: true} }

// Ask finds the pages of a word; the family of a code's first digits; for no word
// all pages, whose text is what there is to ask for. They are for a reader who counts in
// a system.
func Ask(word string, reader quantity.System) Answer {
	a := Answer{Word: word, Pages: find(word)}
	if reader != quantity.Both && len(a.Pages) > 0 {
		a.Pages = findIn(PagesFor(reader), word)
	}
	switch {
	case word == "":
		a.Pages, a.index, a.brief = Pages(), true, true
	case len(a.Pages) == 0:
		a.Pages, a.index = familyPages(word), true
	}
	if len(a.Pages) == 0 {
		a.Near = near(word)
	}
	return a
}

// Text is the answer as text.
func (a Answer) Text() string {
	if a.brief {
		return overview(a.Pages)
	}
	if a.index {
		return contents(a.Pages)
	}
	text := ""
	for i, p := range a.Pages {
		if i > 0 {
			text += "\n"
		}
		text += severity(p)
	}
	return text
}

// Document is pages as one JSON document.
type Document struct {
	Format  string     `json:"format"`
	Version string     `json:"version"`
	Word    string     `json:"word"`
	Near    []string   `json:"near,omitempty"` // names like the word, if it has no page
	Pages   []jsonPage `json:"pages"`
}

type jsonPage struct {
	Name     string      `json:"name"`
	Also     []string    `json:"also,omitempty"`
	Sort     string      `json:"sort"`
	Title    string      `json:"title,omitempty"`
	Severity string      `json:"severity,omitempty"`
	Body     []jsonBlock `json:"body,omitempty"`
}

type jsonBlock struct {
	Kind string `json:"kind"` // text, item, example, form or value
	Role string `json:"role,omitempty"`
	In   string `json:"in,omitempty"`
	Text string `json:"text"`
}

// severity is a page with the severity of its code in its first line.
func severity(p Page) string {
	text := p.Text()
	if i, ok := diag.Lookup(diag.Code(p.Name)); ok {
		title, rest, _ := strings.Cut(text, "\n")
		return fmt.Sprintf("%s (%s)\n%s", title, i.Severity, rest)
	}
	return text
}

// sorts are the sorts of pages, in the order in which they are listed.
var sorts = []struct {
	sort  Sort
	title string
}{
	{OfCode, "Codes"}, {OfTerm, "Terms of the trade"}, {OfLine, "Words that begin a line"},
	{OfWord, "Words inside a line"}, {OfValue, "Values"}, {OfUnit, "Units"}, {OfLibrary, "The library"},
}

// overview says in a page what there is to ask for: the families of codes, and of
// each other sort how many and a few of them.
func overview(pages []Page) string {
	var b strings.Builder
	b.WriteString("newmake explain WORD shows the page of a code, a word, a unit or a term.\n")
	for _, s := range sorts {
		of := slices.DeleteFunc(slices.Clone(pages), func(p Page) bool { return p.Sort != s.sort })
		fmt.Fprintf(&b, "\n%s: %d\n\n", s.title, len(of))
		if s.sort == OfCode {
			for _, f := range families() {
				fmt.Fprintf(&b, "  newmake explain %s  %s\n", f.prefix, f.title)
			}
			continue
		}
		var names []string
		for i := range fewShown {
			names = append(names, of[i*len(of)/fewShown].Name)
		}
		b.WriteString(wrap(strings.Join(names, ", ")+", ...", "  ", "  "))
	}
	return b.String() + "\nnewmake explain --all lists every one of them.\n"
}

// fewShown is how many names of a sort are listed as examples of all.
const fewShown = 6

// contents lists pages by their sort: codes with their titles, one a line,
// words many to a line.
func contents(pages []Page) string {
	var b strings.Builder
	for _, s := range sorts {
		var names []string
		for _, p := range pages {
			switch {
			case p.Sort != s.sort:
			case s.sort == OfCode:
				names = append(names, fmt.Sprintf("  %s  %s\n", p.Name, p.Title))
			default:
				names = append(names, p.Name)
			}
		}
		if len(names) == 0 {
			continue
		}
		if b.Len() > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(s.title + "\n\n")
		switch s.sort {
		case OfCode:
			b.WriteString(strings.Join(names, ""))
			continue
		case OfUnit, OfValue: // in the order of what they measure
		default:
			slices.Sort(names)
		}
		b.WriteString(Columns(names, 2))
	}
	return b.String()
}

// Document is the answer as JSON.
func (a Answer) Document() Document {
	e := Document{Format: "newmake.explain", Version: "1.0", Word: a.Word, Near: a.Near, Pages: []jsonPage{}}
	for _, p := range a.Pages {
		j := jsonPage{Name: p.Name, Also: p.Also, Sort: string(p.Sort), Title: p.Title}
		if i, ok := diag.Lookup(diag.Code(p.Name)); ok {
			j.Severity = i.Severity.String()
		}
		for _, b := range p.Body {
			if !a.index {
				j.Body = append(j.Body, jsonBlockOf(b))
			}
		}
		e.Pages = append(e.Pages, j)
	}
	return e
}

func jsonBlockOf(b Block) jsonBlock {
	j := jsonBlock{Kind: "text", Text: b.Text}
	switch b.Kind {
	case Item:
		j.Kind = "item"
	case Code:
		e, _ := ReadInfo(b.Info)
		j.Kind, j.Role, j.In = "example", e.Role, e.In
		if e.Lang == "form" || e.Lang == "value" {
			j.Kind = e.Lang
		}
	}
	return j
}
