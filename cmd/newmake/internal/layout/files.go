// Package layout lays batch files out in the one canonical way, each whole or not
// at all.
package layout

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"newmake/compile/front"
	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/wholefile"
)

// Text is one text on its way through the formatter.
type Text struct {
	Name   string // as the person knows it
	Before []byte // as it was read
	After  []byte // as it is laid out; nil if it has errors
	Diags  diag.List
	Err    error // it could not be read

	target string // the file itself, links followed; "" if it is in none
}

// New is a text that came from no file.
func New(name string, text []byte) *Text { return &Text{Name: name, Before: text} }

// InFile reports whether the text came from a file, and is to go back there.
func (t *Text) InFile() bool { return t.target != "" }

// Changes reports whether the text is not laid out.
func (t *Text) Changes() bool { return t.After != nil && string(t.After) != string(t.Before) }

// Files gives the batch files of a path in order: of a folder all below it, but
// for hidden folders and for links, whose targets have their own place.
func Files(arg string) ([]*Text, error) {
	target, err := filepath.EvalSymlinks(arg)
	if err != nil {
		return nil, diag.Refuse("cannot read %s: %v", arg, wholefile.Reason(err))
	}
	info, err := os.Stat(target)
	switch {
	case err != nil:
		return nil, diag.Refuse("cannot read %s: %v", arg, wholefile.Reason(err))
	case !info.IsDir() && filepath.Ext(arg) != front.Ending:
		return nil, diag.Refuse("%s is no %s file", arg, front.Ending)
	case !info.IsDir():
		if leavesHouse(arg, target) {
			return nil, diag.Refuse("%s is a link that leads out of the house: only what is below its folder is read and written", arg)
		}
		return []*Text{{Name: arg, target: target}}, nil
	}
	var out []*Text
	err = filepath.WalkDir(arg, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != arg && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.Type().IsRegular() && filepath.Ext(p) == front.Ending:
			out = append(out, &Text{Name: p, target: p})
		}
		return nil
	})
	if err != nil {
		return nil, diag.Refuse("cannot read %s: %v", arg, err)
	}
	return out, nil
}

// leavesHouse reports whether a name in a house leads to a file that is not below the house's
// folder: whoever made the house may have made the link.
func leavesHouse(name, target string) bool {
	isFile := func(p string) bool {
		info, err := os.Stat(p)
		return err == nil && info.Mode().IsRegular()
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(name))
	if err != nil {
		return false // nothing is known of it
	}
	if folder, err = filepath.Abs(folder); err != nil {
		return false
	}
	if target, err = filepath.Abs(target); err != nil {
		return false
	}
	top, in := house.Above(folder, isFile)
	if !in {
		return false
	}
	way, err := filepath.Rel(top, target)
	return err != nil || !filepath.IsLocal(way)
}

// OnlyOnce leaves out what was named before.
func OnlyOnce(all []*Text) []*Text {
	seen := map[string]bool{}
	out := all[:0]
	for _, t := range all {
		at, err := filepath.Abs(t.target)
		if err == nil && seen[at] {
			continue
		}
		seen[at] = true
		out = append(out, t)
	}
	return out
}

// LayOut reads the text, if it is in a file, and lays it out.
func (t *Text) LayOut() {
	if t.InFile() {
		if t.Err = t.read(); t.Err != nil {
			return
		}
	}
	if len(t.Before) > lang.MaxFileBytes {
		t.Diags = tooLarge(t.Name)
		return
	}
	t.After, t.Diags = lang.Format(diag.NewSource(t.Name, t.Before))
}

// read reads the file. What is no plain file is not opened: a pipe would
// keep us waiting.
func (t *Text) read() error {
	info, err := os.Stat(t.target)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return fmt.Errorf("it is not a plain file")
	}
	r, err := os.Open(t.target)
	if err != nil {
		return err
	}
	defer r.Close()
	t.Before, err = io.ReadAll(io.LimitReader(r, lang.MaxFileBytes+1))
	return err
}

// Replace puts the laid out text in the file's place, whole or not at all, and says
// how many names the file had. It refuses if the file is no longer what was read.
func (t *Text) Replace(disk wholefile.Disk) (names int, err error) {
	done, err := disk.Replace(t.target, t.Before, t.After)
	switch {
	case errors.Is(err, wholefile.ErrChanged):
		return 0, fmt.Errorf("%s was changed by something else meanwhile: it was left alone", t.Name)
	case err != nil:
		return 0, fmt.Errorf("cannot write %s: %v", t.Name, wholefile.Reason(err))
	}
	return done.Names, nil
}

func tooLarge(name string) diag.List {
	return diag.List{{
		Code: diag.CodeFileTooLarge, Summary: name + " is larger than 4 MiB, and was not read",
		Help: "a recipe is a few pages; is this the right file?", At: diag.NewSource(name, nil).Span(0, 0),
	}}
}
