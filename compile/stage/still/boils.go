package still

import (
	"sync"

	"newmake/compile/matter/fluid"
)

// Boils keeps the boils that runs have made, each by the air pressure and the
// reflux that it hangs on alone, so that the runs of one house make each once. It
// may be used from several goroutines. A nil Boils keeps none.
type Boils struct {
	mu   sync.Mutex
	made map[boilKey]*boil
	pots map[float64]*boil // by pressure
}

type boilKey struct{ pressurePa, reflux float64 }

// Ahead begins to make the boils of runs that are to come, while what they distil
// is computed: they hang on nothing of it.
func Ahead(runs ...Setting) {
	missing := false
	for _, s := range runs {
		if s.Boils == nil || !s.boils() {
			return // the run says what is wrong
		}
		missing = missing || !s.Boils.have(s.key())
	}
	if missing {
		go func() {
			for _, s := range runs {
				s.boil()
			}
		}()
	}
}

func (s Setting) key() boilKey { return boilKey{s.PressurePa, s.Still.Reflux} }

func (b *Boils) have(key boilKey) bool {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.made[key] != nil
}

// boils tells whether pressure and reflux are those of a boil.
func (s Setting) boils() bool {
	return s.PressurePa >= fluid.MinPressurePa && s.PressurePa <= fluid.MaxPressurePa &&
		s.Still.Reflux >= 0 && s.Still.Reflux <= MostReflux
}

// boil is the boil of a setting.
func (s Setting) boil() *boil {
	if s.Boils == nil {
		return newBoil(ethanolWater{s.PressurePa}, s.Still.Reflux)
	}
	key := s.key()
	s.Boils.mu.Lock()
	defer s.Boils.mu.Unlock()
	b := s.Boils.made[key]
	if b == nil {
		if s.Boils.made == nil {
			s.Boils.made, s.Boils.pots = map[boilKey]*boil{}, map[float64]*boil{}
		}
		pot := s.Boils.pots[s.PressurePa]
		if pot == nil {
			pot = newPot(ethanolWater{s.PressurePa})
			s.Boils.pots[s.PressurePa] = pot
		}
		b = pot.under(s.Still.Reflux)
		s.Boils.made[key] = b
	}
	return b
}
