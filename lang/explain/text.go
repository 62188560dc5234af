package explain

import (
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// pageWidth is how wide a page is written.
const pageWidth = 80

// Text writes a page for a terminal.
func (p Page) Text() string {
	var b strings.Builder
	title := p.Name + ": " + p.Title
	if p.Sort == OfTerm {
		title = strings.Join(append([]string{p.Name}, p.Also...), ", ")
	}
	b.WriteString(title + "\n")
	for i, block := range p.Body {
		list := i > 0 && p.Body[i-1].Kind == Item && block.Kind == Item
		if !list {
			b.WriteByte('\n')
		}
		switch block.Kind {
		case Code:
			if said := caption(block.Info); said != "" {
				b.WriteString(said + "\n\n")
			}
			for line := range strings.Lines(block.Text) {
				if block.Info == "form" {
					b.WriteString(wrap(line, "    ", "      "))
					continue
				}
				b.WriteString(strings.TrimRight("    "+line, " \n") + "\n")
			}
		case Item:
			b.WriteString(wrap(block.Text, "- ", "  "))
		default:
			b.WriteString(wrap(block.Text, "", ""))
		}
	}
	return b.String()
}

// caption is what stands over an example.
func caption(info string) string {
	e, _ := ReadInfo(info)
	said := map[string]string{"wrong": "Wrong", "right": "Right"}[e.Role]
	switch {
	case strings.HasSuffix(info, "example"):
		return "For example:"
	case said == "":
		return ""
	case e.All:
		return said + ", as house.batch:"
	case e.In != "":
		return said + ", in `" + e.In + "`:"
	}
	return said + ":"
}

// Wrap breaks a text between words at the width of a page. Lines after the first
// begin with the indent.
func Wrap(text, indent string) string {
	first := text[:len(text)-len(strings.TrimLeft(text, " "))]
	return strings.TrimRight(wrap(text, first, indent), "\n")
}

// wrap breaks a text between words. A word wider than the line stands alone.
func wrap(text, first, rest string) string {
	var b strings.Builder
	line, width := first, diag.Width(first)
	empty := true
	for _, word := range phrases(text) {
		w := diag.Width(word)
		if !empty && width+1+w > pageWidth {
			b.WriteString(line + "\n")
			line, width, empty = rest, diag.Width(rest), true
		}
		if !empty {
			line, width = line+" ", width+1
		}
		line, width, empty = line+word, width+w, false
	}
	b.WriteString(line + "\n")
	return b.String()
}

// phrases splits a text between words, but keeps a number with its unit.
func phrases(text string) []string {
	var out []string
	for _, word := range strings.Fields(text) {
		_, isUnit := quantity.Lookup(strings.TrimRight(word, ".,;:)"))
		if last := len(out) - 1; isUnit && last >= 0 && strings.ContainsAny(out[last][len(out[last])-1:], "0123456789") {
			out[last] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

// Columns sets names side by side, as many to a line as fit.
func Columns(names []string, indent int) string {
	widest := 0
	for _, n := range names {
		widest = max(widest, diag.Width(n))
	}
	perLine := max(1, (pageWidth-indent+2)/(widest+2))
	var b strings.Builder
	for i, n := range names {
		if i%perLine == 0 {
			b.WriteString(strings.Repeat(" ", indent))
		}
		b.WriteString(n)
		if last := i == len(names)-1; last || i%perLine == perLine-1 {
			b.WriteByte('\n')
		} else {
			b.WriteString(strings.Repeat(" ", widest+2-diag.Width(n)))
		}
	}
	return b.String()
}
