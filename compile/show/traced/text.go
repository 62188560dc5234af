// Package traced shows where something comes from and where it went. It computes nothing.
package traced

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/book/identity"
	"newmake/compile/book/trace"
	"newmake/compile/show/columns"
	"newmake/compile/show/identified"
	"newmake/lang/diag"
)

// Text writes a trace.
func Text(w io.Writer, t *identity.Traced, bold bool) error {
	p := columns.Writer{Bold: bold}
	for _, s := range t.Of {
		p.Strong(diag.Safe(headed(s)))
		if said := strings.Join(s.Says, "; "); said != "" {
			p.Para(2, 2, diag.Safe(said))
		}
	}
	for _, i := range t.Is {
		p.Heading("WHAT IT IS")
		identified.Write(&p, i, 2)
	}
	steps(&p, "MADE OF", t.MadeOf)
	steps(&p, "WENT INTO", t.WentInto)
	if len(t.MadeOf)+len(t.WentInto) == 0 {
		p.Para(0, 0, "Nothing is written of what it is made of, or of what became of it.")
	}
	broken(&p, "WHERE THE CHAIN IS BROKEN", t.Broken, false)
	broken(&p, "WHAT MAY HOLD IT TOO", t.Broken, true)
	p.Gap()
	p.Para(0, 0, "This follows what is written, and not how much: whatever went in is in it. Of a tank all counts that had gone in before.")
	_, err := io.WriteString(w, strings.TrimLeft(p.String(), "\n"))
	return err
}

func steps(p *columns.Writer, title string, all []trace.Step) {
	if len(all) == 0 {
		return
	}
	p.Heading(title)
	for _, s := range all {
		at := 2 * s.Depth
		line := headed(s)
		if said := strings.Join(s.Says, "; "); said != "" && !s.Again {
			line += ": " + said
		}
		if s.Again {
			line += ", as above"
		}
		p.Para(min(at, 24), min(at, 24)+4, diag.Safe(line))
	}
}

// headed is a thing with its day: cask LH-0011, filled 2026-03-13.
func headed(s trace.Step) string {
	name := string(s.Kind) + " " + s.Name
	if s.Name == "" {
		name = string(s.Kind) + " without a code"
	}
	switch {
	case s.On == "":
		return name
	case s.Kind == trace.Cask:
		return name + ", filled " + s.On
	}
	return name + ", " + s.On
}

func broken(p *columns.Writer, title string, all []trace.Break, may bool) {
	begun := false
	for _, b := range all {
		if b.May != may {
			continue
		}
		if !begun {
			p.Heading(title)
			begun = true
		}
		where := ""
		if b.File != "" {
			where = fmt.Sprintf(" (%s:%d)", b.File, b.Line)
		}
		p.Para(2, 4, diag.Safe(fmt.Sprintf("%s %s: %s%s", b.Kind, b.Name, b.What, where)))
		p.Para(4, 6, diag.Safe("write: "+toWrite(b)))
	}
}

// toWrite is a line to write, and where.
func toWrite(b trace.Break) string {
	if b.In == "" {
		return b.Mend
	}
	return b.Mend + ", " + b.In
}
