package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"
	"unsafe"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// terminalOf is a terminal with the program in it, as a person sits at one.
type terminalOf struct {
	t     *testing.T
	ptmx  *os.File
	cmd   *exec.Cmd
	mu    sync.Mutex
	shown bytes.Buffer
	ended chan error
}

// openTerminal opens a pseudo-terminal (pts(4) of Linux).
func openTerminal(t *testing.T) (ptmx, pts *os.File) {
	t.Helper()
	// Without blocking, so that closing it ends a read of it.
	fd, err := syscall.Open("/dev/ptmx", syscall.O_RDWR|syscall.O_NOCTTY|syscall.O_NONBLOCK|syscall.O_CLOEXEC, 0)
	require.NoError(t, err)
	control := func(request uintptr, arg *uint32) {
		_, _, errno := syscall.Syscall(syscall.SYS_IOCTL, uintptr(fd), request, uintptr(unsafe.Pointer(arg)))
		require.Zero(t, errno)
	}
	var number, unlocked uint32
	control(syscall.TIOCGPTN, &number)
	control(syscall.TIOCSPTLCK, &unlocked)
	ptmx = os.NewFile(uintptr(fd), "/dev/ptmx")
	pts, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|syscall.O_NOCTTY, 0)
	require.NoError(t, err)
	return ptmx, pts
}

// sitDown starts the program in a terminal of its own.
func sitDown(t *testing.T, dir string, args ...string) *terminalOf {
	t.Helper()
	ptmx, pts := openTerminal(t)
	s := &terminalOf{t: t, ptmx: ptmx, cmd: exec.Command("newmake", args...), ended: make(chan error, 1)}
	s.cmd.Dir, s.cmd.Stdin, s.cmd.Stdout, s.cmd.Stderr = dir, pts, pts, pts
	s.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	require.NoError(t, s.cmd.Start())
	require.NoError(t, pts.Close())
	go func() {
		part := make([]byte, 4096)
		for {
			n, err := ptmx.Read(part)
			s.mu.Lock()
			s.shown.Write(part[:n])
			s.mu.Unlock()
			if err != nil {
				return
			}
		}
	}()
	go func() { s.ended <- s.cmd.Wait() }()
	t.Cleanup(func() { s.cmd.Process.Kill(); ptmx.Close() })
	return s
}

// sees waits until the terminal shows words after what it has shown before.
func (s *terminalOf) sees(words string) {
	s.t.Helper()
	for end := time.Now().Add(20 * time.Second); ; time.Sleep(5 * time.Millisecond) {
		s.mu.Lock()
		text := s.shown.String()
		if _, after, ok := strings.Cut(text, words); ok {
			s.shown.Reset()
			s.shown.WriteString(after)
			s.mu.Unlock()
			return
		}
		s.mu.Unlock()
		if time.Now().After(end) {
			require.Fail(s.t, "the terminal does not show "+words, text)
		}
	}
}

func (s *terminalOf) types(keys string) {
	s.t.Helper()
	_, err := s.ptmx.WriteString(keys)
	require.NoError(s.t, err)
}

// end waits for the program to end, and gives its exit code, below 0 by a signal.
func (s *terminalOf) end() int {
	s.t.Helper()
	select {
	case <-s.ended:
		return s.cmd.ProcessState.ExitCode()
	case <-time.After(20 * time.Second):
		require.Fail(s.t, "the program does not end", s.shown.String())
		return 0
	}
}

// A run is filled in at a terminal: lines are skipped, taken back, left and gone on with
// later. However it ends, by stop, Ctrl-D, Ctrl-C or the terminal being closed, what was
// answered stands in the file, whole, and nothing else.
func TestRecordAtATerminal(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../examples/lantern-hollow")))
	file := filepath.Join(dir, "runs", "99-01.batch")
	text := func() string {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		return strings.Join(strings.Fields(string(data)), " ")
	}
	left := func() {
		t.Helper()
		names, err := os.ReadDir(filepath.Dir(file))
		require.NoError(t, err)
		for _, n := range names {
			assert.NotContains(t, n.Name(), ".tmp", "a half file is left")
		}
		out, err := exec.Command("newmake", "check", file).CombinedOutput()
		assert.NoError(t, err, string(out))
	}

	s := sitDown(t, dir, "record", "ferry-landing.batch", "--on", "2026-05-05", "--number", "99-01")
	s.sees("used: corn")
	s.types("541\n")
	s.sees("used: oats")
	s.types("\n") // skipped
	s.sees("used: rye")
	s.types("36 stone of it\n")
	s.sees("not taken")
	s.types("63\n")
	s.sees("used: distillers-malt")
	s.types("back\n")
	s.sees("used: rye")
	s.types("64\n")
	s.sees("used: distillers-malt")
	s.types("stop\n")
	assert.Zero(t, s.end())
	s.sees("`newmake record 99-01` goes on")
	assert.Contains(t, text(), "corn 541 lb")
	assert.Contains(t, text(), "oats # 79.0 lb")
	assert.Contains(t, text(), "rye 64 lb")
	left()

	// Gone on with, what was skipped is asked for again; the end of the input is a stop.
	s = sitDown(t, dir, "record", "99-01")
	s.sees("used: oats")
	s.types("79\n")
	s.sees("used: distillers-malt")
	s.types("\x04")
	assert.Zero(t, s.end())
	assert.Contains(t, text(), "oats 79 lb")
	left()

	// Ctrl-C in the middle of a line: what was answered before is there.
	s = sitDown(t, dir, "record", "99-01")
	s.sees("used: distillers-malt")
	s.types("110.5\n")
	s.sees("used: water")
	s.types("27\x03")
	assert.NotZero(t, s.end())
	assert.Contains(t, text(), "distillers-malt 110.5 lb")
	assert.Contains(t, text(), "water # 270 gal")
	left()

	// The window is closed.
	s = sitDown(t, dir, "record", "99-01")
	s.sees("used: water")
	s.types("271\n")
	s.sees("used: backset")
	require.NoError(t, s.ptmx.Close())
	s.end()
	assert.Contains(t, text(), "water 271 gal")
	left()

	// Somebody else writes into the file meanwhile: that stays, and what was typed is not
	// written over it.
	s = sitDown(t, dir, "record", "99-01")
	s.sees("used: backset")
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, append(data, "# by hand\n"...), 0o644))
	s.types("48\n")
	s.sees("was changed by somebody else")
	assert.NotZero(t, s.end())
	assert.Contains(t, text(), "# by hand")
	left()
}
