package revision

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/front"
	"newmake/compile/plan"
	"newmake/lang/gitrepo"
)

func houseCopy(t *testing.T) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "house")
	require.NoError(t, os.CopyFS(dir, os.DirFS("../../../examples/lantern-hollow")))
	return dir
}

func TestRevision(t *testing.T) {
	house := houseCopy(t)
	at := func() *plan.Source {
		t.Helper()
		src, err := front.Load(front.Place{Path: filepath.Join(house, "toll-road.batch")})
		require.NoError(t, err)
		s, note := Of(src, "Toll Road")
		require.Empty(t, note)
		require.NotNil(t, s)
		return s
	}
	run := func(args ...string) string {
		t.Helper()
		cmd := exec.Command("git", append([]string{"-c", "user.name=Lantern Hollow", "-c", "user.email=still@lantern-hollow.invalid"}, args...)...)
		cmd.Dir = house
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
		return string(out)
	}
	add := func(name, text string) {
		t.Helper()
		f, err := os.OpenFile(filepath.Join(house, name), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
		require.NoError(t, err)
		_, err = f.WriteString(text)
		require.NoError(t, err)
		require.NoError(t, f.Close())
	}

	bare := at()
	assert.Equal(t, plan.Source{File: "toll-road.batch", Hash: bare.Hash}, *bare, "no repository")
	assert.Len(t, bare.Hash, shortHash)

	run("init", "-q", "-b", "main")
	assert.Empty(t, at().Revision, "no commit yet")
	run("add", ".")
	run("commit", "-q", "-m", "the house")
	first := run("rev-parse", "HEAD")[:shortHash]
	assert.Equal(t, plan.Source{File: "toll-road.batch", Revision: first, Hash: bare.Hash}, *at())

	// What is not of this batch does not count.
	add("low-bridge.batch", "# another batch\n")
	add("readme.md", "notes\n")
	assert.Equal(t, plan.Source{File: "toll-road.batch", Revision: first, Hash: bare.Hash}, *at())
	run("add", ".")
	run("commit", "-q", "-m", "another batch")
	assert.Equal(t, first, at().Revision)

	// Its own text and the house's do, staged or not.
	add("toll-road.batch", "# changed\n")
	changed := at()
	assert.True(t, changed.Changed)
	assert.Equal(t, first, changed.Revision)
	assert.NotEqual(t, bare.Hash, changed.Hash)
	run("add", ".")
	assert.True(t, at().Changed)
	run("commit", "-q", "-m", "changed")
	second := at()
	assert.False(t, second.Changed)
	assert.NotEqual(t, first, second.Revision)
	add("house.batch", "# the plant\n")
	assert.True(t, at().Changed)
	run("checkout", "-q", "house.batch")
	assert.Equal(t, second, at())
	add("library.batch", "")
	assert.False(t, at().Changed, "an empty text declares nothing")

	// A text from standard input is not the one in the commit.
	text, err := os.ReadFile(filepath.Join(house, "toll-road.batch"))
	require.NoError(t, err)
	file := filepath.Join(house, "toll-road.batch")
	src, err := front.Load(front.Place{Path: file, Overlay: map[string][]byte{file: append(text, "# more\n"...)}})
	require.NoError(t, err)
	typed, _ := Of(src, "Toll Road")
	assert.True(t, typed.Changed)

	// Without git there is the hash.
	t.Setenv("PATH", "")
	assert.Equal(t, plan.Source{File: "toll-road.batch", Hash: second.Hash}, *at())
}

// The hash is of the texts, wherever the house lies.
func TestHashIsOfTheTexts(t *testing.T) {
	hash := func(house string) string {
		src, err := front.Load(front.Place{Path: filepath.Join(house, "toll-road.batch")})
		require.NoError(t, err)
		s, _ := Of(src, "Toll Road")
		return s.Hash
	}
	assert.Equal(t, hash(houseCopy(t)), hash(houseCopy(t)))
}

// Where git waits for something, the plan has no revision and says why; where
// there is none to be had, nothing is said.
func TestUnanswered(t *testing.T) {
	assert.Contains(t, unanswered(fmt.Errorf("%w within 15s", gitrepo.ErrNoAnswer)), "the plan has no revision: git gives no answer within 15s")
	assert.Empty(t, unanswered(gitrepo.ErrNoRepo))
	assert.Empty(t, unanswered(nil))
}
