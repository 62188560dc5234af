package reconcile

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A heat exchanger with a bypass: Narasimhan and Jordache, Data Reconciliation and
// Gross Error Detection (Gulf, 2000), chapters 1 and 7, data from memory; what the
// tests expect was worked out by hand from them as well. Six flows, true values
// 100 64 36 64 36 100, each read with a standard deviation of 1.
func exchanger(reads ...float64) ([]Flow, []Node) {
	flows := make([]Flow, len(reads))
	for i, v := range reads {
		flows[i] = Flow{Read: v, SD: 1}
	}
	return flows, []Node{
		counting("splitter", 1, -1, -1, 0, 0, 0), counting("exchanger", 0, 1, 0, -1, 0, 0),
		counting("bypass valve", 0, 0, 1, 0, -1, 0), counting("mixer", 0, 0, 0, 1, 1, -1),
	}
}

func near(t *testing.T, want, got []float64, within float64) {
	t.Helper()
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, want[i], got[i], within, "%d", i+1)
	}
}

func TestNoGrossError(t *testing.T) {
	flows, nodes := exchanger(101.91, 64.45, 34.65, 64.20, 36.44, 98.88)
	r, err := Solve(flows, nodes)
	require.NoError(t, err)
	near(t, []float64{100.22, 64.50, 35.72, 64.50, 35.72, 100.22}, r.Flows, .005)
	near(t, []float64{2.81, .25, -1.79, 1.76}, r.system.r.RawVector().Data, 1e-9)
	assert.InDelta(t, 6.4075, r.Global, 5e-5)
	assert.Equal(t, 4, r.Rank)
	assert.InDelta(t, 9.4877, Chi2(r.Rank, .05), 5e-5)
	for _, sd := range r.SD {
		assert.InDelta(t, .57735, sd, 5e-6)
	}
	found, _, err := GrossErrors(flows, nodes, .05, nil)
	require.NoError(t, err)
	assert.Empty(t, found)
}

func TestBiasInStream2(t *testing.T) {
	flows, nodes := exchanger(101.91, 68.45, 34.65, 64.20, 36.44, 98.88)
	r, err := Solve(flows, nodes)
	require.NoError(t, err)
	near(t, []float64{-1.19, 4.25, -1.79, 1.76}, r.system.r.RawVector().Data, 1e-9)
	assert.InDelta(t, 16.674, r.Global, 5e-4)
	near(t, []float64{.687, 3.005, 1.266, 1.016}, nodal(r), 5e-4)
	assert.InDelta(t, 2.491, Critical(Sidak(.05, 4)), 5e-4)
	near(t, []float64{100.8867, 65.8333, 35.0533, 65.8333, 35.0533, 100.8867}, r.Flows, 5e-5)
	near(t, []float64{1.2533, 3.2047, .4940, 2.0004, 1.6983, 2.4577}, measurement(r), 5e-5)
	assert.InDelta(t, 2.631, Critical(Sidak(.05, 6)), 5e-4)

	causes := r.causes()
	require.Len(t, causes, 10)
	for _, c := range causes {
		if c.Flow >= 0 {
			z := measurement(r)[c.Flow]
			assert.InDelta(t, z*z, c.T, 1e-9, "of a bias the ratio test is the measurement test squared (Narasimhan and Mah 1987)")
		}
	}
	found, after, err := GrossErrors(flows, nodes, .05, isReading)
	require.NoError(t, err)
	require.Len(t, found, 1)
	require.Len(t, found[0], 1, "stream 2 alone")
	assert.Equal(t, 1, found[0][0].Flow)
	assert.InDelta(t, 10.27, found[0][0].T, .005)
	assert.InDelta(t, 4, found[0][0].By, found[0][0].SD, "the bias that was put in")
	assert.Less(t, after.Global, Chi2(after.Rank, .05))
	assert.Equal(t, 3, after.Rank)
	assert.True(t, after.Known[1])
	assert.InDelta(t, 68.45-found[0][0].By, after.Flows[1], 1e-9, "what the rest says of it")

	// A loss in the exchanger would explain it better still, by chance: both are said.
	found, _, err = GrossErrors(flows, nodes, .05, nil)
	require.NoError(t, err)
	require.NotEmpty(t, found)
	require.Len(t, found[0], 2)
	assert.Equal(t, 1, found[0][0].Node)
	assert.InDelta(t, 13.25, found[0][0].T, .005)
	assert.Equal(t, 1, found[0][1].Flow)
}

// Two flows in a row that nothing else checks: a reading too high of one, too low of
// the other, and a loss between them are all the same.
func TestCausesThatCannotBeToldApart(t *testing.T) {
	flows := []Flow{{Name: "in", Read: 106, SD: 1}, {Name: "out", Read: 100, SD: 1}}
	found, after, err := GrossErrors(flows, []Node{counting("tank", 1, -1)}, .05, nil)
	require.NoError(t, err)
	require.Len(t, found, 1)
	require.Len(t, found[0], 3)
	for _, c := range found[0] {
		assert.InDelta(t, 18, c.T, 1e-9)
	}
	assert.InDelta(t, 6, found[0][0].By, 1e-9)
	assert.InDelta(t, -6, found[0][1].By, 1e-9)
	assert.Equal(t, Cause{Flow: -1, Node: 0, By: 6, SD: math.Sqrt2, T: 18}, roundedCause(found[0][2]))
	assert.NotNil(t, after)
}

