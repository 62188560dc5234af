package lsp

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/testflag"
)

// ferry opens the example's batch, with words put in the place of others.
func ferry(t *testing.T, capabilities object, change ...string) (e *editor, uri, text string) {
	t.Helper()
	path := filepath.Join(houseAt(t, "house"), "ferry-landing.batch")
	text = strings.NewReplacer(change...).Replace(textOf(t, path))
	e = opened(t, capabilities)
	e.open(uriOf(path), text)
	return e, uriOf(path), text
}

// after is the place behind some words of a text.
func behind(t *testing.T, text, words string) position {
	t.Helper()
	i := strings.Index(text, words)
	require.GreaterOrEqual(t, i, 0, words)
	before := text[:i+len(words)]
	line := before[strings.LastIndex(before, "\n")+1:]
	return position{strings.Count(before, "\n"), len(utf16.Encode([]rune(line)))}
}

func atPlace(uri string, p position) object { return at(uri, p.Line, p.Character) }

func TestFormatting(t *testing.T) {
	e, uri, text := ferry(t, object{})
	assert.Empty(t, get[[]textEdit](e, "textDocument/formatting", at(uri, 0, 0)), "it is laid out")
	e.change(uri, strings.Replace(text, "rest     45 min", "rest 45     min", 1))
	edits := get[[]textEdit](e, "textDocument/formatting", at(uri, 0, 0))
	require.Len(t, edits, 1)
	assert.Equal(t, text, edits[0].NewText)
	e.change(uri, strings.Replace(text, "}", "", 1))
	answer, err := e.ask("textDocument/formatting", at(uri, 0, 0))
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer), "a text with a mistake in it is left alone")
}

func TestHover(t *testing.T) {
	e, uri, text := ferry(t, object{})
	for words, want := range map[string]string{
		"    hea":               "TEMP",
		"to 190":                "87.8 C",
		"270":                   "1,022 L",
		"78..8":                 "25.6 C to 31.1 C",
		"pitch  distillers-y":   "newmake library distillers-yeast",
		`mash in "Copper ket`:   "holds",
		`at        "Lantern `:   "elevation",
		"standard  straight-bo": "newmake library straight-bourbon",
		"120 pro":               "twice the percentage by volume",
	} {
		h := get[hover](e, "textDocument/hover", atPlace(uri, behind(t, text, words)))
		assert.Contains(t, h.Contents.Value, want, words)
	}
	answer, err := e.ask("textDocument/hover", at(uri, 0, 3))
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer), "a comment")
}

// A house that counts in litres reads the library so.
func TestHoverInLitres(t *testing.T) {
	path := filepath.Join(t.TempDir(), "grey-creel.batch")
	require.NoError(t, os.CopyFS(filepath.Dir(path), os.DirFS("../../../../examples/herring-stair")))
	e, text := opened(t, object{}), textOf(t, path)
	e.open(uriOf(path), text)
	h := get[hover](e, "textDocument/hover", atPlace(uriOf(path), behind(t, text, "    two-row-m")))
	assert.Contains(t, h.Contents.Value, "15.4 kg")
	assert.NotRegexp(t, `\d (?:lb|gal|F|proof)\b`, h.Contents.Value)
}

func labels(items []completionItem) []string {
	out := make([]string, len(items))
	for i, it := range items {
		out[i] = it.Label
	}
	return out
}

