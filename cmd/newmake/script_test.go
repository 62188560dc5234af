package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/testflag"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"newmake": main,
		"faulty":  faulty,
		"stopped": stopped,
	})
}

// TestScript runs the command line as a user does: each script of
// testdata/script, with newmake as a process of its own.
func TestScript(t *testing.T) {
	top, err := filepath.Abs("../..")
	require.NoError(t, err)
	hearHangups(t)
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join(top, "testdata", "script"),
		UpdateScripts: testflag.Update(),
		Setup: func(e *testscript.Env) error {
			e.Setenv("TOP", top)
			e.Setenv("TMPDIR", e.WorkDir)
			// The example house, to be worked on in place.
			return os.CopyFS(filepath.Join(e.WorkDir, "house"), os.DirFS(filepath.Join(top, "examples", "lantern-hollow")))
		},
		Condition: tried,
		Cmds:      map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "screenful": screenful},
	})
}

// tried knows [all], before the lines of a script that are left out where it is tried in
// samples.
func tried(condition string) (bool, error) {
	if condition != "all" {
		return false, fmt.Errorf("there is no condition %q", condition)
	}
	return testflag.Every(2) == 1, nil
}

// exits runs a command and wants an exit code: exits 2 newmake plna.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits code program [args...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var status *exec.ExitError
		if !errors.As(err, &status) {
			ts.Fatalf("%v", err)
		}
		got = status.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// screenful holds that what was written last, to a terminal or to both streams together,
// is at most one screen: screenful ttyout, or screenful stdout stderr.
func screenful(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) == 0 {
		ts.Fatalf("usage: screenful stream...")
	}
	rows := 0
	for _, name := range args {
		text := strings.ReplaceAll(ts.ReadFile(name), "\r", "")
		for line := range strings.Lines(ansi.ReplaceAllString(text, "")) {
			w := diag.Width(strings.TrimSuffix(line, "\n"))
			if w > 80 && name != "stderr" { // where a terminal wraps what names a file
				ts.Fatalf("%d columns: %s", w, line)
			}
			rows += max(1, (w+79)/80)
		}
	}
	if rows == 0 || rows > 24 {
		ts.Fatalf("%d lines", rows)
	}
}

var ansi = regexp.MustCompile("\x1b\\[[0-9;]*m")

// faulty is newmake with a command that panics.
func faulty() {
	a := terminal()
	command := root(a)
	command.AddCommand(panicking())
	os.Exit(a.execute(command, os.Args[1:]))
}

// TestEveryCommandHasAScript: each command is run by a script, as people run it.
func TestEveryCommandHasAScript(t *testing.T) {
	names, err := filepath.Glob(filepath.Join("..", "..", "testdata", "script", "*.txtar"))
	require.NoError(t, err)
	var all []byte
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		all = append(all, text...)
	}
	for _, cmd := range root(terminal()).Commands() {
		if cmd.Name() == "lsp" { // it talks over a pipe: the tests of its own package do
			continue
		}
		run := "exec newmake " + cmd.Name()
		assert.True(t, bytes.Contains(all, []byte(run)), "no script runs %s: give it one in testdata/script, with a line `%s`", cmd.Name(), run)
	}
}
