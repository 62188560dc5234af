package ledger

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestLostOrFound(t *testing.T) {
	require.Equal(t, "4.1 % of it was lost", lostOrFound(.041))
	require.Equal(t, "4.1 % more was found", lostOrFound(-.041))
}
