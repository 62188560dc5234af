package diff

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"newmake/compile"
	"newmake/compile/ask/compare"
	"newmake/compile/measure"
	"newmake/lang/check"
	"newmake/lang/recipe"
	"newmake/lang/testflag"
)

const lantern = "../../../examples/lantern-hollow"

// lanternHollow is read once, and what its stages gave is remembered from test to test.
var (
	lanternHollow = sync.OnceValues(func() (*check.House, error) { return check.Load(lantern, check.Options{}) })
	memo          = new(compile.Memo)
)

// document compares Ferry Landing with a change of it.
func document(t testing.TB, units measure.Units, change func(b *recipe.Batch)) *compare.Document {
	t.Helper()
	h, err := lanternHollow()
	require.NoError(t, err)
	old, list := h.Batch("Ferry Landing")
	require.NotNil(t, old, list.Error())
	new := *old
	new.Bill.Lines = slices.Clone(old.Bill.Lines)
	new.Mash.Steps = slices.Clone(old.Mash.Steps)
	change(&new)
	new.Resolve()
	d := compare.NewDocument()
	d.Pairs = append(d.Pairs, compare.Batches(compare.SideOf("HEAD~1:ferry-landing.batch", old, list), compare.SideOf("ferry-landing.batch", &new, list), compare.Options{Units: units, Memo: memo}))
	return d
}

// edits are some of each part.
func edits(b *recipe.Batch) {
	b.Bill.Lines[1].MassKg -= 20
	b.Bill.Lines[2].MassKg += 20
	s := b.Mash.Steps
	s[5].DurationS -= 600
	s[2], s[3] = s[3], s[2]
	b.Mash.Steps = append(s[:8:8], append([]recipe.MashStep{{Verb: recipe.MashRest, DurationS: 300, Path: recipe.Step(9)}}, s[8:]...)...)
	b.Spirit.HeartsTo.Strength.Value = 0.60
	b.Cask.Entry.Value = 130.0 / 200
}

// fixture is a comparison as it was once made, so that the golden files hang on
// how it is shown and not on the models.
func fixture(t testing.TB, name string) *compare.Document {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	require.NoError(t, err)
	d := compare.NewDocument()
	require.NoError(t, json.Unmarshal(data, d))
	return d
}

// Each format is held against a golden file: go test -update writes them.
func TestGolden(t *testing.T) {
	us, si := fixture(t, "us.json"), fixture(t, "si.json")
	for _, c := range []struct {
		file  string
		write func(w io.Writer) error
	}{
		{"us.txt", func(w io.Writer) error { return Text(w, us, Options{}) }},
		{"si-all.txt", func(w io.Writer) error { return Text(w, si, Options{AllWhy: true}) }},
		{"us.md", func(w io.Writer) error { return Markdown(w, us, Options{}) }},
		{"us.html", func(w io.Writer) error { return HTML(w, us, Options{}) }},
		{"us.json", func(w io.Writer) error { return JSON(w, us) }},
	} {
		t.Run(c.file, func(t *testing.T) {
			var out bytes.Buffer
			require.NoError(t, c.write(&out))
			golden := filepath.Join("testdata", c.file)
			if testflag.Update() {
				require.NoError(t, os.WriteFile(golden, out.Bytes(), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			assert.Equal(t, string(want), out.String())
		})
	}
}

func TestTextFitsItsPage(t *testing.T) {
	for _, change := range []func(b *recipe.Batch){
		edits,
		func(b *recipe.Batch) { b.Name = strings.Repeat("a very long name ", 12) },
		func(b *recipe.Batch) { b.Name = strings.Repeat("x", 300); b.Cask.Entry.Value = 0.5 },
	} {
		var out bytes.Buffer
		require.NoError(t, Text(&out, document(t, measure.US, change), Options{AllWhy: true}))
		for _, l := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, width(l), pageWidth, l)
			assert.Equal(t, strings.TrimRight(l, " "), l)
		}
	}
}

// The change in outcome stands first, in every format for people, and in text last as
// well.
func TestTheHeadlineStandsFirst(t *testing.T) {
	d := document(t, measure.US, edits)
	want := headline(d.Pairs[0])
	require.Contains(t, want, "Hearts ")
	var text, md, page bytes.Buffer
	require.NoError(t, Text(&text, d, Options{}))
	require.NoError(t, Markdown(&md, d, Options{}))
	require.NoError(t, HTML(&page, d, Options{}))
	said := strings.Join(strings.Fields(text.String()), " ")
	assert.True(t, strings.HasSuffix(said, want))
	assert.Less(t, strings.Index(said, want), strings.Index(said, "CHANGES"))
	assert.Less(t, strings.Index(md.String(), arrowed(want)), strings.Index(md.String(), "### "))
	assert.Less(t, strings.Index(page.String(), `<p class="headline">`), strings.Index(page.String(), "<h2>"))
}

// A change that is less than what the models leave open is counted, and named, and has
// no row; one that is more has its row. At the edge it is within.
func TestWhatIsWithinIsFolded(t *testing.T) {
	c := &compare.Comparison{Units: "us", Outcomes: []compare.Outcome{
		{Key: "washVolumeL", Name: "wash", Old: 100, New: 102, Change: 2, Within: 2},
		{Key: "heartsVolumeL", Name: "hearts", Old: 100, New: 102.1, Change: 2.1, Within: 2, Places: 1},
		{Key: "costTotal", Name: "cost", Old: 100, New: 101, Change: 1},
	}}
	assert.Equal(t, "And 1 that is within what the models leave open: wash.", folded(c))
	var names []string
	for _, o := range told(c) {
		names = append(names, o.Name)
	}
	assert.Equal(t, []string{"hearts", "cost"}, names)
	c.Outcomes = c.Outcomes[:1]
	assert.Equal(t, "Only 1 that is within what the models leave open: wash.", folded(c))
}

// A colour says whether a change is wanted: a higher cost is not.
func TestHigherCostIsWorse(t *testing.T) {
	assert.Equal(t, "worse", class("costTotal", 10))
	assert.Equal(t, "better", class("costTotal", -10))
	assert.Equal(t, "better", class("heartsVolumeL", 1))
	assert.Empty(t, class("costTotal", 0))
	assert.Empty(t, class("mashHours", 1))
}

// A name from a recipe does nothing to the page it stands on.
func TestNamesFromRecipesAreHarmless(t *testing.T) {
	const bad = "<script>alert(1)</script> [x](javascript:alert(1)) | `a` \x1b[31m \u202e **b**"
	d := document(t, measure.US, func(b *recipe.Batch) { b.Name = bad; edits(b) })
	d.Added = []string{bad}
	d.Pairs[0].Edits[1].What = bad
	d.Pairs[0].Why.Edits[0] = bad

	var text, page, md bytes.Buffer
	require.NoError(t, Text(&text, d, Options{}))
	assert.NotContains(t, text.String(), "\x1b")
	assert.NotContains(t, text.String(), "\u202e")

	require.NoError(t, HTML(&page, d, Options{}))
	assert.NotContains(t, page.String(), "<script")
	assert.NotContains(t, page.String(), "\x1b")
	assert.Contains(t, page.String(), "default-src &#39;none&#39;")
	for _, tag := range []string{"http:", "https:", "<img", "<link", "url("} {
		assert.NotContains(t, page.String(), tag, "the page needs nothing from elsewhere")
	}

	require.NoError(t, Markdown(&md, d, Options{}))
	var html bytes.Buffer
	require.NoError(t, goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert(md.Bytes(), &html))
	assert.NotContains(t, html.String(), "<script")
	assert.NotContains(t, html.String(), "<a ")
	assert.NotContains(t, html.String(), "<code>")
}

// The page is well formed: every element that is opened is closed.
func TestThePageIsWellFormed(t *testing.T) {
	var page bytes.Buffer
	require.NoError(t, HTML(&page, document(t, measure.US, edits), Options{AllWhy: true}))
	x := xml.NewDecoder(&page)
	x.Strict = false
	x.AutoClose = xml.HTMLAutoClose
	x.Entity = xml.HTMLEntity
	depth := 0
	for {
		tok, err := x.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err)
		switch tok.(type) {
		case xml.StartElement:
			depth++
		case xml.EndElement:
			depth--
		}
	}
	assert.Zero(t, depth)
}

