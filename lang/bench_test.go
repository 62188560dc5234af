package lang_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang"
	"newmake/lang/diag"
)

// corpus is every .batch file that the repository ships, and those of testdata.
func corpus(tb testing.TB) map[string][]byte {
	tb.Helper()
	files := make(map[string][]byte)
	for _, root := range []string{"testdata", "../examples", "../stdlib"} {
		_ = filepath.WalkDir(root, func(path string, d os.DirEntry, err error) error {
			if err == nil && !d.IsDir() && filepath.Ext(path) == ".batch" {
				text, err := os.ReadFile(path)
				if err != nil {
					tb.Fatal(err)
				}
				files[filepath.ToSlash(path)] = text
			}
			return nil
		})
	}
	return files
}

func benchmarkText(tb testing.TB, copies int) []byte {
	tb.Helper()
	text, err := os.ReadFile("testdata/ferry-landing.batch")
	if err != nil {
		tb.Fatal(err)
	}
	return bytes.Repeat(text, copies)
}

// perByte reports bytes allocated for each byte of source beside the MB/s.
func perByte(b *testing.B, text []byte, fn func(*diag.Source)) {
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	before := totalAlloc()
	for b.Loop() {
		fn(diag.NewSource("bench.batch", text))
	}
	b.ReportMetric(float64(totalAlloc()-before)/float64(b.N)/float64(len(text)), "B/srcbyte")
}

func BenchmarkParse(b *testing.B) {
	for _, copies := range []int{1, 1000} {
		text := benchmarkText(b, copies)
		b.Run(fmt.Sprintf("%dkB", len(text)/1000), func(b *testing.B) {
			perByte(b, text, func(s *diag.Source) { lang.Parse(s) })
		})
	}
}

// Reading a batch asks for memory so often at most: a tenth above what it was when
// this was written.
func TestParserAllocations(t *testing.T) {
	text := benchmarkText(t, 1)
	got := testing.AllocsPerRun(20, func() { lang.Parse(diag.NewSource("bench.batch", text)) })
	assert.LessOrEqual(t, got, 1380.0)
}

func BenchmarkTokens(b *testing.B) {
	text := benchmarkText(b, 100)
	perByte(b, text, func(s *diag.Source) { lang.Tokens(s.Text) })
}
