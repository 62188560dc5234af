package gitrepo

import (
	"bytes"
	"crypto/sha1"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"hash"
	"strings"
)

// Revision is a commit of a history.
type Revision struct {
	Commit, Short string
	Date          string // 2026-03-03
	Subject       string
}

// History lists the revisions of the first-parent line from a to b that touch a
// folder, oldest first. An empty a begins at the beginning.
func (r *Repo) History(a, b, under string) ([]Revision, error) {
	span := b
	if a != "" {
		span = a + ".." + b
	}
	where := ":(top,literal)" + under
	if under == "." {
		where = ":(top)*" + ending
	}
	out, err := r.run("rev-list", "--first-parent", "--reverse", "--date=short", "--format=%H%x1f%h%x1f%ad%x1f%s", span, "--", where)
	if err != nil {
		return nil, err
	}
	var all []Revision
	for _, line := range strings.Split(out, "\n") {
		if f := strings.SplitN(line, "\x1f", 4); len(f) == 4 { // others are rev-list's own `commit 1234...`
			all = append(all, Revision{f[0], f[1], f[2], f[3]})
		}
	}
	return all, nil
}

// LastChange is the last commit, from HEAD back, that changed one of some files;
// empty if there is none.
func (r *Repo) LastChange(names []string) (string, error) {
	below, err := r.allBelow(names)
	if err != nil {
		return "", err
	}
	args := []string{"rev-list", "--max-count=1", "HEAD", "--"}
	for _, name := range below {
		args = append(args, ":(top,literal)"+name)
	}
	out, err := r.run(args...)
	return strings.TrimSpace(out), err
}

// AtHead says that texts that were read from files are those that HEAD has. Line
// endings may differ, as git may write CRLF. The texts are hashed as git does and
// the names compared, so that no object is read and no filter runs: where a filter
// changes what is stored, the answer is no.
func (r *Repo) AtHead(names []string, texts [][]byte) (bool, error) {
	below, err := r.allBelow(names)
	if err != nil {
		return false, err
	}
	out, err := r.run(append([]string{"ls-tree", "-z", "--full-tree", "HEAD", "--"}, below...)...)
	if err != nil {
		return false, err
	}
	blobs := map[string]string{}
	for _, row := range rows(out) {
		if e, ok := entryOf(row); ok {
			blobs[e.path] = e.blob
		}
	}
	for i, name := range below {
		blob := blobs[name]
		lf := bytes.ReplaceAll(texts[i], []byte("\r\n"), []byte("\n"))
		if blob == "" || blob != objectName(texts[i], len(blob)) && blob != objectName(lf, len(blob)) {
			return false, nil
		}
	}
	return true, nil
}

func (r *Repo) allBelow(names []string) ([]string, error) {
	var out []string
	for _, name := range names {
		below, err := r.Below(name)
		if err != nil {
			return nil, err
		}
		out = append(out, below)
	}
	return out, nil
}

// objectName is what git calls a text: in 40 hex digits by SHA-1, in 64 by
// SHA-256 (hash-function-transition, in git's documentation).
func objectName(text []byte, digits int) string {
	var h hash.Hash = sha1.New()
	if digits == hex.EncodedLen(sha256.Size) {
		h = sha256.New()
	}
	fmt.Fprintf(h, "blob %d\x00", len(text))
	h.Write(text)
	return hex.EncodeToString(h.Sum(nil))
}
