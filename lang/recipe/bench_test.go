package recipe

import "testing"

func BenchmarkValues(b *testing.B) {
	x := fullBatch()
	b.ReportAllocs()
	for b.Loop() {
		x.Values()
	}
}
