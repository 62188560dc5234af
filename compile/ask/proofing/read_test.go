package proofing_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/ask/proofing"
	"newmake/compile/measure"
	"newmake/compile/show/gauged"
	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// Each fault is marked where it stands, under a code, and the help says what to
// write.
func TestFaults(t *testing.T) {
	for _, c := range []struct {
		text, at string
		code     diag.Code
		help     string
	}{
		{"38 gal at 134.1 prof", "prof", diag.CodeUnknownUnit, "did you mean `proof`?"},
		{"38 gall at 134 proof", "gall", diag.CodeUnknownUnit, "did you mean `gal`?"},
		{"38 gal at 134", "134", diag.CodeNoUnit, "proof"},
		{"38 gal 134", "134", diag.CodeNoUnit, "proof"},
		{"reading 192.8", "192.8", diag.CodeMissing, "`192.8 proof`"},
		{"38 gal, reduce to 114 proof", "38 gal", diag.CodeMissing, "reading"},
		{"38 gal at 134 proof redce to 114 proof", "redce", diag.CodeNoSuchWord, "did you mean `reduce`?"},
		{"raeding 134 at 60 F", "raeding", diag.CodeNoSuchWord, "did you mean `reading`?"},
		{"38 gal at 134 proof, reduce 114 proof", "114 proof", diag.CodeShape, "reduce to"},
		{"38 gal at 134 proof, reduce to", "", diag.CodeShape, "114 proof"},
		{"38 gal at 134 proof, blend 5 gal at 60 proof", "5 gal", diag.CodeShape, "blend with"},
		{"38 gal at 234 proof", "234 proof", diag.CodeOutOfRange, "200 proof"},
		{"0 gal at 134 proof", "0 gal", diag.CodeOutOfRange, "above 0"},
		{"1 mL at 134 proof", "1 mL", diag.CodeOutOfRange, "100 mL"},
		{"10000000000 gal at 134 proof", "10000000000 gal", diag.CodeOutOfRange, "100,000 m3"},
		{"38 gal at 134 proof at 120 F", "120 F", diag.CodeOutOfRange, "60 F"},
		{"reading 210 at 60 F", "210", diag.CodeOutOfRange, "again"},
		{"38 gal at 134 proof at 120 proof", "120 proof", diag.CodeTwice, "blend with"},
		{"38 gal at 134 proof reading 136 at 66 F", "136", diag.CodeTwice, "take one of them out"},
		{"134 proof, solids 5 g/L", "5 g/L", diag.CodeShape, "reading"},
		{"134 proof, reduce to 100 proof", "134 proof", diag.CodeMissing, "amount"},
		{"20 gal at 134 proof, blend with 100 proof", "100 proof", diag.CodeMissing, "amount"},
		{"reading 84 at 60 F, solids 9 g/L", "9 g/L", diag.CodeOutOfRange, "distil"},
		{"reading 84 solids 5 g/L", "solids", diag.CodeShape, "comma"},
		{"reading 84 at 60..62 F", "60..62 F", diag.CodeShape, "value"},
		{"reading 30 % abw at 60 F", "% abw", diag.CodeWrongKind, "by volume"},
		{"fill 53 gal at 120 proof", "", diag.CodeShape, "from"},
		{"fill 53 lb at 120 proof from 140 proof", "lb", diag.CodeWrongKind, ""},
		{"38 gal at 60 %", "%", diag.CodeWrongKind, "% abv"},
		{"1,3 gal at 60 proof", "1,3", diag.CodeBadNumber, "1,300"},
		{"", "", diag.CodeMissing, "38 gal"},
		{"38 gal at 134 proof {", "{", diag.CodeUnclosedBlock, ""},
	} {
		_, list := proofing.Read(c.text, quantity.Both)
		require.NotEmpty(t, list, c.text)
		assert.Equal(t, c.code, list[0].Code, c.text)
		assert.Equal(t, c.at, strings.TrimSpace(list[0].At.Text()), c.text)
		assert.Contains(t, list[0].Help, c.help, c.text)
	}
}

