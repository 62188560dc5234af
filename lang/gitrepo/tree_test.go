package gitrepo

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
)

// repo makes a repository of files; a text that begins with -> is a link.
func repo(t *testing.T, files map[string]string) *Repo {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		at := filepath.Join(dir, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(at), 0o755))
		if to, ok := bytes.CutPrefix([]byte(text), []byte("->")); ok {
			require.NoError(t, os.Symlink(string(to), at))
			continue
		}
		require.NoError(t, os.WriteFile(at, []byte(text), 0o644))
	}
	for _, args := range [][]string{{"init", "-q"}, {"add", "."}, {"-c", "user.name=S", "-c", "user.email=s@example.org", "commit", "-q", "-m", "first"}} {
		cmd := exec.Command("git", args...)
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
	}
	r, err := Open(dir)
	require.NoError(t, err)
	return r
}

func tree(t *testing.T, r *Repo) *Tree {
	t.Helper()
	commit, err := r.Commit("HEAD")
	require.NoError(t, err)
	reader, err := r.Reader()
	require.NoError(t, err)
	defer reader.Close()
	at, err := reader.At(commit)
	require.NoError(t, err)
	staged, err := reader.Staged()
	require.NoError(t, err)
	assert.Equal(t, at.files, staged.files, "what is committed is what is staged")
	return at
}

// recipes is the plain files of a tree below a folder.
func recipes(t *Tree, dir string) []string {
	var out []string
	for _, f := range t.files {
		if _, ok := below(dir, f.path); ok && f.mode.IsRegular() {
			out = append(out, f.path)
		}
	}
	return out
}

const (
	plant = "newmake 1\nplant \"P\" {\n}\n"
	grain = "grain my-corn from corn {\n  moisture 12 %\n}\n"
)

func codes(list diag.List) []diag.Code {
	var out []diag.Code
	for _, d := range list {
		out = append(out, d.Code)
	}
	return out
}

func TestLinksAndLargeFiles(t *testing.T) {
	r := repo(t, map[string]string{
		"a house/house.batch": plant,
		"a house/grain.batch": grain,
		"a house/again.batch": "->grain.batch", // read once, by its own name
		"a house/out.batch":   "->../elsewhere.batch",
		"a house/large.batch": string(bytes.Repeat([]byte("# a very long file\n"), lang.MaxFileBytes/19+1)),
		"a house/note.txt":    "no recipe",
		"a house/third.batch": "->again.batch",
		"a house/here.batch":  "->../a house", // a folder that is read anyway
		"a house/loop.batch":  "->pool.batch",
		"a house/pool.batch":  "->loop.batch",
		"a house/abs.batch":   "->/a house/grain.batch",
		"elsewhere.batch":     grain,
	})
	at := tree(t, r)
	dir, ok := at.House("a house/grain.batch")
	require.True(t, ok)
	assert.Equal(t, "a house", dir)
	_, ok = at.House("elsewhere.batch")
	assert.False(t, ok)
	h, err := check.LoadFS(at.FS(dir), "HEAD:a house", check.Options{})
	require.NoError(t, err)
	list := h.Check()
	assert.NotContains(t, codes(list), diag.CodeDuplicate)
	var out []string
	for _, d := range list {
		if d.Code == diag.CodeLinkOut {
			out = append(out, d.At.Src.Name)
		}
	}
	assert.ElementsMatch(t, []string{"HEAD:a house/out.batch", "HEAD:a house/loop.batch", "HEAD:a house/pool.batch", "HEAD:a house/abs.batch"}, out)
	assert.Contains(t, codes(list), diag.CodeFileTooLarge)
	assert.True(t, at.Has("a house"))
	assert.True(t, at.Has("."))
	assert.False(t, at.Has("a hous"))
	assert.ElementsMatch(t, []string{"a house/house.batch", "a house/grain.batch", "a house/large.batch"}, recipes(at, "a house"))
}

func TestBelowFollowsLinks(t *testing.T) {
	r := repo(t, map[string]string{"house/house.batch": plant})
	link := filepath.Join(t.TempDir(), "link")
	require.NoError(t, os.Symlink(r.Top, link))
	for _, name := range []string{filepath.Join(r.Top, "house", "gone.batch"), filepath.Join(link, "house", "gone.batch")} {
		below, err := r.Below(name)
		require.NoError(t, err)
		assert.Equal(t, "house/gone.batch", below)
	}
	_, err := r.Below(t.TempDir())
	assert.Error(t, err)
}

// What looks like an option is a revision that there is none of.
func TestARevisionIsNoOption(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	for _, rev := range []string{"", "--all", "-h", "HEAD~9", "nowhere", "HEAD:house.batch"} {
		_, err := r.Commit(rev)
		assert.Error(t, err, rev)
	}
}

func TestNoRepository(t *testing.T) {
	_, err := Open(t.TempDir())
	assert.ErrorIs(t, err, ErrNoRepo)
}
