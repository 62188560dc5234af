package assist

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/check"
	"newmake/lang/memoryfs"
)

const sliding = "ferry-landing.batch"

// slideBehind asks for the slider behind some words of the example, changed as said.
func slideBehind(t *testing.T, file, words string, change ...string) (Slider, bool) {
	t.Helper()
	files, text := memoryfs.Files{}, ""
	for _, name := range []string{"house.batch", sliding, "runs/2026.batch"} {
		data, err := os.ReadFile("../../examples/lantern-hollow/" + name)
		require.NoError(t, err)
		if name == file {
			text = strings.NewReplacer(change...).Replace(string(data))
			data = []byte(text)
		}
		files[name] = memoryfs.File{Data: data}
	}
	h, err := check.LoadFS(files, "", check.Options{})
	require.NoError(t, err)
	i := strings.Index(text, words)
	require.GreaterOrEqual(t, i, 0, words)
	s := Of(h, file)
	require.NotNil(t, s)
	return s.Slide(i + len(words))
}

func TestSlide(t *testing.T) {
	for _, c := range []struct {
		words, label, now, low, high string
		change                       []string
	}{
		{words: "rest     45", label: "rest", now: "45", low: "23", high: "90"},
		{words: "rest     45 mi", label: "rest", now: "45", low: "23", high: "90"}, // on its unit
		{words: "heat     to 190", label: "heat to", now: "190", low: "163", high: "217"},
		{words: "hold   78", label: "hold", now: "78", low: "51", high: "88"},           // not above its other end
		{words: "hold   78..88", label: "hold 78..", now: "88", low: "78", high: "115"}, // nor below
		{words: "distillers-yeast 0.6", label: "pitch distillers-yeast", now: "0.6", low: "0.3", high: "1.2"},
		{words: "bill 790", label: "bill", now: "790", low: "400", high: "1580"},
		{words: "bill 1,150", label: "bill", now: "1,150", low: "580", high: "2,300", change: []string{"bill 790", "bill 1,150"}},
		{words: "promise  casks 1", label: "promise casks", now: "1", low: "1", high: "2"},
		{words: "corn             68", label: "corn", now: "68", low: "34", high: "100"},
		{words: "entry   120", label: "entry", now: "120", low: "90", high: "144"},                                                 // what is usual
		{words: "entry   160", label: "entry", now: "160", low: "80", high: "200", change: []string{"entry   120", "entry   160"}}, // unusual already: what may be
		{words: "char 3", label: "fill 53 gal new charred-oak char", now: "3", low: "2", high: "4"},
		{words: "to 214", label: "heat to", now: "214", low: "187", high: "221", change: []string{"to 190", "to 214"}}, // 105 C
		{words: "to 217", label: "heat to", now: "217", low: "190", high: "221", change: []string{"to 190", "to 217"}},
		{words: "backset  15", label: "backset", now: "15", low: "8", high: "30"},
	} {
		s, ok := slideBehind(t, sliding, c.words, c.change...)
		if !assert.True(t, ok, c.words) {
			continue
		}
		first := func(i int) string { return s.Texts[i][0] }
		assert.Equal(t, []string{c.label, c.now, c.low, c.high}, []string{s.Label, first(s.Now), first(0), first(len(s.Texts) - 1)}, c.words)
		assert.Equal(t, c.now, s.Places[0].Text(), c.words)
		assert.LessOrEqual(t, len(s.Texts), mostPositions+2, c.words)
		last := -1e9
		for i := range s.Texts {
			v, err := strconv.ParseFloat(strings.ReplaceAll(first(i), ",", ""), 64)
			require.NoError(t, err)
			assert.Greater(t, v, last, "%s rises", c.words)
			last = v
		}
	}
}

// TestSlideTakesTheBillAlong: the shares come to what they came to, wherever one is slid.
func TestSlideTakesTheBillAlong(t *testing.T) {
	s, ok := slideBehind(t, sliding, "corn             68")
	require.True(t, ok)
	require.Len(t, s.Places, 4)
	for _, texts := range s.Texts {
		sum := 0.0
		for _, text := range texts {
			v, err := strconv.ParseFloat(text, 64)
			require.NoError(t, err)
			sum += v
		}
		assert.InDelta(t, 100, sum, 1e-9, texts)
	}
	assert.Equal(t, []string{"68", "10", "8", "14"}, s.Texts[s.Now], "what is written is left alone where it stands")

	s, ok = slideBehind(t, sliding, "rye   14", "ferry", "ferry")
	require.True(t, ok, "a variant's")
	require.Len(t, s.Places, 2)
	assert.Equal(t, []string{"18", "0"}, s.Texts[len(s.Texts)-1])

	s, ok = slideBehind(t, sliding, "corn             68", "14 %", "rest")
	require.True(t, ok)
	assert.Len(t, s.Places, 1, "one line takes the rest, so no other changes")
}

// TestNoSlider: where no number stands, where it can be no other, and in a record.
func TestNoSlider(t *testing.T) {
	for _, words := range []string{"mash in", "start     2026-03", "# what one cas", "standard  straight"} {
		_, ok := slideBehind(t, sliding, words)
		assert.False(t, ok, words)
	}
	_, ok := slideBehind(t, sliding, "oats   4", "    rye   14 %\n", "")
	assert.False(t, ok, "the only share of a variant")
	_, ok = slideBehind(t, "runs/2026.batch", "rest  165")
	assert.False(t, ok, "what was read is not moved")
	_, ok = slideBehind(t, "house.batch", "elevation  1,150")
	assert.True(t, ok, "of the plant")
}
