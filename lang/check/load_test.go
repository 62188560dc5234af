package check

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/diag"
	"newmake/lang/house"
)

// house writes a house on disk: house.batch and base.batch of the fixtures, and
// more files.
func onDisk(t *testing.T, more map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, f := range bench(t, more) {
		full := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(full), 0o755))
		require.NoError(t, os.WriteFile(full, f.Data, 0o644))
	}
	return dir
}

const small = `batch "Small" from "Base" {
  units us
}
`

func codes(list diag.List) []diag.Code {
	var out []diag.Code
	for _, d := range list {
		out = append(out, d.Code)
	}
	return out
}

func TestLoadFindsTheHouse(t *testing.T) {
	dir := onDisk(t, map[string]string{"trials/one/small.batch": small})
	for _, at := range []string{dir, filepath.Join(dir, "base.batch"), filepath.Join(dir, "trials", "one"), filepath.Join(dir, "trials", "one", "small.batch")} {
		h, err := Load(at, Options{})
		require.NoError(t, err)
		assert.Equal(t, []string{"Base", "Small"}, h.Batches())
		assert.Empty(t, h.Check())
	}
	h, err := Load(dir, Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"Small"}, h.BatchesIn(filepath.Join(dir, "trials")))
	assert.Equal(t, []string{"Small"}, h.BatchesIn(filepath.Join(dir, "trials", "one", "small.batch")))
	assert.Equal(t, []string{"Small"}, h.Variants("Base"))
}

func TestLoadNamesFilesAsTheUserDoes(t *testing.T) {
	dir := onDisk(t, map[string]string{"trials/small.batch": small})
	t.Chdir(filepath.Join(dir, "trials"))
	h, err := Load("small.batch", Options{})
	require.NoError(t, err)
	var names []string
	for _, f := range h.Files {
		names = append(names, filepath.ToSlash(f.Source.Name))
	}
	assert.Equal(t, []string{"../base.batch", "../house.batch", "../trials/small.batch"}, names)
	assert.Equal(t, []string{"Small"}, h.BatchesIn("small.batch"))
}

func TestLoadWithoutHouse(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "lone.batch")
	require.NoError(t, os.WriteFile(path, []byte(small), 0o644))
	_, err := Load(path, Options{})
	var list diag.List
	require.ErrorAs(t, err, &list)
	assert.Equal(t, []diag.Code{diag.CodeNoHouse}, codes(list))
	assert.Contains(t, list[0].Help, "house.batch")

	_, err = Load(filepath.Join(dir, "nothing.batch"), Options{})
	require.ErrorIs(t, err, os.ErrNotExist)
}

func TestLoadOverlay(t *testing.T) {
	dir := onDisk(t, nil)
	unsaved := filepath.Join(dir, "new", "unsaved.batch")
	h, err := Load(unsaved, Options{Overlay: map[string][]byte{unsaved: []byte(small)}})
	require.NoError(t, err)
	assert.Equal(t, []string{"Small"}, h.BatchesIn(unsaved))

	house := filepath.Join(dir, "house.batch")
	h, err = Load(house, Options{Overlay: map[string][]byte{house: []byte("newmake 1\n")}})
	require.NoError(t, err)
	assert.Empty(t, h.Plants, "the overlay stands for the file")
}

func TestLoadRefuses(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("links need rights there")
	}
	outside := filepath.Join(t.TempDir(), "secret.batch")
	require.NoError(t, os.WriteFile(outside, []byte("secret words\n"), 0o644))
	dir := onDisk(t, map[string]string{
		"inner/house.batch": "newmake 1\n", "inner/other.batch": small,
		".hidden/x.batch": "nonsense\n",
		"notes.txt":       "nonsense\n",
	})
	link := func(target, name string) { require.NoError(t, os.Symlink(target, filepath.Join(dir, name))) }
	link(outside, "out.batch")
	link("nowhere.batch", "dangling.batch")
	link("base.batch", "again.batch") // read once, as base.batch
	link(".", "loop")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "big.batch"), make([]byte, 4<<20+1), 0o644))

	h, err := Load(dir, Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"Base"}, h.Batches())
	list := h.Check()
	assert.ElementsMatch(t, []diag.Code{diag.CodeNestedHouse, diag.CodeLinkOut, diag.CodeLinkOut, diag.CodeFileTooLarge}, codes(list))
	assert.NotContains(t, list.Error(), "secret words")
}

