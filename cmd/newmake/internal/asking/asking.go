// Package asking fills the record of a run by asking for one visit after the other.
package asking

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/recording"
	"newmake/compile/measure"
	"newmake/lang/diag"
)

// Talk is where a person is asked, and where what they said is kept.
type Talk struct {
	In    io.Reader
	Out   io.Writer
	Keep  func(*recording.Page) error // writes the page; it is called after each answer
	Plain bool                        // nothing but ASCII
}

// help is what a person may type; sample is how warm one may be, in the house's unit.
func help(sample string) string {
	return `Type what was read, in the order in which it is asked for: the clock first, then the
values, parted by spaces. "at ` + sample + `" behind a value is the temperature of the sample,
"none" was not read, "-" is left open; at the end stand where it went, to "Tank 1", and
a remark in quotes.
Enter skips a line, "back" takes the last answer back, "stop" ends; nothing is lost.`
}

// Fill asks for every line that has blanks, in the order of the sheet. It gives the
// page as it then is. Each answer is kept before the next is asked for.
func (t Talk) Fill(p *recording.Page) (*recording.Page, error) {
	lines := &answers{Scanner: bufio.NewScanner(t.In)}
	lines.Buffer(nil, 64<<10)
	fmt.Fprintln(t.Out, help(p.Sample()))
	begun := p
	var before []turn // for `back`
	skipped := map[string]bool{}
	all := len(p.Lines())
	for {
		l, n, ok := next(p, skipped)
		if !ok {
			break
		}
		t.ask(p, l, all-n, all)
		typed, more := lines.read()
		switch {
		case !more || typed == "stop":
			t.far(begun, p)
			return p, nil
		case typed == "?" || typed == "help":
			fmt.Fprintln(t.Out, help(p.Sample()))
		case typed == "":
			skipped[key(l)] = true
			before = append(before, turn{skipped: []string{key(l)}})
		case typed == "back":
			if len(before) == 0 {
				fmt.Fprintln(t.Out, "  nothing comes before this")
				continue
			}
			last := before[len(before)-1]
			if last.page != nil {
				if err := t.Keep(last.page); err != nil {
					return p, err
				}
				p = last.page
			}
			for _, k := range last.skipped {
				delete(skipped, k)
			}
			before = before[:len(before)-1]
		default:
			done := turn{page: p}
			if there, ok := p.Elsewhere(l, typed); ok {
				switch answer := t.slipped(l, there, lines); answer {
				case "":
				case "there":
					for _, o := range p.Lines() {
						if o.At.Start >= there.At.Start {
							break
						}
						if k := key(o); !skipped[k] {
							skipped[k], done.skipped = true, append(done.skipped, k)
						}
					}
					l = there
				default: // typed anew
					lines.again(answer)
					continue
				}
			}
			then, err := p.Fill(l, typed)
			if err != nil {
				t.wrong(err)
				continue
			}
			if err := t.Keep(then); err != nil {
				return p, err
			}
			t.doubt(p, then)
			before = append(before, done)
			p = then
		}
	}
	t.far(begun, p)
	return t.casks(p, lines)
}

// turn is an answer, for `back`: the page before it, nil where nothing was kept, and the lines
// that it skipped.
type turn struct {
	page    *recording.Page
	skipped []string
}

// slipped asks if what was typed for a line was meant for one below it: "there", "" to keep it
// where it is, or what is typed in its place.
func (t Talk) slipped(l, there recording.Line, lines *answers) string {
	fmt.Fprintf(t.Out, "  that is far from what %s should say, and near what %s does, below it\n  \"there\" puts it there and leaves open what is before; Enter keeps it here; or type it anew\n> ",
		diag.SafeIn(l.What, t.Plain), diag.SafeIn(there.What, t.Plain))
	typed, _ := lines.read()
	return typed
}

// far says at the end what was kept although it is far from the plan.
func (t Talk) far(begun, p *recording.Page) {
	for i, far := range p.Far(begun) {
		if i == 0 {
			fmt.Fprintln(t.Out, "\nKept, and far from the plan:")
		}
		fmt.Fprintf(t.Out, "  %s\n", diag.SafeIn(far, t.Plain))
	}
}

