package lsp

import (
	"errors"
	"os"
	"runtime"
	"syscall"
	"time"
)

// watchParent calls gone when a process has ended: an editor that was killed says no
// `exit`, and may leave its end of the pipe to another.
func watchParent(pid int, every time.Duration, stop <-chan struct{}, gone func()) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	for {
		select {
		case <-stop:
			return
		case <-tick.C:
			if !alive(pid) {
				gone()
				return
			}
		}
	}
}

// alive reports whether there is a process of a number. Windows finds none that has ended;
// elsewhere it is asked with a signal that does nothing.
func alive(pid int) bool {
	p, err := os.FindProcess(pid)
	if err != nil {
		return false
	}
	defer p.Release()
	if runtime.GOOS == "windows" {
		return true
	}
	err = p.Signal(syscall.Signal(0))
	return err == nil || errors.Is(err, os.ErrPermission)
}
