package check

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"newmake/stdlib"
)

// manyBatches is a house of n batches, one a file, each complete.
func manyBatches(b *testing.B, n int) (fstest.MapFS, int64) {
	fsys := bench(b, nil)
	base, err := os.ReadFile("testdata/base.batch")
	if err != nil {
		b.Fatal(err)
	}
	var size int64
	for i := range n {
		text := strings.Replace(string(base), `"Base"`, fmt.Sprintf(`"Batch %d"`, i), 1)
		fsys[fmt.Sprintf("b/%04d.batch", i)] = &fstest.MapFile{Data: []byte(text)}
		size += int64(len(text))
	}
	return fsys, size
}

// BenchmarkCheckHouse reads and checks a house of 1,000 batches.
func BenchmarkCheckHouse(b *testing.B) {
	fsys, size := manyBatches(b, 1000)
	Builtin()
	b.SetBytes(size)
	b.ReportAllocs()
	for b.Loop() {
		h, err := LoadFS(fsys, "", Options{})
		if err != nil {
			b.Fatal(err)
		}
		if list := h.Check(); len(list) > 0 {
			b.Fatal(list)
		}
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

// BenchmarkLibrary reads the built-in stock, which a process does once.
func BenchmarkLibrary(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		NewLibrary(stdlib.FS)
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
				parse(text{path: "base.batch", name: "base.batch", data: data})
			}
		})
	}
}
