package made

import (
	"math"
	"time"

	"newmake/compile/numbers"
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Mark is a reading with its place on the pictures of a plan: by the clock in a mash, by
// the time since the pitch in a ferment, by what has come over in a run of a still.
type Mark struct {
	Stage  record.StageName
	What   record.What // gravity, temperature, spout, vapour or flow
	When   time.Time   // zero where nobody wrote it
	AfterS float64     // of a ferment: since the pitch
	OverM3 float64     // of a run: out of the spout since the first drop, at 20 C
	Said   float64     // as Spot.Says has it
	Visit  *record.Visit
}

// Marks are the readings of a run that a picture of its plan has a place for. b is the
// recipe as the run made it and n its numbers, by which a clock in a run of a still is
// brought to what had come over. A run of several charges is drawn as one of them, so that its
// readings have no place.
func Marks(b *recipe.Batch, r *record.Run, n *numbers.Batch, instrument func(name string) *record.Instrument) []Mark {
	m := &marking{r: r, n: n, instrument: instrument}
	begun, pitched := pitched(r)
	over := map[record.StageName]float64{} // what came before the fraction that comes
	for i := range r.Visits {
		v := &r.Visits[i]
		switch stage := r.Stages[v.Stage].Name; stage {
		case record.Mash:
			if v.When.Known() {
				m.put(Mark{Stage: stage, When: v.When.Time, Visit: v}, record.Temperature)
			}
		case record.Ferment:
			if after := v.When.Time.Sub(begun).Seconds(); pitched && v.When.Known() && after >= 0 {
				m.put(Mark{Stage: stage, When: v.When.Time, AfterS: after, Visit: v}, record.Gravity, record.Temperature)
			}
		case record.Strip, record.Spirit:
			charges := map[record.StageName]int{record.Strip: b.Strip.Charges, record.Spirit: b.Spirit.Charges}[stage]
			if charges > 1 || fractions[v.Word] != "" {
				continue
			}
			at := m.over(stage, v, over[stage])
			if v.Word == "to" {
				if over[stage] = math.NaN(); hasReceiver(v) {
					over[stage] = at
				}
			}
			if !math.IsNaN(at) {
				m.put(Mark{Stage: stage, When: v.When.Time, OverM3: at, Visit: v}, record.Spout, record.Vapour, record.Flow)
			}
		}
	}
	return m.out
}

type marking struct {
	r          *record.Run
	n          *numbers.Batch
	instrument func(string) *record.Instrument
	out        []Mark
}

// over is what had come over at a line of a run: by the receiver, else by the clock; NaN
// where neither tells it.
func (m *marking) over(stage record.StageName, v *record.Visit, before float64) float64 {
	if v.Word == "first-drop" {
		return 0
	}
	if m3, ok := held(v, record.Receiver); ok && !math.IsNaN(before) {
		return before + m3.SI
	}
	first, dropped := WhenDone(m.r, stage, "first-drop")
	if !dropped || !v.When.Known() || v.When.Time.Before(first) {
		return math.NaN()
	}
	at, ok := Spot{Stage: stage, What: record.Receiver, Kind: Within, AfterS: v.When.Time.Sub(first).Seconds()}.Says(m.n)
	if !ok {
		return math.NaN()
	}
	return at
}

func hasReceiver(v *record.Visit) bool {
	_, ok := held(v, record.Receiver)
	return ok
}

// put marks what was read of some quantities on a line.
func (m *marking) put(at Mark, of ...record.What) {
	for _, what := range of {
		rd, ok := reading(at.Visit, what)
		if !ok {
			continue
		}
		at.What = what
		var is Corrected
		switch what {
		case record.Gravity:
			is, ok = Gravity(rd, m.instrument(rd.With))
		case record.Spout:
			is, ok = Strength(rd)
		default:
			v, _ := rd.Holds()
			is.SI = v.SI
		}
		at.Said = is.SI
		if ok {
			m.out = append(m.out, at)
		}
	}
}
