package sides

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"newmake/compile/front"
	"newmake/lang/diag"
	"newmake/lang/wholefile"
)

// standard is how a person names standard input.
const standard = "-"

// Finder finds sides by what a person calls them.
type Finder struct {
	Standard func() (front.Place, error) // reads standard input
}

// both finds the two sides that arguments mean: those before --, and those after
// it, which are files. An error is a diag.List where a text is at fault.
func (f *Finder) both(args, files []string) (old, new *Side, err error) {
	if len(files) == 0 {
		args = quoted(args)
	}
	if len(args) == 2 && len(files) == 0 && isFile(args[1]) && isRevision(args[0]) {
		args, files = args[:1], args[1:] // REV FILE, as git takes it too
	}
	if len(args) == 2 && isRevision(args[0]) && isRevision(args[1]) && !bothBatches(args) {
		args = []string{args[0] + ".." + args[1]} // REV REV, as git takes it too
	}
	switch {
	case len(args) == 2 && len(files) == 0:
		return f.twoSides(args)
	case len(args) > 1 || len(files) > 1:
		return nil, nil, diag.Refuse("give two sides, or one revision and one path after --; `newmake help diff` shows how")
	case len(args) == 0: // newmake diff -- FILE
		return sinceHead(files[0])
	}
	arg := args[0]
	if len(files) == 0 && isFile(arg) {
		return sinceHead(arg)
	}
	span, err := revisions(arg)
	if err != nil {
		if len(files) == 0 && !strings.Contains(arg, "..") {
			return againstParent(arg, err)
		}
		return nil, nil, err
	}
	where := "."
	if len(files) == 1 {
		where = files[0]
	}
	if old, err = atRevision(span[0], where, len(files) == 0); err != nil {
		return nil, nil, err
	}
	if span[1] == "" {
		new, err = working(where, len(files) == 0)
	} else {
		new, err = atRevision(span[1], where, len(files) == 0)
	}
	return times(old, new, where, err)
}

// quoted joins the words of names that come without their quotes: Toll Road, or
// Ferry Landing Toll Road. Other arguments stay as they are.
func quoted(args []string) []string {
	if len(args) < 2 || slices.ContainsFunc(args, func(arg string) bool { return !isBatchName(arg) }) || len(args) == 2 && bothBatches(args) {
		return args
	}
	s, err := working(".", true)
	if err != nil {
		return args
	}
	known := func(words []string) (string, bool) { return s.find(strings.Join(words, " ")) }
	if whole, ok := known(args); ok {
		return []string{whole}
	}
	for n := 1; n < len(args); n++ {
		old, one := known(args[:n])
		new, other := known(args[n:])
		if one && other {
			return []string{old, new}
		}
	}
	return args
}

// bothBatches reports whether two arguments, which may be revisions, are batches of the
// house around the working directory.
func bothBatches(args []string) bool {
	s, err := working(".", true)
	if err != nil {
		return false
	}
	return !slices.ContainsFunc(args, func(arg string) bool { _, ok := s.find(arg); return !ok })
}

// times says of two sides that they are one house at two times. A path that is there at
// neither is a mistake in its name, and not a recipe that did not change.
func times(old, new *Side, where string, err error) (*Side, *Side, error) {
	if err != nil {
		return nil, nil, err
	}
	if old.gone && new.gone {
		return nil, nil, diag.Refuse("there is no recipe and no folder %s, %s or %s", where, old.when(), new.when())
	}
	old.moves, new.moves = true, true
	return old, new, nil
}

func isFile(arg string) bool {
	_, err := os.Stat(arg)
	return err == nil || strings.HasSuffix(arg, front.Ending) && !strings.Contains(arg, ":")
}

func sinceHead(file string) (old, new *Side, err error) {
	if old, err = atRevision("HEAD", file, false); err == nil {
		new, err = working(file, false)
	}
	return times(old, new, file, err)
}

// againstParent compares a variant with the batch that it varies.
func againstParent(name string, notRevision error) (old, new *Side, err error) {
	s, err := working(".", true)
	if err != nil {
		return nil, nil, err
	}
	known, ok := s.find(name)
	if !ok {
		return nil, nil, diag.Refuse("%q is no revision (%v), no file, and no batch of this house", name, notRevision)
	}
	b, list := s.batch(known)
	if b == nil {
		return nil, nil, list
	}
	if b.Parent == "" {
		return nil, nil, diag.Refuse("%q varies no other batch: say what to compare it with", known)
	}
	old, new = s.only(b.Parent), s.only(known)
	return old, new, nil
}

// twoSides reads two sides. A batch by name is one of the house of the other side,
// if that is a file; wherever the command is called from.
func (f *Finder) twoSides(args []string) (old, new *Side, err error) {
	if !isBatchName(args[0]) || isBatchName(args[1]) {
		if old, err = f.side(args[0], nil); err == nil {
			new, err = f.side(args[1], old)
		}
		return old, new, err
	}
	if new, err = f.side(args[1], nil); err == nil {
		old, err = f.side(args[0], new)
	}
	return old, new, err
}

// isBatchName reports whether an argument is neither a file nor REV:path.
func isBatchName(arg string) bool {
	return arg != standard && !isFile(arg) && !strings.Contains(arg, ":")
}

// side reads one side: a file, REV:path, or a batch by name. The batch is looked
// for in the house of the other side, if that has been read and is no revision,
// and then in the house around the working directory.
func (f *Finder) side(arg string, other *Side) (*Side, error) {
	if arg == standard {
		at, err := f.Standard()
		if err != nil {
			return nil, err
		}
		src, err := front.Load(at)
		if err != nil {
			return nil, err
		}
		return sideOf(src.House, src.Path, "standard input", false), nil
	}
	if isFile(arg) {
		if _, err := os.Stat(arg); err != nil {
			return nil, diag.Refuse("cannot read %s: %v", arg, wholefile.Reason(err))
		}
		return working(arg, false)
	}
	if rev, where, ok := strings.Cut(arg, ":"); ok {
		return revisionPath(rev, where, arg)
	}
	near := other
	if near != nil && near.rev == "" {
		if known, ok := near.find(arg); ok {
			return near.only(known), nil
		}
	}
	s, err := working(".", true)
	if err == nil {
		if known, ok := s.find(arg); ok {
			return s.only(known), nil
		}
	}
	if near == nil || near.rev != "" {
		if err != nil {
			return nil, err
		}
		near = s
	}
	if isRevision(arg) {
		return nil, diag.Refuse("%s is a revision, and the other side is none: write %s:FILE or \"%s:Name of a batch\"", arg, arg, arg)
	}
	_, list := near.batch(arg)
	return nil, list // there is none, and which is near
}

// working reads the files as they are now. A file that is gone has none of the
// house's batches.
func working(where string, whole bool) (*Side, error) {
	at := where
	if _, err := os.Stat(at); err != nil {
		if at = filepath.Dir(where); folderOf(at) != at && !isFile(at) {
			return nil, diag.Refuse("cannot read %s: %v", where, wholefile.Reason(err))
		}
		at = folderOf(at)
	}
	src, err := front.Load(front.Place{Path: at})
	if err != nil {
		return nil, err
	}
	s := sideOf(src.House, where, where, whole)
	s.gone = at != where
	return s, nil
}
