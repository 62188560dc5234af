package mash

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"newmake/compile/matter/starch"
	"newmake/lang/recipe"
)

// A cooker's metal takes up 480 J/(kg K), between copper and stainless steel, and
// one that states none has 350 kg of it for a cubic metre: common practice.
func TestTheMetalTakesUpHeat(t *testing.T) {
	stated := newCooker(Input{PressurePa: 101325, Cooker: recipe.Vessel{HoldsM3: 2, MetalKg: 100}}, constants{}, starch.Constants{}, 1e-6)
	assert.InDelta(t, 48e3, stated.metalJK, 1e-6)
	assert.InDelta(t, 700, MetalKg(recipe.Vessel{HoldsM3: 2}), 1e-9)
}