// casks asks for the casks that were filled.
func (t Talk) casks(p *recording.Page, lines *answers) (*recording.Page, error) {
	for p.TakesCasks() {
		planned, want := "", "volume, tare, gross"
		if due, values := p.Cask(); values != "" {
			planned, want = ", planned "+due[:len("2026-03-03")]+" "+measure.Clock(due), values
		}
		fmt.Fprintf(t.Out, "\na cask that was filled%s (Enter: no more)\n  its serial, %s\n> ", planned, want)
		typed, more := lines.read()
		if !more || typed == "" || typed == "stop" {
			break
		}
		then, err := p.AddCask(typed)
		if err != nil {
			t.wrong(err)
			continue
		}
		if err := t.Keep(then); err != nil {
			return p, err
		}
		p = then
	}
	return p, nil
}

// answers are what a person types, line by line.
type answers struct {
	*bufio.Scanner
	next *string // to be read again
}

func (a *answers) read() (string, bool) {
	if next := a.next; next != nil {
		a.next = nil
		return *next, true
	}
	if !a.Scan() {
		return "", false
	}
	return strings.TrimSpace(a.Text()), true
}

func (a *answers) again(typed string) { a.next = &typed }

// next is the first line with blanks that was not skipped, and how many lines have
// blanks from there on.
func next(p *recording.Page, skipped map[string]bool) (recording.Line, int, bool) {
	lines := p.Lines()
	for i, l := range lines {
		if !skipped[key(l)] {
			return l, len(lines) - i, true
		}
	}
	return recording.Line{}, 0, false
}

// key tells a line from the others whatever is filled in above it.
func key(l recording.Line) string {
	out := l.What
	for _, r := range l.Blanks {
		if r.Blank != nil {
			out += " " + r.Blank.ID
		} else {
			out += " " + string(r.Kind)
		}
	}
	return out
}

// ask shows a line and what should stand on it.
func (t Talk) ask(p *recording.Page, l recording.Line, n, all int) {
	planned := ""
	if b := l.Blanks[0].Blank; b != nil && b.Due != "" {
		planned = ", planned " + measure.Clock(b.Due)
	}
	var want []string
	for _, r := range l.Blanks {
		text := string(r.Kind)
		if r.Blank != nil {
			text = string(r.Blank.Kind)
		}
		if s := p.Should(r); s != "" {
			text += " " + s
		} else {
			text += " in " + p.Unit(r)
		}
		want = append(want, text)
	}
	if l.Goes {
		want = append(want, `to "which tank"`)
	}
	fmt.Fprintf(t.Out, "\n%d of %d  %s%s\n  %s\n> ", n+1, all, diag.SafeIn(l.What, t.Plain), planned, strings.Join(want, ", "))
}

// wrong says why an answer was not taken.
func (t Talk) wrong(err error) {
	var list diag.List
	if !errors.As(err, &list) {
		fmt.Fprintf(t.Out, "  not taken: %s\n", diag.SafeIn(err.Error(), t.Plain))
		return
	}
	for _, d := range list {
		help, _, _ := strings.Cut(d.Help, "\n")
		fmt.Fprintf(t.Out, "  not taken: %s; %s\n", diag.SafeIn(d.Summary, t.Plain), diag.SafeIn(help, t.Plain))
	}
}

// doubt speaks of what is hard to believe, or far from the plan, and was not so before. It is
// kept.
func (t Talk) doubt(was, now *recording.Page) {
	seen := map[string]bool{}
	for _, d := range was.Diags {
		seen[d.Summary] = true
	}
	for _, d := range now.Diags {
		if d.Severity == diag.Warning && !seen[d.Summary] {
			fmt.Fprintf(t.Out, "  kept, but %s (\"back\" takes it back)\n", diag.SafeIn(d.Summary, t.Plain))
		}
	}
	for _, far := range now.Far(was) {
		fmt.Fprintf(t.Out, "  kept, but %s: is that so? (\"back\" takes it back)\n", diag.SafeIn(far, t.Plain))
	}
}
