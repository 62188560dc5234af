package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/testflag"
)

var keepFloods = flag.String("floods", "", "write the houses of TestFlood to this folder too, to be measured as files")

// flood is a text within the limit of a file's size that asks for as much work
// as such a text can.
type flood struct {
	name string
	text func(toRoad string) []byte // given the text of Toll Road
}

// full repeats what line gives until a file is as large as it may be, between a
// beginning and an end.
func full(begin, end string, line func(i int) string) func(string) []byte {
	return func(string) []byte {
		var b bytes.Buffer
		b.WriteString(begin)
		for i := 0; ; i++ {
			l := line(i)
			if b.Len()+len(l)+len(end) > lang.MaxFileBytes {
				break
			}
			b.WriteString(l)
		}
		b.WriteString(end)
		return b.Bytes()
	}
}

// some is full of no more than n lines.
func some(n int, begin, end string, line func(i int) string) func(string) []byte {
	return func(string) []byte {
		var b bytes.Buffer
		b.WriteString(begin)
		for i := range n {
			b.WriteString(line(i))
		}
		b.WriteString(end)
		return b.Bytes()
	}
}

func always(s string) func(int) string { return func(int) string { return s } }
func numbered(format string) func(int) string {
	return func(i int) string { return fmt.Sprintf(format, i) }
}

// word is another one for every number, as near to others as words can be.
func word(i int) string {
	b := []byte("aaaaaaaaaa")
	for at := range b {
		b[at] += byte(i % 3)
		i /= 3
	}
	return string(b)
}

// recipes is n batches like Toll Road, each its own.
func recipes(n int, each func(i int, text string) string) func(string) []byte {
	return func(toll string) []byte {
		var b bytes.Buffer
		for i := range n {
			text := strings.Replace(toll, `batch "Toll Road"`, fmt.Sprintf(`batch "Toll Road %d"`, i), 1)
			b.WriteString(each(i, text))
			b.WriteString("\n")
		}
		return b.Bytes()
	}
}

