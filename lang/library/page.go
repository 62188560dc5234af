package library

import (
	"fmt"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/explain"
	"newmake/lang/house"
	"newmake/lang/words"
)

// page is the library as text of 80 columns.
type page struct {
	ascii bool
	b     strings.Builder
}

// Text is what was found as text: everything by kind, a list, or entries whole.
func (a *Answer) Text(ascii bool) string {
	p := page{ascii: ascii}
	switch {
	case a.Kind == "" && len(a.Words) == 0:
		p.overview(a.all)
	case len(a.named) > 0 || len(a.Found) == 1:
		p.entries(a.Found)
		if len(a.named) > 0 {
			p.alsoAbout(a.about, a.named, a.Words)
		}
	default:
		p.list(a.Found)
	}
	return p.b.String()
}

// line writes one line, made harmless to a terminal.
func (p *page) line(s string) {
	p.b.WriteString(strings.TrimRight(diag.SafeIn(s, p.ascii), " ") + "\n")
}

// para writes a head and text beside it, which wraps in its own column.
func (p *page) para(head, text string) {
	indent := strings.Repeat(" ", diag.Width(head))
	for i, l := range strings.Split(explain.Wrap(indent+text, indent), "\n") {
		if i == 0 {
			l = head + strings.TrimPrefix(l, indent)
		}
		p.line(l)
	}
}

// mark stands before what is the house's own.
func mark(house bool) string {
	if house {
		return "* "
	}
	return "  "
}

const markNote = "* the house's own, or changed by it"

// overview lists the names of everything, by kind.
func (p *page) overview(all []house.LibraryItem) {
	marked := false
	for _, kind := range house.LibraryKinds() {
		var names []string
		for _, i := range all {
			if i.Kind == kind {
				names = append(names, mark(i.House)+i.Name)
				marked = marked || i.House
			}
		}
		p.line(fmt.Sprintf("%s (%d)", kind, len(names)))
		for _, l := range strings.Split(strings.TrimSuffix(explain.Columns(names, 0), "\n"), "\n") {
			p.line(l)
		}
		p.line("")
	}
	if marked {
		p.line(markNote)
	}
	p.line("newmake library corn         one entry, its figures and their sources")
	p.line("newmake library grain oats   those of a kind, or those about a word")
}

// telling are the lines of each kind that say most in the least room.
var telling = map[string][]string{
	"grain":    {"starch", "gelatinizes", "power"},
	"yeast":    {"form", "range", "pitch", "ethanol-limit"},
	"enzyme":   {"does", "optimum", "dies-above", "dose"},
	"wood":     {"tree", "charred", "toasted", "soak"},
	"standard": {"title", "country"},
}

// list writes a line for each of some entries.
func (p *page) list(items []house.LibraryItem) {
	widest, marked, kinds := 0, false, map[string]bool{}
	for _, i := range items {
		widest = max(widest, diag.Width(i.Name))
		marked = marked || i.House
		kinds[i.Kind] = true
	}
	widest = min(widest, 32)
	for _, i := range items {
		head := mark(i.House) + Pad(i.Name, widest) + "  "
		if len(kinds) > 1 {
			head += Pad(i.Kind, len("standard")) + "  "
		}
		p.para(head, summary(i))
	}
	if marked {
		p.line(markNote)
	}
}

// summary says what is most telling of an entry.
func summary(i house.LibraryItem) string {
	var parts []string
	for _, field := range telling[i.Kind] {
		for _, l := range i.Lines {
			if l.Field == field {
				text := l.Text
				if l.Figure != nil {
					text, _, _ = strings.Cut(text, ", ") // how sure it is stands on its own page
				}
				parts = append(parts, strings.TrimSpace(field+" "+text))
				break
			}
		}
	}
	switch {
	case i.Kind == "standard":
		return strings.ReplaceAll(strings.TrimPrefix(strings.Join(parts, ", "), "title "), `"`, "")
	case i.Kind == "model":
		return words.Count(len(i.Lines), "constant")
	}
	return strings.Join(parts, ", ")
}

// entries writes entries whole.
func (p *page) entries(items []house.LibraryItem) {
	for n, i := range items {
		if n > 0 {
			p.line("")
		}
		p.entry(i)
	}
}

// Columns of an entry: what a line's text may be wide before its source goes to
// a line of its own.
const mostText = 26

func (p *page) entry(i house.LibraryItem) {
	p.line(i.Kind + " " + i.Name + origin(i))
	for _, paragraph := range strings.Split(i.Doc, "\n\n") {
		if paragraph != "" {
			p.para("  ", paragraph)
		}
	}
	p.line("")
	field, text, marked := 0, 0, false
	for _, l := range i.Lines {
		field = max(field, diag.Width(l.Field))
		if w := diag.Width(l.Text); w <= mostText {
			text = max(text, w)
		}
		marked = marked || l.House
	}
	field = min(field, 26)
	for _, l := range i.Lines {
		p.fact(l, field, text, i)
	}
	if marked && (!i.Own || i.From != "") {
		p.line("* the house's line")
	}
}

func origin(i house.LibraryItem) string {
	from := ""
	if i.From != "" {
		from = " from " + i.From
	}
	switch {
	case i.Own:
		return from + ": the house's own"
	case i.House:
		return from + ": built in, changed by the house"
	}
	return from + ": built in"
}

// fact writes one line of an entry: its word, what it says, where that is from.
func (p *page) fact(l house.LibraryLine, field, text int, i house.LibraryItem) {
	head := mark(l.House && (!i.Own || i.From != "")) + Pad(l.Field, field) + "  "
	source := l.Source
	if l.Was != "" && l.Was != l.Text {
		where := "built in"
		if i.Own {
			where = "in " + i.From
		}
		source = strings.TrimSpace(source + " (" + where + ": " + l.Was + ")")
	}
	if diag.Width(l.Text) > text {
		p.para(head, l.Text)
		if source != "" {
			p.para(strings.Repeat(" ", diag.Width(head)+text+2), source)
		}
		return
	}
	p.para(head+Pad(l.Text, text)+"  ", source)
}

// alsoAbout names the entries that are about the words and do not bear them as
// their name.
func (p *page) alsoAbout(about, named []house.LibraryItem, words []string) {
	var names []string
	for _, i := range about {
		same := false
		for _, n := range named {
			same = same || n.Kind == i.Kind && n.Name == i.Name
		}
		if !same {
			names = append(names, i.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	p.line("")
	const most = 12
	more := ""
	if len(names) > most {
		more = fmt.Sprintf(" and %d more", len(names)-most)
		names = names[:most]
	}
	p.para("  ", fmt.Sprintf("%q stands in %s%s too.", strings.Join(words, " "), strings.Join(names, ", "), more))
}

// Pad fills a text with spaces on the right.
func Pad(s string, width int) string {
	return s + strings.Repeat(" ", max(width-diag.Width(s), 0))
}
