package fluid

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// OIML R 22 (1975), Table I, printed cells over the whole grid of strength
// and temperature. Tolerance: half a unit of the last printed digit.
func TestDensityOIMLTableI(t *testing.T) {
	var d deviations
	for _, row := range table(t, "oiml_r22_table1_cells.csv") {
		w, tempC := number(t, row, "mass_pct")/100, number(t, row, "temp_C")
		want := number(t, row, "density_kg_m3_printed")
		got, err := DensityOIML(w, tempC)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 0.00501, "w %g at %g C", w, tempC)
		d.add(got, want)
	}
	d.report(t, "OIML R 22 Table I, kg/m3")
}

// The coefficients in code are the published file's, all 54, in its order.
func TestOIMLCoefficients(t *testing.T) {
	rows := table(t, "oiml_r22_coefficients.csv")
	require.Len(t, rows, 54)
	for _, row := range rows {
		i, err := strconv.Atoi(row["i_T_power"])
		require.NoError(t, err)
		k, err := strconv.Atoi(row["k"])
		require.NoError(t, err)
		var got float64
		switch row["group"] {
		case "A":
			got = oimlA[k-1]
		case "B":
			got = oimlB[k-1]
		case "C":
			require.LessOrEqual(t, k, oimlM[i-1])
			got = oimlC[i-1][k-1]
		}
		assert.Equal(t, number(t, row, "value"), got, "%s %d,%d", row["group"], i, k)
	}
}

// Perry's Chemical Engineers' Handbook, 7th ed., density at 20 C by tenths of
// a percent by mass: a second source. Its g/mL are of the litre of 1901, 1.000028
// dm3 (its water is 0.99823, OIML's 0.998201 g/cm3). Tolerance 0.045 kg/m3: print
// rounding of 0.005 and an older set of measurements. Without the litre the
// largest difference is 0.057 kg/m3.
func TestDensityPerry20C(t *testing.T) {
	var d deviations
	for _, row := range table(t, "perry7_density_20C_0to12.9wt.csv") {
		w := number(t, row, "wt_pct") / 100
		want := 1000 * number(t, row, "density_g_mL") / 1.000028
		got := Density(w, 20)
		assert.InDelta(t, want, got, 0.045, "w %g", w)
		d.add(got, want)
	}
	d.report(t, "Perry 7th density at 20 C, kg/m3")
}

// The formula summed as it is printed, term by term, against Horner's rule in
// the code, and its slope against a difference. Tolerance 1e-9 kg/m3: terms
// reach 1e6 and cancel.
func TestOIMLEvaluation(t *testing.T) {
	r := fixedSeed()
	for range 2000 {
		p, tempC := r.Float64(), -20+60*r.Float64()
		want := 0.0
		for k, a := range oimlA {
			want += a * math.Pow(p, float64(k))
		}
		for k, b := range oimlB {
			want += b * math.Pow(tempC-20, float64(k+1))
		}
		for i, row := range oimlC {
			for k, c := range row {
				want += c * math.Pow(p, float64(k+1)) * math.Pow(tempC-20, float64(i+1))
			}
		}
		got, slope := oiml(p, tempC)
		require.InDelta(t, want, got, 1e-8, "p %g at %g C", p, tempC)
		const h = 1e-5
		hi, _ := oiml(p+h, tempC)
		lo, _ := oiml(p-h, tempC)
		require.InDelta(t, (hi-lo)/(2*h), slope, 1e-3, "slope at p %g, %g C", p, tempC)
	}
}

func TestDensityOIMLRange(t *testing.T) {
	for _, c := range []struct{ w, tempC float64 }{
		{-1e-9, 20}, {1 + 1e-9, 20}, {0.5, -20.001}, {0.5, 40.001},
		{math.NaN(), 20}, {0.5, math.NaN()}, {math.Inf(1), 20}, {0.5, math.Inf(-1)},
	} {
		_, err := DensityOIML(c.w, c.tempC)
		assert.Error(t, err, "w %g at %g C", c.w, c.tempC)
	}
	for _, c := range []struct{ w, tempC float64 }{{0, -20}, {0, 40}, {1, -20}, {1, 40}} {
		rho, err := DensityOIML(c.w, c.tempC)
		assert.NoError(t, err)
		assert.Greater(t, rho, 700.0)
	}
}

// At 60 F the formula is a polynomial of its own: the general one just beside it
// gives the same, to the rounding of terms a thousand times as large as their sum.
func TestOIMLAt60F(t *testing.T) {
	for p := 0.0; p <= 1; p += 0.01 {
		rho, slope := oiml(p, SixtyF)
		beside, slopeBeside := oiml(p, math.Nextafter(SixtyF, 0))
		assert.InEpsilon(t, beside, rho, 1e-12)
		assert.InDelta(t, slopeBeside, slope, 1e-8)
	}
}