var floods = []flood{
	{"lines of a block", full("batch \"B\" {\n  bill {\n", "  }\n}\n", always("    corn 5 lb\n"))},
	{"lines of a block, each its own", full("batch \"B\" {\n  bill {\n", "  }\n}\n", numbered("    grain-%d 5 lb\n"))},
	{"lines of a block, just few enough", some(lang.MaxStatements-2, "batch \"B\" {\n  bill {\n", "  }\n}\n", always("    corn 5 lb\n"))},
	{"lines that stand twice", some(lang.MaxStatements-2, "batch \"B\" {\n  bill {\n", "  }\n}\n", func(i int) string { return fmt.Sprintf("    grain-%d 5 lb\n", i/2) })},
	{"blocks", full("", "", numbered("plant \"P%d\" {\n}\n"))},
	{"blocks, just few enough", some(lang.MaxStatements, "", "", numbered("plant \"P%d\" {\n}\n"))},
	{"batches", full("", "", numbered("batch \"B%d\" {\n}\n"))},
	{"batches, just few enough", some(lang.MaxStatements, "", "", numbered("batch \"B%d\" {\n}\n"))},
	{"batches of one name", some(lang.MaxStatements, "", "", always("batch \"B\" {\n}\n"))},
	{"whole batches", recipes(1500, func(i int, s string) string { return strings.Replace(s, "0.6 g/L", fmt.Sprintf("0.6%04d g/L", i), 1) })},
	{"whole batches, just few enough", recipes(house.MostBatches, func(i int, s string) string { return strings.Replace(s, "275 gal", fmt.Sprintf("275.%04d gal", i), 1) })},
	{"batches that take long", some(house.MostBatches, "", "", func(i int) string {
		return fmt.Sprintf("batch \"B%d\" from \"Toll Road\" {\n  mash {\n    water 275.%04d gal at 58 F\n    dose alpha-amylase\n    add corn, rye\n    heat to 190 F\n    rest 60 min\n    cool to 150 F\n    add distillers-malt\n%s    cool to 76 F\n  }\n  ferment {\n    for 59 days\n  }\n}\n",
			i, i, strings.Repeat("    heat to 150 F\n    rest 160 min\n    cool to 149 F\n", 26))
	})},
	{"variants, just few enough", some(house.MostBatches, "", "", numbered("batch \"B%d\" from \"Toll Road\" {\n  promise casks 1\n}\n"))},
	{"variants of variants, just few enough", some(house.MostBatches-1, "batch \"B-1\" from \"Toll Road\" {\n}\n", "", func(i int) string {
		return fmt.Sprintf("batch \"B%d\" from \"B%d\" {\n  ferment {\n    for %d h\n  }\n}\n", i, i-1, 80+i%20)
	})},
	{"variants of one batch", some(lang.MaxStatements/3, "", "", numbered("batch \"B%d\" from \"Toll Road\" {\n  promise casks 1\n}\n"))},
	{"variants of variants", some(lang.MaxStatements/3, "batch \"B-1\" from \"Toll Road\" {\n}\n", "", func(i int) string {
		return fmt.Sprintf("batch \"B%d\" from \"B%d\" {\n  promise casks 1\n}\n", i, i-1)
	})},
	{"many variants of a deep one", some(lang.MaxStatements/3, "batch \"B-1\" from \"Toll Road\" {\n}\n", "", func(i int) string {
		return fmt.Sprintf("batch \"B%d\" from \"B%d\" {\n  promise casks 1\n}\n", i, min(i-1, 96))
	})},
	{"variants of none", some(lang.MaxStatements, "", "", func(i int) string { return fmt.Sprintf("batch \"B%s\" from \"C%s\" {\n}\n", word(i), word(i)) })},
	{"variants in a circle", some(lang.MaxStatements, "batch \"B-1\" from \"B5\" {\n}\n", "", func(i int) string { return fmt.Sprintf("batch \"B%d\" from \"B%d\" {\n}\n", i, i-1) })},
	{"unknown words", full("batch \"B\" {\n", "}\n", func(i int) string { return "  " + word(i) + " 1\n" })},
	{"unknown words, just few enough", some(lang.MaxStatements-1, "batch \"B\" {\n", "}\n", func(i int) string { return "  " + word(i) + " 1\n" })},
	{"unknown declarations", full("", "", func(i int) string { return word(i) + "\n" })},
	{"unknown grains beside near ones", func(string) []byte {
		var b bytes.Buffer
		for i := range 1900 {
			fmt.Fprintf(&b, "grain %s from corn {\n}\n", word(i))
		}
		for i := range (lang.MaxStatements - 1900) / 1000 {
			fmt.Fprintf(&b, "batch \"B%d\" {\n  bill {\n", i)
			for k := range 990 {
				fmt.Fprintf(&b, "    %sb 5 lb\n", word(59049-1000*i-k-1))
			}
			b.WriteString("  }\n}\n")
		}
		return b.Bytes()
	}},
	{"prices of what is not known", some(lang.MaxStatements-3, "plant \"P\" {\n  costs {\n", "  }\n}\n", func(i int) string { return "    " + word(i) + " 1 USD/lb\n" })},
	{"names", some(lang.MaxStatements, "", "", numbered("grain g%d from corn {\n}\n"))},
	{"grains of one name", some(lang.MaxStatements, "", "", always("grain mine from corn {\n}\n"))},
	{"grains that begin from one another", some(lang.MaxStatements, "", "", func(i int) string { return fmt.Sprintf("grain g%d from g%d {\n}\n", i, i+1) })},
	{"grains that begin from none", some(lang.MaxStatements, "", "", func(i int) string { return fmt.Sprintf("grain g%d from h%d {\n}\n", i, i) })},
	{"vessels of one name", some(lang.MaxStatements-1, "plant \"P\" {\n", "}\n", always("  still \"S\" {\n  }\n"))},
	{"vessels", some(lang.MaxStatements-1, "plant \"P\" {\n", "}\n", numbered("  still \"S%d\" {\n  }\n"))},
	{"names on a line", full("plant \"P\" {\n", "}\n", func(i int) string {
		return "  still " + strings.Repeat("\"S\", ", 9000) + "\"S\" {\n  }\n"
	})},
	{"long names", full("", "", func(i int) string { return fmt.Sprintf("batch \"%s%d\" {\n}\n", strings.Repeat("n", 60_000), i) })},
	{"long words", full("batch \"B\" {\n", "}\n", func(i int) string { return strings.Repeat("n", 60_000) + "\n" })},
	{"long units", full("batch \"B\" {\n", "}\n", func(i int) string { return "bill 1 " + strings.Repeat("n", 60_000) + " {\n}\n" })},
	{"long numbers", full("batch \"B\" {\n", "}\n", func(i int) string { return "bill " + strings.Repeat("9", 60_000) + " lb {\n}\n" })},
	{"long comments", full("", "", func(i int) string { return "#" + strings.Repeat("n", 60_000) + "\n" })},
	{"long lines", full("batch \"B\" {\n", "}\n", func(i int) string { return strings.Repeat("n ", 30_000) + "\n" })},
	{"long lines of numbers", full("batch \"B\" {\n", "}\n", func(i int) string { return "bill " + strings.Repeat("1 lb ", 12_000) + "\n" })},
	{"long lists", full("batch \"B\" {\n  mash {\n", "  }\n}\n", func(i int) string { return "    add " + strings.Repeat("n, ", 20_000) + "n\n" })},
	{"long lists over lines", full("batch \"B\" {\n  mash {\n  add n", "\n  }\n}\n", always(",\n    n"))},
	{"numbers", full("batch \"B\" {\n", "}\n", always("1 2 3 4\n"))},
	{"words without end", full("", "", always("a "))},
	{"comments", full("", "", always("#\n"))},
	{"comments with a control character", full("", "", always("#\x01\n"))},
	{"comments that reorder", full("", "", always("#\u202e\n"))},
	{"control characters", full("", "", always("\x01\n"))},
	{"names with a control character", some(lang.MaxStatements, "", "", always("batch \"B\x01\" {\n}\n"))},
	{"bytes that are no UTF-8", full("", "", always("\xff"))},
	{"empty lines", full("", "", always("\n"))},
	{"lines ended otherwise", full("", "", always("\r"))},
	{"commas", full("", "", always(",\n"))},
	{"opening braces", full("", "", always("{\n"))},
	{"closing braces", full("", "", always("}\n"))},
	{"closing braces in a line", full("", "", always(strings.Repeat("}", 60_000)+"\n"))},
	{"pairs of braces in a line", full("", "", always(strings.Repeat("a {} ", 10_000)+"\n"))},
	{"blocks that are not closed", full("", "", func(i int) string { return "batch {" + strings.Repeat("\n}", i%3) + "\n" })},
	{"quotes", full("", "", always("\"\n"))},
	{"escapes", full("", "", always("a \"\\q\\q\\q\"\n"))},
	{"letters of two alphabets", some(lang.MaxStatements, "", "", func(i int) string { return fmt.Sprintf("bаtch \"Bе%d\" {\n}\n", i) })},
	{"wrong units", some(lang.MaxStatements-2, "batch \"B\" {\n  mash {\n", "  }\n}\n", func(i int) string { return "    rest 5 " + word(i) + "\n" })},
	{"values out of range", some(lang.MaxStatements-2, "batch \"B\" {\n  mash {\n", "  }\n}\n", always("    rest 5000 years\n"))},
	{"steps", some(lang.MaxStatements-3, "batch \"B\" from \"Toll Road\" {\n  mash {\n    water 275 gal at 58 F\n", "  }\n}\n", func(i int) string { return fmt.Sprintf("    rest %d min\n", i%50+1) })},
	{"edits of steps", some(lang.MaxStatements-3, "batch \"B\" from \"Toll Road\" {\n  mash {\n", "  }\n}\n", always("    remove rest 2\n"))},
	{"takings away", some(lang.MaxStatements-3, "batch \"B\" from \"Toll Road\" {\n  bill {\n", "  }\n}\n", func(i int) string { return "    remove " + word(i) + "\n" })},
	{"promises", some(lang.MaxStatements-1, "batch \"B\" from \"Toll Road\" {\n", "}\n", func(i int) string { return "  promise " + word(i) + " 5\n" })},
	{"doses", some(lang.MaxStatements-2, "batch \"B\" from \"Toll Road\" {\n  ferment {\n", "  }\n}\n", func(i int) string { return "    dose " + word(i) + "\n" })},
	{"conditions of a standard", some(lang.MaxStatements-1, "standard \"S\" {\n", "}\n", always("  grain corn at least 51 %\n"))},
	{"constants of a model", some(lang.MaxStatements-1, "model mine {\n", "}\n", func(i int) string { return "  " + word(i) + " 5\n" })},
}

