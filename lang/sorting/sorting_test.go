package sorting

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	_ "newmake/lang/testflag"
)

type row struct {
	key int
	at  int // where it stood
}

// TestStable: as slices.SortStableFunc has it, for lists of every length to one that is
// merged.
func TestStable(t *testing.T) {
	for n := range 70 {
		list := make([]row, n)
		for i := range list {
			list[i] = row{i * i % 7, i}
		}
		want := slices.Clone(list)
		byKey := func(a, b row) int { return cmp.Compare(a.key, b.key) }
		slices.SortStableFunc(want, byKey)
		Stable(list, byKey)
		assert.Equal(t, want, list)
	}
}

func BenchmarkStable(b *testing.B) {
	list := make([]row, 100)
	for b.Loop() {
		for i := range list {
			list[i] = row{i * i % 37, i}
		}
		Stable(list, func(a, b row) int { return cmp.Compare(a.key, b.key) })
	}
}
