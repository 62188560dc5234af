package main

import (
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/schema"
	"newmake/lang/testflag"
	"newmake/stdlib"
)

// extremes is a house that says all that can be said, with the library in it as its
// own.
const extremes = "testdata/extremes"

// notNumber is a number that is none, as Go and JSON's readers write it.
var notNumber = regexp.MustCompile(`\b(NaN|[-+]?Inf|Infinity)\b`)

// site is a number in a text, one end of it if it is a range, and the limits of it.
type site struct {
	file   string
	item   lang.Item
	high   bool // the upper end of a range
	kind   quantity.Kind
	limits []schema.Limit
	where  string
}

// TestExtremes pushes every number of a house, its batches and its library to the
// least and the greatest that it may be: what comes is a plan or an ordinary
// diagnostic, and no number that is none. Beyond them it is NM0407, with what is allowed.
func TestExtremes(t *testing.T) {
	texts, sites := extremeHouse(t)
	folder := t.TempDir()
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	for name, text := range texts {
		write(name, text)
	}
	batches := []string{"bourbon.batch", "malt.batch"}
	for _, b := range batches { // or else what stops them hides what is tried
		code, _, said := command("plan", "-q", filepath.Join(folder, b))
		require.Equal(t, exitOK, code, said)
	}
	require.Greater(t, len(sites), 500)
	planned, tried, ranAway := 0, 0, 0
	for i, s := range sites {
		if i%testflag.Every(179) != 0 {
			continue
		}
		for _, l := range s.limits {
			if l.Severity != diag.Error {
				continue
			}
			for _, upper := range []bool{false, true} {
				if s.item.Kind == lang.Range && upper != s.high {
					continue // the range would begin above its end
				}
				value, beyond := s.ends(t, l, upper)
				what := fmt.Sprintf("%s: `%s` to %s", s.where, s.item.At.Text(), value)
				write(s.file, s.with(texts[s.file], beyond))
				code, _, said := command("check", filepath.Join(folder, s.file))
				assert.Equal(t, exitError, code, "%s and beyond", what)
				assert.Contains(t, said, "NM0407", "%s and beyond", what)
				assert.Contains(t, said, "allowed:", "%s and beyond", what)

				write(s.file, s.with(texts[s.file], value))
				for _, b := range batches {
					if s.file != b && s.file != "house.batch" && s.file != "library.batch" {
						continue
					}
					var before, after runtime.MemStats
					runtime.ReadMemStats(&before)
					code, out, said := command("plan", "-q", filepath.Join(folder, b), "--format", "json")
					runtime.ReadMemStats(&after)
					tried++
					if code == exitOK {
						planned++
					}
					assert.Contains(t, []int{exitOK, exitError}, code, "%s: %s", what, said)
					if strings.Contains(out, string(diag.CodeRunsAway)) { // a constant has limits by its kind alone
						ranAway++
						assert.Contains(t, s.where, "library.batch model", "%s runs away", what)
					}
					assert.Empty(t, notNumber.FindString(out+said), "%s of %s: %s", what, b, said)
					assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(mostAsked), what)
				}
			}
		}
		write(s.file, texts[s.file])
	}
	t.Logf("%d plans tried, %d made, %d ran away and were not shown", tried, planned, ranAway)
	assert.Greater(t, planned, tried/4, "most of what is allowed can be planned")
}

// ends gives a limit in the unit of the number, and what lies just beyond it.
func (s site) ends(t *testing.T, l schema.Limit, upper bool) (value, beyond string) {
	t.Helper()
	si := l.Low
	if upper {
		si = l.High
	}
	at := func(si float64) float64 {
		v, err := quantity.FromSI(si, s.item.Unit, s.kind)
		require.NoError(t, err, s.where)
		return v
	}
	out := 1e-6 * math.Max(math.Abs(si), 1e-6*math.Min(l.High-l.Low, 1))
	if s.kind == quantity.Number && si == math.Trunc(si) && math.Abs(si) < 1e6 {
		out = 1
	}
	in := 1e-9 * math.Abs(si) // a limit may not come out to the bit in another unit
	if s.item.Unit == "" {
		in = 0
	}
	if !upper {
		out, in = -out, -in
	}
	write := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	return write(at(si - in)), write(at(si + out))
}

