package stock

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestContainerOf(t *testing.T) {
	const gallon, mL = 0.003785411784, 1e-6
	for _, name := range []string{"bottle corks", "new bottle", "30 lb cask", "x gal cask", "30 gal", "cask staves", ""} {
		_, ok := ContainerOf(name)
		assert.False(t, ok, name)
	}
	for name, want := range map[string]Container{"Cask": {}, "new-casks": {}, "used cask": {Used: true}, "30 gal used cask": {Used: true, SizeM3: 30 * gallon}, "750 mL bottle": {Bottle: true, SizeM3: 750 * mL}} {
		c, ok := ContainerOf(name)
		assert.True(t, ok, name)
		assert.InDelta(t, want.SizeM3, c.SizeM3, 1e-9)
		c.SizeM3 = want.SizeM3
		assert.Equal(t, want, c, name)
	}
	// A size that is a hundredth off is the same; one that is more, another.
	assert.True(t, Container{SizeM3: 1}.holds(Container{SizeM3: 1.0099}))
	assert.False(t, Container{SizeM3: 1}.holds(Container{SizeM3: 1.0101}))
}