// house writes a flood beside Lantern Hollow's plant and Toll Road.
func (f flood) house(tb testing.TB) (folder, file string) {
	tb.Helper()
	folder = tb.TempDir()
	if *keepFloods != "" {
		folder = filepath.Join(*keepFloods, strings.ReplaceAll(f.name, " ", "-"))
		require.NoError(tb, os.MkdirAll(folder, 0o755))
	}
	var toll []byte
	for _, name := range []string{"house.batch", "toll-road.batch"} {
		text, err := os.ReadFile(filepath.Join(hollow, name))
		require.NoError(tb, err)
		require.NoError(tb, os.WriteFile(filepath.Join(folder, name), text, 0o644))
		toll = text
	}
	text := f.text(string(toll))
	require.LessOrEqual(tb, len(text), lang.MaxFileBytes, f.name)
	file = filepath.Join(folder, "flood.batch")
	require.NoError(tb, os.WriteFile(file, text, 0o644))
	return folder, file
}

// mostAsked is how many bytes a command may ask for, most of them given back, to
// answer for any text of which its file's size allows.
const mostAsked = 500 << 20

// TestFlood: whatever stands in a file that is not too large, check, plan and fmt
// answer with no more than can be read and for a bounded amount of work. What is
// asked for of memory stands for the work: it does not hang on the machine.
func TestFlood(t *testing.T) {
	for i, f := range floods {
		if i%testflag.Every(23) != 0 {
			continue
		}
		t.Run(f.name, func(t *testing.T) {
			_, file := f.house(t)
			for _, args := range [][]string{{"check", file}, {"check", file, "--format", "json"}, {"plan", "-q", file, "--format", "json"}, {"fmt", "--check", file}} {
				var before, after runtime.MemStats
				runtime.ReadMemStats(&before)
				code, out, said := command(args...)
				runtime.ReadMemStats(&after)
				what := args[0]
				assert.Contains(t, []int{exitOK, exitError}, code, what)
				assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(mostAsked), what)
				assert.Less(t, len(said), 400_000, what)
				if !strings.Contains(out, `"newmake.diagnostics"`) {
					continue
				}
				var r struct {
					Errors, Warnings, Notes int
					Diagnostics             []struct{ Code, Summary, Help string }
				}
				require.NoError(t, json.Unmarshal([]byte(out), &r))
				assert.Less(t, len(out), 8_000_000)
				assert.LessOrEqual(t, len(r.Diagnostics), 2*diag.MostSaid+1)
				more := len(r.Diagnostics) > 0 && r.Diagnostics[len(r.Diagnostics)-1].Code == string(diag.CodeTooManySaid)
				assert.Equal(t, r.Errors+r.Warnings+r.Notes > len(r.Diagnostics), more, "what is left out is counted, and said")
			}
		})
	}
}

