package cellar

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"newmake/compile/matter/fluid"
	"newmake/lang/check"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// bourbon is a batch of invented casks: 53 gal of new charred oak, filled at 120 proof.
func bourbon() *recipe.Batch {
	library := check.Builtin().Library
	return &recipe.Batch{Name: "Base", Cask: recipe.Cask{
		SizeM3: 53 * quantity.USGallonM3, Kind: library.Woods["charred-oak"], New: true, Climate: recipe.Climate{Named: "temperate"}, RestS: 4 * 365.25 * 86400,
	}, Models: library.Models}
}

func house(lives ...*record.Life) House {
	b := bourbon()
	return House{Lives: lives, Batch: func(string) *recipe.Batch { return b }, Wood: func(string) *recipe.CaskWood { return nil }, Units: recipe.US}
}

func value(what record.What, num float64, unit string, k quantity.Kind) record.Reading {
	si, err := quantity.ToSI(num, unit, k)
	if err != nil {
		panic(err)
	}
	v := record.Value{Num: fmt.Sprint(num), Number: num, Unit: unit, Kind: k, SI: si}
	r := record.Reading{What: what, Value: v}
	if k == quantity.Strength || k == quantity.Volume {
		r.At = &record.Value{Num: "60", Number: 60, Unit: "F", Kind: quantity.Temperature, SI: 15.555555555555555}
	}
	return r
}

var filledOn = record.Date{Year: 2024, Month: 2, Day: 29}

// life is a cask that was filled with 53 gal of 120 proof, by its weight.
func life(serial string, tareLb float64) *record.Life {
	run := &record.Run{Number: "24-01", Batch: "Base", Stages: []record.Stage{{Name: record.Fill}}}
	run.Visits = []record.Visit{
		{Word: "gauge", When: record.When{Date: filledOn}, Read: []record.Reading{value(record.Strength, 120, "proof", quantity.Strength)}},
		{Word: "into", To: serial, When: record.When{Date: filledOn}, Read: []record.Reading{value(record.Volume, 53, "gal", quantity.Volume), value(record.Tare, tareLb, "lb", quantity.Mass)}},
	}
	return &record.Life{Serial: serial, Fills: []record.Filling{{Run: run, Visit: &run.Visits[1]}}}
}

// weighed adds a weight of a cask that evaporates at a pace, as a scale would show it.
func weighed(t testing.TB, l *record.Life, on record.Date, pace, tareLb, offLb float64) {
	h := house()
	k := h.know(&record.Life{Serial: l.Serial, Fills: l.Fills}, nil, on)
	require.NotNil(t, k)
	y, ok := k.at(on, pace)
	require.True(t, ok)
	net := (y.LiquidKg() + y.WoodKg()) * fluid.MassInAirKg(1, fluid.Density(y.MassFrac(), 20)) / quantity.PoundKg
	l.Events = append(l.Events, record.Visit{When: record.When{Date: on}, Read: []record.Reading{value(record.Gross, math.Round(2*(net+tareLb+offLb))/2, "lb", quantity.Mass)}})
}

// A weight tells the pace at which the cask was made to evaporate, and it is drawn towards
// the house's.
func TestPaceFromWeight(t *testing.T) {
	for _, want := range []float64{0.5, 1, 1.8} {
		l := life("A", 108)
		weighed(t, l, filledOn.After(3*365), want, 108, 0)
		k := house().know(l, nil, filledOn.After(4*365))
		own, ok := k.read()
		require.True(t, ok)
		assert.InDelta(t, want, own.is, 0.03, "a scale to half a pound, after three years")
		s := shrunk(own, true, pace{1, houseSpread})
		assert.LessOrEqual(t, math.Abs(s.is-1), math.Abs(own.is-1)+1e-9)
		assert.Less(t, s.sd, own.sd)
	}
	assert.Equal(t, pace{1, math.Hypot(houseSpread, caskSpread)}, shrunk(pace{}, false, pace{1, houseSpread}))
}

