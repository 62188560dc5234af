package review

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Lots that were gauged apart are one: their volumes together, at the strength of the blend. How
// much on one line and how strong on another are one lot.
func TestLotsTogether(t *testing.T) {
	none := number{}
	l := func(volume, abv number) gauged { return gauged{volume, abv, true} }
	a, b := l(number{100, 3}, number{30, .3}), l(number{300, 4}, number{26, .4})
	for name, c := range map[string]struct{ a, b, both gauged }{
		"two lots":               {a, b, l(number{400, 5}, number{27, 0.3092329219213245})},
		"nothing and a lot":      {gauged{}, a, a},
		"a lot and nothing":      {a, gauged{}, a},
		"one strength for both":  {a, l(number{300, 4}, none), l(number{400, 5}, a.AbvPct)},
		"how much, how strong":   {l(a.VolumeL, none), l(none, a.AbvPct), a},
		"how strong, how much":   {l(none, a.AbvPct), l(a.VolumeL, none), a},
		"how much of one only":   {a, l(none, number{26, .4}), l(none, a.AbvPct)},
		"how much of the second": {l(none, number{26, .4}), a, l(none, number{26, .4})},
	} {
		got := c.a.And(c.b)
		assert.InDelta(t, c.both.VolumeL.Is, got.VolumeL.Is, 1e-9, name)
		assert.InDelta(t, c.both.VolumeL.SD, got.VolumeL.SD, 1e-9, name)
		assert.InDelta(t, c.both.AbvPct.Is, got.AbvPct.Is, 1e-9, name)
		assert.InDelta(t, c.both.AbvPct.SD, got.AbvPct.SD, 1e-9, name)
	}

	// Of the spirit run too: two lots of feints are the feints; what the receiver said is not
	// counted beside a lot, before it or after.
	for _, receiverLast := range []bool{false, true} {
		w := &lots{}
		receiver := gauged{VolumeL: number{390, 8}, Given: true}
		if !receiverLast {
			w.fraction("hearts", receiver, false)
		}
		w.fraction("hearts", a, true)
		w.fraction("hearts", b, true)
		if receiverLast {
			w.fraction("hearts", receiver, false)
		}
		assert.Len(t, w.fractions, 1)
		assert.InDelta(t, 400, w.fractions[0].VolumeL.Is, 1e-9)
		assert.InDelta(t, 27, w.fractions[0].AbvPct.Is, 1e-9)
	}
	w := &lots{}
	w.fraction("hearts", gauged{VolumeL: number{390, 8}, Given: true}, false)
	w.fraction("hearts", l(none, number{71, .3}), true)
	assert.Equal(t, l(number{390, 8}, number{71, .3}), w.fractions[0].gauged, "how much by the receiver, how strong by the lot")
}
