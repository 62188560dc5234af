package gitrepo

import (
	"bytes"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
)

// callers are the files of the program that may run another: this package, git;
// the one that shows an address in the person's browser; and the one that has Go build
// the page.
var callers = []string{"cmd/newmake/internal/serve/browser.go", "editors/page/build.go", "lang/gitrepo/command.go", "lang/gitrepo/repo.go"}

func TestNothingElseRunsAProgram(t *testing.T) {
	var found []string
	require.NoError(t, filepath.WalkDir("../..", func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(p) != ".go" || strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			if i.Path.Value == `"os/exec"` {
				rel, err := filepath.Rel("../..", p)
				require.NoError(t, err)
				found = append(found, filepath.ToSlash(rel))
			}
		}
		return nil
	}))
	slices.Sort(found)
	assert.Equal(t, callers, slices.DeleteFunc(found, func(p string) bool { return strings.HasPrefix(p, ".ci/") }))
}

func TestOnlyPlumbingIsCalled(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	for _, porcelain := range []string{"status", "log", "diff", "show", "add", "checkout", "fetch"} {
		_, err := r.run(porcelain)
		assert.ErrorContains(t, err, "not called by newmake", porcelain)
	}
}

func TestEnvironment(t *testing.T) {
	from := []string{"HOME=/home/s", "LC_ALL=de_DE.UTF-8", "GIT_DIR=/elsewhere", "Git_Work_Tree=/elsewhere", "GIT_INDEX_FILE=next", "GIT_EXTERNAL_DIFF=x",
		"GIT_SSH_COMMAND=x", "GIT_EXEC_PATH=x", "GIT_TRACE=/file", "GIT_CONFIG=x", "GIT_CONFIG_GLOBAL=mine", "GIT_NO_LAZY_FETCH=0", "GIT_ALLOW_PROTOCOL=ext"}
	want := []string{"HOME=/home/s", "GIT_CONFIG_GLOBAL=mine"}
	assert.Equal(t, append(want, variables...), environment(from, false))
	want = []string{"HOME=/home/s", "GIT_DIR=/elsewhere", "Git_Work_Tree=/elsewhere", "GIT_INDEX_FILE=next", "GIT_CONFIG_GLOBAL=mine"}
	assert.Equal(t, append(want, variables...), environment(from, true))
}

// A house is read from the repository around it, though the environment may say
// another one: that of a hook from which newmake was called.
func TestRepositoryOfTheEnvironment(t *testing.T) {
	other := repo(t, map[string]string{"house.batch": plant})
	r := repo(t, map[string]string{"house.batch": plant + "# another\n"})
	t.Setenv("GIT_DIR", filepath.Join(other.Top, ".git"))
	t.Setenv("GIT_WORK_TREE", other.Top)
	here, err := Open(r.Top)
	require.NoError(t, err)
	assert.Equal(t, r.Top, here.Top)
	hook, err := OpenInHook(other.Top)
	require.NoError(t, err)
	assert.Equal(t, other.Top, hook.Top)
}

func git(t *testing.T, r *Repo, input string, args ...string) string {
	t.Helper()
	cmd := exec.Command("git", append([]string{"-c", "user.name=S", "-c", "user.email=s@example.org"}, args...)...)
	cmd.Dir, cmd.Stdin = r.Top, strings.NewReader(input)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%v: %s", args, out)
	return strings.TrimSpace(string(out))
}

// A working tree that the configuration puts elsewhere is not written to.
func TestWorkingTreeElsewhere(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	git(t, r, "", "config", "core.worktree", t.TempDir())
	_, err := Open(r.Top)
	assert.ErrorContains(t, err, "keeps its files elsewhere")
}

// Neither of the two fences against fetching needs the other.
func TestNothingIsFetched(t *testing.T) {
	for _, without := range []string{"", "GIT_NO_LAZY_FETCH=1", "GIT_ALLOW_PROTOCOL=none"} {
		t.Run("without "+without, func(t *testing.T) {
			from := repo(t, map[string]string{"house.batch": plant})
			git(t, from, "", "config", "uploadpack.allowFilter", "true")
			dir := t.TempDir()
			git(t, from, "", "clone", "-q", "--no-checkout", "--filter=tree:0", "file://"+from.Top, dir)
			r, err := Open(dir)
			require.NoError(t, err)
			before := variables
			variables = slices.DeleteFunc(slices.Clone(variables), func(v string) bool { return v == without })
			defer func() { variables = before }()
			commit, err := r.Commit("HEAD")
			require.NoError(t, err)
			reader, err := r.Reader()
			require.NoError(t, err)
			defer reader.Close()
			_, err = reader.At(commit)
			assert.Error(t, err)
			_, err = r.AtHead([]string{filepath.Join(dir, "house.batch")}, [][]byte{[]byte(plant)})
			assert.Error(t, err)
			git(t, r, "", "ls-tree", "HEAD") // git itself would have fetched it
		})
	}
}

