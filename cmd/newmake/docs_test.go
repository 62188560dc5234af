package main

import (
	"encoding/json"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/explain"
)

// TestDocuments: every block of the language in a document reads without error
// and stands in the canonical layout; those that say so are checked, or computed,
// in the house that the document's files make (Lantern Hollow, if it has none).
func TestDocuments(t *testing.T) {
	names, err := filepath.Glob("../../lang/explain/pages/term*.md")
	require.NoError(t, err)
	names = append(names, "../../README.md", "../../lang/TOUR.md", "../../DEVELOPERS.md", "../../lang/REFERENCE.md", "../../lang/GLOSSARY.md", "../../lang/CHEATSHEET.md", "CI.md")
	for _, name := range guides {
		names = append(names, "../../"+name)
	}
	computed := 0
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			doc, err := os.ReadFile(name)
			require.NoError(t, err)
			house := fstest.MapFS{}
			for _, b := range explain.Blocks(doc) {
				e, known := explain.ReadInfo(b.Info)
				require.NotEqual(t, "batch", e.Lang, "line %d: to the web that is a shell's script; the fence of a recipe says newmake", b.Line)
				if b.Kind != explain.Code || e.Lang != "newmake" {
					continue
				}
				require.True(t, known, "line %d: %s", b.Line, b.Info)
				src := diag.NewSource(name, []byte(b.Text))
				tidy, list := lang.Format(src)
				require.Empty(t, list, "line %d", b.Line)
				require.Empty(t, cmp.Diff(string(tidy), b.Text), "line %d", b.Line)
				switch {
				case e.File != "":
					house[e.File] = &fstest.MapFile{Data: []byte(b.Text)}
				case e.Role == "plan", e.Role == "check":
					computed += tryDocument(t, house, e, b)
				default:
					require.Contains(t, []string{"", "fragment"}, e.Role, "line %d", b.Line)
				}
			}
		})
	}
	require.NotZero(t, computed, "batches computed")
}

// tryDocument checks a block in the house of its document, to which it then
// belongs, and says how many batches of it were computed.
func tryDocument(t *testing.T, house fstest.MapFS, e explain.Example, b explain.Block) int {
	fsys := house
	if len(house) == 0 {
		fsys = lantern(t)
	}
	name := filepath.Base(t.Name()) + "-" + string(rune('a'+len(house))) + ".batch"
	fsys[name] = &fstest.MapFile{Data: []byte(within(e.In, b.Text))}
	h, err := check.LoadFS(fsys, "", check.Options{})
	require.NoError(t, err)
	list := h.CheckIn(name)
	require.Empty(t, list, "line %d\n%s", b.Line, said(list))
	if e.Role != "plan" {
		return 0
	}
	batches := h.BatchesIn(name)
	require.NotEmpty(t, batches, "line %d", b.Line)
	for _, batch := range batches {
		r, list := h.Batch(batch)
		require.Empty(t, list, "line %d\n%s", b.Line, said(list))
		p, list := compile.Compile(r)
		require.NotNil(t, p)
		require.Empty(t, list, "line %d\n%s", b.Line, said(list))
	}
	return len(batches)
}

// TestDependencyTable: DEVELOPERS.md says of every module that go.mod asks for why
// it earns its place, and of no other.
func TestDependencyTable(t *testing.T) {
	_, err := os.ReadFile("../../go.mod") // so that a result is not taken from before it changed
	require.NoError(t, err)
	out, err := exec.Command("go", "mod", "edit", "-json", "../../go.mod").Output()
	require.NoError(t, err)
	var mod struct {
		Require []struct {
			Path     string
			Indirect bool
		}
	}
	require.NoError(t, json.Unmarshal(out, &mod))
	var want []string
	for _, r := range mod.Require {
		if !r.Indirect {
			want = append(want, strings.TrimPrefix(r.Path, "github.com/"))
		}
	}
	require.NotEmpty(t, want)

	doc, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, table, found := strings.Cut(string(doc), "| module | why it earns its place |\n|---|---|\n")
	require.True(t, found)
	var got []string
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if len(cells) != 4 {
			break
		}
		require.NotEmpty(t, strings.TrimSpace(cells[2]), line)
		for _, m := range strings.Split(cells[1], ",") {
			got = append(got, strings.TrimSpace(m))
		}
	}
	require.ElementsMatch(t, want, got)
}

// TestMap: the map of DEVELOPERS.md has every package, and nothing that is gone. A name
// in a row is a path, or lies beside or below the row's first.
func TestMap(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, chapter, found := strings.Cut(string(doc), "## The map\n")
	require.True(t, found)
	chapter, _, _ = strings.Cut(chapter, "\n## ")
	mapped := map[string]bool{}
	for line := range strings.Lines(chapter) {
		if !strings.HasPrefix(line, "| `") {
			continue
		}
		_, where, _ := strings.Cut(line, "| `")
		first, _, _ := strings.Cut(where, "`")
		require.DirExists(t, filepath.Join("../..", first), "the map has it")
		for i, name := range strings.Split(line, "`") {
			if i%2 == 1 {
				mapped[name], mapped[path.Join(path.Dir(first), name)], mapped[path.Join(first, name)] = true, true, true
			}
		}
	}
	root := os.DirFS("../..")
	err = fs.WalkDir(root, ".", func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil || !d.IsDir():
			return err
		case p != "." && (strings.HasPrefix(d.Name(), ".") || d.Name() == "testdata"):
			return fs.SkipDir
		}
		sources, err := fs.Glob(root, path.Join(p, "*.go"))
		if len(sources) > 0 && !mapped[p] {
			t.Errorf("the map of DEVELOPERS.md has no package %s: a row that says what it is for", p)
		}
		return err
	})
	require.NoError(t, err)
}

// TestArrows: no package imports one of a word that comes after its own on the map, and
// nothing of the language imports what computes.
func TestArrows(t *testing.T) {
	doc, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	_, chapter, _ := strings.Cut(string(doc), "## The map\n")
	chapter, _, _ = strings.Cut(chapter, "### Before them")
	place, words := map[string]int{}, []string{}
	for line := range strings.Lines(chapter) {
		if word, ok := strings.CutPrefix(line, "### "); ok {
			words = append(words, strings.TrimSpace(word))
		}
		cells := strings.Split(line, "|")
		if !strings.HasPrefix(line, "| `") {
			continue
		}
		names := strings.Split(cells[1], "`")
		for i := 1; i < len(names); i += 2 {
			for _, p := range []string{names[i], path.Join(path.Dir(names[1]), names[i]), path.Join(names[1], names[i])} {
				place[p] = len(words)
			}
		}
	}
	require.Len(t, words, 7)
	tried := 0
	err = fs.WalkDir(os.DirFS("../.."), ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join("../..", p), nil, parser.ImportsOnly)
		require.NoError(t, err)
		own, at := path.Dir(p), place[path.Dir(p)]
		for _, i := range f.Imports {
			of, ours := strings.CutPrefix(strings.Trim(i.Path.Value, `"`), "newmake/")
			if !ours {
				continue
			}
			tried++
			if at > 0 && place[of] > at {
				t.Errorf("%s is %s and imports %s, which is %s: the map of DEVELOPERS.md has it the other way round", own, words[at-1], of, words[place[of]-1])
			}
			if strings.HasPrefix(own, "lang/") && strings.HasPrefix(of, "compile") {
				t.Errorf("%s imports %s: the language knows nothing of what computes", own, of)
			}
		}
		return nil
	})
	require.NoError(t, err)
	require.Greater(t, tried, 500)
}
