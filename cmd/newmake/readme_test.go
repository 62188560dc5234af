package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	mdtext "github.com/yuin/goldmark/text"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/explain"
	"newmake/lang/testflag"
)

// block is a fenced block of a document: its language and its lines.
type block struct {
	language string
	text     string
	line     int
}

func blocks(t *testing.T, path string) []block {
	t.Helper()
	source, err := os.ReadFile(path)
	require.NoError(t, err)
	var out []block
	doc := goldmark.DefaultParser().Parse(mdtext.NewReader(source))
	require.NoError(t, ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		f, ok := n.(*ast.FencedCodeBlock)
		if !ok || !entering {
			return ast.WalkContinue, nil
		}
		b := block{language: string(f.Language(source))}
		for i := range f.Lines().Len() {
			l := f.Lines().At(i)
			if i == 0 {
				b.line = bytes.Count(source[:l.Start], []byte("\n")) + 1
			}
			b.text += string(l.Value(source))
		}
		out = append(out, b)
		return ast.WalkContinue, nil
	}))
	return out
}

// TestReadme runs what the README and the tour show. A `console` block holds commands, each
// after "$ ", and under each the output; a line of "..." stands for any lines.
// newmake and `go run ./cmd/newmake` are run here, from the repository's top; a
// block whose first command is another program's is not. A `newmake` block must
// parse.
func TestReadme(t *testing.T) {
	top, err := filepath.Abs("../..")
	require.NoError(t, err)
	t.Chdir(top)
	for _, doc := range []string{"README.md", "lang/TOUR.md"} {
		ran := 0
		for _, b := range blocks(t, doc) {
			switch b.language {
			case "console":
				for _, c := range commands(b.text) {
					if args, ok := ours(c.command); ok && !leftToAll(args) {
						c.run(t, doc, b.line, args)
						ran++
					}
				}
			case "newmake":
				_, list := lang.Parse(diag.NewSource(doc, []byte(b.text)))
				assert.Empty(t, list.Error(), "%s:%d", doc, b.line)
			}
		}
		require.NotZero(t, ran, "%s shows no command of newmake in a console block", doc)
	}
}

// guides are the documents in which one step leads to the next.
var guides = []string{"lang/TUTORIAL.md", "lang/HOWTO.md", "examples/README.md", "stdlib/README.md", "compile/README.md"}

// TestGuides does what the guides show, from top to bottom, in a folder that has the
// examples in it and nothing else: a `newmake file` block is written as that file, and
// the commands of a `console` block are run, print what is shown, and end with 0.
func TestGuides(t *testing.T) {
	top, err := filepath.Abs("../..")
	require.NoError(t, err)
	ran := 0
	for _, doc := range guides {
		t.Run(strings.ReplaceAll(doc, "/", "-"), func(t *testing.T) {
			source, err := os.ReadFile(filepath.Join(top, doc))
			require.NoError(t, err)
			t.Chdir(t.TempDir())
			require.NoError(t, os.CopyFS("examples", os.DirFS(filepath.Join(top, "examples"))))
			for _, b := range explain.Blocks(source) {
				e, _ := explain.ReadInfo(b.Info)
				switch {
				case e.File != "":
					require.NoError(t, os.MkdirAll(filepath.Dir(e.File), 0o755))
					require.NoError(t, os.WriteFile(e.File, []byte(b.Text), 0o644))
				case e.Lang == "console":
					for _, c := range commands(b.Text) {
						args, ok := ours(c.command)
						require.True(t, ok, "%s:%d: %s", doc, b.Line, c.command)
						if leftToAll(args) {
							continue
						}
						assert.Zero(t, c.run(t, doc, b.Line, args), "%s:%d: %s", doc, b.Line, c.command)
						ran++
					}
				}
			}
		})
	}
	require.NotZero(t, ran)
}

// leftToAll reports whether a command is run with -all alone: it takes seconds.
func leftToAll(args []string) bool {
	return testflag.Every(2) != 1 && (args[0] == "learn" || args[0] == "season")
}

type shown struct{ command, output string }

func commands(text string) []shown {
	var out []shown
	for _, l := range strings.SplitAfter(text, "\n") {
		if c, ok := strings.CutPrefix(l, "$ "); ok {
			out = append(out, shown{command: strings.TrimSpace(c)})
		} else if len(out) > 0 {
			out[len(out)-1].output += l
		}
	}
	return out
}

// ours gives the arguments of a command line that calls newmake, with nothing
// but plain words and quoted ones.
func ours(line string) ([]string, bool) {
	for _, p := range []string{"newmake", "go run ./cmd/newmake"} {
		if rest, ok := strings.CutPrefix(line, p+" "); ok && !strings.ContainsAny(rest, "|<>&;$`") {
			return arguments(rest), true
		}
	}
	return nil, false
}

func arguments(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
		} else {
			out = append(out, strings.Fields(part)...)
		}
	}
	return out
}

// run gives the exit code.
func (c shown) run(t *testing.T, doc string, line int, args []string) int {
	t.Helper()
	var both bytes.Buffer // a terminal shows both streams
	a := &app{in: strings.NewReader(""), out: &both, err: &both, env: func(string) string { return "" }}
	code := run(a, args)
	if c.output == "" {
		return code // shown without its output
	}
	assert.True(t, matches(c.output, both.String()), "%s:%d: `%s` does not print what is shown.\nshown:\n%s\nprinted:\n%s", doc, line, c.command, c.output, both.String())
	return code
}

// matches holds what is shown against what is printed, line by line; "..."
// stands for any lines.
func matches(shown, printed string) bool {
	rest := strings.Split(strings.TrimRight(printed, "\n"), "\n")
	open := false
	for _, want := range strings.Split(strings.TrimRight(shown, "\n"), "\n") {
		want = strings.TrimRight(want, " ")
		if want == "..." {
			open = true
			continue
		}
		for len(rest) > 0 && open && rest[0] != want {
			rest = rest[1:]
		}
		if len(rest) == 0 || rest[0] != want {
			return false
		}
		rest, open = rest[1:], false
	}
	return open || len(rest) == 0
}

func TestMatches(t *testing.T) {
	assert.True(t, matches("a\n...\nd\n", "a\nb\nc\nd\n"))
	assert.True(t, matches("a\n...\n", "a\nb\n"))
	assert.False(t, matches("a\n", "a\nb\n"), "what is left out must be said so")
	assert.False(t, matches("a\n...\nx\n", "a\nb\n"))
	assert.Equal(t, []string{"plan", "x.batch", "--batch", "Ferry Landing, more rye"}, arguments(`plan x.batch --batch "Ferry Landing, more rye"`))
}