// The texts of a clone that has trees and no texts are compared by their names.
func TestAtHead(t *testing.T) {
	for _, format := range []string{"sha1", "sha256"} {
		t.Run(format, func(t *testing.T) {
			dir := t.TempDir()
			from := &Repo{Top: dir}
			require.NoError(t, os.WriteFile(filepath.Join(dir, "a house.batch"), []byte(plant), 0o644))
			git(t, from, "", "init", "-q", "--object-format="+format)
			git(t, from, "", "add", ".")
			git(t, from, "", "commit", "-q", "-m", "first")
			git(t, from, "", "config", "uploadpack.allowFilter", "true")
			clone := filepath.Join(t.TempDir(), "clone")
			git(t, from, "", "clone", "-q", "--no-checkout", "--filter=blob:none", "file://"+dir, clone)
			r, err := Open(clone)
			require.NoError(t, err)
			at := func(name, text string) bool {
				same, err := r.AtHead([]string{filepath.Join(clone, name)}, [][]byte{[]byte(text)})
				require.NoError(t, err)
				return same
			}
			assert.True(t, at("a house.batch", plant))
			assert.True(t, at("a house.batch", strings.ReplaceAll(plant, "\n", "\r\n")))
			assert.False(t, at("a house.batch", plant+"\n"))
			assert.False(t, at("a house.batch", strings.TrimSuffix(plant, "\n")))
			assert.False(t, at("b.batch", plant), "not committed")
			last, err := r.LastChange([]string{filepath.Join(clone, "a house.batch")})
			require.NoError(t, err)
			assert.Equal(t, git(t, r, "", "rev-parse", "HEAD"), last)
			_, err = r.LastChange([]string{t.TempDir()})
			assert.Error(t, err)
		})
	}
}

// A ref may be called like an option of git, which is no way to give it one.
func TestRefsCalledLikeOptions(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	head := git(t, r, "", "rev-parse", "HEAD")
	for _, name := range []string{"--all", "--output=x", "-h"} {
		at := filepath.Join(r.Top, ".git", "refs", "heads", name)
		require.NoError(t, os.WriteFile(at, []byte(head+"\n"), 0o644))
		commit, err := r.Commit("refs/heads/" + name)
		require.NoError(t, err)
		assert.Equal(t, head, commit)
		if commit, err := r.Commit(name); err == nil {
			assert.Equal(t, head, commit)
		}
		if base, err := r.MergeBase(name, "HEAD"); err == nil {
			assert.True(t, strings.HasPrefix(head, base), base)
		}
		assert.NoFileExists(t, filepath.Join(r.Top, "x"))
	}
}

// commitOf makes a commit of a tree that git mktree would not make.
func commitOf(t *testing.T, r *Repo, tree []byte) string {
	t.Helper()
	id := git(t, r, string(tree), "hash-object", "-t", "tree", "-w", "--literally", "--stdin")
	return git(t, r, "", "commit-tree", "-m", "x", id)
}

func entryBytes(t *testing.T, mode, name, object string) []byte {
	t.Helper()
	var out bytes.Buffer
	out.WriteString(mode + " " + name + "\x00")
	for i := 0; i < len(object); i += 2 {
		var b byte
		for _, c := range []byte(object[i : i+2]) {
			b = b<<4 | byte(strings.IndexByte("0123456789abcdef", c))
		}
		out.WriteByte(b)
	}
	return out.Bytes()
}

func at(t *testing.T, r *Repo, commit string) (*Tree, error) {
	t.Helper()
	reader, err := r.Reader()
	require.NoError(t, err)
	defer reader.Close()
	return reader.At(commit)
}

