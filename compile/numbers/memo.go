package numbers

import (
	"math"
	"reflect"
	"sync"

	"newmake/compile/stage/ferment"
	"newmake/compile/stage/mash"
	"newmake/compile/stage/still"
	"newmake/lang/recipe"
)

// Memo computes many batches that are much alike. A stage whose inputs have been
// seen before is not run again: a changed cut leaves mash, ferment and stripping run
// as they were. It may be used from several goroutines, and what it gives does
// not hang on their order.
type Memo struct {
	mashes   table[mash.Input, mash.Result]
	ferments table[ferment.Input, ferment.Result]
	courses  table[ferment.Input, *ferment.Course] // of ferments, whatever their duration
	strips   table[still.StripInput, still.Run]
	spirits  table[still.SpiritInput, still.Run]
	steadies table[still.SpiritInput, steady]
	boils    still.Boils
}

// boiling is where the runs keep their boils.
func (m *Memo) boiling() *still.Boils {
	if m == nil {
		return nil
	}
	return &m.boils
}

// Keeping is a Memo that keeps the last few results of each stage, so that what it
// holds does not grow with the batches.
func Keeping(most int) *Memo {
	m := &Memo{}
	m.mashes.most, m.ferments.most, m.courses.most, m.strips.most, m.spirits.most, m.steadies.most = most, most, most, most, most, most
	return m
}

type steady struct {
	run   still.Run
	tried int
}

func (m *Memo) mash(in mash.Input) (mash.Result, error) {
	if m == nil {
		return mash.Run(in)
	}
	return m.mashes.get(in, mash.Run, in.Bill.TotalKg, in.PressurePa, amounts(in.Steps), in.Kept.VolumeM3, mark(in.Model))
}

func (m *Memo) ferment(in ferment.Input) (ferment.Result, error) {
	if m == nil {
		return ferment.Run(in)
	}
	return m.ferments.get(in, m.carriedOn, in.Wort.WaterKg, in.Wort.DextrinKg, in.PitchKg, in.DurationS, mark(in.Mash), mark(in.Model))
}

// carriedOn goes on with a ferment that is known for another duration.
func (m *Memo) carriedOn(in ferment.Input) (ferment.Result, error) {
	whole := in
	whole.DurationS = 0
	c, err := m.courses.get(whole, ferment.Begin, in.Wort.WaterKg, in.Wort.DextrinKg, in.PitchKg, mark(in.Mash), mark(in.Model))
	if err != nil {
		return ferment.Result{}, err
	}
	return c.To(in.DurationS)
}

func (m *Memo) strip(in still.StripInput) (still.Run, error) {
	if m == nil {
		return still.Strip(in)
	}
	return m.strips.get(in, still.Strip, in.Wash.WaterKg, in.Wash.EthanolKg, in.Stop.Value)
}

func (m *Memo) spirit(in still.SpiritInput) (still.Run, error) {
	if m == nil {
		return still.SpiritRun(in)
	}
	return m.spirits.get(in, still.SpiritRun, in.LowWines.WaterKg, in.LowWines.EthanolKg, in.Stop.Value)
}

func (m *Memo) steady(in still.SpiritInput) (still.Run, int, error) {
	if m == nil {
		return still.Steady(in)
	}
	s, err := m.steadies.get(in, func(in still.SpiritInput) (steady, error) {
		run, tried, err := still.Steady(in)
		return steady{run, tried}, err
	}, in.LowWines.WaterKg, in.LowWines.EthanolKg, in.Stop.Value)
	return s.run, s.tried, err
}

// table remembers what a stage gave for each input. Inputs are alike when all
// that they hold is equal to the last bit.
type table[I, O any] struct {
	mu    sync.Mutex
	rows  map[uint64][]*row[I, O]
	order []uint64 // keys of the rows, oldest first
	most  int      // rows that are kept; 0: all
}

type row[I, O any] struct {
	in   I
	once sync.Once
	out  O
	err  error
}

// amounts is a number by which the steps of mashes can be told apart, but for chance and
// for what has no amount.
func amounts(steps []recipe.MashStep) float64 {
	sum := 0.0
	for i := range steps {
		s := &steps[i]
		sum = 3*sum + s.VolumeM3 + s.MassKg + s.TempC + s.DurationS
	}
	return sum
}

// mark is a number by which models with other constants can be told apart, but for
// chance.
func mark(m *recipe.Model) float64 {
	if m == nil {
		return 0
	}
	sum := uint64(0)
	for _, v := range m.Values { // in any order
		sum += math.Float64bits(v) * 0x9e3779b97f4a7c15
	}
	return float64(sum)
}

// get gives what run gives. The parts are a few numbers of the input that set it
// apart from others, so that few inputs have to be compared in full.
func (t *table[I, O]) get(in I, run func(I) (O, error), parts ...float64) (O, error) {
	r := t.row(in, parts)
	r.once.Do(func() { r.out, r.err = run(in) })
	return r.out, r.err
}

func (t *table[I, O]) row(in I, parts []float64) *row[I, O] {
	key := uint64(len(parts))
	for _, x := range parts {
		key = (key ^ math.Float64bits(x)) * 0x9e3779b97f4a7c15
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	for _, r := range t.rows[key] {
		if reflect.DeepEqual(r.in, in) {
			return r
		}
	}
	if t.rows == nil {
		t.rows = map[uint64][]*row[I, O]{}
	}
	r := &row[I, O]{in: in}
	t.rows[key] = append(t.rows[key], r)
	if t.most == 0 {
		return r
	}
	if t.order = append(t.order, key); len(t.order) > t.most {
		oldest := t.order[0]
		t.order = t.order[1:]
		if t.rows[oldest] = t.rows[oldest][1:]; len(t.rows[oldest]) == 0 {
			delete(t.rows, oldest)
		}
	}
	return r
}
