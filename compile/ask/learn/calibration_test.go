package learn

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"newmake/compile/constants"
	"newmake/compile/numbers"
	"newmake/lang/testflag"
	"newmake/lang/words"
)

// A house that costs nothing to compute, with the shapes of the real one: a ferment that
// slows, a still that is heated, a yield that the hearts show, priors as package constants
// has them. What is tried is the method: that its intervals hold as often as they say
// (Cook, Gelman and Rubin, J. Comput. Graph. Stat. 15 (2006) 675; Talts et al., arXiv 1804.06788).
func reducedConstants() []constants.Constant {
	factor := func(id string, owner constants.Owner, shape constants.Shape, sd float64) constants.Constant {
		return constants.Constant{ID: id, Words: id, Stage: numbers.Mashing, Owner: owner, Form: constants.Times,
			Prior: constants.Prior{Shape: shape, Mean: 1, SD: sd, Low: .05, High: 20}, AsWritten: 1}
	}
	lag := factor("yeast-lag", constants.House, constants.Lognormal, .4)
	lag.Form, lag.Mean, lag.SD, lag.AsWritten = constants.Value, 2.5, 1, 2.5
	reflux := factor("reflux", constants.House, constants.Normal, .05)
	reflux.Form, reflux.Mean, reflux.AsWritten, reflux.Low = constants.Value, .1, .1, -1
	vigor := factor("vigor", constants.Run, constants.Lognormal, .10)
	vigor.As = "yeast-rate"
	return []constants.Constant{
		factor("yield-efficiency", constants.House, constants.Normal, .026), factor("cooker-heat", constants.House, constants.Lognormal, .15),
		lag, factor("yeast-rate", constants.House, constants.Lognormal, .25), factor("still-heat", constants.House, constants.Lognormal, .15), reflux,
		factor("lot-starch", constants.Run, constants.Normal, .015), vigor,
	}
}

func reducedInstruments() []constants.Constant {
	return []constants.Constant{
		{ID: "hydrometer", Words: "hydrometer", Owner: constants.Instrument, Form: constants.Plus, Prior: constants.Prior{SD: .001, Low: -1, High: 1}},
		{ID: "dip", Words: "dip", Owner: constants.Instrument, Form: constants.Times, Prior: constants.Prior{Mean: 1, SD: .015, Low: .5, High: 2}, AsWritten: 1},
	}
}

var gravitiesAtH = []float64{0, 12, 24, 36, 48, 72}

func reducedReadings() []Reading {
	var out []Reading
	for _, h := range gravitiesAtH {
		out = append(out, Reading{Words: fmt.Sprintf("gravity at %g h", h), SD: .0006, Instrument: "hydrometer"})
	}
	for _, words := range []string{"minutes to 190 F", "minutes of the run"} {
		out = append(out, Reading{Words: words, SD: 2.5})
	}
	return append(out,
		Reading{Words: "hearts", SD: .8, Instrument: "dip", Outcome: true}, Reading{Words: "strength", SD: .003}, Reading{Words: "spout", SD: .006},
		Reading{Words: "wash", SD: 8, Instrument: "dip"})
}

func reducedSays(of []constants.Constant, x []float64) []float64 {
	v := map[string]float64{"yield-efficiency": 1, "cooker-heat": 1, "yeast-lag": 2.5, "yeast-rate": 1, "still-heat": 1, "reflux": .1, "lot-starch": 1, "vigor": 1}
	for i, c := range of {
		v[c.ID] = x[i]
	}
	sugar := v["yield-efficiency"] * v["lot-starch"]
	rate := v["yeast-rate"] * v["vigor"]
	done := func(h float64) float64 { return 1 - math.Exp(-rate*max(h-v["yeast-lag"], 0)/18) }
	var out []float64
	for _, h := range gravitiesAtH {
		out = append(out, 1+.066*sugar*(1-1.02*done(h)))
	}
	alcohol := sugar * done(91)
	return append(out, 80/v["cooker-heat"], 330/v["still-heat"], 170*alcohol*(1-.2*v["reflux"]), .70+.12*v["reflux"], .60+.3*v["reflux"], 1440)
}

