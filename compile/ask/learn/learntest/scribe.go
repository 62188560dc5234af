// Package learntest invents runs of a house whose constants are known, and writes them
// down as people would: for the tests of what is learned from runs.
package learntest

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"time"

	"newmake/compile"
	"newmake/compile/constants"
	"newmake/compile/lot"
	"newmake/compile/matter/fluid"
	"newmake/compile/numbers"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// House is an invented house: a recipe, and the figures of what is not known of it.
type House struct {
	Recipe *recipe.Batch
	Of     []constants.Constant // of the house
	Is     []float64
	Off    map[string]float64 // what each kind of instrument is off by, by the constant's ID
	R      *rand.Rand
}

// Invent draws a house from what is known of houses before their runs.
func Invent(b *recipe.Batch, r *rand.Rand) *House {
	b = b.Clone()
	b.Plant.Shift = recipe.Shift{ToMinute: 24 * 60, Days: [7]bool{true, true, true, true, true, true, true}}
	h := &House{Recipe: b, Off: map[string]float64{}, R: r}
	for _, c := range constants.Of(b) {
		x := draw(c, r)
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
	of, x := append([]constants.Constant{}, h.Of...), append([]float64{}, h.Is...)
	for _, c := range constants.Of(h.Recipe) {
		if c.Owner == constants.Run {
			of, x = append(of, c), append(x, draw(c, h.R))
		}
	}
	return compile.Numbers(constants.Set(h.Recipe, of, x), &numbers.Memo{}, compile.Calculated)
}

// Told is how well people read, in standard deviations.
const (
	clockMin = 2.5
	gravity  = 0.0006
	spout    = 0.005
	strength = 0.0015
	dip      = 0.006
	degrees  = 0.4
)

func (h *House) noise(sd float64) float64 { return sd * h.R.NormFloat64() }

// Text is a run as it is written down, in US units. Samples are read at the temperature of
// their instrument.
func (h *House) Text(number string, begun time.Time, n *numbers.Batch) string {
	w := &scribe{House: h, n: n, begun: begun}
	fmt.Fprintf(&w.b, "run %q of %q on %s {\n", number, n.Name, begun.Format(time.DateOnly))
	w.mash()
	pitched := w.ferment()
	stripped := w.run("strip", pitched.Add(seconds(n.Fermented.ForS)), n.Stripped.Run, n.Strip.Still)
	w.run("spirit", stripped.Add(60*time.Hour), n.Distilled.Run, n.Spirit.Still)
	w.b.WriteString("}\n")
	return w.b.String()
}

type scribe struct {
	*House
	n     *numbers.Batch
	begun time.Time
	b     strings.Builder
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

func (w *scribe) line(format string, args ...any) { fmt.Fprintf(&w.b, "    "+format+"\n", args...) }

func (w *scribe) gallons(m3 float64) float64 {
	return m3 / fluid.USGallonM3 * w.Off["dip"] * (1 + w.noise(dip))
}

func (w *scribe) fahrenheit(c float64) float64 {
	return 1.8*(c+w.Off["thermometer"]+w.noise(degrees)) + 32
}

// clocks writes the times of a stage: the first with its date.
type clocks struct {
	dated bool
	last  time.Time
}

func (c *clocks) at(t time.Time, r *rand.Rand) string {
	t = t.Add(seconds(60 * clockMin * r.NormFloat64())).Round(time.Minute)
	if !t.After(c.last) {
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
	fmt.Fprintf(&w.b, "  mash in %q {\n", w.n.Mash.Cooker.Name)
	c := clocks{}
	steps := w.n.Mash.Steps
	for i, s := range w.n.Mashed.Steps {
		at := c.at(w.begun.Add(seconds(s.EndS)), w.R)
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
			w.line("%s rest %.0f F", at, w.fahrenheit(s.EndC))
		case recipe.MashCool:
			w.line("%s cool", at)
		}
	}
	w.b.WriteString("  }\n")
}

func (w *scribe) sg(sg float64) float64 { return sg + w.Off["hydrometer"] + w.noise(gravity) }

func (w *scribe) ferment() time.Time {
	fmt.Fprintf(&w.b, "  ferment in %q {\n", w.n.Fermented.Vessel.Name)
	c := clocks{}
	pitched := w.begun.Add(seconds(w.n.Mashed.DurationS + 1800))
	w.line("%s pump %.1f gal at 68 F", c.at(pitched.Add(-20*time.Minute), w.R), w.gallons(w.n.Mashed.Out.VolumeAtM3(lot.ReferenceC)))
	curve := w.n.Fermented.Curve
	w.line("%s pitch %.4f SG at 60 F", c.at(pitched, w.R), w.sg(curve[0].SG))
	for _, h := range []int{10, 24, 36, 48, 72, int(w.n.Fermented.ForS/3600) - 1} {
		if h >= len(curve) {
			continue
		}
		w.line("%s %.4f SG at 60 F, %.0f F", c.at(pitched.Add(time.Duration(h)*time.Hour), w.R), w.sg(curve[h].SG), w.fahrenheit(curve[h].TempC))
	}
	w.b.WriteString("  }\n")
	return pitched
}

func (w *scribe) abv(abv, sd float64) float64 {
	return 100 * (abv + w.Off["alcoholometer"] + w.noise(sd))
}

func (w *scribe) run(stage string, at time.Time, r still.Run, v *recipe.Vessel) time.Time {
	fmt.Fprintf(&w.b, "  %s in %q {\n", stage, v.Name)
	c := clocks{}
	w.line("%s charge", c.at(at, w.R))
	fire := at.Add(30 * time.Minute)
	w.line("%s fire", c.at(fire, w.R))
	w.line("%s first-drop", c.at(fire.Add(seconds(r.HeatUpS)), w.R))
	done := 0.0
	for _, f := range r.Fractions {
		if f.Name == still.Heads {
			w.line("%s to heads %.2f gal", c.at(fire.Add(seconds(f.StartS)), w.R), done/fluid.USGallonM3)
		}
		if f.Name == still.Hearts {
			w.line("%s to hearts %.1f gal", c.at(fire.Add(seconds(f.StartS)), w.R), r.Fraction(still.Heads).VolumeM3/fluid.USGallonM3)
		}
		if f.Name == still.Tails {
			w.line("%s to tails", c.at(fire.Add(seconds(f.StartS)), w.R))
		}
		if f.Name == still.Hearts || f.Name == still.LowWines {
			for _, part := range []float64{.25, .6, .9} {
				s := f.StartS + part*(f.EndS-f.StartS)
				for i := 1; i < len(r.Curve); i++ {
					a, b := r.Curve[i-1], r.Curve[i]
					if a.TimeS <= s && s < b.TimeS {
						k := (s - a.TimeS) / (b.TimeS - a.TimeS)
						w.line("%s %.1f %% abv at 68 F", c.at(fire.Add(seconds(s)), w.R), w.abv(a.ABV+k*(b.ABV-a.ABV), spout))
						break
					}
				}
			}
		}
		done += f.VolumeM3
	}
	end := fire.Add(seconds(r.DurationS))
	w.line("%s off", c.at(end, w.R))
	for _, f := range r.Fractions {
		if f.Name == still.Foreshots || f.Name == still.Heads {
			continue
		}
		all := f.VolumeM3
		if f.Name == still.LowWines {
			all = w.n.Stripped.LowWines.VolumeAtM3(lot.ReferenceC)
		}
		w.line("%s %.1f gal at 68 F, %.2f %% abv at 68 F", strings.ReplaceAll(f.Name, " ", "-"), w.gallons(all), w.abv(f.Stream.ABV(), strength))
	}
	w.b.WriteString("  }\n")
	return end
}
