package still

import "sync"

// Boils keeps the boils that runs have made, each by the air pressure and the
// reflux that it hangs on alone, so that the runs of one house make each once. It
// may be used from several goroutines. A nil Boils keeps none.
type Boils struct {
	mu   sync.Mutex
	made map[boilKey]*boil
	pots map[float64]*boil // by pressure
}

type boilKey struct{ pressurePa, reflux float64 }

// boil is the boil of a setting.
func (s Setting) boil() *boil {
	if s.Boils == nil {
		return newBoil(ethanolWater{s.PressurePa}, s.Still.Reflux)
	}
	key := boilKey{s.PressurePa, s.Still.Reflux}
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