// A weight that is too early to tell anything tells nothing: three standard deviations of
// what has been lost is the limit.
func TestTooEarly(t *testing.T) {
	told := func(days int) bool {
		l := life("A", 108)
		weighed(t, l, filledOn.After(days), 1, 108, 0)
		_, ok := house().know(l, nil, filledOn.After(days)).read()
		return ok
	}
	assert.False(t, told(90))
	assert.True(t, told(360))
}

// A sample's strength holds from its day on, and changes nothing before it.
func TestSample(t *testing.T) {
	l := life("A", 108)
	on := filledOn.After(365)
	l.Events = []record.Visit{{When: record.When{Date: on}, Read: []record.Reading{value(record.Strength, 117, "proof", quantity.Strength)}}}
	h := house(l)
	assert.InDelta(t, 117, On(h, on).Casks[0].Now.Proof, 0.02)
	assert.Greater(t, On(h, on.After(-1)).Casks[0].Now.Proof, 118.)
	c := On(h, on.After(1))
	assert.Equal(t, "2025-08-29", c.Casks[0].Sample, "counted from its fill, as the plan counts")
}

// A cask that loses 10 lb in half a year beyond its like is named, with since when; one
// that scatters as casks do is not.
func TestLeak(t *testing.T) {
	leak := func(lb float64) *Leak {
		l := life("A", 108)
		for i := 1; i <= 6; i++ {
			off := 0.
			if i > 3 {
				off = -lb * float64(i-3)
			}
			weighed(t, l, filledOn.After(182*i), 1, 108, off)
		}
		all := []*record.Life{l}
		for i := range 8 {
			sound := life(fmt.Sprint(i), 108)
			weighed(t, sound, filledOn.After(182*6), 1, 108, 0)
			all = append(all, sound)
		}
		return On(house(all...), filledOn.After(182*6)).Casks[0].Leak
	}
	assert.Nil(t, leak(0))
	assert.Nil(t, leak(1.5))
	found := leak(10)
	require.NotNil(t, found)
	assert.Equal(t, filledOn.After(182*3).String(), found.Since)
	assert.InDelta(t, 30*quantity.PoundKg, found.Kg, 1.5)
}

// What was topped, leaked and taken is accounted for, and an emptied cask is gone.
func TestInAndOut(t *testing.T) {
	l := life("A", 108)
	day := filledOn.After(400)
	before := On(house(l), day.After(1)).Casks[0].Now
	l.Events = []record.Visit{
		{Word: "topped", When: record.When{Date: day}, Read: []record.Reading{value(record.Dip, 2, "gal", quantity.Volume), value(record.Strength, 120, "proof", quantity.Strength)}},
	}
	topped := On(house(l), day.After(1))
	assert.InDelta(t, before.PureL+2*.6*3.785, topped.Casks[0].Now.PureL, 0.05)
	l.Events[0].Word, l.Events[0].Read[0].What = "leaked", record.Lost
	l.Events[0].Read = l.Events[0].Read[:1]
	assert.InDelta(t, before.VolumeL-2*3.785, On(house(l), day.After(1)).Casks[0].Now.VolumeL, 0.1)
	l.Ends = []record.End{{On: day.After(2), Visit: &record.Visit{}, Word: "emptied"}}
	assert.Len(t, On(house(l), day.After(1)).Casks, 1)
	c := On(house(l), day.After(2))
	assert.Empty(t, c.Casks)
	assert.Equal(t, 1, c.Gone)
	assert.Empty(t, On(house(l), filledOn.After(-1)).Casks, "before its fill")
}

