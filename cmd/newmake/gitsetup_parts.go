package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"newmake/lang/gitrepo"
)

// belowTop is a path as a person in the repository sees it.
func belowTop(r *gitrepo.Repo, path string) string {
	if rel, err := filepath.Rel(r.Top, path); err == nil && filepath.IsLocal(rel) {
		return filepath.ToSlash(rel)
	}
	return path
}

func configPart(r *gitrepo.Repo, key, value, why string) part {
	return part{
		name: key, why: why, show: []string{value},
		found: func() (state, error) {
			switch now, ok := r.Setting(key); {
			case !ok:
				return notThere, nil
			case now == value:
				return isOurs, nil
			default:
				return isOther, nil
			}
		},
		set:    func() error { return r.Set(key, value) },
		unset:  func() error { return r.Unset(key) },
		byHand: "see it with `git config " + key + "`",
		toUndo: "see it with `git config " + key + "`",
	}
}

// attributesFound looks at .gitattributes. Git does not read one that is a link,
// and what it leads to is somebody else's.
func attributesFound(file string) (state, error) {
	if isLink(file) || isOdd(file) {
		return isOther, nil
	}
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return notThere, nil
	}
	if err != nil {
		return notThere, err
	}
	if bytes.Contains(text, []byte(markBegin)) {
		return isOurs, nil
	}
	for line := range strings.Lines(string(text)) {
		if against(line) {
			return isOther, nil
		}
	}
	return notThere, nil
}

func isLink(file string) bool {
	info, err := os.Lstat(file)
	return err == nil && info.Mode()&os.ModeSymlink != 0
}

// against says that a line of .gitattributes sets for all .batch files what ours,
// being below it, would silently override.
func against(line string) bool {
	words := strings.Fields(line)
	if len(words) == 0 || words[0] != "*.batch" {
		return false
	}
	return slices.ContainsFunc(words[1:], func(w string) bool {
		name, value, _ := strings.Cut(strings.TrimLeft(w, "-!"), "=")
		switch name {
		case "text":
			return w != "text" && w != "text=auto"
		case "eol":
			return value != "lf"
		case "diff":
			return value != "newmake"
		}
		return name == "binary" || name == "crlf"
	})
}

// addAttributes puts our lines at the end. The mark keeps how the text ended, so
// that it can be given back as it was.
func (a *app) addAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		return err
	}
	begin, out := markBegin, bytes.Clone(text)
	switch {
	case err == nil && len(text) == 0:
		begin += wasEmpty
	case len(text) > 0 && !bytes.HasSuffix(text, []byte("\n")):
		begin += wasOpen
		out = append(out, '\n')
	}
	out = append(out, begin+"\n"+attributeLine+"\n"+markEnd+"\n"...)
	return a.rewrite(file, text, out, err == nil)
}

// rewrite writes a file that was read, or was not there.
func (a *app) rewrite(file string, was, text []byte, there bool) error {
	return uninterrupted(func() error {
		if !there {
			return a.disk.Create(file, text, 0o644)
		}
		_, err := a.disk.Replace(file, was, text)
		return err
	})
}

// dropAttributes takes the marked lines out, and the file if it is there for them
// alone.
func (a *app) dropAttributes(file string) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	var kept []byte
	inside, ours := false, true
	for line := range strings.Lines(string(text)) {
		mark, how, _ := strings.Cut(strings.TrimSpace(line), ",")
		switch {
		case mark == markBegin:
			inside = true
			switch how = "," + how; how {
			case wasEmpty:
				ours = false
			case wasOpen:
				if rest := text[len(kept)+len(line):]; bytes.HasSuffix(bytes.TrimRight(rest, "\r\n"), []byte(markEnd)) { // nothing was added below
					kept = bytes.TrimSuffix(kept, []byte("\n"))
				}
			}
		case mark == markEnd:
			inside = false
		case !inside:
			kept = append(kept, line...)
		}
	}
	if inside {
		return fmt.Errorf("%s has %q without its end: mend it by hand", file, markBegin)
	}
	if len(kept) == 0 && ours {
		return os.Remove(file)
	}
	return a.rewrite(file, text, kept, true)
}

// isOdd says that there is something that is no plain file, which is not opened: a
// pipe would keep us waiting.
func isOdd(file string) bool {
	info, err := os.Stat(file)
	return err == nil && !info.Mode().IsRegular()
}

// hookFound looks at the hook. One kept outside the repository, for all of a
// person's repositories, is somebody else's whatever is in it.
func hookFound(r *gitrepo.Repo, hook string) (state, error) {
	if isOdd(hook) {
		return isOther, nil
	}
	text, err := os.ReadFile(hook)
	switch {
	case err == nil && string(text) == hookText:
		return isOurs, nil
	case err == nil:
		return isOther, nil
	case !os.IsNotExist(err):
		return notThere, err
	}
	if r.HooksElsewhere() {
		return isOther, nil
	}
	return notThere, nil
}

func (a *app) writeHook(hook string) error {
	if err := os.MkdirAll(filepath.Dir(hook), 0o755); err != nil {
		return err
	}
	return uninterrupted(func() error { return a.disk.Create(hook, []byte(hookText), 0o755) }) // never over one that is there
}
