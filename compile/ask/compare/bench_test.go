package compare

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/measure"
	"newmake/lang/recipe"
)

// eight is Ferry Landing with eight edits, all of them where they cost most: in
// the bill and the mash, so that each combination runs every stage anew.
func eight(b *recipe.Batch) {
	b.Bill.Lines[1].MassKg -= 10
	b.Bill.Lines[2].MassKg += 10
	b.Mash.Steps[0].VolumeM3 *= 1.02
	b.Mash.Steps[1].Share = 0.12
	b.Mash.Steps[4].TempC += 2
	b.Mash.Steps[5].DurationS += 600
	b.Mash.Steps[8].DurationS -= 300
	b.Mash.Steps[9].TempC -= 1
	b.Mash.Steps[11].DurationS += 900
	b.Resolve()
}

func BenchmarkWhyEightEditsOfTheMash(b *testing.B) {
	old := batch(b, "Ferry Landing")
	new := edited(old, eight)
	d := Find(old, new, measure.US)
	require.Len(b, d.Edits, 8)
	for b.Loop() {
		c := Batches(SideOf("old", old, nil), SideOf("new", new, nil), Options{})
		require.True(b, c.Why.Exact)
		require.Equal(b, 256, c.Why.Plans)
	}
}

func BenchmarkPlan(b *testing.B) {
	old := batch(b, "Ferry Landing")
	for b.Loop() {
		(&compile.Memo{}).Compile(old)
	}
}

// BenchmarkFind is two batches of one house held against each other, as each of a
// revision's is against those that are new in the next.
func BenchmarkFind(b *testing.B) {
	old := batch(b, "Ferry Landing")
	other := *old // of the same house: it uses the same entries of the library
	new := &other
	new.Bill.Lines, new.Mash.Steps = slices.Clone(old.Bill.Lines), slices.Clone(old.Mash.Steps)
	eight(new)
	b.ReportAllocs()
	for b.Loop() {
		if Find(old, new, measure.US).Same() {
			b.Fatal("they are not the same")
		}
	}
}
