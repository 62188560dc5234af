package review

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/record"
)

// What was written down as lost is no break of the balance, wherever it was lost; unwritten,
// it is one.
func TestWhatWasLost(t *testing.T) {
	is := balanced()
	loss := func(l float64, of string) (string, string, record.Reading) {
		return "lost", of, said(record.Lost, quantity.Volume, "L", l/1000, 0)
	}
	at := func(r *record.Run, place, stage int, word, of string, read ...record.Reading) {
		r.Visits = append(r.Visits[:place:place], append([]record.Visit{{Stage: stage, Word: word, Of: of, Read: read}}, r.Visits[place:]...)...)
	}
	for name, c := range map[string]struct {
		less func(*record.Run) // of readings after it
		put  func(*record.Run)
		in   string
	}{
		"low wines, before they were gauged": {
			func(r *record.Run) {
				for _, v := range []int{4, 5} {
					r.Visits[v].Read[0].SI -= 0.060
				}
				r.Visits[9].Read[0].SI -= 0.060 * is.lowAbv / is.tailsAbv
			},
			func(r *record.Run) { word, of, read := loss(60, ""); at(r, 4, 1, word, of, read) },
			inWashRun,
		},
		"low wines that waited": {
			func(r *record.Run) {
				r.Visits[5].Read[0].SI -= 0.060
				r.Visits[9].Read[0].SI -= 0.060 * is.lowAbv / is.tailsAbv
			},
			func(r *record.Run) { word, of, read := loss(60, "low-wines"); at(r, 5, 1, word, of, read) },
			asLowWinesWaited,
		},
		"hearts at the spout": {
			func(r *record.Run) { r.Visits[8].Read[0].SI -= 0.030 },
			func(r *record.Run) { word, of, read := loss(30, ""); at(r, 8, 2, word, of, read) },
			inSpiritRun,
		},
		"tails": {
			func(r *record.Run) { r.Visits[9].Read[0].SI -= 0.060 },
			func(r *record.Run) { word, of, read := loss(60, "tails"); at(r, 9, 2, word, of, read) },
			inSpiritRun,
		},
	} {
		r := is.run(exact)
		c.less(r)
		unwritten, err := balances(r, plainBench(), is.expected())
		require.NoError(t, err)
		assert.False(t, unwritten.Balanced(), name)
		c.put(r)
		assert.Equal(t, c.in, written(plainBench(), r, is.expected()).lost[0].in, name)
		b, err := balances(r, plainBench(), is.expected())
		require.NoError(t, err)
		assert.InDelta(t, 0, b.Scatter, 1e-6, name)
		assert.Equal(t, unwritten.Checks, b.Checks, name)
	}
}

// At the filling the spirit is what is in the casks, what was left and what was lost.
func TestWhatWasLeft(t *testing.T) {
	is := balanced()
	filled := func(lines ...record.Visit) *Balance {
		r := is.run(exact)
		r.Stages = append(r.Stages, record.Stage{Name: record.Fill})
		reducedL := is.hearts * is.heartsAbv / 60
		lines = append([]record.Visit{{Word: "hearts", Read: []record.Reading{litres(is.hearts, 0), strength(is.heartsAbv, 0)}}, {Word: "gauge", Read: []record.Reading{litres(reducedL, 0), strength(60, 0)}}}, lines...)
		for _, v := range lines {
			v.Stage = 3
			r.Visits = append(r.Visits, v)
		}
		b, err := balances(r, plainBench(), is.expected())
		require.NoError(t, err)
		return b
	}
	all := is.hearts * is.heartsAbv / 60
	line := func(word string, read ...record.Reading) record.Visit { return record.Visit{Word: word, Read: read} }
	kg := func(what record.What, kg float64) record.Reading { return said(what, quantity.Mass, "kg", kg, 0) }
	lost := said(record.Lost, quantity.Volume, "L", 0.005, 0)

	whole := filled(line("into", litres(all, 0)))
	assert.InDelta(t, 0, whole.Scatter, 1e-6)
	assert.InDelta(t, 0, filled(line("into", litres(150, 0)), line("left", litres(all-150, 0))).Scatter, 1e-6)
	assert.InDelta(t, 0, filled(line("into", litres(150, 0)), line("left", litres(all-150, 0), strength(60, 0))).Scatter, 1e-6)
	assert.InDelta(t, 0, filled(line("left", litres(all, 0))).Scatter, 1e-6, "all of it into a tank")
	assert.InDelta(t, 0, filled(line("into", litres(150, 0)), line("lost", lost), line("left", litres(all-155, 0))).Scatter, 1e-6)
	assert.False(t, filled(line("into", litres(150, 0))).Balanced(), "what was left is missing")

	// A cask may be known by its weights; of one that nobody read nothing balances.
	_, perLitre, _ := massKg(1, 60)
	assert.InDelta(t, 0, filled(line("into", kg(record.Tare, 50), kg(record.Gross, 50+150*perLitre)), line("left", litres(all-150, 0))).Scatter, 1e-6)
	unread := filled(line("into", litres(150, 0)), line("into"))
	assert.Equal(t, whole.Checks-1, unread.Checks)
	assert.True(t, unread.Balanced())
	unread = filled(line("into", litres(150, 0)), line("left", strength(60, 0)))
	assert.Equal(t, whole.Checks-1, unread.Checks, "how much was left nobody says")
}
