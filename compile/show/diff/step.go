package diff

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/compare"
	"newmake/lang/diag"
)

// writeStep writes one revision of a history in a few lines: what it is, what it
// changed, and what came of it.
func writeStep(w io.Writer, head string, d *compare.Document, markdown bool) {
	p := &page{}
	if markdown {
		p.Line("- **" + escape(head) + "**")
	} else {
		p.Para(0, 2, diag.Safe(head))
	}
	say := func(s string) {
		if markdown {
			p.Line("  - " + escape(s))
		} else {
			p.Para(2, 4, s)
		}
	}
	shown, loose := parts(d)
	for _, c := range shown {
		var all []string
		for _, e := range c.Edits {
			what := diag.Safe(e.What)
			if e.Kind == compare.Renamed {
				what, _ = words(e)
			}
			all = append(all, what)
		}
		all = append(all, c.Notes...)
		if len(all) > 0 {
			s := strings.Join(all, "; ") + "."
			if len(d.Pairs) > 1 || c.Old.Batch != c.New.Batch {
				s = title(c) + ": " + s
			}
			say(diag.Safe(s))
		}
		say(headline(c))
	}
	for _, s := range loose {
		say(s)
	}
	fmt.Fprint(w, p.String())
}
