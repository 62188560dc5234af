package published_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/accuracy/published"
)

func TestRead(t *testing.T) {
	rows, err := published.Read("fluid/vle_ethanol_water_carey_lewis_1932.csv")
	require.NoError(t, err)
	require.Len(t, rows, 15)
	x, err := rows[0].Num("x_ethanol")
	require.NoError(t, err)
	assert.Equal(t, 0.019, x)
	_, err = rows[0].Num("source")
	assert.Error(t, err)
	_, err = rows[0].Num("no such column")
	assert.Error(t, err)
	_, err = published.Read("fluid/no-such-table.csv")
	assert.Error(t, err)
}

func TestDeviations(t *testing.T) {
	var d published.Deviations
	assert.Zero(t, d.RMS())
	assert.Zero(t, d.Mean())
	d.Add(3, 0)
	d.Add(-4, 0)
	assert.Equal(t, 2, d.N)
	assert.Equal(t, 4.0, d.Max)
	assert.InDelta(t, math.Sqrt(12.5), d.RMS(), 1e-12)
	assert.InDelta(t, -0.5, d.Mean(), 1e-12)
}