// with writes a value in the place of the number.
func (s site) with(text, value string) string {
	low, high, isRange := strings.Cut(s.item.Num, "..")
	switch {
	case !isRange:
		low = value
	case s.high:
		low += ".." + value
	default:
		low = value + ".." + high
	}
	return text[:s.item.At.Start] + low + text[s.item.At.Start+len(s.item.Num):s.item.At.End] + text[s.item.At.End:]
}

// extremeHouse reads the house and gives its texts, and every number of them that
// has a limit.
func extremeHouse(t *testing.T) (map[string]string, []site) {
	t.Helper()
	texts := map[string]string{}
	files, err := filepath.Glob(filepath.Join(extremes, "*.batch"))
	require.NoError(t, err)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		texts[filepath.Base(f)] = string(text)
	}
	library, err := fs.Glob(stdlib.FS, "*.batch")
	require.NoError(t, err)
	for _, f := range library {
		text, err := fs.ReadFile(stdlib.FS, f)
		require.NoError(t, err)
		texts["library.batch"] += string(text) + "\n"
	}
	var sites []site
	for _, name := range []string{"house.batch", "bourbon.batch", "malt.batch", "library.batch"} {
		file, list := lang.Parse(&diag.Source{Name: name, Text: []byte(texts[name])})
		require.Empty(t, list)
		sites = append(sites, numbersOf(t, name, "", file.Stmts, schema.Language)...)
	}
	return texts, sites
}

// numbersOf gives the numbers of some lines, and of all that is in them.
func numbersOf(t *testing.T, file, in string, lines []*lang.Stmt, b *schema.Block) []site {
	t.Helper()
	var out []site
	for _, line := range lines {
		f := b.Find(line.Head())
		if f == nil {
			f = b.Any
		}
		require.NotNil(t, f, line.Head())
		where := in + " " + line.At.Text()
		for _, it := range line.Items {
			if it.Kind != lang.Number && it.Kind != lang.Range {
				continue
			}
			s := site{file: file, item: it, where: file + where}
			s.kind, s.limits = limitsOf(f, it)
			require.NotEmpty(t, s.limits, "%s: %s", s.where, it.At.Text())
			out = append(out, s)
			if it.Kind == lang.Range {
				s.high = true
				out = append(out, s)
			}
		}
		if line.Block != nil {
			out = append(out, numbersOf(t, file, where, line.Block.Stmts, f.Block)...)
		}
	}
	return out
}

// limitsOf finds the slot of a line that a number is in by what it measures.
func limitsOf(f *schema.Field, it lang.Item) (quantity.Kind, []schema.Limit) {
	for _, slot := range f.Slots() {
		kinds := []quantity.Kind{slot.Kind}
		if slot.Type == "QUANTITY" { // whatever the unit measures first of all, as K a difference
			kinds = []quantity.Kind{quantity.Number}
			if u, ok := quantity.Lookup(it.Unit); ok {
				kinds = append(kinds, u.Measures[0].Kind)
			}
			for k := quantity.Number; k.String() != "an unknown kind"; k++ {
				kinds = append(kinds, k)
			}
		}
		for _, k := range kinds {
			if _, err := quantity.ToSI(it.Value, it.Unit, k); k == quantity.None || err != nil {
				continue
			}
			var limits []schema.Limit
			for _, l := range f.Limits {
				if l.Holds(slot.Name, k) {
					limits = append(limits, l)
				}
			}
			return k, limits
		}
	}
	return quantity.None, nil
}