// What tops a cask comes out of another, and is no loss of that; nor is what a vat draws of
// it. A cask that is topped over its size, or gives more than is in it, is named.
func TestDrawn(t *testing.T) {
	day := filledOn.After(400)
	top := func(gallons float64) (from, into Row, said []string, total Total) {
		a, b := life("A", 108), life("B", 108)
		b.Events = []record.Visit{{Word: "topped", From: "A", When: record.When{Date: day}, Read: []record.Reading{value(record.Dip, gallons, "gal", quantity.Volume), value(record.Strength, 118, "proof", quantity.Strength)}}}
		h := house(a, b)
		h.Source = func(name string, _ record.Date) *record.Life { return map[string]*record.Life{"A": a, "B": b}[name] }
		c := On(h, day.After(1))
		return c.Casks[0], c.Casks[1], c.Said, c.Totals[len(c.Totals)-1]
	}
	before, _, _, plain := top(1e-9)
	from, into, said, total := top(4)
	assert.InDelta(t, before.Now.VolumeL-4*3.785, from.Now.VolumeL, 0.07)
	assert.InDelta(t, before.Now.PureL-from.Now.PureL, from.DrawnL, 0.01)
	assert.InDelta(t, into.PutInL-before.PutInL, from.DrawnL, 0.2)
	assert.InDelta(t, plain.LostPct, total.LostPct, 0.35, "it is in the cellar as before; what went in counts both")
	assert.Empty(t, said)
	room := (53*1.05*3.785412 - into.AtFill.VolumeL) / 3.785412 // of a cask that had lost nothing
	_, _, said, _ = top(room + 1)
	assert.Empty(t, said)
	_, _, said, _ = top(30)
	require.Len(t, said, 1)
	assert.Contains(t, said[0], "cask B: on 2025-04-04 more was put in")
	_, _, said, _ = top(55)
	assert.Contains(t, said[0], "cask A: on 2025-04-04 more was drawn")

	l := life("A", 108)
	l.Ends = []record.End{{On: day, Part: true, Word: "from", Visit: &record.Visit{Read: []record.Reading{value(record.Dip, 20, "gal", quantity.Volume)}}}}
	c := On(house(l), day.After(1))
	assert.InDelta(t, 20*3.785*0.59, c.Casks[0].DrawnL, 0.6)
	assert.InDelta(t, plain.LostPct, c.Totals[0].LostPct, 0.05)
}

// The fill's strength is the last that was gauged before the cask was filled, of hearts too
// where no water came; else what was gauged of the rest; else it is the batch's, and said.
func TestStrengthOfTheFill(t *testing.T) {
	proof := func(p float64) []record.Reading {
		return []record.Reading{value(record.Strength, p, "proof", quantity.Strength)}
	}
	hearts := record.Visit{Stage: 1, Word: "hearts", Read: proof(130)}
	inFill := record.Visit{Word: "hearts", Read: proof(127)}
	reduce := record.Visit{Word: "reduce"}
	gauge := record.Visit{Word: "gauge", Read: proof(118)}
	left := record.Visit{Word: "left", Read: proof(117)}
	for _, c := range []struct {
		name          string
		before, after []record.Visit
		want          float64
	}{
		{"gauged", []record.Visit{hearts, inFill, reduce, gauge}, nil, 118},
		{"hearts, no water", []record.Visit{hearts, inFill}, nil, 127},
		{"hearts of the still, no water", []record.Visit{hearts}, nil, 130},
		{"gauged afterwards", []record.Visit{inFill, reduce}, []record.Visit{left}, 117},
		{"gauged, and again afterwards", []record.Visit{gauge}, []record.Visit{left}, 118},
		{"reduced, never gauged", []record.Visit{inFill, reduce}, nil, 0},
		{"reduced afterwards", nil, []record.Visit{reduce, gauge}, 0},
		{"nothing", nil, nil, 0},
	} {
		run := &record.Run{Stages: []record.Stage{{Name: record.Fill}, {Name: record.Spirit}}}
		run.Visits = append(append(slices.Clone(c.before), record.Visit{Word: "into", To: "A"}), c.after...)
		abv, ok := filledAt(record.Filling{Run: run, Visit: &run.Visits[len(c.before)]})
		assert.Equal(t, c.want > 0, ok, c.name)
		if ok {
			want, err := fluid.MassFracFromProof(c.want)
			require.NoError(t, err)
			assert.InDelta(t, fluid.ABVFromMassFrac(want), abv, 1e-4, c.name)
		}
	}
}

