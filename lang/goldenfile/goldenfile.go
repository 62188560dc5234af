// Package goldenfile is the one switch by which tests write what they hold the
// program against anew: golden files, the reference, the published schema, the
// pages of accuracy, the licences.
//
//	go test ./... -update
//
// Every package with tests imports it, so that the flag is known in each.
package goldenfile

import "flag"

var update = flag.Bool("update", false, "write golden files and generated pages anew; they are read before they are committed")

// Update says that they are to be written.
func Update() bool { return *update }
