package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/testflag"
)

// program builds newmake once for the tests that want it as a process.
func program(t testing.TB) string {
	t.Helper()
	bin := filepath.Join(t.TempDir(), "newmake")
	out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput()
	require.NoError(t, err, string(out))
	return bin
}

// repository makes a git repository with Lantern Hollow in it. It gives its
// folder and a way to call git there.
func repository(t testing.TB) (dir string, git func(stdin string, args ...string)) {
	t.Helper()
	dir = t.TempDir()
	git = func(stdin string, args ...string) {
		cmd := exec.Command("git", args...)
		cmd.Dir, cmd.Stdin = dir, strings.NewReader(stdin)
		cmd.Env = append(os.Environ(), "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_CONFIG_NOSYSTEM=1",
			"GIT_AUTHOR_NAME=Somebody", "GIT_AUTHOR_EMAIL=somebody@example.org", "GIT_COMMITTER_NAME=Somebody", "GIT_COMMITTER_EMAIL=somebody@example.org")
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "git %v: %s", args, out)
	}
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../examples/lantern-hollow")))
	git("", "init", "-q", "-b", "main")
	git("", "add", ".")
	git("", "commit", "-q", "-m", "first")
	return dir, git
}

// history adds revisions of one batch: most change a comment, one in fifty the
// entry strength.
func history(t testing.TB, dir string, git func(string, ...string), n int) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, "toll-road.batch"))
	require.NoError(t, err)
	var in bytes.Buffer
	for i := range n {
		body := strings.Replace(string(text), "entry   110 proof", fmt.Sprintf("entry   %d proof", 100+i/50%20), 1)
		body += fmt.Sprintf("# revision %d\n", i)
		message := fmt.Sprintf("revision %d", i)
		fmt.Fprintf(&in, "commit refs/heads/main\ncommitter Somebody <somebody@example.org> %d +0000\ndata %d\n%s\n", 1_700_000_000+60*i, len(message), message)
		if i == 0 {
			in.WriteString("from refs/heads/main^0\n")
		}
		fmt.Fprintf(&in, "M 100644 inline toll-road.batch\ndata %d\n%s\n", len(body), body)
	}
	git(in.String(), "fast-import", "--quiet")
	git("", "reset", "-q", "--hard")
}

// TestALongHistoryTakesNoMoreMemory: each revision is written and let go before
// the next is read.
func TestALongHistoryTakesNoMoreMemory(t *testing.T) {
	bin, err := exec.LookPath("newmake") // as scripts run it
	require.NoError(t, err)
	if testflag.Every(2) == 1 {
		bin = program(t)
	}
	walk := func(n int) (rssKB int64, out string) {
		dir, git := repository(t)
		history(t, dir, git, n)
		cmd := exec.Command(bin, "diff", "--each", fmt.Sprintf("HEAD~%d..HEAD", n))
		cmd.Dir = dir
		var said bytes.Buffer
		cmd.Stderr = &said
		text, err := cmd.Output()
		require.NoError(t, err, said.String())
		return peakKB(t, cmd.ProcessState), string(text)
	}
	most := 500 / testflag.Every(10)
	short, _ := walk(most / 10)
	long, out := walk(most)
	t.Logf("%d kB for %d revisions, %d kB for %d", short, most/10, long, most)
	assert.Equal(t, most, strings.Count(out, "revision "))
	assert.Equal(t, most/25, strings.Count(out, "entry 1"), "each change of the entry strength is found, in the batch and in its variant")
	assert.Less(t, float64(long), 1.5*float64(short), "kB")
}

// BenchmarkDiffAsAProcess is the diff of two batches, from the shell and back.
func BenchmarkDiffAsAProcess(b *testing.B) {
	bin := program(b)
	dir, _ := repository(b)
	var cpu time.Duration
	n := 0
	for b.Loop() {
		cmd := exec.Command(bin, "diff", "Ferry Landing, more rye")
		cmd.Dir = dir
		require.NoError(b, cmd.Run())
		cpu += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
		n++
	}
	b.ReportMetric(float64(cpu.Milliseconds())/float64(n), "cpu-ms/op") // what a busy machine does not blur
}

// BenchmarkEightEditsAsAProcess takes eight edits apart, across the batch.
func BenchmarkEightEditsAsAProcess(b *testing.B) {
	bin := program(b)
	dir, _ := repository(b)
	at := filepath.Join(dir, "ferry-landing.batch")
	text, err := os.ReadFile(at)
	require.NoError(b, err)
	new := string(text)
	for _, r := range [][2]string{
		{"oats             10 %", "oats              6 %"}, {"rye               8 %", "rye              12 %"}, {"water    270 gal", "water    275 gal"},
		{"backset  15 %", "backset  12 %"}, {"rest     20 min", "rest     30 min"}, {"heat     to 190 F", "heat     to 195 F"},
		{"hold   78..88 F", "hold   78..86 F"}, {"to 62 % abv", "to 60 % abv"}, {"entry   120 proof", "entry   118 proof"},
	} {
		require.Contains(b, new, r[0])
		new = strings.Replace(new, r[0], r[1], 1)
	}
	require.NoError(b, os.WriteFile(at, []byte(new), 0o644))
	var cpu time.Duration
	n := 0
	for b.Loop() {
		cmd := exec.Command(bin, "diff", "ferry-landing.batch", "--batch", "Ferry Landing")
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		require.NoError(b, err, string(out))
		require.Contains(b, string(out), "Exact, from 256 plans.")
		cpu += cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
		n++
	}
	b.ReportMetric(float64(cpu.Milliseconds())/float64(n), "cpu-ms/op")
}
