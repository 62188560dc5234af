package reviewed

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"newmake/compile/ask/review"
)

func TestFrom(t *testing.T) {
	require.Equal(t, "From here on, as no clock is written yet:", from(&review.Ahead{}))
	require.Equal(t, "From here on, after Tue 3 Mar 10:04:", from(&review.Ahead{From: time.Date(2026, 3, 3, 10, 4, 0, 0, time.UTC)}))
}
