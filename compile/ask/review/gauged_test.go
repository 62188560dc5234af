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
	hearts := func(gauged []gauged, receiver gauged) gauged {
		w := &lots{of: stills{lots: map[string]*several{"hearts": {}}, receivers: map[string]*several{"hearts": {}}, distilling: 1}}
		for _, g := range gauged {
			w.of.lots["hearts"].put(0, g)
		}
		w.of.receivers["hearts"].put(0, receiver)
		return w.came("hearts")
	}
	receiver := l(number{390, 8}, none)
	got := hearts([]gauged{a, b}, receiver)
	assert.InDelta(t, 400, got.VolumeL.Is, 1e-9)
	assert.InDelta(t, 27, got.AbvPct.Is, 1e-9)
	assert.Equal(t, l(number{390, 8}, number{71, .3}), hearts([]gauged{l(none, number{71, .3})}, receiver), "how much by the receiver, how strong by the lot")
	assert.Equal(t, receiver, hearts(nil, receiver))
}

// What was gauged charge by charge is the whole where each charge was; how much in all is not
// known where one was not.
func TestLotsOfCharges(t *testing.T) {
	g := func(litres float64) gauged { return gauged{number{litres, 1}, number{30, .3}, true} }
	for name, c := range map[string]struct {
		put     func(s *several)
		charges int
		litres  float64 // 0: not known
	}{
		"each":                       {func(s *several) { s.put(1, g(100)); s.put(2, g(90)) }, 2, 190},
		"both at the end":            {func(s *several) { s.put(2, g(190)) }, 2, 190},
		"two lines of a charge":      {func(s *several) { s.put(1, g(60)); s.put(1, g(40)); s.put(2, g(90)) }, 2, 190},
		"the second still to come":   {func(s *several) { s.put(1, g(100)) }, 2, 0},
		"the first not gauged":       {func(s *several) { s.put(1, gauged{}); s.put(2, g(90)) }, 2, 0},
		"two of three, and the last": {func(s *several) { s.put(2, g(190)); s.put(3, g(95)) }, 3, 285},
	} {
		var s several
		c.put(&s)
		all := s.all(c.charges)
		assert.InDelta(t, c.litres, all.VolumeL.Is, 1e-9, name)
		assert.Equal(t, c.litres > 0, all.VolumeL.Read(), name)
		assert.InDelta(t, 30, all.AbvPct.Is, 1e-9, name)
	}
}
