//go:build unix

package main

import (
	"io/fs"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"testing"
	"time"

	"newmake/lang/wholefile"
)

func makePipe(path string) error { return syscall.Mkfifo(path, 0o644) }

// peakKB is the most memory that a process held; on darwin it is told in bytes.
func peakKB(_ testing.TB, p *os.ProcessState) int64 {
	return int64(p.SysUsage().(*syscall.Rusage).Maxrss)
}

// hearHangups lets scripts send a hangup where the tests themselves run under nohup: a signal
// that is caught here is not ignored by what is started from here.
func hearHangups(t *testing.T) {
	if !signal.Ignored(syscall.SIGHUP) {
		return
	}
	heard := make(chan os.Signal, 1)
	signal.Notify(heard, syscall.SIGHUP)
	t.Cleanup(func() { signal.Stop(heard) })
}

// stopped is newmake that is told to stop while it writes a file, by the signal
// that the variable STOP names.
func stopped() {
	which := map[string]syscall.Signal{"INT": syscall.SIGINT, "TERM": syscall.SIGTERM, "HUP": syscall.SIGHUP}[os.Getenv("STOP")]
	a := terminal()
	a.disk = wholefile.Disk{Open: func(name string, flag int, mode fs.FileMode) (wholefile.File, error) {
		f, err := os.OpenFile(name, flag, mode)
		if strings.HasSuffix(name, ".tmp") { // its temporary is there, and empty
			if err := syscall.Kill(os.Getpid(), which); err != nil {
				panic(err)
			}
			time.Sleep(50 * time.Millisecond) // not taken, the signal ends us here
		}
		return f, err
	}}
	os.Exit(run(a, os.Args[1:]))
}