// TestLimitsOfAFile: a file may be as long as each limit says, and one more is
// refused by a diagnostic that names the limit.
func TestLimitsOfAFile(t *testing.T) {
	for _, c := range []struct {
		what string
		most int
		text func(n int) string
	}{
		{"lines that say something", lang.MaxStatements, func(n int) string { return strings.Repeat("model m {\n}\n", n) }},
		{"words, numbers, marks, remarks and ends of lines", lang.MaxItems, func(n int) string { return strings.Repeat("#\n", n/2) + strings.Repeat("#", n%2) }},
		{"batches", house.MostBatches, func(n int) string {
			return string(some(n, "", "", numbered("batch \"B%d\" from \"Toll Road\" {\n}\n"))(""))
		}},
	} {
		named := fmt.Sprintf("NM0122: this file has more than %d %s", c.most, c.what)
		folder, file := houseWith(t, []byte(c.text(c.most)))
		toll, err := os.ReadFile(filepath.Join(hollow, "toll-road.batch"))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, "toll-road.batch"), toll, 0o644))
		_, _, said := command("check", file)
		assert.NotContains(t, said, "NM0122", c.what)
		require.NoError(t, os.WriteFile(file, []byte(c.text(c.most+1)), 0o644))
		code, _, said := command("check", file)
		assert.Equal(t, exitError, code)
		assert.Contains(t, said, named)
		assert.Contains(t, said, "split it into several files")
	}
}

// BenchmarkFlood is check of each flood.
func BenchmarkFlood(b *testing.B) {
	for _, f := range floods {
		b.Run(f.name, func(b *testing.B) {
			_, file := f.house(b)
			b.ReportAllocs()
			for b.Loop() {
				command("check", file)
			}
		})
	}
}
