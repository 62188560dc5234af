package reference

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/testflag"
)

const path = "../REFERENCE.md"

// TestDocumentsAreFresh: the files are what the tables give now.
func TestDocumentsAreFresh(t *testing.T) {
	for path, made := range map[string]func() string{path: Markdown, "../UNITS.md": Units, "../CODES.md": Codes, "../GLOSSARY.md": Glossary, "../CHEATSHEET.md": CheatSheet, "../CHEATSHEET.html": PrintedSheet} {
		want := made()
		if testflag.Update() {
			require.NoError(t, os.WriteFile(path, []byte(want), 0o644))
		}
		got, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(want, string(got)), "%s is stale: go test ./lang/... -update", path)
		require.Equal(t, want, made(), "the same twice")
	}
}

// TestContents: each entry leads to a heading that is there, and each heading has one.
func TestContents(t *testing.T) {
	text := Markdown()
	entries := regexp.MustCompile(`(?m)^- \[(.*)\]\(#(.*)\)$`).FindAllStringSubmatch(text, -1)
	headings := regexp.MustCompile("(?m)^## (.*)$").FindAllStringSubmatch(regexp.MustCompile("(?ms)^```.*?^```$").ReplaceAllString(text, ""), -1)
	require.Len(t, entries, len(headings))
	for i, h := range headings {
		require.Equal(t, h[1], entries[i][1])
		require.Equal(t, strings.ReplaceAll(strings.ToLower(h[1]), " ", "-"), entries[i][2])
	}
}

// mostLines is what a page holds in two columns of small print.
const mostLines = 180

// TestCheatSheetIsOnePage: it is to hang on a wall.
func TestCheatSheetIsOnePage(t *testing.T) {
	lines := strings.Split(CheatSheet(), "\n")
	require.LessOrEqual(t, len(lines), mostLines)
}

// TestReferenceIsWhole: every line of the language, every value and every unit
// is in it.
func TestReferenceIsWhole(t *testing.T) {
	text := strings.Join(strings.Fields(Markdown()+Units()), " ")
	var see func(b *schema.Block)
	see = func(b *schema.Block) {
		for _, f := range b.Lines() {
			require.Contains(t, text, strings.Join(strings.Fields(f.Form()), " "), f.Name)
			require.Contains(t, text, strings.TrimSuffix(f.Doc, "."), f.Name)
			for _, l := range f.Bounds(quantity.Both) {
				require.Contains(t, text, l.Text+"; "+l.Reason, f.Name)
			}
			if f.Default != "" {
				require.Contains(t, text, "eft out: "+f.Default+".", f.Name)
			}
			if f.Block != nil {
				see(f.Block)
			}
		}
	}
	see(schema.Language)
	for _, s := range schema.SlotTypes {
		require.Contains(t, text, "| "+s.Name+" | "+s.Say+" |")
	}
	for _, u := range quantity.All() {
		require.Contains(t, text, "| `"+u.Name+"` |")
	}
}

// TestConnectives: the list is the parser's own.
func TestConnectives(t *testing.T) {
	source, err := os.ReadFile("../number.go")
	require.NoError(t, err)
	body := regexp.MustCompile(`(?s)func IsConnective.*?\n}`).FindString(string(source))
	var want []string
	for _, m := range regexp.MustCompile(`"([a-z]+)"`).FindAllStringSubmatch(body, -1) {
		want = append(want, m[1])
	}
	got := connectives()
	slices.Sort(want)
	slices.Sort(got)
	require.NotEmpty(t, want)
	require.Equal(t, want, got)
}