// invented is a house of casks whose paces scatter as is assumed of casks, weighed to half
// a pound twice a year for two years; and what each holds a year later.
func invented(t testing.TB, n int, rnd *rand.Rand) (House, record.Date, []float64) {
	pace := 1 + houseSpread*rnd.NormFloat64()*0.5
	var lives []*record.Life
	var truth []float64
	later := filledOn.After(3 * 365)
	for i := range n {
		l := life(fmt.Sprintf("C-%04d", i), 108)
		own := math.Max(0.05, pace+caskSpread*rnd.NormFloat64())
		tare := 108 + tareKg/quantity.PoundKg*rnd.NormFloat64() // what it really is
		for half := 1; half <= 4; half++ {
			weighed(t, l, filledOn.After(182*half), own, tare, scaleKg/quantity.PoundKg*rnd.NormFloat64())
		}
		y, _ := house().know(&record.Life{Serial: l.Serial, Fills: l.Fills}, nil, later).at(later, own)
		lives, truth = append(lives, l), append(truth, holdsOf(y).VolumeL)
	}
	return house(lives...), later, truth
}

// The ranges hold what the casks really hold about 9 times in 10.
func TestRangesHold(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	in, all := 0, 0
	for range 10 {
		h, on, truth := invented(t, 30, rnd)
		for i, r := range On(h, on).Casks {
			all++
			if truth[i] >= r.Low.VolumeL && truth[i] <= r.High.VolumeL {
				in++
			}
		}
	}
	b := distuv.Binomial{N: float64(all), P: 0.9}
	t.Logf("%d of %d", in, all)
	assert.Greater(t, b.CDF(float64(in)), 0.005)
	assert.Less(t, b.CDF(float64(in)-1), 0.9999, "not much wider than they say")
}

func BenchmarkFiveThousandCasks(b *testing.B) {
	h, on, _ := invented(b, 5000, rand.New(rand.NewPCG(1, 1)))
	b.ReportAllocs()
	for b.Loop() {
		On(h, on)
	}
}

// TestFarOut: what published figures reach to is 12 years; of a cask whose rest is over then nothing
// is said on its last day, and on the next it is.
func TestFarOut(t *testing.T) {
	h := house(life("A", 108))
	last := filledOn.Months(12 * heldYears)
	assert.Empty(t, On(h, last).Said)
	assert.Equal(t, []string{"A: beyond 12 years in wood the forecast, its ranges too, is held against nothing that was published; weigh and sample"}, On(h, last.After(1)).Said)
	b := bourbon()
	b.Cask.RestS = 13 * 365.25 * 86400
	h.Batch = func(string) *recipe.Batch { return b }
	assert.Len(t, On(h, filledOn.After(30)).Said, 1, "its rest ends beyond")
}

// TestEmptyByTheForecast: of a cask that should be empty no sample is asked for, and what was topped
// and leaked is told.
func TestEmptyByTheForecast(t *testing.T) {
	l := life("A", 108)
	l.Events = []record.Visit{
		{Word: "topped", When: record.When{Date: filledOn.After(10)}, Read: []record.Reading{value(record.Dip, 1, "gal", quantity.Volume), value(record.Strength, 120, "proof", quantity.Strength)}},
		{Word: "leaked", When: record.When{Date: filledOn.After(20)}, Read: []record.Reading{value(record.Lost, 60, "gal", quantity.Volume)}},
	}
	r := On(house(l), filledOn.After(19)).Casks[0]
	assert.False(t, r.Empty())
	assert.NotEmpty(t, r.Sample)
	assert.Equal(t, []Told{{"2024-03-10", "topped", r.Told[0].VolumeL, r.Told[0].WineGallons}}, r.Told)
	assert.InDelta(t, 3.8, r.Told[0].VolumeL, 0.03)
	r = On(house(l), filledOn.After(20)).Casks[0]
	assert.True(t, r.Empty())
	assert.Empty(t, r.Sample)
	assert.Len(t, r.Told, 2)
}

