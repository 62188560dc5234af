package glance

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is done on a day, in the room that it has.
func TestListed(t *testing.T) {
	for want, all := range map[string][]string{
		"read ferment":    {"read ferment"},
		"read, strip":     {"read ferment", "strip"},
		"spirit, reduce+": {"spirit", "reduce", "fill"},
		"mash, pitch":     {"mash", "pitch"},
	} {
		assert.Equal(t, want, listed(all))
	}
}