func TestCompletion(t *testing.T) {
	for _, c := range []struct {
		name, was, is, behind string
		want, not             []string
	}{
		{"words of a block", "    pitch  distillers-yeast 0.6 g/L\n", "    pi\n", "    pi", []string{"pitch", "hold", "dose"}, []string{"batch", "rest"}},
		{"declarations", "# A variant states", "ba\n# A variant states", "\nba", []string{"batch", "plant", "run"}, []string{"mash"}},
		{"names of grains", "add      corn", "add      c", "add      c", []string{"corn", "oats"}, []string{"distillers-yeast"}},
		{"grains of a bill", "    corn             68 %", "    c", "    c", []string{"corn"}, []string{"distillers-yeast"}},
		{"vessels", `mash in "Copper kettle"`, "mash in ", "mash in ", []string{"Copper kettle"}, nil},
		{"plants", `at        "Lantern Hollow"`, `at "La`, `at "La`, []string{"Lantern Hollow"}, nil},
		{"what a batch varies", `from "Ferry Landing" {`, `from {`, `more rye" from `, []string{"Toll Road"}, []string{"Copper kettle"}},
		{"units", "rest     45 min", "rest     45 ", "rest     45 ", []string{"min", "h"}, []string{"gal", "F"}},
		{"units of a temperature", "heat     to 190 F", "heat     to 190 ", "heat     to 190 ", []string{"F", "C"}, []string{"min"}},
		{"words in a line", "heat     to 190 F", "heat ", "heat ", []string{"to"}, nil},
		{"words of the vocabulary in a note", "# A variant states", "tasting of hearts of \"26-01\" on 2026-04-01 {\n  nose 3 of 5 \"corn bread, va\"\n}\n# A variant states", "corn bread, va", []string{"vanilla", "pear drops"}, []string{"corn-steep", "nose"}},
		{"no such words beside a name", "# A variant states", "tasting of hearts of \"26-01\" on 2026-04-01 {\n  by \"va\"\n}\n# A variant states", "  by \"va", nil, []string{"vanilla"}},
		{"below a broken line", "pitch  distillers-yeast 0.6 g/L\n    hold   78..88 F", "pitch (((\n    hold   78..88 F\n    f", "88 F\n    f", []string{"for", "hold"}, nil},
	} {
		e, uri, text := ferry(t, object{}, c.was, c.is)
		got := labels(get[[]completionItem](e, "textDocument/completion", atPlace(uri, behind(t, text, c.behind))))
		assert.Subset(t, got, c.want, c.name)
		for _, no := range c.not {
			assert.NotContains(t, got, no, c.name)
		}
	}
}

// TestSnippets: an editor that takes snippets is given whole lines, another words.
func TestSnippets(t *testing.T) {
	for snippets, want := range map[bool]string{true: "ferment ${1:in any fermenter} {\n\t$0\n\\}", false: "ferment"} {
		e, uri, text := ferry(t, object{"textDocument": object{"completion": object{"completionItem": object{"snippetSupport": snippets}}}}, "  ferment in", "  fer\n  ferment in")
		found := false
		for _, it := range get[[]completionItem](e, "textDocument/completion", atPlace(uri, behind(t, text, "  fer"))) {
			if it.Label == "ferment" {
				found = true
				assert.Equal(t, want, it.TextEdit.NewText)
				assert.Equal(t, 3, it.TextEdit.Range.End.Character-it.TextEdit.Range.Start.Character, "it takes the place of what was begun")
			}
		}
		assert.True(t, found)
	}
}

func TestDefinitionAndReferences(t *testing.T) {
	e, uri, text := ferry(t, object{})
	house := strings.Replace(uri, "ferry-landing", "house", 1)
	for words, want := range map[string]string{
		`mash in "Copper`:                    house,
		`at        "Lantern`:                 house,
		`"Ferry Landing, more rye" from "Fe`: uri,
	} {
		got := get[[]location](e, "textDocument/definition", atPlace(uri, behind(t, text, words)))
		if assert.Len(t, got, 1, words) {
			assert.Equal(t, want, got[0].URI)
		}
	}
	assert.Empty(t, get[[]location](e, "textDocument/definition", atPlace(uri, behind(t, text, "add      co"))), "it is of the built-in library")

	ask := atPlace(uri, behind(t, text, `batch "Ferry`))
	ask["context"] = object{"includeDeclaration": true}
	all := get[[]location](e, "textDocument/references", ask)
	ask["context"] = object{"includeDeclaration": false}
	used := get[[]location](e, "textDocument/references", ask)
	assert.Len(t, all, len(used)+1)
	files := map[string]bool{}
	for _, l := range used {
		files[filepath.Base(l.URI)] = true
	}
	assert.True(t, files["ferry-landing.batch"], "the variant")
	assert.True(t, files["2026.batch"], "the runs")
}

