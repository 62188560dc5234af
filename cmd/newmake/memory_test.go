package main

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The first collection is put off, and the later ones by less.
func TestCollectLate(t *testing.T) {
	t.Setenv("GOGC", "")
	before := debug.SetGCPercent(100)
	defer debug.SetGCPercent(before)
	percent := func() int {
		now := []metrics.Sample{{Name: "/gc/gogc:percent"}}
		metrics.Read(now)
		return int(now[0].Value.Uint64())
	}
	collectLate()
	assert.Equal(t, firstCollection, percent())
	runtime.GC()
	require.Eventually(t, func() bool { return percent() == laterCollections }, 10*time.Second, time.Millisecond)

	t.Setenv("GOGC", "50") // what a person sets stays
	collectLate()
	assert.Equal(t, laterCollections, percent())
}