// trial is one invented house with its runs.
type trial struct {
	house []float64
	off   []float64
	runs  []Run
}

func newTrial(r *rand.Rand, n int) trial {
	t := trial{}
	of := reducedConstants()
	for _, c := range of {
		if c.Owner == constants.House {
			t.house = append(t.house, figure(c, r.NormFloat64()))
		}
	}
	instruments := reducedInstruments()
	for _, c := range instruments {
		t.off = append(t.off, figure(c, r.NormFloat64()))
	}
	for i := range n {
		x := append([]float64{}, t.house...)
		for _, c := range of[len(t.house):] {
			x = append(x, figure(c, r.NormFloat64()))
		}
		run := Run{Number: fmt.Sprint(i + 1), Readings: reducedReadings(), Reduced: &Reduced{Of: of, Says: reducedSays}}
		for k, v := range reducedSays(of, x) {
			switch rd := &run.Readings[k]; rd.Instrument {
			case "hydrometer":
				v += t.off[0]
				rd.Said = v + rd.SD*r.NormFloat64()
			case "dip":
				v *= t.off[1]
				rd.Said = v + rd.SD*r.NormFloat64()
			default:
				rd.Said = v + rd.SD*r.NormFloat64()
			}
		}
		t.runs = append(t.runs, run)
	}
	return t
}

// held counts how often intervals hold what they should.
type held struct {
	name      string
	n, in50   int
	in90      int
	sum, sum2 float64 // of the standardized errors
}

func (h *held) add(z float64) {
	h.n++
	h.sum, h.sum2 = h.sum+z, h.sum2+z*z
	if math.Abs(z) < .6744898 {
		h.in50++
	}
	if math.Abs(z) < constants.NineInTen {
		h.in90++
	}
}

// within reports whether a count is one that chance gives: between the limits that are passed by
// one in a thousand on either side.
func within(k, n int, p float64) bool {
	b := distuv.Binomial{N: float64(n), P: p}
	return b.CDF(float64(k)) > .001 && 1-b.CDF(float64(k-1)) > .001
}

// calibrated is what a number of houses showed.
type calibrated struct {
	runs, houses       int
	constants          []held
	next               held
	gross, drifts      int // houses with false alarms
	put, found, others int // gross errors put in and found, and others said beside them
	failed             int
	shares             []float64 // of each house: the part of its intervals of 90 % that held
}

func calibrate(t *testing.T, houses, n int) calibrated {
	c := calibrated{runs: n, houses: houses, next: held{name: "a run foretold by the others"}}
	r := rand.New(rand.NewPCG(200, uint64(n)))
	for range houses {
		tr := newTrial(r, n)
		l, err := From(tr.runs, reducedInstruments(), Options{})
		require.NoError(t, err)
		if !l.Converged {
			c.failed++
			continue
		}
		truth := append(append([]float64{}, tr.house...), tr.off...)
		for i, f := range l.Found {
			if len(c.constants) <= i {
				c.constants = append(c.constants, held{name: f.ID})
			}
			c.constants[i].add(f.off(truth[i]))
		}
		if n > 1 {
			last := l.Predicted[len(l.Predicted)-1]
			for _, o := range last.Outcomes {
				c.next.add(distuv.UnitNormal.Quantile(o.t().CDF(tr.runs[last.Run].Readings[o.Reading].Said)))
			}
		}
		if len(l.Gross) > 0 {
			c.gross++
		}
		if len(l.Drifts) > 0 {
			c.drifts++
		}
		// The same runs with a slip of the pen: ten standard deviations.
		run, reading := r.IntN(n), r.IntN(len(tr.runs[0].Readings))
		rd := &tr.runs[run].Readings[reading]
		rd.Said += 10 * rd.SD
		if n > 1 {
			l, err = From(tr.runs, reducedInstruments(), Options{})
			require.NoError(t, err)
			c.put++
			for _, g := range l.Gross {
				if g.Run == run && g.Reading == reading {
					c.found++
				} else {
					c.others++
				}
			}
		}
	}
	return c
}

