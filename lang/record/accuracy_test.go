package record

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/lang/quantity"
)

func value(num string, number float64, unit string, k quantity.Kind) Value {
	si, err := quantity.ToSI(number, unit, k)
	if err != nil {
		panic(err)
	}
	return Value{Num: num, Number: number, Unit: unit, Kind: k, SI: si}
}

// JCGM 100:2008, 4.3.7: a value that lies within half a width a, as likely here as
// there, has a standard uncertainty of a/sqrt 3. F.2.2.1 gives it for a division: of
// 1 unit it is 0.29.
func TestReadingOfADivision(t *testing.T) {
	assert.InDelta(t, 0.29, ReadingSI(1), 0.005)
	assert.InDelta(t, 0.5/math.Sqrt(3), ReadingSI(1), 1e-12)
}

func TestAccuracyOf(t *testing.T) {
	h3 := &Instrument{Name: "H3", Scale: Scale{Low: 1, High: 1.07, Division: 0.001, Unit: "SG", Kind: quantity.Gravity}}
	r := &Reading{What: Gravity, Value: value("1.034", 1.034, "SG", quantity.Gravity)}
	a := AccuracyOf(r, h3)
	assert.InDelta(t, ReadingSI(0.001), a.SI, 1e-12)
	assert.False(t, a.Assumed)
	assert.Contains(t, a.Said, "H3")

	// Nothing is said of the instrument: common practice, and that is said.
	a = AccuracyOf(r, nil)
	assert.InDelta(t, math.Hypot(ReadingSI(0.001), 0.0005), a.SI, 1e-12)
	assert.True(t, a.Assumed)
	assert.Contains(t, a.Said, "common practice")

	// What is written to the hundredth is no surer than that.
	coarse := &Reading{What: Gravity, Value: value("1.03", 1.03, "SG", quantity.Gravity)}
	assert.InDelta(t, ReadingSI(0.01), AccuracyOf(coarse, h3).SI, 1e-12)

	// A thermometer in F: a degree of it is 5/9 of a kelvin.
	warm := &Reading{What: Temperature, Value: value("158", 158, "F", quantity.Temperature)}
	assert.InDelta(t, 5.0/9, warm.PlaceSI(), 1e-9)
	assert.InDelta(t, math.Hypot(ReadingSI(5.0/9), 0.3), AccuracyOf(warm, nil).SI, 1e-9)

	// About: a third as sure, and a tenth of it at least.
	lost := &Reading{What: Volume, About: true, Value: value("3", 3, "gal", quantity.Volume)}
	assert.Greater(t, AccuracyOf(lost, nil).Of(lost.SI), 0.1*lost.SI)

	// A scale of another kind tells nothing of the reading.
	assert.True(t, AccuracyOf(warm, h3).Assumed)
}

func TestWhatHolds(t *testing.T) {
	was, is := value("119", 119, "F", quantity.Temperature), value("191", 191, "F", quantity.Temperature)
	r := &Reading{What: Temperature, Value: was}
	v, ok := r.Holds()
	assert.True(t, ok)
	assert.Equal(t, was, v)
	r.Corrected = &Correction{Old: was, New: is}
	v, ok = r.Holds()
	assert.True(t, ok)
	assert.Equal(t, is, v)
	assert.Equal(t, was, r.Value, "what was read stays")
	r.Corrected = &Correction{Old: was, Withdrawn: true}
	_, ok = r.Holds()
	assert.False(t, ok)
	_, ok = (&Reading{State: None}).Holds()
	assert.False(t, ok)
}

func TestDate(t *testing.T) {
	d := Date{2028, 2, 28}
	assert.Equal(t, "2028-02-28", d.String())
	assert.Equal(t, "2028-02-29", d.After(1).String())
	assert.Equal(t, 2, d.DaysTo(Date{2028, 3, 1}))
	assert.Equal(t, -1, d.DaysTo(Date{2028, 2, 27}))
	assert.True(t, Date{}.IsZero())
}