func TestSymbolsAndFolds(t *testing.T) {
	e, uri, text := ferry(t, object{})
	symbols := get[[]documentSymbol](e, "textDocument/documentSymbol", at(uri, 0, 0))
	require.Len(t, symbols, 2)
	assert.Equal(t, "Ferry Landing", symbols[0].Name)
	var below []string
	for _, y := range symbols[0].Children {
		below = append(below, y.Name)
		assert.False(t, before(y.SelectionRange.Start, y.Range.Start) || before(y.Range.End, y.SelectionRange.End), "the protocol wants one in the other")
	}
	assert.Equal(t, []string{"bill", "mash", "ferment", "strip", "spirit", "cask"}, below)
	lines := strings.Split(text, "\n")
	kinds := map[string]int{}
	for _, f := range get[[]foldingRange](e, "textDocument/foldingRange", at(uri, 0, 0)) {
		kinds[f.Kind]++
		assert.Less(t, f.StartLine, f.EndLine)
		if f.Kind == "" {
			assert.Contains(t, lines[f.StartLine], "{")
			assert.Equal(t, "}", strings.TrimSpace(lines[f.EndLine+1]))
		}
	}
	assert.Positive(t, kinds[""])
	assert.Positive(t, kinds["comment"])
}

// TestActions: a fix that leaves no doubt is preferred, a guess is only offered; made,
// it mends the text.
func TestActions(t *testing.T) {
	e, uri, text := ferry(t, object{}, "rest     20 min", "rest     20 minuts")
	p := e.until(uri, func(p publishParams) bool { return len(p.Diagnostics) > 0 })
	got := get[[]codeAction](e, "textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": p.Diagnostics[0].Range, "context": object{"diagnostics": []object{}}})
	require.NotEmpty(t, got)
	edit := got[0].Edit.Changes[uri][0]
	src := diag.NewSource("", []byte(text))
	mended := text[:units{}.offset(src, false, edit.Range.Start)] + edit.NewText + text[units{}.offset(src, false, edit.Range.End):]
	e.change(uri, mended)
	e.until(uri, silent)
	none := get[[]codeAction](e, "textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": p.Diagnostics[0].Range})
	assert.Empty(t, none)
}

func whole(uri string) object {
	return object{"textDocument": object{"uri": uri}, "range": span{End: position{Line: 100_000}}}
}

// TestHints: predictions stand beside their lines, and are those of the plan.
func TestHints(t *testing.T) {
	e, uri, text := ferry(t, object{"workspace": object{"inlayHint": object{"refreshSupport": true}}})
	hints := get[[]inlayHint](e, "textDocument/inlayHint", whole(uri))
	lines := strings.Split(text, "\n")
	said := map[string]string{}
	for _, h := range hints {
		word, _, _ := strings.Cut(strings.TrimSpace(lines[h.Position.Line]), " ")
		said[word] = h.Label // of the last such line
	}
	assert.Regexp(t, `^\d+\.\d lb$`, said["corn"], "a share as a weight")
	assert.Regexp(t, `^\d\d:\d\d, 1\d\d F, 1\.0\d\d SG$`, said["rest"], "the end of a step")
	assert.Regexp(t, `^original gravity 1\.0\d\d SG$`, said["ferment"])
	assert.Regexp(t, `^4\d\.\d gal at 1\d\d\.\d proof`, said["hearts"])
	assert.Equal(t, "1 cask", said["fill"])
	assert.Contains(t, said["batch"], "; ", "the variant has them at its first line")
	assert.Equal(t, "workspace/inlayHint/refresh", <-e.told)

	e.change(uri, strings.Replace(text, "add      corn", "add      korn", 1))
	assert.Empty(t, get[[]inlayHint](e, "textDocument/inlayHint", whole(uri)), "nothing is planned of a text with errors")
}

