// Package licences holds the licences of all that is linked into newmake: the
// modules it is built with, on any system, and Go's own runtime and library.
//
// linked.txt is gathered from the module cache by the test of this package, which
// fails when it is stale; `go test ./cmd/newmake/internal/licences -update` writes
// it anew.
package licences

import _ "embed"

// Linked is the list of what is linked in, and the text of each licence.
//
//go:embed linked.txt
var Linked string
