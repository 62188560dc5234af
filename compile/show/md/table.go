package md

import "strings"

// Escape is text that Markdown takes as text: a mark that starts something
// stands behind a backslash (CommonMark 0.31, 2.4), those of HTML by name. A
// mention is broken up by a word joiner, so that nobody is called.
func Escape(s string) string { return escapes.Replace(s) }

var escapes = strings.NewReplacer(
	"\\", "\\\\", "`", "\\`", "*", "\\*", "_", "\\_", "[", "\\[", "]", "\\]", "|", "\\|", "~", "\\~", "#", "\\#",
	"!", "\\!", "$", "\\$", "<", "&lt;", ">", "&gt;", "&", "&amp;", "@", "@\u2060", "://", ":\u2060//", "www.", "www\u2060.",
)

// Table is rows as a table; the first is the head. Columns after the first are
// numbers, flush right, if right is set.
func Table(right bool, rows ...[]string) string {
	var b strings.Builder
	for i, r := range rows {
		b.WriteString("| " + strings.Join(r, " | ") + " |\n")
		if i == 0 {
			rule := strings.Repeat("|---", len(r)) + "|"
			if right {
				rule = "|---" + strings.Repeat("|---:", len(r)-1) + "|"
			}
			b.WriteString(rule + "\n")
		}
	}
	b.WriteByte('\n')
	return b.String()
}
