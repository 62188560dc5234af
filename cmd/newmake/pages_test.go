package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/explain"
	"newmake/lang/quantity"
	"newmake/lang/testflag"
)

// TestPages: what a page calls wrong gives the page's code, and on its own lines
// no other but those it names; what follows from it elsewhere in the batch may be
// warned of. What a page calls right gives no error and not that code.
//
// So it is of the examples as a house in litres is shown them.
func TestPages(t *testing.T) {
	t.Run("as written", func(t *testing.T) { tryPages(t, explain.Pages(), 1) })
	t.Run("in litres", func(t *testing.T) { tryPages(t, explain.PagesFor(quantity.SI), testflag.Every(12)) })
}

func tryPages(t *testing.T, pages []explain.Page, every int) {
	for i, p := range pages {
		if p.Sort != explain.OfCode || i%every != 0 {
			continue
		}
		t.Run(p.Name, func(t *testing.T) {
			t.Parallel()
			wrong, right, usual := 0, 0, false
			row, _ := diag.Lookup(diag.Code(p.Name))
			for _, b := range p.Body {
				if b.Kind != explain.Code {
					continue
				}
				e, known := explain.ReadInfo(b.Info)
				require.True(t, known, b.Info)
				require.NotEqual(t, "batch", e.Lang, "to the web that is a shell's script; the fence of a recipe says newmake")
				list, own := tryExample(t, e, b.Text)
				switch e.Role {
				case "wrong":
					wrong++
					want := append([]string{p.Name}, e.Also...)
					for _, d := range list {
						if !slices.Contains(want, string(d.Code)) && (own(d) || d.Severity == diag.Error) {
							t.Errorf("%s\nis to give %v and gives\n%v", b.Text, want, said(list))
							break
						}
					}
					require.Subset(t, codes(list), want, "%s\n%s", b.Text, said(list))
					usual = usual || slices.ContainsFunc(list, func(d diag.Diagnostic) bool { return d.Code == row.Code && d.Severity == row.Severity })
				case "right":
					right++
					if list.HasErrors() || slices.Contains(codes(list), p.Name) {
						t.Errorf("%s\nis to be right and gives\n%v", b.Text, said(list))
					}
				default:
					t.Errorf("an example that is neither wrong nor right: %s", b.Info)
				}
			}
			require.True(t, usual || wrong == 0, "its row in lang/diag says %s, and none of its examples brings that about: say it so there, or raise it so", row.Severity)
			why, silent := unsaid[diag.Code(p.Name)]
			require.Equal(t, silent, wrong == 0, "%s", why)
			require.Equal(t, silent, right == 0, "%s", why)
		})
	}
}

// unsaid are the codes that no text brings about, and why. Their pages say it.
var unsaid = map[diag.Code]string{
	diag.CodeLearned:      "it takes a learned.batch beside the house; package front tries it",
	diag.CodeLearnedStale: "as NM1350",
	diag.CodeRewritten:    "it takes a repository; record-bad.txtar tries it",
	diag.CodeNotLaidOut:   "a fault of the formatter",
	diag.CodeRunsAway:     "every number has limits within which it is not known to happen",
	diag.CodeEmptyStep:    "nothing ran off, and much is said of that; TestSaidOfTexts of compile tries it",
	diag.CodeCooledOnBed:  "the house of the pages has a wort cooler",
	diag.CodeCrewShort:    "the work of one batch is laid for a crew of one",
	diag.CodeChangePath:   "of the command line, not of a text",
	diag.CodeChangeValue:  "of the command line, not of a text",
	diag.CodeTried:        "of the command line, not of a text",
	diag.CodeNoSize:       "of the command line, not of a text",
	diag.CodeSizeLimit:    "of the command line, not of a text",
	diag.CodeStaged:       "of the command line, not of a text",
}

func said(list diag.List) string {
	var b bytes.Buffer
	for _, d := range list {
		b.WriteString(d.Header() + "\n    " + d.Help + "\n")
	}
	return b.String()
}

// TestPagesLaidOut: every example of a page or a document stands in the canonical
// layout. With -update it is put in it.
func TestPagesLaidOut(t *testing.T) {
	names, err := filepath.Glob("../../lang/*/pages/*.md")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	names = append(names, "../../lang/reference/top.md", "../../README.md", "../../lang/TOUR.md", "../../DEVELOPERS.md")
	for _, name := range names {
		doc, err := os.ReadFile(name)
		require.NoError(t, err)
		tidy := laidOut(string(doc))
		if testflag.Update() && tidy != string(doc) {
			require.NoError(t, os.WriteFile(name, []byte(tidy), 0o644))
			continue
		}
		require.Empty(t, cmp.Diff(string(doc), tidy), name)
	}
}

// laidOut formats the blocks of the language in a document. A text with errors
// is left alone: the formatter refuses it.
func laidOut(doc string) string {
	for _, b := range explain.Blocks([]byte(doc)) {
		e, _ := explain.ReadInfo(b.Info)
		if b.Kind != explain.Code || e.Lang != "newmake" || strings.TrimSpace(b.Text) == "" {
			continue
		}
		if out, list := lang.Format(diag.NewSource("block", []byte(b.Text))); !list.HasErrors() && string(out) != b.Text {
			doc = strings.Replace(doc, "```"+b.Info+"\n"+b.Text+"```", "```"+b.Info+"\n"+string(out)+"```", 1)
		}
	}
	return doc
}
