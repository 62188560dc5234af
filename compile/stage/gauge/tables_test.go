package gauge

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/accuracy/published"
	"newmake/compile/matter/fluid"
)

// The rows that 27 CFR part 30 prints, to the last place of the print, and how
// many of that place the model is off: true proof, parts and volume factors by
// one at most, the columns by weight by two (see package fluid).
func TestTablesAsPrinted(t *testing.T) {
	rows, err := published.Read("fluid/us_gauging_published_rows.csv")
	require.NoError(t, err)
	n := 0
	for _, r := range rows {
		num := func(column string) float64 {
			v, err := r.Num(column)
			require.NoError(t, err)
			return v
		}
		proof, want := num("proof_or_reading"), num("published")
		var got, place, off float64
		switch r["quantity"] {
		case "true proof":
			got, err = tableProof(proof, num("temp_F"))
			place, off = 0.1, 1
		case "volume factor":
			got, err = TableVolumeFactor(proof, num("temp_F"))
			place, off = 0.001, 0
		case "water parts/100":
			var row Row
			row, err = TableRow(proof)
			got, place, off = row.WaterParts, 0.01, 1
		case "proof gal/lb":
			var row Row
			row, err = TableRow(proof)
			got, place, off = row.ProofGallonsPerPound, 0.00001, 4
			if proof < 195 {
				off = 2
			}
		default:
			continue // not a column of Row
		}
		require.NoError(t, err)
		assert.LessOrEqual(t, math.Abs(got-want), off*place+place/1000, "%v: %v", r, got)
		n++
	}
	assert.Equal(t, 11, n)
}

func TestTableLimits(t *testing.T) {
	for _, tempF := range []float64{17.9, 100.1, math.NaN()} {
		_, err := TableVolumeFactor(100, tempF)
		assert.Error(t, err)
	}
	_, err := TableRow(201)
	assert.Error(t, err)
	_, err = TrueABV(0.6, 41)
	assert.Error(t, err)
	_, err = TrueABV(1.2, 20)
	assert.Error(t, err)
	_, err = TrueABV(0, 40)
	assert.Error(t, err, "warm water reads below 0")
}

// An alcoholometer tells the truth at 20 C; ReadingABV undoes TrueABV; it reads
// as a proof hydrometer would, but for the 20 C at which it is marked.
func TestAlcoholometer(t *testing.T) {
	for abv := 0.05; abv < 0.95; abv += 0.05 {
		at20, err := TrueABV(abv, 20)
		require.NoError(t, err)
		assert.InDelta(t, abv, at20, 1e-12)
		for tempC := 0.0; tempC <= 35; tempC += 5 {
			reading, err := ReadingABV(abv, tempC)
			if err != nil {
				continue // cold weak spirit sinks below the scale
			}
			back, err := TrueABV(reading, tempC)
			require.NoError(t, err)
			assert.InDelta(t, abv, back, 1e-9, "%.2f at %g C", abv, tempC)
		}
	}
}

func TestPlaces(t *testing.T) {
	assert.Equal(t, 11921.6, Places(11921.58, 1))
	assert.Equal(t, 0.3, Places(0.25, 1), "27 CFR 30.64: 0.05 or more is added as 0.1")
	assert.Equal(t, 1.0, Places(0.95, 1))
}

// tableProof is Table 1: the true proof of spirit that reads indication at tempF,
// to the tenth to which proof is recorded (27 CFR 30.23).
func tableProof(indication, tempF float64) (float64, error) {
	p, err := fluid.TrueProof(indication, tempF)
	return fluid.RoundProof(p), err
}

// A row has the places of the printed tables, no more and no fewer.
func TestTableRowHasThePrintedPlaces(t *testing.T) {
	places := [5]int{}
	for tenths := 11; tenths <= 2000; tenths += 9 {
		row, err := TableRow(float64(tenths) / 10)
		require.NoError(t, err)
		for i, x := range []float64{row.GallonsPerPound, row.ProofGallonsPerPound, row.PoundsPerGallon, row.AlcoholParts, row.WaterParts} {
			for p := places[i]; p < 9 && Places(x, p) != x; p++ {
				places[i] = p + 1
			}
		}
	}
	assert.Equal(t, [5]int{5, 5, 5, 2, 2}, places)
	f, err := TableVolumeFactor(123.4, 71)
	require.NoError(t, err)
	assert.Equal(t, Places(f, 3), f)
}
