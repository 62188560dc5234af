package assist

import (
	"fmt"
	"strings"

	"newmake/lang"
	"newmake/lang/explain"
	"newmake/lang/house"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// Hover says in Markdown what stands at a place, and gives the place that it speaks
// of. The text is "" where there is nothing to say.
func (s *Snapshot) Hover(offset int) (markdown string, at Place) {
	p, ok := s.at(offset)
	if !ok || !p.onLine(offset) {
		return "", at
	}
	n := p.node()
	if p.cap == nil {
		for _, it := range n.Stmt.Items {
			if it.At.Start <= offset && offset <= it.At.End {
				return line(n.Field, it.Text, s.Units()), it.At
			}
		}
		return line(n.Field, "", s.Units()), n.At()
	}
	at = p.cap.At()
	if p.cap.Kind != quantity.None && p.cap.Item.Kind != lang.Word {
		return value(n.Field, p.cap, s.Units()), at
	}
	if text := s.named(p); text != "" {
		return text, at
	}
	return line(n.Field, p.cap.Text(), s.Units()), at
}

// line is the page of a line in short.
func line(f *schema.Field, word string, reader quantity.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "```newmake\n%s\n```\n%s\n", f.FormFor(reader), wording.Prose(f.Doc, reader))
	for _, fact := range explain.Facts(f, reader) {
		fmt.Fprintf(&b, "\n- %s", fact)
	}
	if word == "" {
		word = f.Name
	}
	if word != "" && len(explain.Ask(word, reader).Pages) > 0 {
		fmt.Fprintf(&b, "\n\n`newmake explain %s` has the page.", word)
	}
	return b.String()
}

// value is what a quantity means.
func value(f *schema.Field, c *tree.Capture, reader quantity.System) string {
	it := c.Item
	var b strings.Builder
	fmt.Fprintf(&b, "**%s**: %s", it.String(), c.Kind)
	if other := wording.InOther(c.SI, it.Unit, c.Kind); other != "" {
		if it.Kind == lang.Range {
			other += " to " + wording.InOther(c.HighSI(), it.Unit, c.Kind)
		}
		fmt.Fprintf(&b, "; %s", other)
	}
	if u, ok := quantity.Lookup(it.Unit); ok {
		if m, ok := u.Measure(c.Kind); ok {
			if said := explain.Worth(u.Name, m); said != "" {
				fmt.Fprintf(&b, "\n\n%s", said)
			}
		}
	}
	fmt.Fprintf(&b, "\n\n`%s`: %s", f.FormFor(reader), wording.Prose(f.Doc, reader))
	return b.String()
}

// linesShown is how many lines of a declaration a hover shows.
const linesShown = 12

// wordsShown is how wide the first words of its lines are.
const wordsShown = 12

// named is what a name stands for, "" if it is not declared.
func (s *Snapshot) named(p spot) string {
	n, declares, ok := nameOf(p.path, p.cap)
	if !ok || declares {
		return ""
	}
	for _, f := range schema.Library {
		if f.Name != n.sort {
			continue
		}
		e := s.House.Entry(f, p.cap.Text())
		if e == nil {
			return ""
		}
		whose := "of the library; `newmake library " + e.Name + "` shows it with its sources"
		if s.House.Owns(e) {
			whose = "of the house"
		}
		return fmt.Sprintf("**%s**: a %s %s.\n\n%s\n\n%s", e.Name, f.Name, whose, e.Doc, shown(e.Node, s.Units()))
	}
	text := ""
	eachName(s.declaring(n), func(path []*tree.Node, c *tree.Capture) {
		if other, declares, ok := nameOf(path, c); ok && declares && other == n && text == "" {
			last := path[len(path)-1]
			text = fmt.Sprintf("%s\n\n%s", comment(last), shown(last, quantity.Both))
		}
	})
	return text
}

// shown is a declaration, its first lines, with their quantities in the units of a system;
// Both leaves them as they are written.
func shown(n *tree.Node, units quantity.System) string {
	var lines []string
	lines = append(lines, n.At().Text())
	for _, l := range n.Lines {
		if len(lines) > linesShown {
			lines = append(lines, "  ...")
			break
		}
		text := l.At().Text()
		if units != quantity.Both {
			word, rest, _ := strings.Cut(house.Spoken(l, units), " ")
			text = fmt.Sprintf("%-*s %s", wordsShown, word, rest)
		}
		lines = append(lines, "  "+strings.TrimSpace(text))
	}
	return "```newmake\n" + strings.Join(lines, "\n") + "\n```"
}
