package chances

import (
	"fmt"
	"io"
	"strings"

	"newmake/compile/ask/odds"
	"newmake/compile/show/md"
)

// Markdown writes an answer for a pull request.
func Markdown(w io.Writer, a *odds.Answer, o Options) error {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("### %s\n", escape(a.Batch))
	line("%s\n", escape(verdict(a)))
	for _, p := range a.Promises {
		stands, says := promise(p, o.Units)
		if stands != "" {
			stands = "**" + stands + "**: "
		}
		line("- %s%s", stands, escape(says))
	}
	if x := a.Beside; x != nil && x.Fills != nil {
		line("- %s, with the same luck, fills %s: %s", escape(x.Batch), casks(x.Casks), x.Fills.Words)
	}
	if a.Change != nil {
		says, _ := change(a, o.Units, "")
		line("- to fill 9 times in 10: %s", escape(says))
	}
	rows := [][]string{{"", "planned", "1 in 20 less", "middle", "1 in 20 more", "unit"}}
	for _, n := range a.Numbers {
		if n.Low == n.High && n.Low == n.Planned || foreign(n.Key, o.Units) {
			continue
		}
		rows = append(rows, []string{escape(n.Name), number(n.Planned, n.Places), number(n.Low, n.Places), number(n.Middle, n.Places), number(n.High, n.Places), escape(n.Unit)})
	}
	line("\n%s", md.Table(true, rows...))
	if s := mainShares(a); s != nil {
		line("What makes the spread of the %s: %s", escape(s.Name), told(s))
		line("")
		for i, x := range s.Of {
			if i < sharesTold {
				line("- %s: %s, of the %s", percent(x.Share), escape(x.Words), x.Owner)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func escape(s string) string { return md.Escape(strings.Join(strings.Fields(s), " ")) }
