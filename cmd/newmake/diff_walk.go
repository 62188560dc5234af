package main

import (
	"bytes"
	"fmt"
	"path/filepath"

	"newmake/compile/ask/compare"
	"newmake/compile/show/diff"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/gitrepo"
)

// walk compares each revision of A..B that touches the house with the one before
// it, oldest first. Each is written before the next is read: a long history takes
// no more memory than a short one.
func (a *app) walk(args, files []string, f diffFlags, format string) error {
	if len(args) != 1 || len(files) > 1 {
		return usage("--each wants a range of revisions, such as HEAD~10..HEAD, and at most one path after --")
	}
	if format == "html" || !toTerminal(f.output) {
		return usage("--each writes text, md or json to standard output")
	}
	span, err := a.revisions(args[0])
	if err != nil {
		return err
	}
	if span[1] == "" {
		span[1] = "HEAD"
	}
	where := "."
	if len(files) == 1 {
		where = files[0]
	}
	repo, err := gitrepo.Open(folderOf(where))
	if err != nil {
		return usage("%v", err)
	}
	w := &walker{a: a, f: f, format: format, repo: repo, whole: len(files) == 0}
	if w.below, err = repo.Below(where); err != nil {
		return usage("%v", err)
	}
	if w.reader, err = repo.Reader(); err != nil {
		return usage("%v", err)
	}
	defer w.reader.Close()
	if err := w.run(span); err != nil {
		return err
	}
	if f.exitCode && w.differs {
		return errSaid
	}
	return nil
}

// walker is a walk through a history.
type walker struct {
	a       *app
	f       diffFlags
	format  string
	repo    *gitrepo.Repo
	reader  *gitrepo.Reader
	below   string
	whole   bool
	differs bool
	first   bool
}

func (w *walker) run(span [2]string) error {
	from, err := w.repo.Commit(span[0])
	if err != nil {
		return usage("%v", err)
	}
	to, err := w.repo.Commit(span[1])
	if err != nil {
		return usage("%v", err)
	}
	before, dir, err := w.read(from, span[0])
	if err != nil {
		return usage("%v", err)
	}
	if dir == "" {
		if _, dir, err = w.read(to, span[1]); err != nil {
			return usage("%v", err)
		}
	}
	if dir == "" {
		return usage("there is no house at %s, neither at %s nor at %s", w.below, span[0], span[1])
	}
	revisions, err := w.repo.History(from, to, dir)
	if err != nil {
		return usage("%v", err)
	}
	w.begin()
	for _, r := range revisions {
		after, _, err := w.read(r.Commit, r.Short)
		if err != nil {
			return usage("%v", err)
		}
		if err := w.step(r, before, after); err != nil {
			return err
		}
		before = after
	}
	w.end(len(revisions))
	return nil
}

// read reads the house as it was at a commit; nil if there was none.
func (w *walker) read(commit, name string) (s *selection, dir string, err error) {
	tree, err := w.reader.At(commit)
	if err != nil {
		return nil, "", err
	}
	dir, ok := tree.House(w.below)
	if !ok {
		return nil, "", nil
	}
	s, err = w.a.fromTree(tree, name, commit, w.below, name+":"+w.below, w.whole)
	if err != nil {
		if _, broken := err.(diag.List); broken {
			return nil, dir, nil
		}
		return nil, dir, err
	}
	s.moves = true
	return s, dir, nil
}

// nobody is the side of a revision at which there was no house.
func nobody(label string) *selection {
	return &selection{house: &check.House{}, label: label, moves: true}
}

// entry is one revision as JSON.
type entry struct {
	Commit  string `json:"commit"`
	Date    string `json:"date"`
	Subject string `json:"subject"`
	*compare.Document
}

func (w *walker) step(r gitrepo.Revision, before, after *selection) error {
	if before == nil {
		before = nobody("nothing")
	}
	if after == nil {
		after = nobody(r.Short)
	}
	f := w.f
	if f.why == "main" {
		f.why = "none"
	}
	doc, _, err := w.a.compareSides(before, after, f)
	if err != nil {
		if w.f.batch != "" { // neither revision has it
			return nil
		}
		return err
	}
	w.differs = w.differs || doc.Differs()
	var out bytes.Buffer
	switch w.format {
	case "json":
		if !w.first {
			out.WriteString(",\n")
		}
		out.WriteString("    ")
		if err := diag.EncodeJSON(&out, "    ", entry{r.Commit, r.Date, r.Subject, doc}); err != nil {
			return err
		}
		out.Truncate(out.Len() - 1)
		w.first = false
	default:
		diff.Step(&out, r.Date+" "+r.Short+" "+r.Subject, doc, w.format == "md")
	}
	return w.a.write("", out.Bytes(), nil)
}

func (w *walker) begin() {
	w.first = true
	if w.format == "json" {
		fmt.Fprintf(w.a.out, "{\n  \"format\": %q,\n  \"version\": %q,\n  \"revisions\": [\n", compare.Format+".history", compare.Version)
	}
}

func (w *walker) end(n int) {
	if w.format == "json" {
		fmt.Fprint(w.a.out, "\n  ]\n}\n")
		return
	}
	if n == 0 {
		w.a.say("no revision of that range touches %s", filepath.FromSlash(w.below))
	}
}
