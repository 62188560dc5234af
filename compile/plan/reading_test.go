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
}
