package spelling

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestRankedGivesTheNearestOnce(t *testing.T) {
	var r Ranked
	require.Empty(t, r.First(3))
	r.Add("corn", 2)
	r.Add("rye", 1)
	r.Add("corn", 0)
	r.Add("oats", 1)
	r.Add("malt", 3)
	require.Equal(t, []string{"rye", "oats", "corn"}, r.First(3), "the nearest first, of two as near the one put in first, none twice")
	require.Len(t, r.First(9), 4)
}
