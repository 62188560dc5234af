//go:build !unix

package main

import (
	"errors"
	"os"
	"testing"
)

func makePipe(string) error { return errors.ErrUnsupported }

func peakKB(t testing.TB, _ *os.ProcessState) int64 {
	t.Skip("this system does not tell how much memory a process held")
	return 0
}

// hearHangups is for systems with signals.
func hearHangups(*testing.T) {}

// stopped is for systems with signals; the script that calls it says so.
func stopped() { panic("there are no signals here") }
