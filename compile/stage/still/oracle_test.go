package still

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/accuracy/published"
)

// Rayleigh's integral by scipy's quadrature, with the equilibrium written out
// again there from its published constants (.ci/oracle/still.py). Tolerance 2e-6
// of the integral: six printed figures, and the relation of temperature and
// pressure solved twice.
func TestSimpleAgainstScipy(t *testing.T) {
	rows, err := published.Read("oracle/still.csv")
	require.NoError(t, err)
	num := func(r published.Row, column string) float64 {
		v, err := r.Num(column)
		require.NoError(t, err)
		return v
	}
	n := 0
	for _, r := range rows {
		var m Mixture
		switch r["case"] {
		case "nrtl":
			m = ethanolWater{num(r, "pressure_Pa")}.bubble
		case "raoult":
			m = raoult{}.bubble
		case "const":
			m = ideal{num(r, "parameter")}.bubble
		default:
			continue // measured points joined: the accuracy page's
		}
		n++
		left, over := Simple(m, num(r, "x0"), num(r, "x"))
		assert.InEpsilon(t, num(r, "integral"), -math.Log(left), 2e-6, "%v", r)
		assert.InEpsilon(t, num(r, "mean_x_distillate"), over, 2e-6, "%v", r)
	}
	assert.Equal(t, 28, n)
}