func TestLinkInsideIsRead(t *testing.T) {
	dir := onDisk(t, map[string]string{"trial.txt": small})
	require.NoError(t, os.Symlink("trial.txt", filepath.Join(dir, "trial.batch")))
	h, err := Load(dir, Options{})
	require.NoError(t, err)
	assert.Empty(t, h.Check())
	assert.Equal(t, []string{"Base", "Small"}, h.Batches())
}

// TestLinkStandsForItsFile: a link to a file that the house reads anyway is that
// file, wherever it is named.
func TestLinkStandsForItsFile(t *testing.T) {
	dir := onDisk(t, map[string]string{"trials/small.batch": small})
	require.NoError(t, os.Symlink(filepath.Join("trials", "small.batch"), filepath.Join(dir, "short.batch")))
	require.NoError(t, os.Symlink("trials", filepath.Join(dir, "tests")))
	h, err := Load(dir, Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"Base", "Small"}, h.Batches())
	for _, at := range []string{"short.batch", "trials/small.batch", "trials", "tests", "tests/small.batch"} {
		assert.Equal(t, []string{"Small"}, h.BatchesIn(filepath.Join(dir, at)), at)
	}
	assert.Equal(t, []string{"Base"}, h.BatchesIn(filepath.Join(dir, "base.batch")))
}

// TestHouseThatCannotBeRead: there is a house, and what is wrong with it is said.
func TestHouseThatCannotBeRead(t *testing.T) {
	dir := onDisk(t, nil)
	house := filepath.Join(dir, house.FileName)
	require.NoError(t, os.WriteFile(house, make([]byte, 4<<20+1), 0o644))
	_, err := Load(filepath.Join(dir, "base.batch"), Options{})
	var list diag.List
	require.ErrorAs(t, err, &list)
	assert.Equal(t, []diag.Code{diag.CodeFileTooLarge}, codes(list))

	require.NoError(t, os.Remove(house))
	require.NoError(t, os.Symlink("nowhere.batch", house))
	_, err = Load(dir, Options{})
	require.ErrorAs(t, err, &list)
	assert.Equal(t, []diag.Code{diag.CodeNoHouse}, codes(list), "a link that leads nowhere is no file")

	require.NoError(t, os.Remove(house))
	require.NoError(t, os.Mkdir(house, 0o755))
	_, err = Load(dir, Options{})
	require.ErrorAs(t, err, &list)
	assert.Equal(t, []diag.Code{diag.CodeNoHouse}, codes(list), "a folder is no file")
}

func TestOrderIsThatOfFilesAndLines(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{
		"z.batch": "nonsense one\n\nnonsense two\n",
		"a.batch": "nonsense\n",
	}), "", Options{})
	require.NoError(t, err)
	var got []string
	for _, d := range h.Check() {
		got = append(got, d.Header()[:9])
	}
	assert.Equal(t, []string{"a.batch:1", "z.batch:1", "z.batch:3"}, got)
	assert.Equal(t, h.Check(), h.Check())
}

// TestBatchIsNotKeptByOthers: a fault in one batch does not keep another from
// being planned.
func TestBatchIsNotKeptByOthers(t *testing.T) {
	h, err := LoadFS(bench(t, map[string]string{
		"bad.batch": `batch "Bad" from "Base" { cask { entry 300 proof } }` + "\n",
		"worse.batch": `batch "Bad 2" from "Base" {
  cask {
    entry 300 proof
  }
}
`,
		"grain.batch": "grain odd {\n  smell nice\n}\n",
	}), "", Options{})
	require.NoError(t, err)
	b, list := h.Batch("Bad 2")
	assert.Nil(t, b)
	assert.Contains(t, codes(list), diag.CodeOutOfRange)

	b, list = h.Batch("Base")
	assert.Empty(t, list, "it uses nothing of these")
	assert.NotNil(t, b)

	_, list = h.Batch("Bas")
	assert.Equal(t, []diag.Code{diag.CodeUnknownName}, codes(list))
	assert.Contains(t, list[0].Help, "did you mean `Base`?")
}