func roundedCause(c Cause) Cause {
	const p = 1e9
	c.By, c.SD, c.T = math.Round(c.By*p)/p, math.Round(c.SD*p)/p, math.Round(c.T*p)/p
	if math.Abs(c.SD-math.Sqrt2) < 1e-8 {
		c.SD = math.Sqrt2
	}
	return c
}

func TestLevelOfGrossErrors(t *testing.T) {
	z := Critical(Sidak(.05, 3))
	for off, want := range map[float64]int{.999: 0, 1.001: 1} {
		flows := []Flow{{Read: 100 + off*z*math.Sqrt2, SD: 1}, {Read: 100, SD: 1}}
		found, _, err := GrossErrors(flows, []Node{counting("tank", 1, -1)}, .05, nil)
		require.NoError(t, err)
		assert.Len(t, found, want)
	}
	reading := func(by float64) Cause { return Cause{Flow: 0, Node: -1, T: by} }
	loss := func(by float64) Cause { return Cause{Flow: -1, Node: 0, T: by} }
	assert.Len(t, about([]Cause{reading(20), reading(19.01)}, 9), 2, "about as well")
	assert.Len(t, about([]Cause{reading(20), reading(18.99)}, 9), 1)
	assert.Len(t, about([]Cause{reading(20), loss(10)}, 9), 2, "the best of each kind")
	assert.Len(t, about([]Cause{reading(20), loss(8.9)}, 9), 1, "if it shows at all")
}

// A loss at a node is found as one, where its flows are checked elsewhere.
func TestLeak(t *testing.T) {
	flows, nodes := exchanger(100, 64, 36, 58, 36, 94)
	found, after, err := GrossErrors(flows, nodes, .05, nil)
	require.NoError(t, err)
	require.Len(t, found, 1)
	assert.Equal(t, 1, found[0][0].Node, "at the exchanger")
	assert.InDelta(t, 6, found[0][0].By, 1e-9)
	near(t, []float64{100, 64, 36, 58, 36, 94, 6}, after.Flows, 1e-9)
}

// Mass and alcohol of a charge that becomes two fractions. The products balance, and
// a strength that was not read follows.
func TestProductsOfFlows(t *testing.T) {
	mass := counting("mass", 1, -1, -1, 0, 0, 0)
	alcohol := Node{"alcohol", func(x []float64) (float64, []float64) {
		return x[0]*x[3] - x[1]*x[4] - x[2]*x[5], []float64{x[3], -x[4], -x[5], x[0], -x[1], -x[2]}
	}}
	flows := []Flow{
		{Name: "charge", Read: 401, SD: 2}, {Name: "distillate", Read: 99, SD: 1}, {Name: "lees", Read: 300, SD: 2},
		{Name: "strength of the charge", Read: .25, SD: .002}, {Name: "strength of the distillate", Read: .9, Unread: true}, {Name: "strength of the lees", Read: .02, SD: .002},
	}
	r, err := Solve(flows, []Node{mass, alcohol})
	require.NoError(t, err)
	x := r.Flows
	assert.InDelta(t, 0, x[0]-x[1]-x[2], 1e-6)
	assert.InDelta(t, 0, x[0]*x[3]-x[1]*x[4]-x[2]*x[5], 1e-6)
	assert.Equal(t, 1, r.Rank, "the alcohol tells the strength that was not read, and checks nothing")
	assert.InDelta(t, .25, x[3], 1e-9)
	assert.True(t, r.Known[4])
	near(t, []float64{401 - 4.0*2/9, 99 + 2.0/9, 300 + 4.0*2/9}, x[:3], 1e-9)

	flows[4] = Flow{Name: flows[4].Name, Read: .948, SD: .002}
	r, err = Solve(flows, []Node{mass, alcohol})
	require.NoError(t, err)
	x = r.Flows
	assert.InDelta(t, 0, x[0]-x[1]-x[2], 1e-6)
	assert.InDelta(t, 0, x[0]*x[3]-x[1]*x[4]-x[2]*x[5], 1e-6)
	assert.Equal(t, 2, r.Rank)
}