// What is filled into a cask after a day is not in it on that day, and nothing is gone of it.
func TestFilledUpLater(t *testing.T) {
	l := life("A", 108)
	later := filledOn.After(90)
	up := &record.Run{Number: "24-09", Batch: "Base", Stages: []record.Stage{{Name: record.Fill}}}
	up.Visits = []record.Visit{
		{Word: "gauge", When: record.When{Date: later}, Read: []record.Reading{value(record.Strength, 120, "proof", quantity.Strength)}},
		{Word: "into", To: "A", When: record.When{Date: later}, Read: []record.Reading{value(record.Volume, 2, "gal", quantity.Volume)}},
	}
	alone := On(house(life("A", 108)), later.After(-1))
	l.Fills = append(l.Fills, record.Filling{Run: up, Visit: &up.Visits[1]})
	assert.Equal(t, alone.Casks, On(house(l), later.After(-1)).Casks)
	assert.Equal(t, alone.Totals, On(house(l), later.After(-1)).Totals)
	then := On(house(l), later)
	assert.InDelta(t, 55*1.2, then.Casks[0].PutInL/1.9018, 0.05, "a proof gallon is 1.9018 L of pure alcohol at 20 C (27 CFR 30.67, the factor that gauge prints)")
	assert.InDelta(t, 2, then.Casks[0].Now.WineGallons-alone.Casks[0].Now.WineGallons, 0.1)
}

// A fill that was weighed is what it weighs, whatever volume stands beside it, as in the books
// (27 CFR 19.618); by its volume where the weight cannot be: lighter than the wood, or doubted.
// 53 gal of 120 proof weigh 403.14 lb (27 CFR 30.65, table 5: 7.60645 lb a gallon).
func TestFillByWeight(t *testing.T) {
	fill := func(gallons, grossLb float64, doubt string) Holds {
		l := life("A", 108)
		v := l.Fills[0].Visit
		v.Read[0] = value(record.Volume, gallons, "gal", quantity.Volume)
		gross := value(record.Gross, grossLb, "lb", quantity.Mass)
		gross.Doubt = doubt
		v.Read = append(v.Read, gross)
		return On(house(l), filledOn).Casks[0].AtFill
	}
	assert.InDelta(t, 53, fill(5, 108+403.14, "").WineGallons, 0.01)
	assert.InDelta(t, 63.6, fill(5, 108+403.14, "").ProofGallons, 0.02)
	assert.InDelta(t, 50, fill(53, 108+50*7.60645, "").WineGallons, 0.01)
	assert.InDelta(t, 53, fill(53, 107, "").WineGallons, 0.001)
	assert.InDelta(t, 53, fill(53, 108+50*7.60645, "read upside down").WineGallons, 0.001)
}

// Gallons are counted at 60 F, so that gallons times proof are proof gallons (27 CFR 30.51).
func TestWineGallons(t *testing.T) {
	l := life("A", 108)
	topped := record.Visit{Word: "topped", When: record.When{Date: filledOn.After(400)}, Read: []record.Reading{value(record.Dip, 2, "gal", quantity.Volume), value(record.Strength, 118, "proof", quantity.Strength)}}
	l.Events = []record.Visit{topped}
	r := On(house(l), filledOn.After(800)).Casks[0]
	assert.InDelta(t, 53, r.AtFill.WineGallons, 0.001)
	assert.InDelta(t, 2, r.Told[0].WineGallons, 0.001)
	for _, h := range []Holds{r.AtFill, r.Now, r.Low, r.High, r.Target.Then} {
		assert.InDelta(t, h.ProofGallons, h.WineGallons*h.Proof/100, 0.01)
	}
}
