package gitsetup

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
)

// attributesFound looks at .gitattributes. Git does not read one that is a link,
// and what it leads to is somebody else's.
func attributesFound(file string) (State, error) {
	if isLink(file) || isOdd(file) {
		return IsOther, nil
	}
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return NotThere, nil
	}
	if err != nil {
		return NotThere, err
	}
	if bytes.Contains(text, []byte(markBegin)) {
		return IsOurs, nil
	}
	for line := range strings.Lines(string(text)) {
		if against(line) {
			return IsOther, nil
		}
	}
	return NotThere, nil
}

func isLink(file string) bool {
	info, err := os.Lstat(file)
	return err == nil && info.Mode()&os.ModeSymlink != 0
}

// against reports whether a line of .gitattributes sets for all .batch files what ours,
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
		case "diff", "merge":
			return value != "newmake"
		}
		return name == "binary" || name == "crlf"
	})
}

// addAttributes puts our lines at the end. The mark keeps how the text ended, so
// that it can be given back as it was.
func (s *Setup) addAttributes(file string) error {
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
	return s.rewrite(file, text, out, err == nil)
}

// rewrite writes a file that was read, or was not there.
func (s *Setup) rewrite(file string, was, text []byte, there bool) error {
	if !there {
		return s.Disk.Create(file, text, 0o644)
	}
	_, err := s.Disk.Replace(file, was, text)
	return err
}

// dropAttributes takes the marked lines out, and the file if it is there for them
// alone.
func (s *Setup) dropAttributes(file string) error {
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
	return s.rewrite(file, text, kept, true)
}

// isOdd reports whether there is something that is no plain file, which is not opened: a
// pipe would keep us waiting.
func isOdd(file string) bool {
	info, err := os.Stat(file)
	return err == nil && !info.Mode().IsRegular()
}