// TestStaleHints: hints of a text that has changed since are not given, and an editor
// that no longer wants them is told so.
func TestStaleHints(t *testing.T) {
	e, uri, text := ferry(t, object{})
	stale, cancelledOnes, answered := 0, 0, 0
	for i := range 40 {
		waiter, err := e.conn.DispatchCall(t.Context(), "textDocument/inlayHint", whole(uri))
		require.NoError(t, err)
		if i%2 == 0 {
			e.change(uri, strings.Replace(text, "rest     45 min", "rest     "+strings.Repeat("4", i%2+1)+"5 min", 1))
		} else {
			// The identifiers of the package's client count up from 0, notifications not among them.
			e.notify("$/cancelRequest", object{"id": i + 1})
		}
		var raw json.RawMessage
		switch err := waiter.Wait(t.Context(), &raw); {
		case err == nil:
			answered++
		case code(t, err) == contentModified:
			stale++
		case code(t, err) == cancelled:
			cancelledOnes++
		default:
			t.Fatal(err)
		}
	}
	assert.Positive(t, stale)
	assert.Positive(t, cancelledOnes)
	assert.Equal(t, 40, stale+cancelledOnes+answered)
}

// TestEveryPlace asks for everything at every place of a text that is broken in the
// middle: a fault would fail the test.
func TestEveryPlace(t *testing.T) {
	e, uri, text := ferry(t, object{}, "rest     45 min", "rest }{ \"45 min", "at 58 F", "at 5°𝛼")
	for line, words := range strings.Split(text, "\n") {
		if line%testflag.Every(4) != 0 && !strings.Contains(words, "}{") && !strings.Contains(words, "𝛼") {
			continue
		}
		for _, column := range []int{0, 3, 7, 12, 20, len(words), len(words) + 5} {
			for _, method := range []string{"hover", "completion", "definition", "references", "prepareRename", "signatureHelp"} {
				_, err := e.ask("textDocument/"+method, at(uri, line, column))
				if err != nil { // of a name of the library
					assert.EqualValues(t, jsonrpc2.CodeInvalidParams, code(t, err))
					assert.Equal(t, "prepareRename", method)
				}
			}
		}
	}
}

func TestDeletedHouse(t *testing.T) {
	e, uri, _ := ferry(t, object{})
	e.until(uri, silent)
	path, _ := pathOf(uri)
	require.NoError(t, os.RemoveAll(filepath.Dir(path)))
	e.notify("textDocument/didSave", object{"textDocument": object{"uri": uri}})
	_, err := e.ask("textDocument/hover", at(uri, 10, 3))
	require.NoError(t, err)
	_, err = e.ask("shutdown", nil)
	require.NoError(t, err)
}

// TestSemanticTokens: tokens come in order, none over another, and each is of the sort
// that it is by its block.
func TestSemanticTokens(t *testing.T) {
	e, uri, text := ferry(t, object{})
	lines := strings.Split(text, "\n")
	data := get[semanticTokens](e, "textDocument/semanticTokens/full", at(uri, 0, 0)).Data
	require.Zero(t, len(data)%5)
	sorts := map[string]string{}
	line, column := 0, 0
	for i := 0; i < len(data); i += 5 {
		if data[i] > 0 {
			line, column = line+data[i], 0
		}
		column += data[i+1]
		word := string(utf16.Decode(utf16.Encode([]rune(lines[line]))[column : column+data[i+2]]))
		sort := tokenTypes[data[i+3]]
		if data[i+4] == 1 {
			sort += " declared"
		}
		if data[i+3] == 5 {
			continue
		}
		sorts[word] = sort
	}
	for word, want := range map[string]string{
		"rest": "keyword", "to": "modifier", "corn": "variable", "190": "number", "F": "type", `"Ferry Landing"`: "variable",
		`"Ferry Landing, more rye"`: "variable declared", `"Copper kettle"`: "variable", "batch": "keyword", "%": "type",
	} {
		assert.Equal(t, want, sorts[word], word)
	}
}

