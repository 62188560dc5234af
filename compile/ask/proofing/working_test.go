package proofing_test

import (
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/compile/show/gauged"
	"newmake/lang/quantity"
)

var questions = []string{
	"38 gal at 134.1 proof at 66 F, reduce to 114 proof",
	"38 gal at 134.1 proof at 66 F, reduce to 114 proof with water at 50 F",
	"reading 192.85 at 72.10 F, hydrometer -0.03, thermometer 0.05 F",
	"81,000 lb at 190 proof",
	"1,000 lb at 200 proof, reduce to 190 proof",
	"fill 53 gal at 60 % abv from 70 % abv",
	"fill 200 L at 60 % abv from 250 L at 70 % abv at 15 C",
	"1,000 gal at 113.7 proof, blend with 1,000 gal at 113.8 proof",
	"20 gal at 134 proof, blend with 5 gal at 100.3 proof, reduce to 90 proof",
	"20 gal at 134 proof at 75 F, blend with 5 gal at 100 proof at 50 F",
	"200 L at 63 % abv at 18 C, reduce to 46 % abv with water at 12 C",
	"400 lb at 128 proof, fill 30 gal at 114 proof",
	"reading 84.6 at 65 F, solids 5 g/L",
	"300 mL reading 42 % abv at 23 C, solids 2 g/L, hydrometer 0.1 % abv",
	"50 proof-gal at 114 proof",
	"1.5 ton at 40 % abw, blend with 12 hL at 160 proof at 30 C, reduce to 100 proof, fill 53 gal at 90 proof",
	"2 qt at 20 proof, reduce to 5 proof",
	"60 % abv",
}

var (
	words   = regexp.MustCompile(`[A-Za-z%][A-Za-z0-9%]*`)
	numeral = regexp.MustCompile(`-?\d[\d,]*(?:\.\d+)?`)
)

// Whoever goes over the working with a pencil must find it right: each line that
// has an equals sign is worked again here from the numbers that stand in it.
func TestArithmeticAsShown(t *testing.T) {
	checked := 0
	for _, text := range questions {
		q, list := proofing.Read(text, quantity.Both)
		require.Empty(t, list, text)
		for _, u := range []measure.Units{measure.US, measure.SI} {
			a, list := proofing.Solve(q, u)
			require.Empty(t, list, text)
			for _, w := range a.Working {
				if w.Source == "by definition" {
					continue // one unit into another: package quantity's tests
				}
				for _, line := range w.Lines {
					if left, right, ok := strings.Cut(line, " = "); ok {
						checkLine(t, line, left, right)
						checked++
					}
				}
			}
		}
	}
	assert.Greater(t, checked, 100)
}

func checkLine(t *testing.T, line, left, right string) {
	t.Helper()
	if i := strings.LastIndex(left, ": "); i >= 0 {
		left = left[i+2:]
	}
	left = strings.NewReplacer(" x ", " * ", ",", "", "kg/m3", "", " to the pound", "").Replace(left)
	left = words.ReplaceAllStringFunc(left, func(string) string { return "" })
	got, err := types.Eval(token.NewFileSet(), nil, token.NoPos, floats(left))
	require.NoError(t, err, line)
	value, _ := constant.Float64Val(got.Value)
	shown := numeral.FindString(right)
	want, err := strconv.ParseFloat(strings.ReplaceAll(shown, ",", ""), 64)
	require.NoError(t, err, line)
	places := 0
	if _, frac, ok := strings.Cut(shown, "."); ok {
		places = len(frac)
	}
	assert.InDelta(t, want, value, 0.5*math.Pow10(-places)*(1+1e-6), line)
}

// floats makes whole numbers of an expression floats, so that / divides.
func floats(expr string) string {
	return numeral.ReplaceAllStringFunc(expr, func(n string) string {
		if strings.Contains(n, ".") {
			return n
		}
		return n + ".0"
	})
}

// A page has 80 columns, ASCII, and ends in one newline; every answer says where
// it stands before the law, and the caution.
func TestPage(t *testing.T) {
	for _, text := range questions {
		a := solve(t, text)
		page := gauged.Text(a)
		for line := range strings.Lines(page) {
			assert.LessOrEqual(t, len(strings.TrimRight(line, "\n")), max(80, len(text)), line)
		}
		for _, r := range page {
			require.Less(t, r, rune(0x7f), text)
		}
		assert.Contains(t, strings.Join(strings.Fields(page), " "), "the regulation's own tables")
		assert.Contains(t, strings.Join(strings.Fields(page), " "), "no flame or spark")
		assert.False(t, strings.HasSuffix(page, "\n\n"))
		names := map[string]bool{}
		for _, r := range a.Results {
			assert.False(t, names[r.Name], "%s twice in %s", r.Name, text)
			names[r.Name] = true
			assert.False(t, math.IsNaN(r.Value) || math.IsInf(r.Value, 0), "%s of %s", r.Name, text)
		}
	}
}
