package compile

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"newmake/compile/matter/fluid"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/recipe"
)

// randomBatch writes a house and a batch as text, at a venture but such as a
// distiller could write, and reads them. The vessels are large, for what is
// tested is not whether things fit.
func randomBatch(t testing.TB, r *rand.Rand) *recipe.Batch {
	t.Helper()
	w := writer{r: r}
	house, text := w.house(), w.batch()
	h, err := check.LoadFS(fstest.MapFS{
		"house.batch": {Data: []byte(house)}, "some.batch": {Data: []byte(text)},
	}, "random", check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Some")
	for _, d := range list {
		require.NotEqual(t, diag.Error, d.Severity, "%s\n%s\n%s", list.Error(), house, text)
	}
	require.NotNil(t, b, "%s\n%s\n%s", list.Error(), house, text)
	return b
}

// randomBatches calls f for some batches, the same ones every time.
func randomBatches(t *testing.T, n int, f func(t *testing.T, b *recipe.Batch)) {
	r := rand.New(rand.NewPCG(20, 26))
	for i := range n {
		b := randomBatch(t, r)
		t.Run(fmt.Sprintf("%02d", i), func(t *testing.T) { f(t, b) })
	}
}

// writer writes texts at a venture.
type writer struct {
	r     *rand.Rand
	boilF float64
	text  strings.Builder
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.text, format+"\n", args...) }

func (w *writer) between(low, high float64) float64 { return low + (high-low)*w.r.Float64() }

func (w *writer) maybe(share float64) bool { return w.r.Float64() < share }

func (w *writer) take() string {
	s := w.text.String()
	w.text.Reset()
	return s
}

func (w *writer) house() string {
	feet := []float64{0, 1150, 5000, 9000, w.between(0, 9000)}[w.r.IntN(5)]
	w.boilF = fluid.WaterBoilC(fluid.PressureAtElevation(feet*0.3048))*1.8 + 32
	heated := func() string { return []string{"jacket", "elements", "live-steam"}[w.r.IntN(3)] }
	w.line("newmake 1\nplant \"House\" {\n  elevation %.0f ft\n  water %.0f F, hardness %.0f ppm\n  ambient %.0f F\n  crew 2",
		feet, w.between(40, 62), w.between(0, 300), w.between(50, 85))
	w.line("  shift 00:00 to 23:59, mon to sun\n  climate %s", []string{"cool", "temperate", "warm", "hot"}[w.r.IntN(4)])
	if w.maybe(0.3) {
		w.line("  boiler %.0f kW", w.between(150, 400))
	}
	w.line("  cooker \"Kettle\" {\n    holds 3000 gal\n    heats %.0f kW\n    cools %.0f kW\n    metal %.0f lb\n    heated by %s\n  }", w.between(60, 300), w.between(60, 250), w.between(500, 3000), heated())
	w.line("  fermenter \"Tub\" {\n    holds 3000 gal\n    cools %.0f kW\n  }", w.between(5, 40))
	for _, still := range []string{"Wash", "Spirit"} {
		w.line("  still %q {\n    holds 6000 gal\n    heats %.0f kW\n    reflux %.0f %%\n    metal %.0f lb\n    loses %.1f kW\n    heated by %s\n    preheater 30 sqft\n  }",
			still, w.between(60, 250), w.between(0, 30), w.between(500, 3000), w.between(0, 6), heated())
	}
	w.line("}")
	return w.take()
}

func (w *writer) batch() string {
	w.line("batch \"Some\" {\n  at \"House\"\n  start 2026-03-03 07:00")
	if w.maybe(0.3) {
		w.maltMash()
	} else {
		w.grainMash()
	}
	w.line("  ferment in any fermenter {\n    pitch distillers-yeast %.2f g/L\n    hold 74..%.0f F\n    for %.0f h", w.between(0.4, 1.1), w.between(80, 92), w.between(50, 130))
	if w.maybe(0.4) {
		w.line("    dose glucoamylase")
	}
	w.line("  }\n  strip in \"Wash\" {\n    stop at %.1f %% abv\n    charges %d\n  }", w.between(0.5, 5), 1+w.r.IntN(3))
	charge := "low-wines"
	if w.maybe(0.7) {
		charge = "low-wines, feints"
	}
	w.line("  spirit in \"Spirit\" {\n    charge %s\n    charges %d\n    foreshots %.2f gal\n    hearts from %.1f gal to %.1f %% abv\n    stop at %.1f %% abv\n  }",
		charge, 1+w.r.IntN(2), w.between(0.1, 0.8), w.between(1.5, 4), w.between(58, 66), w.between(1, 8))
	w.line("  cask {\n    entry %.0f proof\n    fill %.0f gal %s charred-oak\n    rest %.0f months\n    bottle 750 mL at 80 proof\n  }\n}",
		w.between(100, 125), w.between(5, 30), []string{"new", "used"}[w.r.IntN(2)], w.between(6, 150))
	return w.take()
}

// grainMash is raw grain cooked and malt let in below, all of it fermented on
// the grain.
func (w *writer) grainMash() {
	pounds := w.between(400, 1200)
	malt := w.between(13, 30)
	second, share := []string{"rye", "wheat", "oats", "barley"}[w.r.IntN(4)], w.between(3, 30)
	w.line("  bill {\n    corn %.1f lb\n    %s %.1f lb\n    distillers-malt %.1f lb\n  }", pounds*(100-malt-share)/100, second, pounds*share/100, pounds*malt/100)
	w.line("  mash in \"Kettle\" {\n    water %.0f gal at %.0f F", pounds*w.between(0.33, 0.48), w.between(55, 150))
	if w.maybe(0.6) {
		w.line("    backset %.0f %%", w.between(2, 25))
	}
	if w.maybe(0.7) {
		w.line("    dose alpha-amylase")
	}
	w.line("    add corn\n    heat to %.0f F\n    rest %.0f min", min(w.between(180, 205), w.boilF-1), w.between(20, 60))
	w.line("    cool to %.0f F\n    add %s\n    rest %.0f min", w.between(150, 160), second, w.between(10, 30))
	w.line("    cool to %.0f F\n    add distillers-malt\n    rest %.0f min\n    cool to %.0f F\n  }", w.between(142, 149), w.between(30, 90), w.between(76, 86))
}

// maltMash is malt alone, its worts drained off twice.
func (w *writer) maltMash() {
	pounds := w.between(500, 1200)
	w.line("  bill {\n    two-row-malt %.1f lb\n  }", pounds)
	w.line("  mash in \"Kettle\" {\n    water %.0f gal at %.0f F\n    add all\n    heat to %.0f F\n    rest %.0f min\n    drain in %.0f min", pounds*w.between(0.3, 0.38), w.between(140, 155), w.between(146, 152), w.between(40, 90), w.between(30, 90))
	w.line("    water %.0f gal at %.0f F\n    rest %.0f min\n    drain in %.0f min\n    cool to %.0f F\n  }", pounds*w.between(0.15, 0.25), w.between(160, 172), w.between(10, 30), w.between(30, 90), w.between(70, 80))
}