func TestWhatBalancesDoNotTell(t *testing.T) {
	flows := []Flow{{Read: 100, SD: 1}, {Read: 50, Unread: true}, {Read: 50, Unread: true}, {Read: 100, SD: 1}}
	nodes := []Node{counting("split", 1, -1, -1, 0), counting("join", 0, 1, 1, -1)}
	r, err := Solve(flows, nodes)
	require.NoError(t, err)
	assert.Equal(t, []bool{true, false, false, true}, r.Known)
	assert.Equal(t, 1, r.Rank)
	assert.Nil(t, nodal(r))

	_, err = Solve(flows, nodes[:1])
	assert.ErrorIs(t, err, ErrNothingToCheck)
	_, err = Solve(nil, nil)
	assert.ErrorIs(t, err, ErrNothingToCheck)
	_, err = Solve([]Flow{{Name: "corn", Read: 1}}, nodes)
	assert.ErrorContains(t, err, "corn")
	_, err = Solve([]Flow{{Name: "corn", Read: math.NaN(), SD: 1}}, nodes)
	assert.ErrorContains(t, err, "corn")

	// The same balance twice is one.
	flows, nodes = exchanger(101.91, 64.45, 34.65, 64.20, 36.44, 98.88)
	twice, err := Solve(flows, append(nodes, nodes[0]))
	require.NoError(t, err)
	assert.Equal(t, 4, twice.Rank)
	assert.InDelta(t, 6.4075, twice.Global, 5e-5)
}

// counting is a node that counts each flow by a factor: 1 for one that goes in, -1 for one
// that comes out.
func counting(name string, factors ...float64) Node {
	return Node{name, func(flows []float64) (float64, []float64) {
		sum := 0.0
		for i, f := range factors {
			sum += f * flows[i]
		}
		return sum, factors
	}}
}

// nodal is for each balance how far it is out, in its own standard deviations. Only
// where all flows are read.
func nodal(r *Reconciled) []float64 {
	if r.system.unread != nil {
		return nil
	}
	z := make([]float64, r.system.r.Len())
	for k := range z {
		z[k] = math.Abs(r.system.r.AtVec(k)) / math.Sqrt(r.system.w.At(k, k))
	}
	return z
}

// measurement is for each flow how much its reading had to give, in standard deviations of
// that (Mah and Tamhane, AIChE Journal 28 (1982) 828); NaN for one that was not read, or that no
// balance checks.
func measurement(r *Reconciled) []float64 {
	z := make([]float64, len(r.given))
	change := r.system.change()
	for i, f := range r.given {
		if z[i] = math.NaN(); f.Unread {
			continue
		}
		j := r.system.place[i]
		if taken := r.system.taken(j); taken > 1e-12*f.SD*f.SD {
			z[i] = math.Abs(change[j]) / math.Sqrt(taken)
		}
	}
	return z
}

// Of two readings that explain a break as well the one is taken out that would change by the
// smaller part; what cannot be is not taken out.
func TestWhatIsTakenOut(t *testing.T) {
	flows := []Flow{{Name: "a", Read: 100, SD: 1}, {Name: "b", Read: 2, SD: 1}, {Name: "c", Read: 120, SD: 1}}
	nodes := []Node{counting("tank", 1, 1, -1)}
	found, after, err := GrossErrors(flows, nodes, .05, isReading)
	require.NoError(t, err)
	require.Len(t, found, 1)
	require.Len(t, found[0], 3)
	assert.InDeltaSlice(t, []float64{100, 2, 102}, after.Flows, 1e-6, "c by 15 in 100, a by 18, b by 900")
	found, after, err = GrossErrors(flows, nodes, .05, func(c Cause) bool { return c.Flow >= 0 && flows[c.Flow].Read-c.By > 110 })
	require.NoError(t, err)
	require.Len(t, found, 1)
	assert.Equal(t, []int{0}, []int{found[0][0].Flow})
	assert.InDeltaSlice(t, []float64{118, 2, 120}, after.Flows, 1e-6)
}

// isReading reports whether a cause is a reading, where nothing was lost.
func isReading(c Cause) bool { return c.Flow >= 0 }

// Two flows of which nobody read anything, and of which their product alone is told: they stay as
// near as they can to where they were begun, and the rest is reconciled. So it is from nothing too.
func TestWhatIsLeftOpenStays(t *testing.T) {
	product := Node{Name: "alcohol", Over: func(x []float64) (float64, []float64) {
		return x[0] - x[1]*x[2], []float64{1, -x[2], -x[1], 0}
	}}
	for _, begun := range [][2]float64{{91, 70}, {160, 70}, {0, 70}} {
		flows := []Flow{{Read: 6389, SD: 10}, {Read: begun[0], Unread: true}, {Read: begun[1], Unread: true}, {Read: 6380, SD: 10}}
		r, err := Solve(flows, []Node{product, counting("twice", 1, 0, 0, -1)})
		require.NoError(t, err, "%v", begun)
		assert.InDelta(t, 6384.5, r.Flows[0], 1e-6)
		assert.InDelta(t, 6384.5, r.Flows[1]*r.Flows[2], 1e-6)
		if begun[0] == 91 {
			assert.InDelta(t, 91, r.Flows[1], 0.5)
			assert.InDelta(t, 70, r.Flows[2], 0.5)
		}
		assert.False(t, r.Known[1] || r.Known[2], "their product is all that is told")
	}
}
