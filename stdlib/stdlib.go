// Package stdlib is the library that comes with newmake, in the language itself:
// grain, yeast, enzymes, casks, standards of identity and the constants of the
// models. Each figure's comment is its source. A house may override any entry.
package stdlib

import "embed"

// FS holds the .batch files of the library.
//
//go:embed *.batch
var FS embed.FS
