package diag

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/fatih/color"
)

// Options say how to render for a reader.
type Options struct {
	Color bool // escapes for colour
	ASCII bool // nothing but ASCII
	Max   int  // how many diagnostics are shown: 0 means 50, less than 0 all
	Width int  // columns: 0 means 80
	// Fold breaks the first line at Width too. Where programs read it, it is one line.
	Fold bool
}

const (
	defaultMax   = 50
	defaultWidth = 80
)

// Render writes a list for people: for each diagnostic one line with its place,
// then the line of text with a mark under the place, then help, reason and
// related places.
//
//	ferry.batch:9:5: error NM0201: there is no grain `conr`
//	  |
//	9 |     conr   68 %
//	  |     ^^^^
//	  = help: did you mean `corn`?
//
// The list is written in the order in which it stands.
func Render(w io.Writer, list List, o Options) error {
	limit := o.Max
	if limit == 0 {
		limit = defaultMax
	}
	if o.Width <= 0 {
		o.Width = defaultWidth
	}
	r := &renderer{o: o, style: newStyle(o.Color)}
	for i, d := range list {
		if limit > 0 && i == limit {
			r.printf("and %d more\n", list.Count(Error)+list.Count(Warning)+list.Count(Note)-limit)
			break
		}
		if i > 0 {
			r.printf("\n")
		}
		r.diagnostic(d)
	}
	_, err := io.WriteString(w, r.out.String())
	return err
}

// Counted says how many of each severity a list has: "2 errors, 1 warning".
func (l List) Counted() string {
	var parts []string
	for _, s := range []Severity{Error, Warning, Note} {
		switch n := l.Count(s); {
		case n == 1:
			parts = append(parts, "1 "+s.String())
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %ss", n, s))
		}
	}
	return strings.Join(parts, ", ")
}

type renderer struct {
	o     Options
	style style
	out   strings.Builder
}

func (r *renderer) printf(format string, args ...any) { fmt.Fprintf(&r.out, format, args...) }

func (r *renderer) safe(text string) string { return SafeIn(text, r.o.ASCII) }

func (r *renderer) diagnostic(d Diagnostic) {
	word := d.Severity.String()
	if d.Code != "" {
		word += " " + string(d.Code)
	}
	lead := word + ":"
	if !d.At.IsZero() {
		place := r.place(d.At) + ":"
		lead = place + " " + lead
		r.printf("%s ", r.style.bold(place))
	}
	r.printf("%s", r.style.severity(d.Severity, word+":"))
	for i, line := range r.folded(lead, r.safe(d.Summary)) {
		switch {
		case i > 0:
			r.printf("  %s", r.style.bold(line))
		case line != "":
			r.printf(" %s", r.style.bold(line))
		}
		r.printf("\n")
	}

	gutter := gutterWidth(d)
	r.snippet(d.At, gutter, "^", func(s string) string { return r.style.severity(d.Severity, s) })
	r.note(gutter, "help", d.Help)
	r.note(gutter, "why", d.Reason)
	if d.Fix != nil && !d.Fix.Guess && !d.helpSaysFix() {
		r.note(gutter, "fix", d.Fix.Label)
	}
	for _, rel := range d.Related {
		if rel.At.IsZero() {
			r.note(gutter, "note", rel.Text)
			continue
		}
		r.printf("%s %s\n", r.style.bold(r.place(rel.At)+":"), r.safe(rel.Text))
		r.snippet(rel.At, gutter, "-", r.style.gutter)
	}
}

// helpSaysFix reports whether the help names the edit already.
func (d Diagnostic) helpSaysFix() bool {
	text := strings.Trim(d.Fix.Text, `"`)
	return strings.Contains(d.Help, d.Fix.Label) || text != "" && strings.Contains(d.Help, "`"+text+"`")
}

// place is file:line:col, or the file alone if none of it is at hand.
func (r *renderer) place(at Span) string {
	if len(at.Src.Text) == 0 {
		return r.safe(at.Src.Name)
	}
	line, col := at.Position()
	return fmt.Sprintf("%s:%d:%d", r.safe(at.Src.Name), line, col)
}

// gutterWidth fits the longest line number of the diagnostic.
func gutterWidth(d Diagnostic) int {
	width := 1
	spans := []Span{d.At}
	for _, rel := range d.Related {
		spans = append(spans, rel.At)
	}
	for _, s := range spans {
		line, _ := s.Position()
		width = max(width, len(strconv.Itoa(line)))
	}
	return width
}

// bar is what parts the gutter from the text.
func (r *renderer) bar() string {
	if r.o.ASCII {
		return "|"
	}
	return "│"
}

// snippet shows the line of a place, with marks under the place.
func (r *renderer) snippet(at Span, gutter int, mark string, paint func(string) string) {
	if at.IsZero() || len(at.Src.Text) == 0 {
		return
	}
	number, _ := at.Position()
	line := at.Src.LineSpan(number)
	room := max(r.o.Width-gutter-3, 20)
	shown := showLine(line.Text(), at.Start-line.Start, at.End-line.Start, room, r.o.ASCII)
	blank := r.style.gutter(strings.Repeat(" ", gutter) + " " + r.bar())
	r.printf("%s\n", blank)
	r.printf("%s %s\n", r.style.gutter(fmt.Sprintf("%*d %s", gutter, number, r.bar())), shown.text)
	r.printf("%s %s%s\n", blank, strings.Repeat(" ", shown.col), paint(strings.Repeat(mark, shown.width)))
}

// note writes a labelled text under a snippet, broken at the width.
// folded is what stands behind a lead on its line, in lines that fit.
func (r *renderer) folded(lead, text string) []string {
	if !r.o.Fold || Width(lead)+1+Width(text) <= r.o.Width {
		return []string{text}
	}
	stand := strings.Repeat("x", Width(lead))
	lines := wrap(stand+" "+text, r.o.Width-2)
	lines[0] = strings.TrimPrefix(lines[0][len(stand):], " ")
	return lines
}

func (r *renderer) note(gutter int, label, text string) {
	if text == "" {
		return
	}
	lead := fmt.Sprintf("%s = %s: ", strings.Repeat(" ", gutter), label)
	hang := strings.Repeat(" ", len(lead))
	first := r.style.gutter(strings.Repeat(" ", gutter)+" =") + " " + r.style.bold(label+":") + " "
	for _, paragraph := range strings.Split(text, "\n") {
		for _, line := range wrap(r.safe(paragraph), max(r.o.Width-len(lead), 20)) {
			r.printf("%s%s\n", first, line)
			first = hang
		}
	}
}

// style paints parts of the output, or leaves them plain.
type style struct {
	marks map[Severity]*color.Color
	dim   *color.Color
	loud  *color.Color
}

func newStyle(on bool) style {
	make := func(attrs ...color.Attribute) *color.Color {
		c := color.New(attrs...)
		if on {
			c.EnableColor()
		} else {
			c.DisableColor()
		}
		return c
	}
	return style{
		marks: map[Severity]*color.Color{
			Error:   make(color.FgRed, color.Bold),
			Warning: make(color.FgYellow, color.Bold),
			Note:    make(color.FgCyan, color.Bold),
		},
		dim:  make(color.FgBlue),
		loud: make(color.Bold),
	}
}

func (s style) severity(sev Severity, text string) string { return s.marks[sev].Sprint(text) }
func (s style) gutter(text string) string                 { return s.dim.Sprint(text) }
func (s style) bold(text string) string                   { return s.loud.Sprint(text) }
