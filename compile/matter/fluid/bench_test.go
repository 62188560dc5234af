package fluid

import "testing"

// The properties a plan asks for most, each with its allocations (none).
func BenchmarkProperties(b *testing.B) {
	benchmarks := []struct {
		name string
		f    func(u float64) float64 // u runs over 0..1
	}{
		{"BubblePointC", func(u float64) float64 { _, y := BubblePointC(u, 95e3); return y }},
		{"RelativeVolatility", func(u float64) float64 { return RelativeVolatility(u, 95e3) }},
		{"DewPointC", func(u float64) float64 { _, x := DewPointC(u, 95e3); return x }},
		{"PartialCondenser", func(u float64) float64 { _, x, _ := PartialCondenser(u, 0.1, 95e3); return x }},
		{"Density20C", func(u float64) float64 { return Density(u, 20) }},
		{"Density80C", func(u float64) float64 { return Density(u, 80) }},
		{"MassFracFromABV", func(u float64) float64 { w, _ := MassFracFromABV(u); return w }},
		{"MassFracFromDensity", func(u float64) float64 {
			w, _ := MassFracFromDensity(800+190*u, 20)
			return w
		}},
		{"HeatCapacity", func(u float64) float64 { return HeatCapacity(u, 90) }},
		{"VapourLatentHeat", func(u float64) float64 { return VapourLatentHeat(u, 90) }},
		{"WortDensity", func(u float64) float64 { return WortDensity(0.1*u, 0.05, 30) }},
		{"PlatoFromSG", func(u float64) float64 { s, _ := PlatoFromSG(1 + 0.1*u); return s }},
		{"WaterBoilC", func(u float64) float64 { return WaterBoilC(50e3 + 60e3*u) }},
		{"TrueProof", func(u float64) float64 { p, _ := TrueProof(20+160*u, 72); return p }},
		{"Blend", func(u float64) float64 {
			m, _ := Blend(Lot{1, u, 20}, Lot{1, 0, 15})
			return m.TempC
		}},
	}
	for _, bench := range benchmarks {
		b.Run(bench.name, func(b *testing.B) {
			b.ReportAllocs()
			sum, i := 0.0, 0
			for b.Loop() {
				sum += bench.f(float64(i%1024) / 1024)
				i++
			}
			_ = sum
		})
	}
}
