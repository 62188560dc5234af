package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// typedRow is a row of testdata/answers.txt.
type typedRow struct {
	at     string // the line in whose place it stands; "" for a command
	typed  string
	how    string // ok, => or +>
	answer string
}

func answersTable(t *testing.T) []typedRow {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", "answers.txt"))
	require.NoError(t, err)
	row := regexp.MustCompile(`^(.*?)\s+(=>|\+>|ok)(?:\s+(.*))?$`)
	var out []typedRow
	at := ""
	for _, line := range strings.Split(string(data), "\n") {
		switch {
		case line == "" || strings.HasPrefix(line, "# ") || line == "#":
		case strings.HasPrefix(line, "["):
			_, at, _ = strings.Cut(strings.TrimSuffix(line[1:], "]"), ": ")
		default:
			m := row.FindStringSubmatch(line)
			require.NotNil(t, m, line)
			out = append(out, typedRow{at, m[1], m[2], m[3]})
		}
	}
	return out
}

// TestAnswers types what people type, and holds each to its answer.
func TestAnswers(t *testing.T) {
	rows := answersTable(t)
	require.Greater(t, len(rows), 100)
	for i, r := range rows {
		if i%testflag.Every(6) != 0 {
			continue
		}
		t.Run(r.typed, func(t *testing.T) {
			t.Chdir(t.TempDir())
			newmake := func(args ...string) (int, string) {
				var out, said bytes.Buffer
				a := &app{in: strings.NewReader(""), out: &out, err: &said, env: func(string) string { return "" }}
				if n := len(args); n > 2 && args[n-2] == "<" {
					text, err := os.ReadFile(args[n-1])
					require.NoError(t, err)
					a.in, args = bytes.NewReader(text), args[:n-2]
				}
				return run(a, args), single(out.String() + said.String())
			}
			code, said := newmake("init", ".")
			require.Zero(t, code, said)
			if r.at == "" {
				if strings.Contains(r.typed, "HEAD") {
					commits(t, ".", 2)
				}
				code, said = newmake(shellWords(t, r.typed)...)
				if r.how == "ok" {
					assert.Zero(t, code, said)
				} else {
					assert.NotZero(t, code)
					assert.Contains(t, said, r.answer)
				}
				return
			}
			r.put(t)
			code, said = newmake("check", ".")
			if r.how == "ok" {
				assert.Zero(t, code, said)
				return
			}
			assert.NotZero(t, code)
			assert.Contains(t, said, r.answer)
			assert.Equal(t, 1, strings.Count(said, " error NM"), "one mistake, one error: %s", said)
			_, said = newmake("check", ".", "--fix")
			assert.Equal(t, r.how == "+>", strings.Contains(said, " is now ") || strings.Contains(said, " is gone"), said)
			if r.how == "+>" {
				assert.NotRegexp(t, "error NM0[1-4]", said, "the line is not right yet")
			}
		})
	}
}

// commits makes a repository of a folder, with so many commits.
func commits(t *testing.T, dir string, n int) {
	t.Helper()
	git := func(args ...string) {
		cmd := exec.Command("git", append([]string{"-C", dir, "-c", "user.name=Somebody", "-c", "user.email=somebody@example.org"}, args...)...)
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "%s", out)
	}
	git("init", "-q")
	git("add", ".")
	for range n {
		git("commit", "-q", "--allow-empty", "-m", "one")
	}
}

// put writes what is typed in its place.
func (r typedRow) put(t *testing.T) {
	t.Helper()
	if r.at == "a block of its own" {
		require.NoError(t, os.WriteFile("own.batch", []byte(strings.NewReplacer(" { ", " {\n", " }", "\n}\n").Replace(r.typed)), 0o600))
		return
	}
	found := 0
	for _, name := range []string{"house.batch", "first-bourbon.batch"} {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		lines := strings.Split(string(data), "\n")
		for i, line := range lines {
			code, _, _ := strings.Cut(line, "#")
			if single(code) == single(r.at) && found == 0 {
				lines[i] = strings.Replace(line, strings.TrimSpace(line), r.typed, 1)
				found++
			}
		}
		require.NoError(t, os.WriteFile(name, []byte(strings.Join(lines, "\n")), 0o600))
	}
	require.Equal(t, 1, found, r.at)
}

// single is a text with the spaces of its layout made single.
func single(s string) string { return strings.Join(strings.Fields(s), " ") }
