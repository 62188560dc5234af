package learn

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkFrom learns from so many runs of an invented house by the full model. A house
// that has a year of them waits for it, so 20 runs should take well below 15 s.
func BenchmarkFrom(b *testing.B) {
	for _, n := range []int{2, 6, 20} {
		w, runs := invented(b, 1, n)
		b.Run(fmt.Sprintf("%d-runs", n), func(b *testing.B) {
			for b.Loop() {
				l, err := From(runs, w.instruments, Options{})
				require.NoError(b, err)
				require.True(b, l.Converged)
			}
		})
	}
}
