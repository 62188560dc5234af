package racked

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	ics "github.com/arran4/golang-ical"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/book/cellar"
)

func calendar(t *testing.T, c *cellar.Cellar) (string, []*ics.VEvent) {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, ICS(&b, c))
	read, err := ics.ParseCalendar(strings.NewReader(b.String()))
	require.NoError(t, err)
	return b.String(), read.Events()
}

// Casks of one run that are due on one day are one event; what has been due stands on
// the day that is asked for, a rest that ended too; an empty cask has none; and what a house wrote
// stays text.
func TestICS(t *testing.T) {
	row := func(serial, run, sample string, target *cellar.Target) cellar.Row {
		return cellar.Row{Serial: serial, Batch: "Ferry Landing", Run: run, Sample: sample, Target: target, Now: cellar.Holds{VolumeL: 190}, Place: "Rick house", Spot: []string{"row 2"}}
	}
	rest := &cellar.Target{On: "2029-03-31", Low: cellar.Holds{ProofGallons: 50}, High: cellar.Holds{ProofGallons: 58}}
	c := &cellar.Cellar{Units: "us", On: "2028-06-30", Casks: []cellar.Row{
		row("C-1", "25-01", "2028-09-30", rest), row("C-2", "25-01", "2028-09-30", rest),
		row("C-3", "24-07", "2028-02-29", &cellar.Target{On: "2028-02-28", Low: cellar.Holds{ProofGallons: 50}, High: cellar.Holds{ProofGallons: 58}, Over: true}),
		row("C-4", "24-07", "2028-02-29", rest),
	}}
	c.Casks[3].Now = cellar.Holds{}
	text, events := calendar(t, c)
	require.Len(t, events, 4)
	var said []string
	for _, e := range events {
		said = append(said, e.GetProperty(ics.ComponentPropertyDtStart).Value+" "+e.GetProperty(ics.ComponentPropertySummary).Value)
	}
	assert.Equal(t, []string{"20280630 Rest over: 1 cask · Ferry Landing", "20280630 Sample 1 cask · Ferry Landing", "20280930 Sample 2 casks · Ferry Landing", "20290331 Rest over: 2 casks · Ferry Landing"}, said)
	assert.Contains(t, events[3].GetProperty(ics.ComponentPropertyDescription).Value, "C-1, Rick house, row 2: should hold 50.0 to 58.0 PG")
	assert.Contains(t, text, "DTSTART;VALUE=DATE:20280630\r\n")
	assert.Contains(t, events[1].GetProperty(ics.ComponentPropertyDescription).Value, "due since 2028-02-29")
	assert.NotContains(t, text, "C-4")

	// The same again is the same to the byte; another day of asking keeps its events.
	again, _ := calendar(t, c)
	assert.Equal(t, text, again)
	c.On = "2028-07-01"
	_, later := calendar(t, c)
	for i := range later {
		assert.Equal(t, events[i].Id(), later[i].Id())
	}

	c.Casks[0].Batch, c.Casks[0].Serial = "x\r\nBEGIN:VEVENT\x1b]8;;", "a,b;c\nSUMMARY:evil"
	text, events = calendar(t, c)
	assert.Equal(t, len(events), strings.Count(text, "\nBEGIN:VEVENT"), "a name became an event")
	assert.NotContains(t, text, "\nSUMMARY:evil")
	assert.NotContains(t, text, "\x1b")

	_, none := calendar(t, &cellar.Cellar{On: "2028-06-30"})
	assert.Empty(t, none)
	assert.Error(t, ICS(&bytes.Buffer{}, &cellar.Cellar{}), fmt.Sprint("a cellar is of a day"))
}
