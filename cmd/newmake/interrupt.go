package main

import (
	"os"
	"os/signal"
	"syscall"
)

// stops are the signals that end a program politely: Ctrl-C, being told to stop,
// and a terminal that is closed.
func stops() []os.Signal {
	var all []os.Signal
	for _, s := range append([]os.Signal{os.Interrupt, syscall.SIGTERM}, hangUp...) {
		if !signal.Ignored(s) { // nohup wants it to stay so
			all = append(all, s)
		}
	}
	return all
}

// uninterrupted lets something be written before a signal takes effect, so that
// no half file is left behind.
func uninterrupted(do func() error) error {
	stop := make(chan os.Signal, 1)
	signal.Notify(stop, stops()...)
	err := do()
	signal.Stop(stop)
	select {
	case s := <-stop:
		os.Exit(exitSignal(s))
	default:
	}
	return err
}

// exitSignal is the code of a program that a signal ended, as shells count it.
func exitSignal(s os.Signal) int {
	if n, ok := s.(syscall.Signal); ok {
		return 128 + int(n)
	}
	return exitInterrupt
}
