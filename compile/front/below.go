package front

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"newmake/lang/house"
)

// Below gives the folders of the houses below a folder that is of no house itself, in
// order: a repository may hold several. Of a file, a folder of a house, or one that
// cannot be read there are none. Hidden folders and links are passed by, as they are
// when a house is read; what lies in a house is that house's own affair.
func Below(path string) []string {
	info, err := os.Stat(path)
	if err != nil || !info.IsDir() || inHouse(path) {
		return nil
	}
	var out []string
	_ = filepath.WalkDir(path, func(at string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && d == nil:
			return err
		case err != nil:
			return fs.SkipDir // not ours to read: what is asked for by name says so
		case !d.IsDir():
			return nil
		case at != path && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case isHouse(at):
			out = append(out, at)
			return fs.SkipDir
		}
		return nil
	})
	return out
}

// inHouse reports whether a folder is a house, or in one.
func inHouse(path string) bool {
	at, err := filepath.Abs(path)
	if err != nil {
		return false
	}
	_, in := house.Above(at, isFile)
	return in
}

func isHouse(folder string) bool { return isFile(filepath.Join(folder, house.FileName)) }

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && !info.IsDir()
}
