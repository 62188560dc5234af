package check

import (
	"bytes"
	"fmt"
	"os"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/tree"
)

// manyBatches is a house of n batches, one a file, each complete: the example
// of Lantern Hollow with its notes, or the bare text of the tests' own.
func manyBatches(b *testing.B, n int, noted bool) (fstest.MapFS, int64) {
	fsys := bench(b, nil)
	base := string(fsys["base.batch"].Data)
	if noted {
		text, err := os.ReadFile("../../examples/lantern-hollow/ferry-landing.batch")
		if err != nil {
			b.Fatal(err)
		}
		base, _, _ = strings.Cut(string(text), "# A variant states")
		base = strings.NewReplacer("Ferry Landing\"", "Base\"", "Lantern Hollow\"", "Bench\"", "Copper kettle", "Kettle").Replace(base)
	}
	var size int64
	for i := range n {
		text := strings.Replace(base, `batch "Base"`, fmt.Sprintf(`batch "Batch %d"`, i), 1)
		fsys[fmt.Sprintf("b/%04d.batch", i)] = &fstest.MapFile{Data: []byte(text)}
		size += int64(len(text))
	}
	return fsys, size
}

// heap is what is in use, and all that was ever asked for, in bytes.
func heap(collect bool) (live, total uint64) {
	if collect {
		runtime.GC()
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc, m.TotalAlloc
}

// BenchmarkCheckHouse reads and checks a house of 1,000 batches. Two metrics of
// memory stand beside the speed: what the house, checked, keeps for each byte of
// its texts, and what was asked for on the way, most of it given back.
func BenchmarkCheckHouse(b *testing.B) {
	for _, noted := range []bool{true, false} {
		name := "bare"
		if noted {
			name = "noted"
		}
		b.Run(name, func(b *testing.B) {
			fsys, size := manyBatches(b, 1000, noted)
			Builtin()
			b.SetBytes(size)
			var kept, asked float64
			for b.Loop() {
				b.StopTimer()
				live, total := heap(true)
				b.StartTimer()
				h, err := LoadFS(fsys, "", Options{})
				if err != nil {
					b.Fatal(err)
				}
				if list := h.Check(); list.HasErrors() {
					b.Fatal(list)
				}
				b.StopTimer()
				_, totalAfter := heap(false)
				liveAfter, _ := heap(true)
				kept += float64(liveAfter-live) / float64(size)
				asked += float64(totalAfter-total) / float64(size)
				runtime.KeepAlive(h)
				b.StartTimer()
			}
			b.ReportMetric(kept/float64(b.N), "kept-B/srcbyte")
			b.ReportMetric(asked/float64(b.N), "asked-B/srcbyte")
		})
	}
}

// BenchmarkCheckOne reads a house and one batch of it, as `plan` does.
func BenchmarkCheckOne(b *testing.B) {
	fsys := bench(b, nil)
	Builtin()
	b.ReportAllocs()
	for b.Loop() {
		h, err := LoadFS(fsys, "", Options{})
		if err != nil {
			b.Fatal(err)
		}
		if got, list := h.Batch("Base"); got == nil {
			b.Fatal(list)
		}
	}
}

// BenchmarkBase reads the built-in library from its text, all of it.
func BenchmarkBase(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		saidOf(fromText())
	}
}

// BenchmarkFile parses files and holds them against the table: a file of one
// batch, and one of a hundred.
func BenchmarkFile(b *testing.B) {
	one, err := os.ReadFile("testdata/base.batch")
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{1, 100} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			data := bytes.Repeat(one, n)
			b.SetBytes(int64(len(data)))
			b.ReportAllocs()
			for b.Loop() {
				file, list := lang.Parse(diag.NewSource("base.batch", data))
				tree.Declarations(file.Stmts, nil, &list)
			}
		})
	}
}
