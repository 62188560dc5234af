// Package testflag is the switches of the tests. Every package with tests imports
// it, so that they are known in each.
//
//	go test ./... -update   golden files, and all else that is generated, are written anew
//	go test ./... -all      every case is tried of what is otherwise tried in samples
package testflag

import (
	"flag"
	"os"
	"runtime/debug"
)

var (
	update = flag.Bool("update", false, "write golden files and generated pages anew; they are read before they are committed")
	all    = flag.Bool("all", false, "try every case of what is otherwise tried in samples; it takes minutes")
)

// Much is made in a test, and little kept: what is not needed any more is looked for
// seldom, which takes a sixth less of the processor. What a person sets stays.
func init() {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetGCPercent(400)
		debug.SetMemoryLimit(1 << 30) // beyond a gigabyte as often as it takes
	}
}

// Update reports whether what is generated is to be written anew.
func Update() bool { return *update }

// Every says of how many cases one is tried: n, or 1 if all are.
func Every(n int) int {
	if *all {
		return 1
	}
	return n
}
