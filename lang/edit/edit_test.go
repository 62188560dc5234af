package edit

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

const lantern = "../../examples/lantern-hollow"

func house(t testing.TB) *check.House {
	t.Helper()
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	return h
}

func batch(t testing.TB, h *check.House, name string) *recipe.Batch {
	t.Helper()
	b, list := h.Batch(name)
	require.NotNil(t, b, list.Error())
	return b
}

// tried applies changes and loads the house anew.
func tried(t testing.TB, name string, changes ...string) (*Result, diag.List) {
	t.Helper()
	h := house(t)
	b := batch(t, h, name)
	var all []Change
	for _, s := range changes {
		c, err := Parse(s)
		require.NoError(t, err)
		all = append(all, c)
	}
	r, err := Apply(h, b, all)
	if err != nil {
		list, ok := err.(diag.List)
		require.True(t, ok, err)
		return nil, list
	}
	h, err = r.House(lantern, nil)
	require.NoError(t, err)
	after, list := h.Batch(name)
	if after == nil {
		return r, list
	}
	return r, nil
}

// What is tried of one grain, the others give way to, in proportion, and it is
// said how far.
func TestWhatGivesWay(t *testing.T) {
	for _, c := range []struct {
		batch, change string
		grain         string
		share         float64
		gave          string
	}{
		{"Ferry Landing", "bill.rye=14 %", "rye", 0.14, "corn 68 to 63.57 %"},
		{"Ferry Landing", "bill.rye=110 lb", "rye", 110.0 / 790, "corn 68 to"},
		{"Low Bridge", "bill.distillers-malt=20 %", "distillers-malt", 0.20, "corn"},
	} {
		h := house(t)
		b := batch(t, h, c.batch)
		change, err := Parse(c.change)
		require.NoError(t, err)
		r, err := Apply(h, b, []Change{change})
		require.NoError(t, err)
		require.Len(t, r.Gave, 1)
		assert.Contains(t, r.Gave[0], c.gave)
		h, err = r.House(lantern, nil)
		require.NoError(t, err)
		after := batch(t, h, c.batch)
		sum := 0.0
		for i, l := range after.Bill.Lines {
			sum += l.Share
			if l.Grain.Name == c.grain {
				assert.InDelta(t, c.share, l.Share, 1e-6)
			} else {
				ratio := l.Share / b.Bill.Lines[i].Share
				assert.InDelta(t, (1-c.share)/(1-b.Bill.Lines[indexOf(b, c.grain)].Share), ratio, 1e-4, "the others keep their proportion")
			}
		}
		assert.InDelta(t, 1, sum, 1e-9)
		assert.InDelta(t, b.Bill.TotalKg, after.Bill.TotalKg, 1e-3, "the total stays")
	}
}

func indexOf(b *recipe.Batch, grain string) int {
	for i, l := range b.Bill.Lines {
		if l.Grain.Name == grain {
			return i
		}
	}
	return -1
}

func TestChangesThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		changes []string
		code    diag.Code
		says    string
	}{
		{[]string{"bill.rye=114 %"}, diag.CodeChangeValue, "cannot be 114 %"},
		{[]string{"bill.rye=60 %", "bill.corn=60 %"}, diag.CodeChangeValue, "come to 120 %"},
		{[]string{"bill.rye=12 gal"}, diag.CodeChangeValue, "neither a share nor a weight"},
		{[]string{"bill.rye=14 %", "bill.rye=12 %"}, diag.CodeChangeValue, "changed twice"},
		{[]string{"cask.entry=115 proof", "cask.entry=116 proof"}, diag.CodeChangeValue, "two of the changes are of one value"},
		{[]string{"cask.entry=115 proof }"}, diag.CodeChangeValue, "more than one value"},
		{[]string{"mash.rests=30 min"}, diag.CodeChangePath, `has no value "mash.rests"`},
		{[]string{"mash.rest=30 min"}, diag.CodeChangePath, `has no value "mash.rest"`}, // which of three?
		{[]string{"nothing=3"}, diag.CodeChangePath, ""},
		{[]string{"plant.vat.holds=3 gal"}, diag.CodeChangePath, ""},
		// What the checker says of the text that comes of it.
		{[]string{"cask.entrie=115 proof"}, diag.CodeUnknownField, "entrie"},
		{[]string{"cask.entry=115 F"}, diag.CodeWrongKind, ""},
		{[]string{"cask.entry=115"}, diag.CodeNoUnit, ""},
		{[]string{"bill.ry=14 %"}, diag.CodeUnknownName, "ry"},
		{[]string{"library.grain.corn.starsh=70 %"}, diag.CodeUnknownField, "starsh"},
	} {
		t.Run(strings.Join(c.changes, "; "), func(t *testing.T) {
			_, list := tried(t, "Ferry Landing", c.changes...)
			require.True(t, list.HasErrors(), "it was let pass")
			var codes []diag.Code
			for _, d := range list {
				codes = append(codes, d.Code)
			}
			assert.Contains(t, codes, c.code)
			assert.Contains(t, list.Error(), c.says)
		})
	}
	for _, s := range []string{"bill.rye", "=14 %", "bill.rye="} {
		_, err := Parse(s)
		assert.Error(t, err, s)
	}
}

// The near name is offered.
func TestTheNearPathIsOffered(t *testing.T) {
	_, list := tried(t, "Ferry Landing", "spirit.heart.to=60 % abv")
	require.Len(t, list, 1)
	assert.Equal(t, "did you mean `spirit.hearts.to`?", list[0].Help)
}

func TestTheChangedLinesAreShown(t *testing.T) {
	r, _ := tried(t, "Ferry Landing", "spirit.hearts.to=60 % abv", "strip.charges=2")
	require.Len(t, r.Lines, 2)
	assert.Equal(t, "charges 2", r.Lines[0].New)
	assert.Empty(t, r.Lines[0].Old)
	assert.Contains(t, r.Lines[1].Old, "to 62 % abv")
	assert.Contains(t, r.Lines[1].New, "to 60 % abv")
	assert.Equal(t, filepath.Join(lantern, "ferry-landing.batch"), r.Lines[1].File)
}

func FuzzApply(f *testing.F) {
	for _, s := range []string{"bill.rye=14 %", "mash.rest.2=30 min", `plant."Wash still".reflux=8 %`, "library.grain.corn.starch=1 %", "a.b.c=1", "bill=1 lb", "mash.add=x, y", "start=2026-01-01"} {
		f.Add(s)
	}
	h, err := check.Load(lantern, check.Options{})
	require.NoError(f, err)
	b, _ := h.Batch("Ferry Landing")
	f.Fuzz(func(t *testing.T, s string) {
		c, err := Parse(s)
		if err != nil {
			return
		}
		r, err := Apply(h, b, []Change{c})
		if err != nil {
			return
		}
		after, err := r.House(lantern, nil)
		if err != nil {
			return
		}
		after.Batch("Ferry Landing") // says what is wrong, and does not fail
	})
}

// Where a name is of several values or of a whole block, that is said, and no
// other block is offered for it.
func TestANameOfSeveral(t *testing.T) {
	_, list := tried(t, "Ferry Landing", "mash.rest=20 min")
	require.Len(t, list, 1)
	assert.Equal(t, "there are 3 of it: `mash.rest.1`, `mash.rest.2`, `mash.rest.3`", list[0].Help)
	_, list = tried(t, "Ferry Landing", "mash.rest.4=20 min")
	require.Len(t, list, 1)
	assert.Contains(t, list[0].Help, "there are 3 of it")
	for path, want := range map[string]string{"batch": "this is the whole batch", "cask": "this is a whole block"} {
		_, list = tried(t, "Ferry Landing", path+"=20 min")
		require.Len(t, list, 1)
		assert.Contains(t, list[0].Help, want)
		assert.NotContains(t, list[0].Help, "did you mean")
	}
}
