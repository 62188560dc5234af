package gitrepo

import (
	"bufio"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strconv"
	"strings"
	"testing/fstest" // MapFS is the standard library's file system in memory

	"newmake/lang"
)

const (
	ending    = ".batch"
	houseFile = "house.batch"
)

// Tree is the recipe files of one revision, or of the index.
type Tree struct {
	files    []file
	blobs    map[string][]byte // by object name
	Unmerged []string          // of the index: files in conflict
}

type file struct {
	path string // below the top, with slashes
	mode fs.FileMode
	blob string
}

// Reader reads trees one after the other over one git process. What two trees in
// a row share is read once; of older ones nothing is kept.
type Reader struct {
	repo *Repo
	last map[string][]byte
	in   io.WriteCloser
	out  *bufio.Reader
	done func() error
}

// Reader starts a reader. It is to be closed.
func (r *Repo) Reader() (*Reader, error) {
	cmd := r.command("cat-file", "--batch")
	in, err := cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		return nil, err
	}
	return &Reader{repo: r, in: in, out: bufio.NewReader(out), done: cmd.Wait}, nil
}

// Close ends the git process.
func (r *Reader) Close() error {
	r.in.Close()
	return r.done()
}

// At reads the tree of a commit.
func (r *Reader) At(commit string) (*Tree, error) {
	out, err := r.repo.Run("ls-tree", "-r", "-z", "--full-tree", commit)
	if err != nil {
		return nil, err
	}
	t := &Tree{}
	for _, row := range rows(out) {
		what, name, _ := strings.Cut(row, "\t") // 100644 blob 1234...
		f := strings.Fields(what)
		if len(f) == 3 && f[1] == "blob" && path.Ext(name) == ending {
			t.files = append(t.files, file{name, mode(f[0]), f[2]})
		}
	}
	return t, r.fetch(t)
}

// Staged reads what is staged: the tree of the next commit.
func (r *Reader) Staged() (*Tree, error) {
	out, err := r.repo.Run("ls-files", "-s", "-z", "--full-name", ":(top)")
	if err != nil {
		return nil, err
	}
	t := &Tree{}
	for _, row := range rows(out) {
		what, name, _ := strings.Cut(row, "\t") // 100644 1234... 0
		f := strings.Fields(what)
		if len(f) != 3 || f[0] == "160000" || path.Ext(name) != ending {
			continue
		}
		if f[2] != "0" {
			t.Unmerged = append(t.Unmerged, name)
			continue
		}
		t.files = append(t.files, file{name, mode(f[0]), f[1]})
	}
	return t, r.fetch(t)
}

func rows(out string) []string {
	if out == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(out, "\x00"), "\x00")
}

func mode(m string) fs.FileMode {
	if m == "120000" {
		return fs.ModeSymlink | 0o777
	}
	return 0o644
}

// fetch reads the blobs of a tree, but for those of the tree before.
func (r *Reader) fetch(t *Tree) error {
	t.blobs = make(map[string][]byte, len(t.files))
	for _, f := range t.files {
		if t.blobs[f.blob] != nil {
			continue
		}
		data := r.last[f.blob]
		if data == nil {
			var err error
			if data, err = r.blob(f.blob); err != nil {
				return fmt.Errorf("%s: %w", f.path, err)
			}
		}
		t.blobs[f.blob] = data
	}
	r.last = t.blobs
	return nil
}

// blob reads one object. One that is larger than any recipe is cut off, and the
// loader says that it is too large.
func (r *Reader) blob(name string) ([]byte, error) {
	if _, err := io.WriteString(r.in, name+"\n"); err != nil {
		return nil, err
	}
	head, err := r.out.ReadString('\n') // 1234... blob 56
	if err != nil {
		return nil, err
	}
	f := strings.Fields(head)
	if len(f) != 3 {
		return nil, fmt.Errorf("git has no object %s", name)
	}
	size, err := strconv.ParseInt(f[2], 10, 64)
	if err != nil {
		return nil, err
	}
	keep := min(size, lang.MaxFileBytes+1)
	data := make([]byte, keep)
	if _, err := io.ReadFull(r.out, data); err != nil {
		return nil, err
	}
	_, err = io.CopyN(io.Discard, r.out, size-keep+1) // and the newline after it
	return data, err
}

// Has says that the tree has a file, or a folder with a recipe in it.
func (t *Tree) Has(name string) bool {
	for _, f := range t.files {
		if f.path == name || name == "." || strings.HasPrefix(f.path, name+"/") {
			return true
		}
	}
	return false
}

// House finds the folder of the house to which a path belongs: the nearest one
// at or above it that holds house.batch.
func (t *Tree) House(name string) (string, bool) {
	for dir := path.Clean(name); ; dir = path.Dir(dir) {
		for _, f := range t.files {
			if f.path == path.Join(dir, houseFile) {
				return dir, true
			}
		}
		if dir == "." || dir == "/" {
			return "", false
		}
	}
}

// FS is the recipe files below a folder.
func (t *Tree) FS(dir string) fs.FS {
	out := fstest.MapFS{}
	for _, f := range t.files {
		rel := f.path
		if dir != "." {
			var ok bool
			if rel, ok = strings.CutPrefix(f.path, dir+"/"); !ok {
				continue
			}
		}
		data := t.blobs[f.blob]
		if f.mode&fs.ModeSymlink != 0 && t.readAnyway(f, string(data), dir) {
			continue
		}
		out[rel] = &fstest.MapFile{Data: data, Mode: f.mode}
	}
	return out
}

// readAnyway says that a link leads to a recipe of the same house, which is read
// by its own name.
func (t *Tree) readAnyway(link file, target, dir string) bool {
	to := path.Join(path.Dir(link.path), target)
	for _, f := range t.files {
		if f.path == to && f.mode&fs.ModeSymlink == 0 && (dir == "." || strings.HasPrefix(to, dir+"/")) {
			return true
		}
	}
	return false
}

// Data is the text of a file, as the tree has it.
func (t *Tree) Data(name string) ([]byte, bool) {
	for _, f := range t.files {
		if f.path == name {
			return t.blobs[f.blob], true
		}
	}
	return nil, false
}

// Files lists the recipe files below a folder.
func (t *Tree) Files(dir string) []string {
	var out []string
	for _, f := range t.files {
		if f.mode.IsRegular() && (dir == "." || strings.HasPrefix(f.path, dir+"/")) {
			out = append(out, f.path)
		}
	}
	return out
}
