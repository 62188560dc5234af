package still

import "testing"

func BenchmarkStrip(b *testing.B) {
	in := washRun(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Strip(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSpiritRun(b *testing.B) {
	in := secondRun(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := SpiritRun(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSteady(b *testing.B) {
	in := secondRun(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := Steady(in); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBoil(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		newBoil(ethanolWater{90e3}, 0.1)
	}
}