// The intervals hold as often as they say, at few runs and many: a small trial, of a fixed seed.
func TestCalibration(t *testing.T) {
	for _, n := range []int{1, 3} {
		c := calibrate(t, 60, n)
		assert.Zero(t, c.failed)
		for _, h := range append(c.constants, c.next) {
			if h.n == 0 {
				continue
			}
			assert.True(t, within(h.in50, h.n, .5), "%d runs, %s: %d of %d within 50 %%", n, h.name, h.in50, h.n)
			assert.True(t, within(h.in90, h.n, .9), "%d runs, %s: %d of %d within 90 %%", n, h.name, h.in90, h.n)
		}
		assert.True(t, c.gross == 0 || within(c.gross, c.houses, falseAlarm), "%d of %d with a false alarm", c.gross, c.houses)
	}
}

const page = "../../CALIBRATION.md"

// TestCalibrationPage writes the page with -update; it takes a while, and is else left
// alone.
func TestCalibrationPage(t *testing.T) {
	if !testflag.Update() {
		_, err := os.Stat(page)
		require.NoError(t, err, "go test ./compile/ask/learn -update writes it")
		return
	}
	var b strings.Builder
	b.WriteString("# How far what is learned can be relied on\n\n" +
		"Made by `go test ./compile/ask/learn -update`. Houses are invented with constants drawn from\n" +
		"what is known of houses before their runs, runs are drawn with what scatters from run to run\n" +
		"and with errors of reading, and the constants are learned from them. An interval that is said\n" +
		"to hold 9 times in 10 should hold the true constant in 90 of 100 houses.\n\n" +
		"The model is a reduced one, of eight constants and twelve readings a run: what is tried is the\n" +
		"method. A sample through the full model stands at the end. Intervals are those of the profile of\n" +
		"the likelihood; an error is counted in standard deviations of the side on which it lies.\n")
	for _, n := range []int{1, 3, 10} {
		c := calibrate(t, 200, n)
		fmt.Fprintf(&b, "\n## %s, %d houses\n\n", words.Count(n, "run"), c.houses)
		heldTable(&b, append(c.constants, c.next))
		limits(&b, c.houses)
		fmt.Fprintf(&b, "\nHouses where a gross error was said and there was none: %d of %d; a drift: %d of %d. Claimed: at\nmost 1 in 20 of either. Searches that did not end: %d.\n", c.gross, c.houses, c.drifts, c.houses, c.failed)
		if c.put > 0 {
			fmt.Fprintf(&b, "A slip of ten standard deviations was put into one reading of each house: found in %d of %d,\nand %d other readings were said beside them.\n", c.found, c.put, c.others)
		}
	}
	b.WriteString("\n## The full model\n\nRuns of the invented house's recipe are written down as people would, with errors of reading\n" +
		"as the records take them where nothing is said of an instrument, with errors of the clock and no\n" +
		"slip of the pen, and learned from by the full model. Who reads worse than that has more alarms.\n" +
		"The search can end in a kink of the model: then it says that it has not ended, and its house is\n" +
		"not counted in the table, but among the alarms.\n")
	const houses = 60
	var shares []float64 // of each house: how many of its intervals held
	alarms, tried := 0, 0
	for _, runs := range []int{1, 3} {
		full, readings, gross := calibrateWritten(t, houses, runs)
		fmt.Fprintf(&b, "\n%s, %d houses:\n\n", words.Count(runs, "run"), houses)
		heldTable(&b, full.constants)
		limits(&b, houses)
		shares = append(shares, full.shares...)
		alarms, tried = alarms+full.gross, tried+houses
		fmt.Fprintf(&b, "\nReadings called gross errors: %d of %d, in %d of %d houses; a drift in %d. Claimed: at most 1 house\n"+
			"in 20 of either, which is %s by this. Searches that did not end, and say so: %d.\n", gross, readings, full.gross, houses, full.drifts, asClaimed(full.gross, houses), full.failed)
	}
	mean, sd := stat.MeanStdDev(shares, nil)
	off := math.Abs(mean-.9) / (sd / math.Sqrt(float64(len(shares))))
	b.WriteString("\n## What that comes to\n\n")
	fmt.Fprintf(&b, "By the full model, intervals of 90 %% held in %.1f %% of all cases. Those of one house go together, so\n"+
		"houses are counted: the mean of %d of them has a standard error of %.1f %%, and 90 %% lies %.1f standard\nerrors away. ",
		100*mean, len(shares), 100*sd/math.Sqrt(float64(len(shares))), off)
	if off > 1.96 {
		b.WriteString("That is more than chance gives 19 times in 20: an interval that is said to hold 9\ntimes in 10 holds somewhat less often. Read it as the first of these two figures.\n")
	} else {
		b.WriteString("That is within what chance gives 19 times in 20.\n")
	}
	alarm := distuv.Binomial{N: float64(tried), P: falseAlarm}
	low, high := chance(alarm)
	fmt.Fprintf(&b, "False alarms of gross errors came in %d of %d houses. 1 in 20 is claimed, %.0f of %d; chance gives %d\nto %d of them 19 times in 20.\n",
		alarms, tried, falseAlarm*float64(tried), tried, low, high)
	require.NoError(t, os.WriteFile(page, []byte(b.String()), 0o644))
}

