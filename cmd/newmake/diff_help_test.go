package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// TestHelpOfDiffSizeAndTry: every example of their help runs, one after the
// other, in a repository that has a history and a branch called trial.
func TestHelpOfDiffSizeAndTry(t *testing.T) {
	dir, git := repository(t)
	history(t, dir, git, 3)
	git("", "branch", "trial")
	t.Chdir(dir)
	for _, name := range []string{"diff", "size", "git-setup", "plan"} {
		cmd, _, err := root(terminal()).Find([]string{name})
		require.NoError(t, err)
		examples := strings.Split(strings.TrimSpace(cmd.Example), "\n")
		require.NotEmpty(t, examples)
		for i, line := range examples {
			if i%testflag.Every(3) != 0 {
				continue
			}
			words := shellWords(t, strings.TrimSpace(line))
			require.Equal(t, "newmake", words[0])
			if name == "plan" && !strings.Contains(line, "--try") {
				continue // run elsewhere
			}
			var out, said bytes.Buffer
			a := &app{in: strings.NewReader(""), out: &out, err: &said, env: os.Getenv}
			code := run(a, words[1:])
			if code == exitError && strings.Contains(line, "--exit-code") {
				continue // there is a difference
			}
			require.Equal(t, exitOK, code, "%s\n%s", line, said.String())
		}
	}
}

// shellWords parts a line as a shell does, as far as quotes go.
func shellWords(t *testing.T, line string) []string {
	var out []string
	word, quote, open := "", rune(0), false
	for _, r := range line {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote != 0:
			word += string(r)
		case r == '"' || r == '\'':
			quote, open = r, true
		case r == ' ':
			if word != "" || open {
				out, word, open = append(out, word), "", false
			}
		default:
			word += string(r)
		}
	}
	require.Zero(t, quote, line)
	if word != "" || open {
		out = append(out, word)
	}
	return out
}
