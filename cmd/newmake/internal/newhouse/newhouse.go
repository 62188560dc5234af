// Package newhouse makes a house to begin with: a plant and a first batch, with
// notes, to be changed.
package newhouse

import (
	"embed"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/sorting"
	"newmake/lang/wholefile"
)

// templates are the houses that init makes, one for each system of units.
//
//go:embed template
var templates embed.FS

// attributes keep git from changing line endings on other systems.
const (
	attributesFile = ".gitattributes"
	attributes     = "*.batch text eol=lf\n"
)

// file is one of a new house.
type file struct {
	name string
	text []byte
}

// House is a house that was made.
type House struct {
	Files []string // in order
	Plant string   // the file of the plant
	First string   // the file of the first batch

	// Lacks is a line that a file should have which was there before and is not
	// ours to change; "" if none does.
	Lacks, LacksIn string
}

// Make makes a house in a folder, written in us or si. It writes over nothing, and
// writes all files or none. A .gitattributes that is there, as in a fresh clone,
// stays as it is.
func Make(disk wholefile.Disk, folder, units string) (*House, error) {
	made, err := filesOf(units)
	if err != nil {
		return nil, err
	}
	h := &House{Plant: filepath.Join(folder, "house.batch")}
	if at := filepath.Join(folder, attributesFile); exists(at) {
		made = slices.DeleteFunc(made, func(f file) bool { return f.name == attributesFile })
		if text, err := os.ReadFile(at); err != nil || !hasLine(string(text), strings.TrimSpace(attributes)) {
			h.Lacks, h.LacksIn = strings.TrimSpace(attributes), at
		}
	}
	if err := fit(folder, made); err != nil {
		return nil, err
	}
	if err := write(disk, folder, made); err != nil {
		return nil, err
	}
	for _, f := range made {
		at := filepath.Join(folder, f.name)
		h.Files = append(h.Files, at)
		if strings.HasPrefix(f.name, "first-") {
			h.First = at
		}
	}
	return h, nil
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// hasLine reports whether a text has a line, however it is spaced.
func hasLine(text, line string) bool {
	return slices.ContainsFunc(strings.Split(text, "\n"), func(l string) bool {
		return slices.Equal(strings.Fields(l), strings.Fields(line))
	})
}

// filesOf are the files of a new house, in order.
func filesOf(units string) ([]file, error) {
	made := []file{{name: attributesFile, text: []byte(attributes)}}
	dir := "template/" + units
	entries, err := templates.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	for _, e := range entries {
		text, err := templates.ReadFile(dir + "/" + e.Name())
		if err != nil {
			return nil, err
		}
		made = append(made, file{name: e.Name(), text: text})
	}
	sorting.Stable(made, func(a, b file) int { return strings.Compare(a.name, b.name) })
	return made, nil
}

// fit sees that a house may be made in a folder: it would write over nothing, and
// stands in no other house.
func fit(folder string, made []file) error {
	info, err := os.Stat(folder)
	if err == nil && !info.IsDir() {
		return diag.Refuse("%s is a file: name a folder", folder)
	}
	for _, f := range made {
		if exists(filepath.Join(folder, f.name)) {
			return diag.Refuse("%s is there already: nothing was made", filepath.Join(folder, f.name))
		}
	}
	at, err := filepath.Abs(folder)
	if err != nil {
		return diag.Refuse("cannot make %s: %v", folder, wholefile.Reason(err))
	}
	for dir := filepath.Dir(at); ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "house.batch")); err == nil {
			return diag.Refuse("%s lies in a house, %s, and a house in a house is not read: name a folder outside it, or write a batch there", folder, dir)
		}
		if dir == filepath.Dir(dir) {
			return nil
		}
	}
}

// write writes the files of a new house, all or none.
func write(disk wholefile.Disk, folder string, made []file) (err error) {
	var new []string // what there was not before, in order
	defer func() {
		if err != nil {
			for _, path := range slices.Backward(new) {
				os.Remove(path) // a folder only if it is empty
			}
		}
	}()
	for dir := filepath.Clean(folder); ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(dir); err == nil || dir == filepath.Dir(dir) {
			break
		}
		new = slices.Insert(new, 0, dir)
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return diag.Refuse("cannot make %s: %v", folder, wholefile.Reason(err))
	}
	for _, f := range made {
		path := filepath.Join(folder, f.name)
		if err := disk.Create(path, f.text, 0o644); err != nil {
			return diag.Refuse("cannot write %s: %v", path, wholefile.Reason(err))
		}
		new = append(new, path)
	}
	return nil
}
