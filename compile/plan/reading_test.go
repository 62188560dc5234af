package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLopsided(t *testing.T) {
	of := func(low, high float64) Reading {
		a, b := Of(low, SG), Of(high, SG)
		return Reading{Should: Of(10, SG), Low: &a, High: &b}
	}
	assert.False(t, Reading{}.Lopsided(), "no band")
	assert.False(t, of(8, 12).Lopsided())
	assert.False(t, of(8, 12.99).Lopsided())
	assert.True(t, of(8, 13).Lopsided())
	assert.True(t, of(7, 12).Lopsided())
	assert.False(t, of(7.01, 12).Lopsided())

	litres := func(low, high float64) Reading {
		a, b := Of(low, Litre), Of(high, Litre)
		return Reading{Should: Of(10, Litre), Low: &a, High: &b}
	}
	assert.True(t, litres(0, 21).Lopsided(), "less than nothing is in no receiver")
	assert.False(t, litres(0.1, 20).Lopsided())
	assert.True(t, litres(0.1, 20.01).Lopsided(), "+/- 10.01 L of 10 L goes below nothing")
}
