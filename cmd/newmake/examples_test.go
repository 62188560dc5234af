package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf16"

	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/book/identity"
	"newmake/compile/book/ledger"
	"newmake/compile/book/trace"
	"newmake/compile/front"
	"newmake/compile/made"
	"newmake/compile/notice"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/explain"
	"newmake/lang/house"
)

// The examples of pages and documents are run: laid into Lantern Hollow's house,
// or into one of their own, checked and computed.

const (
	hollow      = "testdata/pages" // Lantern Hollow, held still
	exampleFile = "example.batch"
	parent      = "Ferry Landing"
)

// lantern is Lantern Hollow's house as a file system that a test may change.
func lantern(t testing.TB) fstest.MapFS {
	fsys := fstest.MapFS{}
	names, err := filepath.Glob(filepath.Join(hollow, "*.batch"))
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		fsys[filepath.Base(name)] = &fstest.MapFile{Data: data}
	}
	return fsys
}

// tryExample gives what is said of an example, and which of it is said of the
// example's own lines.
func tryExample(t testing.TB, e explain.Example, text string) (list diag.List, own func(diag.Diagnostic) bool) {
	if e.Lang == "folder" {
		return runFolder(t, text), func(diag.Diagnostic) bool { return true }
	}
	if e.As == "many" { // more lines than any block has use for
		e.As, text = "", strings.Repeat(text, 1001)
	}
	fsys, file := lantern(t), exampleFile
	switch {
	case e.All:
		file = "house.batch"
		fsys = fstest.MapFS{file: {Data: encode(t, e.As, []byte(text))}}
	case e.In == "plant":
		file = "house.batch"
		fsys[file].Data = plantWith(t, fsys[file].Data, text)
	default:
		fsys[file] = &fstest.MapFile{Data: encode(t, e.As, []byte(within(e.In, text)))}
	}
	h, err := check.LoadFS(fsys, "", check.Options{})
	require.NoError(t, err)
	list = everything(h, func(name string) bool {
		switch {
		case e.All:
			return true
		case len(h.BatchesIn(exampleFile)) == 0: // it changes what the parent leans on
			return name == parent
		}
		return slices.Contains(h.BatchesIn(exampleFile), name)
	})
	return list, func(d diag.Diagnostic) bool {
		if d.At.Src == nil || d.At.Src.Name != file {
			return false
		}
		at := bytes.Index(d.At.Src.Text, []byte(text))
		return at < 0 || d.At.Start >= at && d.At.Start < at+len(text)
	}
}

// everything is what checking and computing say of the batches that are wanted.
func everything(h *check.House, want func(batch string) bool) diag.List {
	list := h.Check()
	for _, number := range h.RunNumbers() {
		if r, _ := h.Run(number); r != nil {
			list = append(list, made.Truly(r)...)
		}
	}
	if texts, said := h.Inventory(); !said.HasErrors() {
		list = append(list, identity.Said(identity.HouseOf(h, texts, ledger.Amounts(h, texts)), func(*trace.Blend) bool { return true })...)
	}
	for _, name := range h.Batches() {
		if !want(name) {
			continue
		}
		if b, checked := h.Batch(name); b != nil {
			_, computed := compile.Compile(b)
			list = append(list, notice.Together(checked, computed)...)
		}
	}
	return list.Dedup()
}

// within puts lines into the block of a variant.
func within(block, text string) string {
	switch block {
	case "":
		return text
	case "batch":
		return fmt.Sprintf("batch \"Example\" from %q {\n%s}\n", parent, text)
	}
	return fmt.Sprintf("batch \"Example\" from %q {\n%s {\n%s}\n}\n", parent, block, text)
}

// plantWith puts lines into a house's plant, in the place of those that begin
// alike.
func plantWith(t testing.TB, house []byte, text string) []byte {
	src := diag.NewSource("house.batch", house)
	file, list := lang.Parse(src)
	require.Empty(t, list)
	added, _ := lang.Parse(diag.NewSource("example", []byte(text)))
	var out strings.Builder
	for _, s := range file.Stmts {
		if s.Items[0].Text != "plant" {
			continue
		}
		at := s.Block.At.Start + 1
		out.Write(src.Text[:at])
		out.WriteString("\n" + text)
		for _, l := range s.Block.Stmts {
			end := l.At.End
			if l.Block != nil {
				end = l.Block.At.End
			}
			if slices.ContainsFunc(added.Stmts, func(a *lang.Stmt) bool { return alike(a, l) }) {
				out.Write(src.Text[at:l.At.Start])
			} else {
				out.Write(src.Text[at:end])
			}
			at = end
		}
		out.Write(src.Text[at:])
	}
	require.NotEmpty(t, out.String())
	return []byte(out.String())
}

