package mash

import "testing"

func BenchmarkBourbon(b *testing.B) {
	in := bourbon(b)
	b.ReportAllocs()
	for b.Loop() {
		must(b, in)
	}
}

func BenchmarkLauteredMalt(b *testing.B) {
	in := maltWhisky(b)
	b.ReportAllocs()
	for b.Loop() {
		must(b, in)
	}
}
