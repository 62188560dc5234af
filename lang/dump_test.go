package lang_test

import (
	"fmt"
	"strings"

	"newmake/lang"
)

// dump writes a tree as text: a statement a line, its items by kind, comments
// under the statement that has them.
func dump(f *lang.File) string {
	var b strings.Builder
	dumpStmts(&b, f.Stmts, 0)
	dumpComments(&b, 0, "tail", f.Tail)
	return b.String()
}

func dumpStmts(b *strings.Builder, stmts []*lang.Stmt, depth int) {
	for _, s := range stmts {
		dumpComments(b, depth, "lead", s.Lead)
		b.WriteString(strings.Repeat("  ", depth))
		if s.Bad {
			b.WriteString("BAD ")
		}
		for i, item := range s.Items {
			if i > 0 {
				b.WriteString(" ")
			}
			b.WriteString(dumpItem(item))
		}
		b.WriteString("\n")
		dumpComments(b, depth, "inner", s.Inner)
		if s.Trail != nil {
			dumpComments(b, depth, "trail", []lang.Comment{*s.Trail})
		}
		if s.Block != nil {
			dumpStmts(b, s.Block.Stmts, depth+1)
			dumpComments(b, depth+1, "tail", s.Block.Tail)
			fmt.Fprintf(b, "%send\n", strings.Repeat("  ", depth))
			if s.Block.Trail != nil {
				dumpComments(b, depth, "trail", []lang.Comment{*s.Block.Trail})
			}
		}
	}
}

func dumpComments(b *strings.Builder, depth int, place string, comments []lang.Comment) {
	for _, c := range comments {
		fmt.Fprintf(b, "%s%s %s\n", strings.Repeat("  ", depth), place, strings.TrimRight(c.Text, " \t"))
	}
}

func dumpItem(i lang.Item) string {
	switch i.Kind {
	case lang.Word:
		return i.Text
	case lang.String:
		return fmt.Sprintf("%q", i.Text)
	case lang.Number:
		return fmt.Sprintf("(%s=%g %s)", i.Num, i.Value, i.Unit)
	case lang.Range:
		return fmt.Sprintf("(%s=%g..%g %s)", i.Num, i.Value, i.High, i.Unit)
	case lang.Date:
		return "date:" + i.Text
	case lang.Clock:
		return "clock:" + i.Text
	default:
		return i.Text
	}
}
