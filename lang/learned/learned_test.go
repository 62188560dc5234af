package learned

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/house"
	"newmake/lang/recipe"
)

const text = `learned "Lantern Hollow" on 2026-06-30 {
  model             1
  from             "26-01", "26-02"
  without          "26-04" because "spill"
  yield-efficiency  98.6 %, 97.1..100.1 %, from 100 %
  cooker-heat of "Copper kettle" 105 %, 101..109 %, from 100 %
  yeast-lag of distillers-yeast 2.3 h, 2..2.6 h, from 2.5 h
  together yeast-rate of distillers-yeast, yeast-lag of distillers-yeast, -0.87
}
`

func read(t *testing.T, text string) (*recipe.Learned, diag.List) {
	h, err := house.LoadFS(fstest.MapFS{
		"house.batch": &fstest.MapFile{Data: []byte("newmake 1\n")},
		FileName:      &fstest.MapFile{Data: []byte(text)},
	}, "", house.Options{})
	require.NoError(t, err)
	return Of(h, "Lantern Hollow")
}

func TestRead(t *testing.T) {
	l, list := read(t, text)
	require.Empty(t, list)
	assert.Equal(t, "2026-06-30", l.On)
	assert.Equal(t, 1, l.Model)
	assert.Equal(t, []string{"26-01", "26-02"}, l.From)
	assert.Equal(t, []recipe.Left{{Run: "26-04", Why: "spill"}}, l.Without)
	require.Len(t, l.Constants, 3)
	c := l.Constants[2]
	assert.Equal(t, "yeast-lag of distillers-yeast", c.Key())
	assert.InDelta(t, 2.3*3600, c.SI, 1e-9)
	assert.InDelta(t, 2*3600, c.LowSI, 1e-9)
	assert.InDelta(t, 2.6*3600, c.HighSI, 1e-9)
	assert.InDelta(t, 2.5*3600, c.BaseSI, 1e-9)
	assert.Equal(t, "cooker-heat of Copper kettle", l.Constants[1].Key())
	assert.InDelta(t, .986, l.Constants[0].SI, 1e-12)
	assert.Equal(t, []recipe.Pair{{One: [2]string{"yeast-rate", "distillers-yeast"}, Two: [2]string{"yeast-lag", "distillers-yeast"}, Correlation: -.87}}, l.Together)
}

// What is written reads back as what was meant.
func TestWrittenReadsBack(t *testing.T) {
	l, list := read(t, text)
	require.Empty(t, list)
	for i, s := range []string{"98.6 %, 97.1..100.1 %, from 100 %", "105 %, 101..109 %, from 100 %", "2.3 h, 2..2.6 h, from 2.5 h"} {
		l.Constants[i].Text = s
	}
	laid, list := lang.Format(diag.NewSource(FileName, []byte(Text(l))))
	require.Empty(t, list)
	again, list := read(t, string(laid))
	require.Empty(t, list)
	for i := range again.Constants {
		again.Constants[i].Text, again.Constants[i].At = l.Constants[i].Text, l.Constants[i].At
	}
	again.At = l.At
	assert.Equal(t, l, again)
}

func TestNothingOrWrong(t *testing.T) {
	l, list := read(t, "")
	assert.Nil(t, l)
	assert.Empty(t, list)

	l, list = read(t, "learned \"Lantern Hollow\" on 2026-06-30 {\n  yield-efficiency 98 %\n}\n")
	assert.Nil(t, l)
	assert.True(t, list.HasErrors())
}
