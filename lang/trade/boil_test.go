package trade

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestBoil holds the short form against the table of the references: pressure by
// the US Standard Atmosphere 1976 and the boiling point of water by IAPWS.
func TestBoil(t *testing.T) {
	data, err := os.ReadFile("../../testdata/fluid/altitude_boiling.csv")
	require.NoError(t, err)
	r := csv.NewReader(strings.NewReader(string(data)))
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 8)
	for _, row := range rows[1:] {
		elevation, _ := strconv.ParseFloat(row[0], 64)
		want, _ := strconv.ParseFloat(row[2], 64)
		assert.InDelta(t, want, boilC(elevation), 0.1, "at %s m", row[0])
	}
}