// asClaimed says if so many false alarms are no more than chance gives where 1 in 20 is claimed.
func asClaimed(alarms, houses int) string {
	if (distuv.Binomial{N: float64(houses), P: falseAlarm}).Survival(float64(alarms-1)) < .05 {
		return "NOT so"
	}
	return "so"
}

// chance is between which counts, both possible, a binomial lies 19 times in 20.
func chance(b distuv.Binomial) (low, high int) {
	for b.CDF(float64(low)) <= .025 {
		low++
	}
	for high = low; b.CDF(float64(high)) < .975; {
		high++
	}
	return low, high
}

// limits says what chance gives of a row of the table.
func limits(b *strings.Builder, houses int) {
	share := func(p float64) (low, high float64) {
		l, h := chance(distuv.Binomial{N: float64(houses), P: p})
		return 100 * float64(l) / float64(houses), 100 * float64(h) / float64(houses)
	}
	low5, high5 := share(.5)
	low9, high9 := share(.9)
	fmt.Fprintf(b, "\nChance gives a row %.1f to %.1f %% and %.1f to %.1f %%, 19 times in 20. \"As said\" is a row that chance\ngives in 998 of 1000: among so many rows one in twenty would be nothing to speak of.\n", low5, high5, low9, high9)
}

// The limits of chance, by the table of the binomial: of 20 at 0.5, 6 to 14 (P of at most 5 is
// 0.0207, of at most 6 is 0.0577; computed from the sum of the terms).
func TestChance(t *testing.T) {
	low, high := chance(distuv.Binomial{N: 20, P: .5})
	assert.Equal(t, [2]int{6, 14}, [2]int{low, high})
	low, high = chance(distuv.Binomial{N: 120, P: .05})
	assert.Equal(t, [2]int{2, 11}, [2]int{low, high})
}

// heldTable says of each interval how often it holds.
func heldTable(b *strings.Builder, all []held) {
	b.WriteString("| interval of | 50 % holds | 90 % holds | mean error, sd | spread, sd | as said |\n|---|---|---|---|---|---|\n")
	for _, h := range all {
		if h.n == 0 {
			continue
		}
		ok := "yes"
		if !within(h.in50, h.n, .5) || !within(h.in90, h.n, .9) {
			ok = "NO"
		}
		mean := h.sum / float64(h.n)
		fmt.Fprintf(b, "| %s | %.1f %% | %.1f %% | %+.2f | %.2f | %s |\n", h.name, 100*float64(h.in50)/float64(h.n), 100*float64(h.in90)/float64(h.n), mean, math.Sqrt(h.sum2/float64(h.n)-mean*mean), ok)
	}
}

// off is how far a figure lies from what was found, in standard deviations of the side on which
// it lies.
func (f Found) off(x float64) float64 {
	z := f.Prior.Z(x)
	side := f.ends[0]
	if z > f.Z {
		side = f.ends[1]
	}
	return (z - f.Z) / math.Max(math.Abs(side-f.Z)/constants.NineInTen, 1e-9)
}