// alike reports whether two lines of a plant speak of one thing.
func alike(a, b *lang.Stmt) bool {
	named := func(s *lang.Stmt) string {
		if s.Block == nil || len(s.Items) < 2 {
			return ""
		}
		return s.Items[1].Text
	}
	return a.Items[0].Text == b.Items[0].Text && named(a) == named(b)
}

// encode makes the bytes of an example that no page can show as they are.
func encode(t testing.TB, as string, text []byte) []byte {
	switch as {
	case "":
		return text
	case "latin1":
		var out []byte
		for _, r := range string(text) {
			require.Less(t, r, rune(0x100))
			out = append(out, byte(r))
		}
		return out
	case "utf16":
		out := []byte{0xff, 0xfe}
		for _, u := range utf16.Encode([]rune(string(text))) {
			out = append(out, byte(u), byte(u>>8))
		}
		return out
	case "codes": // <U+202E> is that character
		s := string(text)
		for {
			before, rest, found := strings.Cut(s, "<U+")
			if !found {
				return []byte(s)
			}
			code, after, _ := strings.Cut(rest, ">")
			var r rune
			_, err := fmt.Sscanf(code, "%x", &r)
			require.NoError(t, err)
			s = before + string(r) + after
		}
	case "huge": // the text again and again, past 4 MiB
		return []byte(strings.Repeat(string(text), lang.MaxFileBytes/len(text)+1))
	case "long": // the last line goes on and on
		return append(text[:len(text)-1], []byte(strings.Repeat(" and so on", lang.MaxLineBytes/10)+"\n")...)
	case "many": // the text with another name each time, once too often
		var out []byte
		for i := range house.MostBatches + 1 {
			out = append(out, strings.Replace(string(text), `" from`, fmt.Sprintf(` %d" from`, i), 1)...)
		}
		return out
	case "again": // the text, once more often than is shown
		return []byte("batch \"B\" from \"Ferry Landing\" {\n  cask {\n" + strings.Repeat(string(text), diag.MostSaid+1) + "  }\n}\n")
	case "deep": // the text inside itself
		open, shut, ok := strings.Cut(string(text), "...")
		require.True(t, ok)
		return []byte(strings.Repeat(open, lang.MaxNesting+1) + strings.Repeat(shut, lang.MaxNesting+1))
	}
	t.Fatalf("no way to write a text as %q", as)
	return nil
}

// runFolder makes the files of a listing and checks the first of them: each
// with the text of Lantern Hollow's file of that name, empty if it has none.
func runFolder(t testing.TB, listing string) diag.List {
	dir := t.TempDir()
	first := ""
	for line := range strings.Lines(listing) {
		name, to, isLink := strings.Cut(strings.TrimSpace(line), " -> ")
		if name == "" {
			continue
		}
		if strings.Contains(name, `\`) {
			bytes, err := strconv.Unquote(`"` + name + `"`)
			require.NoError(t, err)
			name = bytes
		}
		at := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(at), 0o755))
		switch text, err := fs.ReadFile(os.DirFS(hollow), path.Base(name)); {
		case isLink:
			require.NoError(t, os.Symlink(filepath.FromSlash(to), at))
		case strings.HasSuffix(name, "|"):
			require.NoError(t, makePipe(strings.TrimSuffix(at, "|")))
		default:
			if err != nil {
				text = nil
			}
			require.NoError(t, os.WriteFile(at, text, 0o644))
		}
		if first == "" {
			first = at
		}
	}
	work, err := front.NewCheck([]front.Place{{Path: first}})
	require.NoError(t, err)
	return work.Run()
}

// codes lists the codes of a list, each once, in order.
func codes(list diag.List) []string {
	var out []string
	for _, d := range list {
		out = append(out, string(d.Code))
	}
	slices.Sort(out)
	return slices.Compact(out)
}
