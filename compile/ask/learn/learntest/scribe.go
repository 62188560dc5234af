// Package learntest invents runs of a house whose constants are known, and writes them
// down as people would: for the tests of what is learned from runs.
package learntest

import (
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"strings"
	"time"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/matter/stream"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// House is an invented house: a recipe, and the figures of what is not known of it.
type House struct {
	Recipe *recipe.Batch
	Of     []constants.Constant // of the house
	Is     []float64
	Off    map[string]float64 // what each kind of instrument is off by, by the constant's ID
	seed   uint64
	runs   int // that were made
}

// chance is a stream of its own for each thing that is drawn of a house: a constant more, or a
// line that a run has more, leaves all other draws as they were.
func (h *House) chance(of ...any) *rand.Rand {
	sum := fnv.New64a()
	fmt.Fprintln(sum, of...)
	return rand.New(rand.NewPCG(h.seed, sum.Sum64()))
}

// Invent draws a house from what is known of houses before their runs.
func Invent(b *recipe.Batch, seed uint64) *House {
	b = b.Clone()
	b.Plant.Shift = recipe.Shift{ToMinute: 24 * 60, Days: [7]bool{true, true, true, true, true, true, true}}
	h := &House{Recipe: b, Off: map[string]float64{}, seed: seed}
	for _, c := range constants.Of(b) {
		x := draw(c, h.chance(c.Key()))
		switch c.Owner {
		case constants.House:
			h.Of, h.Is = append(h.Of, c), append(h.Is, x)
		case constants.Instrument:
			h.Off[c.ID] = x
		}
	}
	return h
}

// draw draws a figure within its bounds.
func draw(c constants.Constant, r *rand.Rand) float64 {
	for {
		if x := c.Prior.At(r.NormFloat64()); c.Prior.Holds(x) {
			return x
		}
	}
}

// Run makes a run: the constants of the house, and what scatters from run to run.
func (h *House) Run() (*numbers.Batch, error) {
	n, _, _, err := h.RunOf()
	return n, err
}

// RunOf makes a run, and says of which figures of which constants it was made.
func (h *House) RunOf() (n *numbers.Batch, of []constants.Constant, x []float64, err error) {
	of, x = append(of, h.Of...), append(x, h.Is...)
	h.runs++
	for _, c := range constants.Of(h.Recipe) {
		if c.Owner == constants.Run {
			of, x = append(of, c), append(x, draw(c, h.chance(h.runs, c.Key())))
		}
	}
	n, err = compile.Numbers(constants.Set(h.Recipe, of, x), &numbers.Memo{}, compile.Calculated)
	return n, of, x, err
}

// clockMin is how well people write the clock down, as package made has it.
const clockMin = 2.5

// sure is how well people read, as the records take it where nothing is said of the instrument.
func sure(of record.What, value float64) float64 { return record.Common(of).Of(value) }

// warm is the same of a temperature, that is then written down to a whole degree F: what is lost
// by that stands in for the division of the thermometer.
var warm = math.Sqrt(math.Pow(record.Common(record.Temperature).SI, 2) - math.Pow(record.ReadingSI(0.5), 2))

// Text is a run as it is written down, in US units. Samples are read at the temperature of
// their instrument.
func (h *House) Text(number string, begun time.Time, n *numbers.Batch) string {
	return h.write(event{number: number, begun: begun}, n)
}

func (h *House) write(e event, n *numbers.Batch) string {
	w := &scribe{House: h, event: e, n: n}
	fmt.Fprintf(&w.b, "run %q of %q on %s {\n", e.number, n.Name, e.begun.Format(time.DateOnly))
	w.mash()
	pitched := w.ferment()
	stripped := w.run("strip", pitched.Add(seconds(n.Fermented.ForS)), n.Stripped.Run, n.Strip.Still)
	w.run("spirit", spiritDay(stripped), n.Distilled.Run, n.Spirit.Still)
	w.b.WriteString("}\n")
	return w.b.String()
}

// spiritDay is the morning on which the low wines of a run are charged: four days on, from
// Saturday to Wednesday.
func spiritDay(stripped time.Time) time.Time {
	return stripped.Truncate(24 * time.Hour).Add(4*24*time.Hour + 7*time.Hour + 10*time.Minute)
}

type scribe struct {
	*House
	event
	n    *numbers.Batch
	r    *rand.Rand // of the stage that is written
	b    strings.Builder
	last time.Time // that was written: nothing is written down before what was before it
}

func (w *scribe) noise(sd float64) float64 { return sd * w.r.NormFloat64() }

// stage begins a stage of the record.
func (w *scribe) stage(name, vessel string) {
	w.r = w.chance(w.runs, name)
	fmt.Fprintf(&w.b, "  %s in %q {\n", name, vessel)
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

func (w *scribe) line(format string, args ...any) { fmt.Fprintf(&w.b, "    "+format+"\n", args...) }

func (w *scribe) gallons(m3 float64) float64 {
	return m3 / fluid.USGallonM3 * w.Off["dip"] * (1 + w.noise(sure(record.Volume, 1)))
}

func (w *scribe) fahrenheit(c float64) float64 {
	return 1.8*(c+w.Off["thermometer"]+w.noise(warm)) + 32
}

// clocks writes the times of a stage: the first with its date.
type clocks struct {
	*scribe
	dated bool
}

func (w *scribe) clocks() *clocks { return &clocks{scribe: w} }

func (c *clocks) at(t time.Time) string {
	t = t.Add(seconds(c.noise(60 * clockMin))).Round(time.Minute)
	if t.Before(c.last) {
		t = c.last
	}
	day := ""
	if !c.dated || t.Format(time.DateOnly) != c.last.Format(time.DateOnly) {
		day = t.Format(time.DateOnly) + " "
	}
	c.dated, c.last = true, t
	return day + t.Format("15:04")
}

func (w *scribe) mash() {
	w.stage("mash", w.n.Mash.Cooker.Name)
	c := w.clocks()
	rests := 0
	steps := w.n.Mash.Steps
	for i, s := range w.n.Mashed.Steps {
		at := c.at(w.begun.Add(seconds(s.EndS)))
		switch v := steps[i]; v.Verb {
		case recipe.MashWater:
			w.line("%s water", at)
		case recipe.MashBackset:
			w.line("%s backset", at)
		case recipe.MashAdd:
			var names []string
			for _, g := range v.Grains {
				names = append(names, w.n.Bill.Lines[g].Grain.Name)
			}
			w.line("%s add %s", at, strings.Join(names, ", "))
		case recipe.MashDose:
			w.line("%s dose %s", at, v.Enzyme.Name)
		case recipe.MashHeat:
			w.line("%s heat", at)
		case recipe.MashRest:
			rests++
			w.rest(at, rests, fmt.Sprintf("%.0f", w.fahrenheit(s.EndC)))
		case recipe.MashCool:
			w.line("%s cool", at)
		}
	}
	w.b.WriteString("  }\n")
}

// rest writes what a rest was read at; where the pen slipped, with its last digits turned round,
// and corrected on the day after.
func (w *scribe) rest(at string, nth int, f string) {
	if nth != w.slipAtRest {
		w.line("%s rest %s F", at, f)
		return
	}
	last := len(f) - 2
	slip := f[:last] + f[last+1:] + f[last:last+1]
	w.line("%s rest %s F", at, slip)
	w.line("corrected %s rest %s F to %s F on %s by \"M\" \"digits turned round\"", at, slip, f, w.begun.AddDate(0, 0, 1).Format(time.DateOnly))
}

func (w *scribe) sg(sg float64) float64 {
	return sg + w.Off["hydrometer"] + w.noise(sure(record.Gravity, 1))
}

func (w *scribe) ferment() time.Time {
	w.stage("ferment", w.n.Fermented.Vessel.Name)
	c := w.clocks()
	pitched := w.begun.Add(seconds(w.n.Mashed.DurationS + 1800))
	w.line("%s pump %.1f gal at 68 F", c.at(pitched.Add(-20*time.Minute)), w.gallons(w.n.Mashed.Out.VolumeAtM3(lot.ReferenceC)))
	curve := w.n.Fermented.Curve
	w.line("%s pitch %.4f SG at 60 F", c.at(pitched), w.sg(curve[0].SG))
	for _, h := range []int{10, 24, 36, 48, 72, int(w.n.Fermented.ForS/3600) - 1} {
		if h >= len(curve) {
			continue
		}
		w.line("%s %.4f SG at 60 F, %.0f F", c.at(pitched.Add(time.Duration(h)*time.Hour)), w.sg(curve[h].SG), w.fahrenheit(curve[h].TempC))
	}
	w.b.WriteString("  }\n")
	return pitched
}

// abv is what an alcoholometer that is true at 60 F shows at 68 F, in per cent.
func (w *scribe) abv(abv float64, read record.What) float64 {
	return 100 * (shownAt68F(abv) + w.Off["alcoholometer"] + w.noise(sure(read, abv)))
}

// shownAt68F is what spirit of a strength at 20 C shows at 68 F on a scale that is true at
// 60 F, as a fraction.
func shownAt68F(abv float64) float64 {
	mass, err := fluid.MassFracFromABV(abv)
	if err != nil {
		return abv
	}
	proof, err := fluid.HydrometerReading(fluid.ProofFromMassFrac(mass), 68)
	if err != nil {
		return abv
	}
	return proof / 200
}

// charge writes what is charged: of a spirit run that is known to charge the feints of the run
// before, each by itself.
func (w *scribe) charge(at, stage string) {
	if stage != "spirit" || w.before == "" {
		w.line("%s charge", at)
		return
	}
	w.line("%s charge low-wines", at)
	w.line("charge feints from %q", w.before)
}

func (w *scribe) gauge(of string, s stream.Stream) {
	w.line("%s %.1f gal at 68 F, %.2f %% abv at 68 F", of, w.gallons(s.VolumeAtM3(lot.ReferenceC)), w.abv(s.ABV(), record.Strength))
}

func (w *scribe) run(stage string, at time.Time, r still.Run, v *recipe.Vessel) time.Time {
	w.stage(stage, v.Name)
	c := w.clocks()
	w.charge(c.at(at), stage)
	fire := at.Add(30 * time.Minute)
	w.line("%s fire", c.at(fire))
	w.line("%s first-drop", c.at(fire.Add(seconds(r.HeatUpS))))
	done := 0.0
	for _, f := range r.Fractions {
		if f.Name == still.Heads {
			w.line("%s to heads %.2f gal", c.at(fire.Add(seconds(f.StartS))), done/fluid.USGallonM3)
		}
		if f.Name == still.Hearts {
			w.line("%s to hearts %.1f gal", c.at(fire.Add(seconds(f.StartS))), r.Fraction(still.Heads).VolumeM3/fluid.USGallonM3)
		}
		if f.Name == still.Tails {
			w.line("%s to tails", c.at(fire.Add(seconds(f.StartS))))
		}
		if f.Name == still.Hearts || f.Name == still.LowWines {
			for _, part := range []float64{.25, .6, .9} {
				s := f.StartS + part*(f.EndS-f.StartS)
				for i := 1; i < len(r.Curve); i++ {
					a, b := r.Curve[i-1], r.Curve[i]
					if a.TimeS <= s && s < b.TimeS {
						k := (s - a.TimeS) / (b.TimeS - a.TimeS)
						w.line("%s %.1f %% abv at 68 F", c.at(fire.Add(seconds(s))), w.abv(a.ABV+k*(b.ABV-a.ABV), record.Spout))
						break
					}
				}
			}
		}
		done += f.VolumeM3
	}
	end := fire.Add(seconds(r.DurationS))
	w.line("%s off", c.at(end))
	for _, f := range r.Fractions {
		switch {
		case f.Name == still.Foreshots || f.Name == still.Heads:
		case f.Name == still.LowWines:
			w.gauge("low-wines", w.n.Stripped.LowWines)
		case f.Name == still.Tails && w.before != "": // they run onto the heads
			w.gauge("feints", r.Feints())
		default:
			w.gauge(f.Name, f.Stream)
		}
	}
	w.b.WriteString("  }\n")
	return end
}
