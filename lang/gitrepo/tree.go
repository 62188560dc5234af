package gitrepo

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/memoryfs"
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
	end  context.CancelFunc // kills the process
	wait func() error
}

// Reader starts a reader. It is to be closed.
func (r *Repo) Reader() (*Reader, error) {
	ctx, end := context.WithCancel(context.Background()) // as long as a walk takes
	cmd, err := r.command(ctx, "cat-file", "--batch")
	if err != nil {
		end()
		return nil, err
	}
	in, errIn := cmd.StdinPipe()
	out, errOut := cmd.StdoutPipe()
	if err := errors.Join(errIn, errOut); err != nil {
		end()
		return nil, err
	}
	if err := cmd.Start(); err != nil {
		end()
		return nil, err
	}
	return &Reader{repo: r, in: in, out: bufio.NewReader(out), end: end, wait: cmd.Wait}, nil
}

// Close ends the git process.
func (r *Reader) Close() error {
	defer r.end()
	r.in.Close()
	return r.wait()
}

// At reads the tree of a commit.
func (r *Reader) At(commit string) (*Tree, error) {
	out, err := r.repo.run("ls-tree", "-r", "-z", "--full-tree", commit)
	if err != nil {
		return nil, err
	}
	t := &Tree{}
	for _, row := range rows(out) {
		f, ok := entryOf(row)
		if !ok || path.Ext(f.path) != ending {
			continue
		}
		if err := valid(f.path); err != nil {
			return nil, err
		}
		t.files = append(t.files, f)
	}
	return t, r.fetch(t)
}

// entryOf reads a row of ls-tree that is a file: 100644 blob 1234..., a tab, and
// its path.
func entryOf(row string) (file, bool) {
	what, name, _ := strings.Cut(row, "\t")
	f := strings.Fields(what)
	if len(f) != 3 || f[1] != "blob" {
		return file{}, false
	}
	return file{name, mode(f[0]), f[2]}, true
}

// valid says that a path is below the top. git makes no other, but reads one that
// somebody has made.
func valid(name string) error {
	if !fs.ValidPath(name) || !filepath.IsLocal(filepath.FromSlash(name)) {
		return fmt.Errorf("the repository names a file %q, which leads out of it: nothing of it is read", name)
	}
	return nil
}