// TestMakeFixtures writes the comparisons anew, when the shape of one changes:
// go test -run Fixtures -update.
func TestMakeFixtures(t *testing.T) {
	us, si := document(t, measure.US, edits), document(t, measure.SI, edits)
	for name, d := range map[string]*compare.Document{"us.json": us, "si.json": si} {
		var out bytes.Buffer
		require.NoError(t, JSON(&out, d))
		if testflag.Update() && flag.Lookup("test.run").Value.String() == "Fixtures" {
			require.NoError(t, os.WriteFile(filepath.Join("testdata", name), out.Bytes(), 0o644))
		}
		old := fixture(t, name)
		assert.Equal(t, len(old.Pairs[0].Edits), len(d.Pairs[0].Edits))
		for i, e := range d.Pairs[0].Edits {
			assert.Equal(t, e.What, old.Pairs[0].Edits[i].What)
		}
	}
}

func TestNoChange(t *testing.T) {
	d := document(t, measure.US, func(*recipe.Batch) {})
	var out bytes.Buffer
	require.NoError(t, Text(&out, d, Options{}))
	assert.Contains(t, out.String(), "No change in meaning.")
	assert.NotContains(t, out.String(), "OUTCOME")
	d.Pairs = append(d.Pairs, d.Pairs[0])
	out.Reset()
	require.NoError(t, Text(&out, d, Options{}))
	assert.Equal(t, "No change in meaning: Ferry Landing; Ferry Landing.\n", out.String())
	out.Reset()
	require.NoError(t, Text(&out, compare.NewDocument(), Options{}))
	assert.Equal(t, "There is no batch to compare.\n", out.String())
}

func TestJSONIsOneDocument(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, JSON(&out, document(t, measure.US, edits)))
	var got map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &got))
	assert.Equal(t, "newmake.diff", got["format"])
	assert.Equal(t, "1.0", got["version"])
}

// Where orders were drawn, a part that all of them agree on has no error: that is
// said, and the document writes the 0.
func TestTheErrorOfAPart(t *testing.T) {
	assert.Contains(t, howFar(&compare.Why{Orders: 200, Plans: 90}), "+/- is the standard error; a part without one is exact to its last figure.")
	assert.NotContains(t, howFar(&compare.Why{Exact: true}), "standard error")
	text, err := json.Marshal(compare.Share{Edit: "x", Part: 1, Alone: 1})
	require.NoError(t, err)
	assert.Contains(t, string(text), `"standardError":0`)
}
