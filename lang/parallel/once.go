package parallel

import "sync"

// OnceEach makes a value for each key when it is first asked for, once, whoever asks
// and however many do so at the same time. A value may ask for others of its kind
// while it is made, but not for itself.
type OnceEach[K comparable, V any] struct {
	mu   sync.Mutex
	made map[K]func() V
}

// Get gives the value of a key. build makes it.
func (o *OnceEach[K, V]) Get(k K, build func() V) V {
	o.mu.Lock()
	f := o.made[k]
	if f == nil {
		if o.made == nil {
			o.made = map[K]func() V{}
		}
		f = sync.OnceValue(build)
		o.made[k] = f
	}
	o.mu.Unlock()
	return f()
}
