package recording

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile/plan"
	"newmake/lang/record"
	"newmake/lang/testflag"
)

var later = record.Date{Year: 2026, Month: 3, Day: 5}

func slip(id, read, sample string) Entered { return Entered{Values: []Value{{id, read, sample}}} }

// What was mistyped is put right by a line beside it; what was written stays, and what
// holds is shown with it.
func TestCorrect(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	const heat, pitch = "mash.5.temperature", "ferment.pitch.gravity"
	page, err := page.Enter(Entered{Values: []Value{{heat, "119", ""}}, Clock: "10:04", By: "M"})
	require.NoError(t, err)
	e := slip(heat, "191", "")
	e.By, e.Remark = "A", "read upside down"
	next, err := page.Correct(e, later)
	require.NoError(t, err)
	assert.Empty(t, next.Diags)
	assert.Contains(t, string(next.Text), `10:04 heat     119 F by "M"`, "it stays")
	assert.Contains(t, string(next.Text), "\n    corrected 10:04 heat 119 F to 191 F on 2026-03-05 by \"A\" \"read upside down\"\n")
	e.Remark = "read\nupside down"
	lines, err := page.Correct(e, later)
	require.NoError(t, err)
	assert.Equal(t, string(next.Text), string(lines.Text), "a remark is of one line")
	said := next.Shown().Read[heat]
	assert.Equal(t, Said{Value: "191 F", Was: "119 F", When: "10:04", By: "M", Unit: "F"}, said)

	// Again, behind the first; then it was not read after all; then there is nothing.
	next, err = next.Correct(slip(heat, "190", ""), later)
	require.NoError(t, err)
	first, second := strings.Index(string(next.Text), "119 F to 191 F"), strings.Index(string(next.Text), "191 F to 190 F")
	assert.Greater(t, second, first)
	assert.Equal(t, "190 F", next.Shown().Read[heat].Value)
	next, err = next.Correct(slip(heat, "none", ""), later)
	require.NoError(t, err)
	assert.Equal(t, Said{Value: "none", Was: "119 F", When: "10:04", By: "M"}, next.Shown().Read[heat])
	_, err = next.Correct(slip(heat, "190", ""), later)
	assert.ErrorContains(t, err, "taken back already")

	// A reading with its sample, and its time; the pH beside it stays.
	page, err = page.Enter(Entered{Values: []Value{{pitch, "1.666", "86"}, {"ferment.pitch.pH", "5.1", ""}}, Clock: "13:55"})
	require.NoError(t, err)
	e = slip(pitch, "1.066", "68")
	e.Clock = "13:45"
	next, err = page.Correct(e, later)
	require.NoError(t, err)
	for _, line := range []string{"corrected 13:55 pitch 86 F to 68 F on", "corrected 13:55 pitch 1.666 SG to 1.066 SG on", "corrected 13:55 pitch 13:55 to 13:45 on"} {
		assert.Contains(t, string(next.Text), line)
	}
	said = next.Shown().Read[pitch]
	assert.Equal(t, "1.066 SG at 68 F", said.Value)
	assert.Equal(t, "1.666 SG at 86 F", said.Was)
	assert.Equal(t, "13:45", said.When)
	assert.True(t, said.Sampled)
	assert.Equal(t, "", next.Shown().Read["ferment.pitch.pH"].Was)

	// A weight.
	page, err = page.Enter(slip("used.corn", "573", ""))
	require.NoError(t, err)
	next, err = page.Correct(slip("used.corn", "537", ""), later)
	require.NoError(t, err)
	assert.Contains(t, string(next.Text), "corrected corn 573 lb to 537 lb on 2026-03-05\n")
	assert.Equal(t, "537 lb", next.Shown().Read["used.corn"].Value)
}

// Every reading of every example can be put right, also where its line and another's are
// alike.
func TestCorrectEveryReading(t *testing.T) {
	for i, batch := range []string{"Ferry Landing", "Low Bridge", "Toll Road", "Stone Ferry"} {
		if i%testflag.Every(3) != 0 {
			continue
		}
		page, _ := opened(t, batch)
		var ids []string
		for _, b := range page.Planned.Blanks {
			if _, open := page.Shown().Open[b.ID]; !open {
				continue
			}
			e := slip(b.ID, "41", "")
			if b.Stage == plan.Used { // two lines of water of one volume can't be told apart
				e = slip(b.ID, fmt.Sprintf("%d", 43+len(ids)), "")
			}
			if line(t, page, b.ID).Timed && b.Due != "" {
				e.Day, e.Clock = b.Due[:10], plan.Moment(b.Due).Format("15:04")
			}
			next, err := page.Enter(e)
			require.NoError(t, err, "%s %s", batch, b.ID)
			page, ids = next, append(ids, b.ID)
		}
		require.Greater(t, len(ids), 30)
		for _, id := range ids {
			was, ok := page.answer(id)
			require.True(t, ok, "%s: %s", batch, id)
			next, err := page.Correct(slip(id, "42", ""), later)
			if assert.NoError(t, err, "%s: %s", batch, id) {
				now, _ := next.answer(id)
				v, held := now.Reading.Holds()
				assert.True(t, held && v.Number == 42, "%s: %s: %s", batch, id, v)
				assert.Equal(t, was.Reading.Value, now.Reading.Value)
				assert.Len(t, next.Run.Corrections, 1)
			}
		}
	}
}

func TestCorrectRefuses(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	page, err := page.Enter(slip("mash.5.temperature", "119", ""))
	require.NoError(t, err)
	page, err = page.Enter(Entered{Values: slip("mash.7.temperature", "158", "").Values, Clock: "11:05"})
	require.NoError(t, err)
	page, err = page.Enter(Entered{Values: slip("mash.8.temperature", "156", "").Values, Clock: "11:08"})
	require.NoError(t, err)
	was := string(page.Text)
	for name, c := range map[string]struct {
		e   Entered
		why string
	}{
		"nothing":       {Entered{}, "type what it should have been"},
		"empty":         {slip("mash.5.temperature", " ", ""), "type what it should have been"},
		"the same":      {slip("mash.5.temperature", "119", ""), "type what it should have been"},
		"not read yet":  {slip("mash.6.temperature", "190", ""), "no reading here to correct"},
		"no such":       {slip("mash.99.temperature", "190", ""), "no reading here to correct"},
		"another kind":  {slip("mash.5.temperature", "191 gal", ""), "temperature"},
		"a word":        {slip("mash.5.temperature", "hot", ""), ""},
		"a block":       {slip("mash.5.temperature", "191 F\n}\nplant \"x\" {", ""), "no value"},
		"no sample":     {slip("mash.5.temperature", "191", "66"), "no temperature of a sample"},
		"no clock":      {Entered{Values: slip("mash.5.temperature", "191", "").Values, Clock: "10:04"}, "no time stands"},
		"a name's line": {Entered{Values: slip("mash.5.temperature", "191", "").Values, By: "M\n}"}, "the name of who read it"},
		"a remark":      {Entered{Values: slip("mash.5.temperature", "191", "").Values, Remark: "upside\x00 down"}, "the remark"},
		"a cold sample": {slip("mash.5.temperature", "191", "66 {"), `"66 {" is no value`},
		"too early":     {Entered{Values: slip("mash.8.temperature", "", "").Values, Clock: "09:00"}, "earlier than the line above"},
	} {
		next, err := page.Correct(c.e, later)
		assert.ErrorContains(t, err, c.why, name)
		assert.Nil(t, next, name)
		assert.Equal(t, was, string(page.Text), name)
	}
}
