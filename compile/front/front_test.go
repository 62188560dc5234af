package front_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/front"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const lantern = "../../examples/lantern-hollow"

// said is a list as one compares it, whichever way its house was loaded.
func said(list diag.List) (out []string) {
	for _, d := range list {
		out = append(out, string(d.Code)+" "+d.Summary)
	}
	return out
}

// broken is a text of the example house with a word in it that is none.
func broken(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(lantern, name))
	require.NoError(t, err)
	out := bytes.Replace(text, []byte("corn "), []byte("cron "), 1)
	require.NotEqual(t, text, out)
	return out
}

// What a command reads from the disk, an editor from its buffers and a browser from
// its memory is the same house, and the same is said of it.
func TestWhereverTheHouseIs(t *testing.T) {
	text := broken(t, "toll-road.batch")
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(lantern)))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "toll-road.batch"), text, 0o644))
	file := filepath.Join(lantern, "toll-road.batch")
	abs, err := filepath.Abs(file)
	require.NoError(t, err)
	var want []string
	for name, p := range map[string]front.Place{
		"disk":            {Path: filepath.Join(dir, "toll-road.batch")},
		"unsaved":         {Path: file, Overlay: map[string][]byte{file: text}},
		"unsaved, by URI": {Path: file, Overlay: map[string][]byte{abs: text}},
		"file system":     {Path: "house/toll-road.batch", FS: os.DirFS(dir), Root: "house"},
		"both":            {Path: "house/toll-road.batch", FS: os.DirFS(lantern), Root: "house", Overlay: map[string][]byte{"toll-road.batch": text}},
	} {
		w, err := front.NewCheck([]front.Place{p})
		require.NoError(t, err, name)
		assert.Equal(t, 1, w.Batches, name)
		assert.Equal(t, 1, w.Files, name)
		list := said(w.Run())
		require.NotEmpty(t, list, name)
		if want == nil {
			want = list
		}
		assert.Equal(t, want, list, name)

		src, err := front.Load(p)
		require.NoError(t, err, name)
		made, err := src.Plan("", nil)
		require.NoError(t, err, name)
		assert.Nil(t, made.Plan, name)
		for _, d := range made.Diags {
			if d.Severity == diag.Error {
				assert.Contains(t, list, string(d.Code)+" "+d.Summary, "check says what stops a plan: %s", name)
			}
		}
	}
}

func TestLoadRefuses(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.CopyFS(dir, os.DirFS(lantern)))
	for _, name := range []string{"toll-road.txt", "toll-road.BATCH"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o644))
	}
	for name, want := range map[string]string{
		"nowhere.batch":   "there is no such file",
		"toll-road.txt":   "is no .batch file",
		"toll-road.BATCH": "does not end in .batch in small letters",
	} {
		_, err := front.Load(front.Place{Path: filepath.Join(dir, name)})
		var refusal *diag.Refusal
		require.ErrorAs(t, err, &refusal, name)
		assert.ErrorContains(t, err, want)
	}
	_, err := front.Load(front.Place{Path: t.TempDir()})
	list, ok := err.(diag.List)
	require.True(t, ok, "that there is no house is said of the text")
	assert.Equal(t, diag.CodeNoHouse, list[0].Code)
}

func TestBatch(t *testing.T) {
	src, err := front.Load(front.Place{Path: filepath.Join(lantern, "ferry-landing.batch")})
	require.NoError(t, err)
	first, err := src.Batch("", nil)
	require.NoError(t, err)
	assert.Equal(t, "Ferry Landing", first.Name)
	require.Len(t, first.Notes, 1)
	assert.Contains(t, first.Notes[0], "holds 2 batches")
	for _, name := range []string{"Ferry Landing, more rye", "ferry landing, more rye", "ferry-landing-more-rye"} {
		b, err := src.Batch(name, nil)
		require.NoError(t, err)
		assert.Equal(t, "Ferry Landing, more rye", b.Name)
		assert.Empty(t, b.Notes)
	}
	other, err := src.Batch("toll-road", nil)
	require.NoError(t, err)
	assert.Equal(t, "Toll Road", other.Name, "of another file of the house")
	none, err := src.Batch("Nobody's", nil)
	require.NoError(t, err)
	assert.Nil(t, none.Recipe)
	assert.Equal(t, diag.CodeUnknownName, none.Diags[0].Code)

	si := recipe.SI
	metric, err := src.Plan("Ferry Landing", &si)
	require.NoError(t, err)
	assert.Equal(t, "si", metric.Plan.Batch.Units)
	own, err := src.Plan("Ferry Landing", nil)
	require.NoError(t, err)
	assert.Equal(t, "us", own.Plan.Batch.Units, "the batch itself is as it was")
}

// An error in the file stops its batches if it keeps the text from being read, and
// is noted if it is one of meaning in another batch.
func TestOtherBatchesOfTheFile(t *testing.T) {
	file := filepath.Join(lantern, "toll-road.batch")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	for more, stops := range map[string]bool{
		"batch \"Other\" from \"Nobody's\" {\n}\n":                               false,
		"batch \"Other\" from \"Toll Road\" {\n  ferment {\n    for 80 h {\n}\n": true,
	} {
		src, err := front.Load(front.Place{Path: file, Overlay: map[string][]byte{file: append(bytes.Clone(text), more...)}})
		require.NoError(t, err)
		b, err := src.Batch("Toll Road", nil)
		require.NoError(t, err)
		assert.Equal(t, stops, b.Recipe == nil, more)
		assert.Equal(t, stops, b.Diags.HasErrors(), more)
		if !stops {
			require.Len(t, b.Notes, 1)
			assert.Contains(t, b.Notes[0], "another batch here has 1 error")
		}
	}
}

func TestTry(t *testing.T) {
	src, err := front.Load(front.Place{Path: filepath.Join(lantern, "toll-road.batch")})
	require.NoError(t, err)
	tried, err := src.Try("", []string{"mash.rest.1=61 min"})
	require.NoError(t, err)
	made, err := tried.Plan(tried.Name, nil)
	require.NoError(t, err)
	isSaid := func(n plan.Notice) bool { return n.Code == string(diag.CodeTried) }
	assert.False(t, slices.ContainsFunc(made.Plan.Notices, isSaid), "a plan of the file says nothing of it")
	tried.Mark(made.Plan)
	first := made.Plan.Notices[0]
	assert.True(t, isSaid(first))
	assert.Equal(t, "tried for this run alone: mash.rest.1 = 61 min", first.Summary)
	assert.NotEmpty(t, first.Help)
	assert.Equal(t, "Toll Road, tried", made.Plan.Batch.Name)
	assert.Equal(t, []string{"mash.rest.1 = 61 min"}, made.Plan.Batch.Changes)
	_, err = src.Try("", []string{"mash.rest.1"})
	assert.IsType(t, diag.List{}, err)
}

// A value that is tried may not suit a variant beside it. The house has no error,
// and none is spoken of; one that it has is.
func TestTryBesideAVariant(t *testing.T) {
	file := filepath.Join(lantern, "ferry-landing.batch")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	for more, notes := range map[string]int{"": 0, "batch \"Other\" from \"Nobody's\" {\n}\n": 1} {
		src, err := front.Load(front.Place{Path: file, Overlay: map[string][]byte{file: append(bytes.Clone(text), more...)}})
		require.NoError(t, err)
		tried, err := src.Try("Ferry Landing", []string{"bill.rye=14 %"})
		require.NoError(t, err)
		b, err := tried.Batch(tried.Name, nil)
		require.NoError(t, err)
		require.NotNil(t, b.Recipe)
		assert.Len(t, b.Notes, notes, more)
	}
}
