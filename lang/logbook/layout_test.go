package logbook

import (
	"os"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/record"
	"newmake/lang/schema"
	"newmake/lang/tree"
)

// readRun reads the first run of a text.
func readRun(t *testing.T, text []byte) (*record.Run, diag.List) {
	t.Helper()
	file, list := lang.Parse(diag.NewSource("run", text))
	require.Empty(t, list)
	nodes, _ := tree.Declarations(file.Stmts, nil, &list)
	require.Empty(t, list)
	require.Equal(t, schema.Run, nodes[0].Field)
	return Run(nodes[0], Around{Zone: time.UTC, Instrument: func(string) *record.Instrument { return nil }})
}

// TestLayoutKeepsTheRecord: a messy run is laid out once and then stays, and says the
// same before and after.
func TestLayoutKeepsTheRecord(t *testing.T) {
	text, err := os.ReadFile("../../compile/blank/testdata/26-03.batch")
	require.NoError(t, err)
	out, list := lang.Format(diag.NewSource("run", text))
	require.Empty(t, list)
	assert.Equal(t, string(text), string(out))

	crooked := []byte{}
	for _, c := range text { // every space twice, but for those in quotes
		if crooked = append(crooked, c); c == ' ' {
			crooked = append(crooked, c)
		}
	}
	before, said := readRun(t, text)
	assert.Empty(t, said)
	laid, list := lang.Format(diag.NewSource("run", crooked))
	require.Empty(t, list)
	after, said := readRun(t, laid)
	assert.Empty(t, said)
	require.Len(t, after.Visits, len(before.Visits))
	for i := range before.Visits {
		a, b := before.Visits[i], after.Visits[i]
		assert.Equal(t, a.Word, b.Word)
		assert.Equal(t, a.When.Time, b.When.Time)
		require.Len(t, b.Read, len(a.Read))
		for j := range a.Read {
			assert.Equal(t, a.Read[j].Value, b.Read[j].Value)
			assert.Equal(t, a.Read[j].At, b.Read[j].At)
		}
	}
}

// TestWhatWasRead: readings, who, instruments, samples, a correction beside what it
// corrects.
func TestWhatWasRead(t *testing.T) {
	text, err := os.ReadFile("../../compile/blank/testdata/26-03.batch")
	require.NoError(t, err)
	run, said := readRun(t, text)
	require.Empty(t, said)
	assert.Len(t, run.Used, 7)
	assert.Equal(t, "R-07", run.Used[2].Lot)
	require.Len(t, run.Corrections, 1)
	var heat, rest, pitch, tails *record.Visit
	for i := range run.Visits {
		switch v := &run.Visits[i]; {
		case v.Word == "heat":
			heat = v
		case v.Word == "rest" && v.Nth == 2:
			rest = v
		case v.Word == "pitch":
			pitch = v
		case v.Word == "to" && v.Of == "tails":
			tails = v
		}
	}
	assert.Equal(t, "119 F", heat.Read[0].Value.String(), "what was read stays")
	held, ok := heat.Read[0].Holds()
	assert.True(t, ok)
	assert.Equal(t, "191 F", held.String())
	assert.Equal(t, "M", heat.By)
	assert.True(t, rest.None)
	assert.Equal(t, "J", rest.By)
	assert.Equal(t, []string{"H3", "H5"}, []string{pitch.Read[0].With, pitch.Read[1].With})
	assert.Nil(t, pitch.Read[2].At, "a pH takes no temperature from another's sample")
	c, said2 := pitch.Read[0].Sample()
	assert.True(t, said2)
	assert.InDelta(t, 25.56, c, 0.01)
	assert.Equal(t, "nose", tails.Why)
	assert.Equal(t, "wet cardboard", tails.Note)
	assert.Equal(t, []record.What{record.Spout, record.Receiver}, []record.What{tails.Read[0].What, tails.Read[1].What})
}