func TestSignatureHelp(t *testing.T) {
	e, uri, text := ferry(t, object{}, "rest     45 min", "rest     ")
	got := get[signatureHelp](e, "textDocument/signatureHelp", atPlace(uri, behind(t, text, "rest     ")))
	require.Len(t, got.Signatures, 1)
	s := got.Signatures[0]
	require.NotEmpty(t, s.Parameters)
	slot := s.Parameters[got.ActiveParameter].Label
	assert.Equal(t, "DURATION", s.Label[slot[0]:slot[1]])
	answer, err := e.ask("textDocument/signatureHelp", at(uri, 0, 0))
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer))
}

// apply makes the edits of an answer in a house on the disk.
func apply(t *testing.T, edit workspaceEdit) {
	t.Helper()
	for uri, edits := range edit.Changes {
		path, ok := pathOf(uri)
		require.True(t, ok)
		text := textOf(t, path)
		src := diag.NewSource("", []byte(text))
		for i := len(edits) - 1; i >= 0; i-- {
			r := edits[i].Range
			text = text[:units{}.offset(src, false, r.Start)] + edits[i].NewText + text[units{}.offset(src, false, r.End):]
		}
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
}

func rename(uri string, p position, to string) object {
	o := atPlace(uri, p)
	o["newName"] = to
	return o
}

// TestRename: a name changes in all of the house, and the house is as good as it was.
func TestRename(t *testing.T) {
	e, uri, text := ferry(t, object{})
	batch := behind(t, text, `batch "Ferry`)
	assert.Equal(t, "Ferry Landing", get[renameable](e, "textDocument/prepareRename", atPlace(uri, batch)).Placeholder)
	edit := get[workspaceEdit](e, "textDocument/rename", rename(uri, batch, "Mill Race"))
	assert.GreaterOrEqual(t, len(edit.Changes), 2, "the runs of the batch too")
	apply(t, edit)
	path, _ := pathOf(uri)
	assert.NotContains(t, textOf(t, path), `"Ferry Landing"`)
	e.change(uri, textOf(t, path))
	e.until(uri, silent)

	vessel := behind(t, text, `mash in "Copper`)
	edit = get[workspaceEdit](e, "textDocument/rename", rename(uri, vessel, "Kettle"))
	apply(t, edit)
	e.change(uri, textOf(t, path))
	e.until(uri, silent)
	house := strings.Replace(path, "ferry-landing", "house", 1)
	assert.Contains(t, textOf(t, house), `"Kettle"`)
}

func TestRenameIsRefused(t *testing.T) {
	e, uri, text := ferry(t, object{})
	for words, c := range map[string]struct{ to, why string }{
		"add      co":    {"maize", "library"},
		`batch "Ferry`:   {"Toll Road", "already"},
		`mash in "Cop`:   {"", "one line"},
		`mash in "Copp`:  {`a "b"`, "without quotes"},
		"rest     45 mi": {"x", "no name"},
	} {
		_, err := e.ask("textDocument/rename", rename(uri, behind(t, text, words), c.to))
		if assert.Error(t, err, words) {
			assert.Contains(t, err.Error(), c.why, words)
		}
	}
	// Of a run it cannot be known whether it is meant wherever its name stands.
	runs := strings.Replace(uri, "ferry-landing.batch", "runs/casks.batch", 1)
	path, _ := pathOf(runs)
	e.open(runs, textOf(t, path))
	first := get[workspaceEdit](e, "textDocument/rename", rename(runs, behind(t, textOf(t, path), `run "23-04`), "27-01"))
	assert.Len(t, first.Changes, 1, "nothing else speaks of the first")
	runs = strings.Replace(uri, "ferry-landing.batch", "runs/2026.batch", 1)
	path, _ = pathOf(runs)
	e.open(runs, textOf(t, path))
	_, err := e.ask("textDocument/rename", rename(runs, behind(t, textOf(t, path), `run "26-02`), "27-02"))
	if assert.Error(t, err) {
		assert.Contains(t, err.Error(), "by hand")
	}
}

// TestDeclare: what nothing declares can be declared from where it is used.
func TestDeclare(t *testing.T) {
	for _, c := range []struct{ was, is, behind, label string }{
		{`mash in "Copper kettle"`, `mash in "Tin kettle"`, `mash in "Tin`, "like"},
		{"    corn             68 %", "    blue-corn        68 %", "    blue-co", "house.batch"},
	} {
		e, uri, text := ferry(t, object{}, c.was, c.is)
		e.until(uri, func(p publishParams) bool { return len(p.Diagnostics) > 0 })
		p := behind(t, text, c.behind)
		found := false
		for _, a := range get[[]codeAction](e, "textDocument/codeAction", object{"textDocument": object{"uri": uri}, "range": span{p, p}}) {
			if !strings.HasPrefix(a.Title, "declare") {
				continue
			}
			found = true
			assert.Contains(t, a.Title, c.label)
			house := strings.Replace(uri, "ferry-landing", "house", 1)
			require.Len(t, a.Edit.Changes[house], 1)
			apply(t, a.Edit)
			e.notify("textDocument/didSave", object{"textDocument": object{"uri": uri}})
			// Only the step that still adds corn may be at fault now. What was said
			// before the save may come first.
			e.until(uri, func(p publishParams) bool {
				return !slices.ContainsFunc(p.Diagnostics, func(d diagnostic) bool {
					return strings.Contains(d.Message, "Tin kettle") || strings.Contains(d.Message, "no grain")
				})
			})
		}
		assert.True(t, found, c.is)
	}
}

func TestLinks(t *testing.T) {
	e, uri, text := ferry(t, object{})
	lines := strings.Split(text, "\n")
	all := get[[]documentLink](e, "textDocument/documentLink", at(uri, 0, 0))
	require.NotEmpty(t, all)
	for _, l := range all {
		assert.Regexp(t, `/house\.batch#L\d+$`, l.Target)
		assert.Contains(t, lines[l.Range.Start.Line], `"`)
	}
}

// TestPull: an editor that fetches what is said of the files it holds is not told of
// them as well, and of the other files it is.
func TestPull(t *testing.T) {
	path := filepath.Join(houseAt(t, "house"), "ferry-landing.batch")
	uri := uriOf(path)
	text := strings.Replace(textOf(t, path), "rest     45 min", "rest     45", 1)
	e := opened(t, object{"textDocument": object{"diagnostic": object{}}, "workspace": object{"diagnostics": object{"refreshSupport": true}}})
	e.open(uri, text)
	ask := object{"textDocument": object{"uri": uri}}
	got := get[report](e, "textDocument/diagnostic", ask)
	assert.Equal(t, "full", got.Kind)
	require.NotEmpty(t, got.Items)
	assert.Equal(t, "NM0303", got.Items[0].Code)
	ask["previousResultId"] = got.ResultID
	if again := get[report](e, "textDocument/diagnostic", ask); again.ResultID == got.ResultID {
		assert.Equal(t, "unchanged", again.Kind)
		assert.Empty(t, again.Items)
	}
	e.until(uri, silent)
	assert.Equal(t, "workspace/diagnostic/refresh", <-e.told)
	e.change(uri, textOf(t, path))
	assert.Empty(t, get[report](e, "textDocument/diagnostic", ask).Items)

	// The house's own file is not held: it is told of.
	house := strings.Replace(path, "ferry-landing", "house", 1)
	require.NoError(t, os.WriteFile(house, []byte(strings.Replace(textOf(t, house), "elevation", "elevatoin", 1)), 0o644))
	e.notify("textDocument/didSave", object{"textDocument": object{"uri": uri}})
	e.until(uriOf(house), func(p publishParams) bool { return len(p.Diagnostics) > 0 })
}

func TestLensesAndCommands(t *testing.T) {
	root := houseAt(t, "house")
	git := func(args ...string) {
		cmd := exec.Command("git", append([]string{"-C", root, "-c", "user.name=t", "-c", "user.email=t@example.org"}, args...)...)
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
	}
	git("init", "-q")
	git("add", "-A")
	git("commit", "-q", "-m", "as it was")
	path := filepath.Join(root, "ferry-landing.batch")
	uri := uriOf(path)
	e := opened(t, object{"window": object{"showDocument": object{"support": true}}})
	e.open(uri, textOf(t, path))
	titles := func() map[string]bool {
		out := map[string]bool{}
		for _, l := range get[[]codeLens](e, "textDocument/codeLens", at(uri, 0, 0)) {
			out[l.Command.Title] = true
		}
		return out
	}
	got := titles()
	assert.True(t, got["plan"] && got["print"] && got["since the last commit: hearts as they were"], "%v", got)
	e.change(uri, strings.Replace(textOf(t, path), "to 190 F", "to 160 F", 1))
	changed := false
	for title := range titles() {
		changed = changed || strings.HasPrefix(title, "since the last commit: hearts -")
	}
	assert.True(t, changed, "corn cooked cool costs hearts: %v", titles())

	plan := get[string](e, "workspace/executeCommand", object{"command": "newmake.plan", "arguments": []string{uri, "Ferry Landing"}})
	assert.Contains(t, plan, "Ferry Landing")
	assert.Contains(t, get[string](e, "workspace/executeCommand", object{"command": "newmake.sheet", "arguments": []string{uri, "Ferry Landing"}}), "<!DOCTYPE html>")
	assert.Contains(t, get[string](e, "workspace/executeCommand", object{"command": "newmake.explain", "arguments": []string{uri, "NM0303"}}), "NM0303")
	shown := 0
	for range 3 {
		if <-e.told == "window/showDocument" {
			shown++
		}
	}
	assert.Equal(t, 3, shown)
	_, err := e.ask("workspace/executeCommand", object{"command": "newmake.brew"})
	assert.EqualValues(t, -32602, code(t, err))
	answer, err := e.ask("workspace/executeCommand", object{"command": "newmake.plan", "arguments": []string{uri, "No such batch"}})
	require.NoError(t, err)
	assert.Equal(t, "null", string(answer))
}

// TestOdds: a promise of so many runs has its odds beside it once they were drawn.
func TestOdds(t *testing.T) {
	e, uri, text := ferry(t, object{"workspace": object{"inlayHint": object{"refreshSupport": true}}}, "promise  casks 1\n", "promise  casks 1 in 9 of 10\n")
	assert.Equal(t, "workspace/inlayHint/refresh", <-e.told)
	line := behind(t, text, "promise  casks").Line
	said := ""
	for _, h := range get[[]inlayHint](e, "textDocument/inlayHint", whole(uri)) {
		if h.Position.Line == line {
			said = h.Label
		}
	}
	assert.Regexp(t, `in 10: (kept|broken|too close to say)$`, said)
}

// TestCommandsOfNoHouse: an answer comes, and the conversation goes on.
func TestCommandsOfNoHouse(t *testing.T) {
	e := opened(t, object{"window": object{"showDocument": object{"support": true}}})
	for _, args := range [][]string{{"", "corn"}, {}, {"untitled:1", "corn"}, {"file:///nowhere/x.batch", "corn"}} {
		assert.Contains(t, get[string](e, "workspace/executeCommand", object{"command": "newmake.explain", "arguments": args}), " ")
		answer, err := e.ask("workspace/executeCommand", object{"command": "newmake.plan", "arguments": args})
		require.NoError(t, err)
		assert.Equal(t, "null", string(answer))
	}
	_, err := e.ask("shutdown", nil)
	require.NoError(t, err)
}

// TestLongLine: the time that tokens take goes with the length of a line, not with its
// square, which took minutes here.
func TestLongLine(t *testing.T) {
	e, uri, text := ferry(t, object{})
	e.change(uri, text+strings.Repeat("batch "+strings.Repeat(`"a" `, 16_000)+"\n", 10))
	assert.NotEmpty(t, get[semanticTokens](e, "textDocument/semanticTokens/full", at(uri, 0, 0)).Data)
}