func TestPathsThatLeadOut(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	blob := git(t, r, "", "rev-parse", "HEAD:house.batch")
	sub := git(t, r, "", "rev-parse", "HEAD^{tree}")
	for _, up := range []string{"..", "."} {
		_, err := at(t, r, commitOf(t, r, entryBytes(t, "40000", up, sub)))
		assert.ErrorContains(t, err, "leads out of it")
	}
	tree, err := at(t, r, commitOf(t, r, entryBytes(t, "100644", "a\n\x1b[31m.batch", blob)))
	require.NoError(t, err)
	assert.Equal(t, []string{"a\n\x1b[31m.batch"}, recipes(tree, "."))
}

// A tree of a few objects may list without end.
func TestTreeWithoutEnd(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	tree := git(t, r, "", "rev-parse", "HEAD^{tree}")
	for range 12 {
		var wide []byte
		for _, c := range "0123456789" {
			wide = append(wide, entryBytes(t, "40000", string(c), tree)...)
		}
		tree = git(t, r, string(wide), "hash-object", "-t", "tree", "-w", "--stdin")
	}
	r.limits.outputBytes = 1 << 20
	_, err := at(t, r, git(t, r, "", "commit-tree", "-m", "x", tree))
	assert.ErrorContains(t, err, "longer than 1 MiB")
}

func TestLimits(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant, "grain.batch": grain})
	r.limits.treeBytes = len(plant) + len(grain)
	_, err := at(t, r, "HEAD")
	assert.NoError(t, err)
	r.limits.treeBytes--
	_, err = at(t, r, "HEAD")
	assert.ErrorContains(t, err, "so they were not read")

	r.limits.outputBytes = 41 // a hash and a line's end
	_, err = r.Commit("HEAD")
	assert.NoError(t, err)
	r.limits.outputBytes = 40
	_, err = r.Commit("HEAD")
	assert.Error(t, err)
}

// A text of the greatest length is read, and one a byte longer is not: not even
// by git, which is only asked how long it is.
func TestLargeBlobs(t *testing.T) {
	fits, over := strings.Repeat("#", lang.MaxFileBytes), strings.Repeat("#", lang.MaxFileBytes+1)
	r := repo(t, map[string]string{"fits.batch": fits, "over.batch": over})
	tree, err := at(t, r, "HEAD")
	require.NoError(t, err)
	data, _ := tree.Data("fits.batch")
	assert.Equal(t, fits, string(data))
	data, _ = tree.Data("over.batch")
	assert.Equal(t, tooLarge(), data)
}

// A pipe in the place of a file keeps git waiting, and git is not waited for.
func TestPatience(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant})
	r.limits.patience = 300 * time.Millisecond
	head := filepath.Join(r.Top, ".git", "HEAD")
	require.NoError(t, os.Remove(head))
	if out, err := exec.Command("mkfifo", head).CombinedOutput(); err != nil {
		t.Skipf("no named pipes here: %s", out)
	}
	_, err := r.Commit("HEAD")
	assert.ErrorIs(t, err, ErrNoAnswer, "and not that git knows no such revision")
	r.limits.patience = time.Hour // it would not end if git were asked again
	_, err = r.run("rev-parse", "--show-toplevel")
	assert.ErrorContains(t, err, "no answer within")
}

// What a link of the working tree leads to is not written in the hook.
func TestWorkingBehindALink(t *testing.T) {
	r := repo(t, map[string]string{"house.batch": plant, "a/b.batch": grain})
	_, ok := r.Working("a/b.batch")
	assert.True(t, ok)
	_, ok = r.Working("house.batch")
	assert.True(t, ok)
	require.NoError(t, os.RemoveAll(filepath.Join(r.Top, "a")))
	require.NoError(t, os.Symlink(t.TempDir(), filepath.Join(r.Top, "a")))
	_, ok = r.Working("a/b.batch")
	assert.False(t, ok)
}

// Before the first commit all that is staged is new.
func TestStagedBeforeTheFirstCommit(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "house.batch"), []byte(plant), 0o644))
	git(t, &Repo{Top: dir}, "", "init", "-q")
	git(t, &Repo{Top: dir}, "", "add", ".")
	r, err := Open(dir)
	require.NoError(t, err)
	staged, err := r.StagedFiles(ending)
	require.NoError(t, err)
	assert.Equal(t, []string{"house.batch"}, staged)
}