// What reads well may still not be done with the spirit there is.
func TestCannotBeDone(t *testing.T) {
	for _, c := range []struct {
		text, at string
		code     diag.Code
		say      string
	}{
		{"38 gal at 134 proof, reduce to 140 proof", "140 proof", diag.CodeOutOfRange, "cannot be reduced"},
		{"38 gal at 134 proof, reduce to 134 proof", "134 proof", diag.CodeOutOfRange, "is of 134.0 proof already"},
		{"fill 53 gal at 150 proof from 140 proof", "150 proof", diag.CodeOutOfRange, "cannot be reduced"},
		{"38 gal at 134 proof, fill 80 gal at 114 proof", "80 gal", diag.CodeCaskNotFilled, "44.7"},
		{"reading 2 at 90 F", "2", diag.CodeOutOfRange, "alcohol and water alone"},
	} {
		q, list := proofing.Read(c.text, quantity.Both)
		require.Empty(t, list, c.text)
		for _, u := range []measure.Units{measure.US, measure.SI} {
			_, list = proofing.Solve(q, u)
			require.Len(t, list, 1, c.text)
			assert.Equal(t, c.code, list[0].Code, c.text)
			assert.Equal(t, c.at, list[0].At.Text(), c.text)
			if u == measure.US {
				assert.Contains(t, list[0].Summary, c.say, c.text)
			}
		}
	}
}

// A word of the question misspelt by one letter is never swallowed.
func TestMisspelt(t *testing.T) {
	const text = "38 gal reading 134 at 66 F, hydrometer 0.1, thermometer 0.1 F, solids 5 g/L, blend with 5 gal at 100 proof, reduce to 90 proof with water at 58 F, fill 3 gal at 80 proof"
	_, list := proofing.Read(text, quantity.Both)
	require.Empty(t, list)
	for i, w := range strings.Fields(text) {
		if strings.ContainsAny(w[:1], "0123456789") || len(w) < 2 {
			continue
		}
		fields := strings.Fields(text)
		fields[i] = w[:1] + "q" + w[1:]
		_, list := proofing.Read(strings.Join(fields, " "), quantity.Both)
		assert.True(t, list.HasErrors(), "%s for %s", fields[i], w)
	}
}

// A question with one word gone gives two errors at most.
func TestOneWordGone(t *testing.T) {
	for _, text := range questions {
		fields := strings.Fields(text)
		for i := range fields {
			rest := strings.Join(append(append([]string{}, fields[:i]...), fields[i+1:]...), " ")
			_, list := proofing.Read(rest, quantity.Both)
			assert.LessOrEqual(t, list.Count(diag.Error), 2, rest)
		}
	}
}

// FuzzRead: whatever is asked, there is an answer in numbers, or an error with
// its place.
func FuzzRead(f *testing.F) {
	for _, q := range questions {
		f.Add(q)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, list := proofing.Read(text, quantity.Both)
		if list.HasErrors() {
			return
		}
		for _, u := range []measure.Units{measure.US, measure.SI} {
			a, list := proofing.Solve(q, u)
			if list.HasErrors() {
				continue
			}
			for _, r := range a.Results {
				require.False(t, math.IsNaN(r.Value) || math.IsInf(r.Value, 0), "%s: %s", text, r.Name)
			}
			require.NotContains(t, gauged.Text(a), "NaN")
		}
	})
}

// TestTheLotComesFirst: a question that begins with its step is told how it reads.
func TestTheLotComesFirst(t *testing.T) {
	for _, words := range []string{"reduce 38 gal at 134 proof to 100 proof", "blend 20 gal at 134 proof with 5 gal at 100 proof"} {
		_, list := proofing.Read(words, quantity.Both)
		require.Len(t, list, 1, words)
		assert.Contains(t, list[0].Help, "the lot comes first", words)
	}
}
