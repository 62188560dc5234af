package main

import (
	"os"
	"path/filepath"
	"strings"
)

// sides finds the two sides that the arguments mean.
func (a *app) sides(args, files []string) (old, new *selection, err error) {
	if len(args) == 2 && len(files) == 0 && isFile(args[1]) && a.isRevision(args[0]) {
		args, files = args[:1], args[1:] // REV FILE, as git takes it too
	}
	switch {
	case len(args) == 2 && len(files) == 0:
		return a.twoSides(args)
	case len(args) > 1 || len(files) > 1:
		return nil, nil, usage("give two sides, or one revision and one path after --; `newmake help diff` shows how")
	case len(args) == 0: // newmake diff -- FILE
		return a.sinceHead(files[0])
	}
	arg := args[0]
	if len(files) == 0 && isFile(arg) {
		return a.sinceHead(arg)
	}
	revisions, err := a.revisions(arg)
	if err != nil {
		if len(files) == 0 && !strings.Contains(arg, "..") {
			return a.againstParent(arg, err)
		}
		return nil, nil, err
	}
	where := "."
	if len(files) == 1 {
		where = files[0]
	}
	if old, err = a.atRevision(revisions[0], where, len(files) == 0); err != nil {
		return nil, nil, err
	}
	if revisions[1] == "" {
		new, err = a.working(where, len(files) == 0)
	} else {
		new, err = a.atRevision(revisions[1], where, len(files) == 0)
	}
	return times(old, new, err)
}

// times says of two sides that they are one house at two times.
func times(old, new *selection, err error) (*selection, *selection, error) {
	if err != nil {
		return nil, nil, err
	}
	old.moves, new.moves = true, true
	return old, new, nil
}

func isFile(arg string) bool {
	_, err := os.Stat(arg)
	return err == nil || strings.HasSuffix(arg, ending) && !strings.Contains(arg, ":")
}

func (a *app) sinceHead(file string) (old, new *selection, err error) {
	if old, err = a.atRevision("HEAD", file, false); err == nil {
		new, err = a.working(file, false)
	}
	return times(old, new, err)
}

// againstParent compares a variant with the batch that it varies.
func (a *app) againstParent(name string, notRevision error) (old, new *selection, err error) {
	s, err := a.working(".", true)
	if err != nil {
		return nil, nil, err
	}
	known, ok := s.find(name)
	if !ok {
		return nil, nil, usage("%q is no revision (%v), no file, and no batch of this house", name, notRevision)
	}
	b, list := s.batch(known)
	if b == nil {
		return nil, nil, list
	}
	if b.Parent == "" {
		return nil, nil, usage("%q varies no other batch: say what to compare it with", known)
	}
	old, new = s.only(b.Parent), s.only(known)
	return old, new, nil
}

// twoSides reads two sides. A batch by name is one of the house of the other side,
// if that is a file; wherever the command is called from.
func (a *app) twoSides(args []string) (old, new *selection, err error) {
	if !isBatchName(args[0]) || isBatchName(args[1]) {
		if old, err = a.side(args[0], nil); err == nil {
			new, err = a.side(args[1], old)
		}
		return old, new, err
	}
	if new, err = a.side(args[1], nil); err == nil {
		old, err = a.side(args[0], new)
	}
	return old, new, err
}

// isBatchName says that an argument is neither a file nor REV:path.
func isBatchName(arg string) bool {
	return arg != standardInput && !isFile(arg) && !strings.Contains(arg, ":")
}

// side reads one side: a file, REV:path, or a batch by name. The batch is looked
// for in the house of the other side, if that has been read and is no revision,
// and then in the house around the working directory.
func (a *app) side(arg string, other *selection) (*selection, error) {
	if arg == standardInput {
		src, err := a.load(arg, "")
		if err != nil {
			return nil, err
		}
		return selectionOf(src.house, src.path, "standard input", false), nil
	}
	if isFile(arg) {
		if _, err := os.Stat(arg); err != nil {
			return nil, usage("cannot read %s: %v", arg, reason(err))
		}
		return a.working(arg, false)
	}
	if rev, where, ok := strings.Cut(arg, ":"); ok {
		return a.revisionPath(rev, where, arg)
	}
	near := other
	if near != nil && near.rev == "" {
		if known, ok := near.find(arg); ok {
			return near.only(known), nil
		}
	}
	s, err := a.working(".", true)
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
	_, list := near.batch(arg)
	return nil, list // there is none, and which is near
}

// working reads the files as they are now. A file that is gone has none of the
// house's batches.
func (a *app) working(where string, whole bool) (*selection, error) {
	at := where
	if _, err := os.Stat(at); err != nil {
		if at = filepath.Dir(where); folderOf(at) != at && !isFile(at) {
			return nil, usage("cannot read %s: %v", where, reason(err))
		}
		at = folderOf(at)
	}
	src, err := a.load(at, "")
	if err != nil {
		return nil, err
	}
	return selectionOf(src.house, where, where, whole), nil
}