// Staged reads what is staged: the tree of the next commit.
func (r *Reader) Staged() (*Tree, error) {
	out, err := r.repo.run("ls-files", "-s", "-z", "--full-name", ":(top)")
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
		if err := valid(name); err != nil {
			return nil, err
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

// tooLarge takes the place of a file that is larger than a recipe may be, so that the
// loader reports it.
var tooLarge = sync.OnceValue(func() []byte { return make([]byte, lang.MaxFileBytes+1) })

// fetch reads the blobs of a tree, but for those of the tree before.
func (r *Reader) fetch(t *Tree) error {
	t.blobs = make(map[string][]byte, len(t.files))
	var missing []file
	total := 0
	for _, f := range t.files {
		if _, known := t.blobs[f.blob]; known {
			continue
		}
		data, known := r.last[f.blob]
		if !known {
			missing = append(missing, f)
		}
		t.blobs[f.blob] = data
		total += len(data)
	}
	sizes, err := r.sizes(missing)
	if err != nil {
		return err
	}
	for i, f := range missing {
		if sizes[i] > lang.MaxFileBytes {
			t.blobs[f.blob] = tooLarge()
			continue
		}
		if total += sizes[i]; total > r.repo.limits.treeBytes {
			return fmt.Errorf("the recipes of the repository are more than %d MiB, so they were not read", r.repo.limits.treeBytes>>20)
		}
		if t.blobs[f.blob], err = r.blob(f.blob); err != nil {
			return fmt.Errorf("%s: %w", diag.Safe(f.path), err)
		}
	}
	r.last = t.blobs
	return nil
}

// sizes asks how large blobs are, before they are read: what is packed small may
// be huge.
func (r *Reader) sizes(files []file) ([]int, error) {
	if len(files) == 0 {
		return nil, nil
	}
	var names strings.Builder
	for _, f := range files {
		names.WriteString(f.blob + "\n")
	}
	out, err := r.repo.runWith([]byte(names.String()), "cat-file", "--batch-check")
	if err != nil {
		return nil, err
	}
	lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	if len(lines) != len(files) {
		return nil, errors.New("git did not say how large the files are")
	}
	sizes := make([]int, len(files))
	for i, line := range lines {
		if sizes[i], err = blobSize(line); err != nil {
			return nil, fmt.Errorf("%s: %w", diag.Safe(files[i].path), err)
		}
	}
	return sizes, nil
}

// blobSize reads what cat-file says of an object: 1234... blob 56.
func blobSize(line string) (int, error) {
	f := strings.Fields(line)
	if len(f) != 3 || f[1] != "blob" {
		return 0, errors.New("its text is not in the repository; where that is a partial clone, `git fetch --refetch --no-filter` gets all of it")
	}
	return strconv.Atoi(f[2])
}

// blob reads one object.
func (r *Reader) blob(name string) ([]byte, error) {
	defer time.AfterFunc(r.repo.limits.patience, r.end).Stop()
	if _, err := io.WriteString(r.in, name+"\n"); err != nil {
		return nil, err
	}
	head, err := r.out.ReadString('\n')
	if err != nil {
		return nil, err
	}
	size, err := blobSize(head)
	if err != nil {
		return nil, err
	}
	if size > lang.MaxFileBytes {
		return nil, errors.New("git gives it two sizes")
	}
	data := make([]byte, size)
	if _, err := io.ReadFull(r.out, data); err != nil {
		return nil, err
	}
	_, err = r.out.Discard(1) // the newline after it
	return data, err
}

// Has reports whether the tree has a file, or a folder with a recipe in it.
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

// Houses are the folders below a folder that hold a house, none of them in another,
// in order; or the folder itself.
func (t *Tree) Houses(folder string) []string {
	var out []string
	for _, f := range t.files {
		if path.Base(f.path) != houseFile {
			continue
		}
		if _, in := below(folder, f.path); in {
			out = append(out, path.Dir(f.path))
		}
	}
	slices.Sort(out)
	var outer []string
	for _, dir := range out {
		if slices.ContainsFunc(outer, func(o string) bool { return o == "." || strings.HasPrefix(dir, o+"/") }) {
			continue
		}
		outer = append(outer, dir)
	}
	return outer
}

// FS is the recipe files below a folder. Of links there are only those that lead
// to nothing below it: what they lead to is read by its own name.
func (t *Tree) FS(dir string) fs.FS {
	out := memoryfs.Files{}
	for _, f := range t.files {
		rel, ok := below(dir, f.path)
		if !ok {
			continue
		}
		link := f.mode&fs.ModeSymlink != 0
		if link && t.readAnyway(f, dir) {
			continue
		}
		out[rel] = memoryfs.File{Data: t.blobs[f.blob], Link: link}
	}
	return out
}

// below is a path from a folder.
func below(dir, name string) (string, bool) {
	if dir == "." {
		return name, true
	}
	return strings.CutPrefix(name, dir+"/")
}

// mostLinks is how many links are followed to one file, as on most systems.
const mostLinks = 40

// readAnyway reports whether a link leads, perhaps by way of others, to a recipe or a
// folder below a folder.
func (t *Tree) readAnyway(link file, dir string) bool {
	for range mostLinks {
		to := path.Join(path.Dir(link.path), string(t.blobs[link.blob]))
		if _, inside := below(dir, to); !inside && to != dir {
			return false
		}
		i := slices.IndexFunc(t.files, func(f file) bool { return f.path == to || to == "." || strings.HasPrefix(f.path, to+"/") })
		switch {
		case i < 0:
			return false
		case t.files[i].path != to || t.files[i].mode&fs.ModeSymlink == 0:
			return true
		}
		link = t.files[i]
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