// TestBatchIsKeptByWhatItUses: a fault in the plant, in an entry of the library that a
// batch uses, or in one that such an entry begins from, keeps it from being planned.
func TestBatchIsKeptByWhatItUses(t *testing.T) {
	for name, more := range map[string]string{
		"a grain of the bill":           "grain corn {\n  smell nice\n}\n",
		"what a grain begins from":      "grain corn from odd {\n  starch 70 %\n}\ngrain odd from rye {\n  smell nice\n}\n",
		"the yeast":                     "yeast distillers-yeast {\n  smell nice\n}\n",
		"a model":                       "model mash {\n  gel-rate\n}\n",
		"a name declared twice":         "grain odd from rye {\n}\ngrain odd from rye {\n}\n",
		"a line that is no declaration": "smell nice\n",
	} {
		h, err := LoadFS(bench(t, map[string]string{"grain.batch": more}), "", Options{})
		require.NoError(t, err)
		b, list := h.Batch("Base")
		kept := name != "a line that is no declaration" // in a file of which it uses nothing
		assert.Equal(t, kept, list.HasErrors(), "%s: %v", name, list)
		assert.Equal(t, kept, b == nil, name)
		assert.True(t, h.Check().HasErrors(), name)
	}
}

// TestNameTaken: two batches of one name are refused whichever file is asked for,
// also if an accent is typed in two ways.
func TestNameTaken(t *testing.T) {
	twin := func(name string) string { return "batch \"" + name + "\" from \"Base\" {\n  units us\n}\n" }
	h, err := LoadFS(bench(t, map[string]string{
		"x.batch": twin("Caf\u00e9"), "y.batch": twin("Cafe\u0301"), "z.batch": "batch \"Z\" from \"Caf\u00e9\" {\n  units us\n}\n",
	}), "", Options{})
	require.NoError(t, err)
	for _, path := range []string{"x.batch", "y.batch", "."} {
		assert.Contains(t, codes(h.CheckIn(path)), diag.CodeDuplicate, path)
	}
	assert.Len(t, h.Check(), 2)
	for _, name := range []string{"Caf\u00e9", "Cafe\u0301", "Z"} {
		b, list := h.Batch(name)
		assert.Nil(t, b, name)
		assert.Contains(t, codes(list), diag.CodeDuplicate, name)
	}
	b, _ := h.Batch("Base")
	assert.NotNil(t, b, "the others stand")
}

func TestEmptyHouse(t *testing.T) {
	h, err := LoadFS(fstest.MapFS{house.FileName: {Data: nil}}, "", Options{})
	require.NoError(t, err)
	assert.Equal(t, []diag.Code{diag.CodeEdition}, codes(h.Check()))
	assert.Empty(t, h.Batches())
}

// oldNames is a house with names that are not UTF-8, as a disk may have them. It
// refuses to open them, as the file systems of io/fs do.
type oldNames struct{ fstest.MapFS }

func (o oldNames) ReadDir(name string) ([]fs.DirEntry, error) {
	all, err := o.MapFS.ReadDir(name)
	if name == "." && err == nil {
		for _, e := range all {
			switch e.Name() {
			case "small.batch":
				all = append(all, renamed{e, "caf\xe9.batch"})
			case "notes.txt":
				all = append(all, renamed{e, "caf\xe9.txt"})
			case "trials":
				all = append(all, renamed{e, "essais d'\xe9t\xe9"}, renamed{e, ".\xe9t\xe9"})
			}
		}
	}
	return all, err
}

type renamed struct {
	fs.DirEntry
	name string
}

func (r renamed) Name() string { return r.name }

// TestNameNotUTF8: what has such a name is passed over and said, if it could be a
// recipe or hold one; the rest of the house is read, and stands.
func TestNameNotUTF8(t *testing.T) {
	fsys := oldNames{bench(t, map[string]string{"notes.txt": "", "trials/empty.batch": "", "small.batch": small})}
	h, err := LoadFS(fsys, "house", Options{})
	require.NoError(t, err)
	assert.Equal(t, []string{"Base", "Small"}, h.Batches())
	list := h.Check()
	require.Equal(t, []diag.Code{diag.CodeFileName, diag.CodeFileName}, codes(list))
	assert.False(t, list.HasErrors())
	assert.Contains(t, list[0].Summary, "caf\xe9.batch was not read")
	assert.Contains(t, list[1].Summary, "was not looked into")
	b, said := h.Batch("Small")
	assert.NotNil(t, b)
	assert.Contains(t, codes(said), diag.CodeFileName, "whoever plans is told")
}
