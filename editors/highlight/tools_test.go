//go:build editors

package highlight

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
)

// These tests run the editors' own engines over every example, so they want vim,
// node and the packages of editors/test: .ci/editors brings them.

// shown is a file with what an engine shows at each byte of each line.
type shown struct {
	File  string
	Lines [][]string
}

var vimGroups = map[class]string{
	comment: "newmakeComment", text: "newmakeString", date: "newmakeDate", clock: "newmakeTime", numeral: "newmakeNumber",
	unit: "newmakeUnit", dots: "newmakeRange", punctuation: "newmakePunctuation", declaration: "newmakeDeclaration",
	block: "newmakeBlock", step: "newmakeStep", field: "newmakeField", connective: "newmakeConnective", option: "newmakeOption",
	name: "newmakeName",
}

var scopes = map[class]string{
	comment: "comment.line.number-sign", text: "string.quoted.double", date: "constant.other.date", clock: "constant.other.time",
	numeral: "constant.numeric", unit: "keyword.other.unit", dots: "keyword.operator.range", punctuation: "punctuation",
	declaration: "storage.type.declaration", block: "keyword.control.block", step: "support.function.step",
	field: "keyword.other.field", connective: "keyword.operator.word", option: "constant.language.option", name: "variable.other.name",
}

func TestVim(t *testing.T) {
	files := absolute(t, examples(t))
	compare(t, files, vim(t, files), vimGroups, "Error")
}

// TestVimMistakes: what the TextMate grammar's tests call wrong, Vim shows as
// wrong too, and nothing else on those lines.
func TestVimMistakes(t *testing.T) {
	files := absolute(t, []string{"../test/cases/mistakes.batch"})
	data, err := os.ReadFile(files[0])
	require.NoError(t, err)
	groups := vim(t, files)[0].Lines
	tried := 0
	source := 0
	for i, line := range strings.Split(string(data), "\n") {
		if !strings.HasPrefix(line, "#") {
			source = i
			continue
		}
		if !strings.Contains(line, "invalid.illegal") {
			continue
		}
		tried++
		for col, group := range groups[source] {
			marked := col < len(line) && line[col] == '^'
			bad := strings.Contains(group, "Error") || strings.Contains(group, "BadEscape")
			require.Equal(t, marked, bad, "line %d, column %d shows as %s", source+1, col+1, group)
		}
	}
	require.GreaterOrEqual(t, tried, 5)
}

// TestVimQuickfix: Vim's quickfix list takes the place and the kind of each
// message of newmake check.
func TestVimQuickfix(t *testing.T) {
	dir := t.TempDir()
	src := diag.NewSource("toll-road.batch", []byte("a\n  cron 68 %\n"))
	var messages bytes.Buffer
	require.NoError(t, diag.Render(&messages, diag.List{
		{Code: diag.CodeUnknownName, Summary: "there is no grain `cron`", At: src.Span(4, 8), Help: "did you mean `corn`?"},
		{Code: diag.CodeUnusual, Severity: diag.Warning, Summary: "odd", At: src.Span(9, 13)},
		{Code: diag.CodeLeftover, Severity: diag.Note, Summary: "left over", At: src.Span(0, 1)},
	}, diag.Options{}))
	in, out := filepath.Join(dir, "messages"), filepath.Join(dir, "list")
	require.NoError(t, os.WriteFile(in, messages.Bytes(), 0o644))
	cmd := exec.Command("vim", "-es", "-i", "NONE", "-u", "../test/quickfix.vim")
	cmd.Env = append(os.Environ(), "MESSAGES="+in, "OUT="+out, "LC_ALL=C.UTF-8")
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	type entry struct {
		Lnum, Col, Nr int
		Type, Text    string
	}
	var got []entry
	require.NoError(t, json.Unmarshal(data, &got))
	require.Equal(t, []entry{
		{2, 3, 201, "e", "there is no grain `cron`\nhelp: did you mean `corn`?"}, {2, 8, 408, "w", "odd"}, {1, 1, 952, "n", "left over"},
	}, got)
}

func vim(t *testing.T, files []string) []shown {
	out := filepath.Join(t.TempDir(), "groups")
	cmd := exec.Command("vim", "-es", "-i", "NONE", "-u", "../test/groups.vim")
	cmd.Env = append(os.Environ(), "FILES="+strings.Join(files, "\n"), "OUT="+out, "LC_ALL=C.UTF-8")
	said, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s", said)
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	var all []shown
	for line := range bytes.Lines(data) {
		var s shown
		require.NoError(t, json.Unmarshal(line, &s))
		all = append(all, s)
	}
	return all
}

func TestTextMate(t *testing.T) {
	files := absolute(t, examples(t))
	cmd := exec.Command("node", append([]string{"../test/tokens.mjs"}, files...)...)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	data, err := cmd.Output()
	require.NoError(t, err, "%s", complaint.String())
	var all []shown
	for line := range bytes.Lines(data) {
		var tokens struct {
			File  string
			Lines [][][2]json.RawMessage
		}
		require.NoError(t, json.Unmarshal(line, &tokens))
		s := shown{File: tokens.File}
		for _, l := range tokens.Lines {
			groups := []string{}
			for _, tok := range l {
				var text string
				var scopes []string
				require.NoError(t, json.Unmarshal(tok[0], &text))
				require.NoError(t, json.Unmarshal(tok[1], &scopes))
				for range len(text) {
					groups = append(groups, strings.Join(scopes, " "))
				}
			}
			s.Lines = append(s.Lines, groups)
		}
		all = append(all, s)
	}
	compare(t, files, all, scopes, "invalid")
}

func absolute(t *testing.T, files []string) []string {
	var out []string
	for _, f := range files {
		abs, err := filepath.Abs(f)
		require.NoError(t, err)
		out = append(out, abs)
	}
	return out
}

// compare holds what an engine shows against what the language says, for every
// token of every file: each shows as its class, and nothing shows as wrong.
func compare(t *testing.T, files []string, all []shown, groups map[class]string, wrong string) {
	require.Len(t, all, len(files))
	seen := map[class]int{}
	for i, path := range files {
		require.Equal(t, path, all[i].File)
		src, want := expect(t, path)
		problems := 0
		for _, e := range want {
			line, _ := src.Position(e.start)
			col := e.start - src.LineSpan(line).Start
			for at := col; at < col+e.end-e.start && problems < 10; at++ {
				if b := src.Text[e.start+at-col]; b == ' ' || b == '\t' {
					continue
				}
				require.Less(t, at, len(all[i].Lines[line-1]), "%s:%d", path, line)
				got := all[i].Lines[line-1][at]
				if inner := e.class == text && (strings.Contains(got, "Escape") || strings.Contains(got, "string")) || e.class == comment && strings.Contains(got, "Todo"); inner {
					continue
				}
				if !strings.Contains(got, groups[e.class]) {
					t.Errorf("%s:%d: `%s` is a %s and shows as %q", path, line, src.Text[e.start:e.end], e.class, got)
					problems++
					break
				}
			}
			seen[e.class]++
		}
		for _, l := range all[i].Lines {
			require.False(t, slices.ContainsFunc(l, func(g string) bool { return strings.Contains(g, wrong) }), "%s shows a mistake", path)
		}
	}
	for c := range groups {
		require.NotZero(t, seen[c], "no example has a %s", c)
	}
}
