package ferment

import "testing"

// A ferment of five days. Allocations are those of setting up and of the curve,
// none for each step.
func BenchmarkRun(b *testing.B) {
	for _, c := range []struct {
		name string
		in   Input
	}{{"bourbon", bourbon(b)}, {"malt", malt(b)}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Run(c.in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
