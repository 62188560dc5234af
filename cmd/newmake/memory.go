package main

import (
	"os"
	"runtime"
	"runtime/debug"
)

// firstCollection is at four times Go's own first goal of 4 MB: most commands are
// over before, and a collection would be a tenth of their work.
const firstCollection = 400

// collectLate puts off the first collection of garbage. After it things are as
// usual: a command that needs much memory needs no more for this.
func collectLate() {
	if os.Getenv("GOGC") != "" {
		return
	}
	usual := debug.SetGCPercent(firstCollection)
	mark := new(*int) // a pointer in it keeps it from being put beside something that lives on
	runtime.AddCleanup(mark, func(usual int) { debug.SetGCPercent(usual) }, usual)
}
