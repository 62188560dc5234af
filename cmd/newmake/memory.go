package main

import (
	"os"
	"runtime"
	"runtime/debug"
)

// firstCollection is at four times Go's own first goal of 4 MB: most commands are
// over before, and a collection would be a tenth of their work.
const firstCollection = 400

// laterCollections are half as many as Go itself makes. A check of 1,000 batches, no two
// alike, takes a twentieth less time for it, and 250 MB at most in place of 180.
const laterCollections = 200

// collectLate puts off the first collection of garbage, and the later ones by less.
func collectLate() {
	if os.Getenv("GOGC") != "" {
		return
	}
	debug.SetGCPercent(firstCollection)
	mark := new(*int) // a pointer in it keeps it from being put beside something that lives on
	runtime.AddCleanup(mark, func(later int) { debug.SetGCPercent(later) }, laterCollections)
}
