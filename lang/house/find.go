package house

import (
	"fmt"
	"path/filepath"

	"newmake/lang/diag"
)

const (
	// FileName is the file that makes a folder a house.
	FileName = "house.batch"
	ending   = ".batch"
)

// Above gives the nearest folder at or above a file or folder that is a house: exists
// finds house.batch in it. The path is absolute.
func Above(at string, exists func(string) bool) (string, bool) {
	for dir := at; ; dir = filepath.Dir(dir) {
		if exists(filepath.Join(dir, FileName)) {
			return dir, true
		}
		if dir == filepath.Dir(dir) {
			return "", false
		}
	}
}

// noHouse says what to do about a file that belongs to no house.
func noHouse(shown string) diag.List {
	return diag.List{{
		Code: diag.CodeNoHouse, Summary: fmt.Sprintf("%s belongs to no house", shown),
		Help: "a house is a folder that holds house.batch, with the plant; put one there (`newmake init FOLDER` makes a first one) or move the file into a house",
		At:   diag.NewSource(shown, nil).Span(0, 0),
	}}
}
