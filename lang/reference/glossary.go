package reference

import (
	"cmp"
	_ "embed"
	"slices"
	"strings"

	"newmake/lang/explain"
)

//go:embed glossary.md
var glossary string

// Glossary is every term of the trade that has a page, in the order of the alphabet.
func Glossary() string {
	d := &document{}
	d.text(glossary)
	d.text("## The words")
	terms := slices.DeleteFunc(slices.Clone(explain.Pages()), func(p explain.Page) bool { return p.Sort != explain.OfTerm })
	slices.SortStableFunc(terms, func(a, b explain.Page) int {
		return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	})
	for _, p := range terms {
		head := "**" + p.Name + "**"
		if len(p.Also) > 0 {
			head += " (" + strings.Join(p.Also, ", ") + ")"
		}
		for i, b := range p.Body {
			switch {
			case b.Kind == explain.Code:
				d.text("```" + language(b.Info) + "\n" + strings.TrimRight(b.Text, "\n") + "\n```")
			case b.Kind == explain.Item:
				d.text(wrapped("- "+b.Text, "  "))
			case i == 0:
				d.text(wrapped(head+". "+b.Text, ""))
			default:
				d.text(wrapped(b.Text, ""))
			}
		}
	}
	return strings.TrimRight(d.b.String(), "\n") + "\n"
}

// language is the first word after a fence; the others are for the tests of the page.
func language(info string) string {
	first, _, _ := strings.Cut(info, " ")
	if first == "newmake" {
		return "newmake fragment"
	}
	return first
}
