package parallel

import (
	"io"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEach(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		out := make([]int, n)
		Each(n, func(i int) { out[i] += i + 1 })
		for i := range out {
			assert.Equal(t, i+1, out[i], "each once, in its own place")
		}
	}
}

// A fault is raised where the work was asked for, and not in a goroutine of which
// nobody knows.
func TestFaultIsRaisedAtTheCaller(t *testing.T) {
	var done atomic.Int64
	assert.PanicsWithValue(t, "a fault", func() {
		Each(100, func(i int) {
			if done.Add(1); i == 50 {
				panic("a fault")
			}
		})
	})
}

func TestBegin(t *testing.T) {
	wait := Begin(func() (int, error) { return 7, io.EOF })
	for range 2 { // as often as it is asked
		got, err := wait()
		assert.Equal(t, 7, got)
		assert.Equal(t, io.EOF, err)
	}
	wait = Begin(func() (int, error) { panic("a fault") })
	assert.PanicsWithValue(t, "a fault", func() { wait() })
}
