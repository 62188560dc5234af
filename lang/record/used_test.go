package record

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBought(t *testing.T) {
	for what, bought := range map[string]bool{"corn": true, "water-yeast": true, "water": false, "backset": false, "hot water to soak casks": false} {
		assert.Equal(t, bought, (&Used{What: what}).Bought(), what)
	}
}
