package asking

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/ask/recording"
	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/check"
	"newmake/lang/logbook"
	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

// opened is a run of Ferry Landing in which nothing has been read.
func opened(t *testing.T) *recording.Page {
	t.Helper()
	return openedIn(t, measure.US)
}

// openedIn is that in a house that counts in some units.
func openedIn(t *testing.T, u measure.Units) *recording.Page {
	t.Helper()
	h, err := check.Load("../../../../examples/lantern-hollow", check.Options{})
	require.NoError(t, err)
	b, list := h.Batch("Ferry Landing")
	require.NotNil(t, b, list)
	p, _ := compile.Compile(b)
	planned := blank.Of(p)
	text, err := recording.Skeleton(recording.Head{Number: "26-03", Batch: b.Name, Date: "2026-03-03"}, planned, u)
	require.NoError(t, err)
	page, err := recording.Read("26-03.batch", text, "26-03", planned, logbook.Around{Zone: plan.Moment(p.Schedule.Start).Location(), Instrument: func(string) *record.Instrument { return nil }}, u)
	require.NoError(t, err)
	return page
}

// say fills the page with what a person types, and gives what they saw and each text
// that was kept.
func say(t *testing.T, p *recording.Page, typed ...string) (*recording.Page, string, []string) {
	t.Helper()
	var out bytes.Buffer
	var kept []string
	then, err := Talk{In: strings.NewReader(strings.Join(typed, "\n")), Out: &out, Keep: func(p *recording.Page) error {
		kept = append(kept, string(p.Text))
		return nil
	}}.Fill(p)
	require.NoError(t, err)
	return then, out.String(), kept
}

// TestWholeSheet: a whole sheet goes in, a line of typing for each visit, and each is
// kept before the next is asked for.
func TestWholeSheet(t *testing.T) {
	p := opened(t)
	var typed []string
	keys := 0
	for _, l := range p.Lines() {
		var values []string
		for _, r := range l.Blanks {
			v, unit := measure.US.Value(r.Blank.Should)
			values = append(values, fmt.Sprintf("%.*f", map[string]int{"SG": 3, "pH": 1}[unit], v))
		}
		text := strings.Join(values, " ")
		if l.Timed && l.Blanks[0].Blank.Due != "" {
			text = measure.Clock(l.Blanks[0].Blank.Due) + " " + text
		}
		typed, keys = append(typed, text), keys+len(text)+1
	}
	lines := len(typed)
	typed = append(typed, "LH-0012 53 98 501", "")
	then, out, kept := say(t, p, typed...)
	assert.Empty(t, then.Lines(), "nothing is open")
	assert.Len(t, kept, lines+1, "each is kept by itself")
	assert.Contains(t, string(then.Text), `into "LH-0012" 53 gal, tare 98 lb, gross 501 lb`)
	assert.Contains(t, out, fmt.Sprintf("1 of %d", lines))
	assert.Regexp(t, `a cask that was filled, planned 2026-03-\d\d \d\d:\d\d \(Enter: no more\)\n  its serial, 5\d\.\d gal, tare \d+(\.\d)? lb, gross \d+(\.\d)? lb\n`, out)
	assert.Regexp(t, `(?m)^ +# a line for each cask, planned 2026-03-\d\d \d\d:\d\d: into "its serial" 5\d\.\d gal, tare .* lb, gross .* lb$`, string(p.Text))
	assert.NotContains(t, out, "not taken")
	assert.False(t, then.Diags.HasErrors())
	// The keystrokes that a sheet takes: at two a second, which is slow, five minutes
	// are 600; whoever types from paper does three or four.
	t.Logf("%d keys in %d lines", keys, lines)
	assert.Less(t, keys, 1000)
}

func TestSkipBackStop(t *testing.T) {
	p := opened(t)
	then, out, kept := say(t, p, "541", "", "back", "79", "back", "80", "?", "stop", "99")
	text := strings.Join(strings.Fields(string(then.Text)), " ")
	assert.Contains(t, text, "corn 541 lb # 537")
	assert.Contains(t, text, "oats 80 lb")
	assert.NotContains(t, text, "99 lb")
	assert.Len(t, kept, 4, "two answers, one taken back, and the other")
	assert.Equal(t, 2, strings.Count(out, "Enter skips a line"))
	_, out, _ = say(t, p, "back", "stop")
	assert.Contains(t, out, "nothing comes before")
}

// TestWrongAndOdd: what cannot be so is asked for again; what is odd is kept.
func TestWrongAndOdd(t *testing.T) {
	p := opened(t)
	typed := []string{"541 lb 3", "5410", "back", "541"}
	for _, l := range p.Lines()[1:] {
		if !l.Timed { // the rest of what was weighed out
			typed = append(typed, "")
		}
	}
	typed = append(typed, "10.04 58 270", "10:04 588 270", "stop")
	then, out, kept := say(t, p, typed...)
	assert.Contains(t, out, "not taken: 2 values were typed")
	assert.Contains(t, out, "not taken: a clock is written 10:04")
	assert.Contains(t, out, "kept, but `588 F` is hard to believe")
	assert.Contains(t, string(then.Text), "588 F")
	assert.Contains(t, out, "kept, but `5410 lb` of corn is 10 times the 537.2 lb of the plan: is that so? (\"back\" takes it back)")
	assert.Len(t, kept, 4)
}

// TestDecimalCommaIsAskedAgain: nothing of it is kept, and the same line is asked for again.
func TestDecimalCommaIsAskedAgain(t *testing.T) {
	then, out, kept := say(t, opened(t), "541,5", "541.5", "stop")
	assert.Contains(t, out, "not taken: `541,5` can be read in two ways, 541.5 or 541, 5: write `541.5` if the comma is a decimal mark")
	assert.Equal(t, 2, strings.Count(out, "used: corn"))
	assert.Contains(t, string(then.Text), "541.5 lb")
	assert.Len(t, kept, 1)
}

// TestSampleInTheHousesUnit: the help speaks of a sample as the house measures it.
func TestSampleInTheHousesUnit(t *testing.T) {
	for u, want := range map[measure.Units]string{measure.US: `"at 66" behind`, measure.SI: `"at 19" behind`} {
		_, out, _ := say(t, openedIn(t, u), "?", "stop")
		assert.Equal(t, 2, strings.Count(out, want))
	}
}

// TestLeftInATank: of what no cask took is asked to which tank it went, and it is kept as it is
// typed; of nothing else it is asked.
func TestLeftInATank(t *testing.T) {
	p := opened(t)
	var typed []string
	for _, l := range p.Lines() {
		if l.Goes {
			break
		}
		typed = append(typed, "")
	}
	require.Len(t, typed, len(p.Lines())-1, "it is the last line")
	p, out, _ := say(t, p, append(typed, `16:00 0.3 120 to "Small tank" "clear"`, "stop")...)
	assert.Equal(t, 1, strings.Count(out, `to "which tank"`))
	assert.Regexp(t, `16:00 left 0.3 gal, 120 proof to "Small tank" "clear"`, string(p.Text))
}

// TestLost: where it cannot be kept the asking ends, and says so.
func TestLost(t *testing.T) {
	full := errors.New("the disk is full")
	_, err := Talk{In: strings.NewReader("541\n79\n"), Out: &bytes.Buffer{}, Keep: func(*recording.Page) error { return full }}.Fill(opened(t))
	assert.ErrorIs(t, err, full)
}

// TestSlipped: somebody who reads from the sheet and skips a line is asked, and may put the
// answer where it fits, keep it, or type it anew; "back" takes all of it back.
func TestSlipped(t *testing.T) {
	p := opened(t)
	oats := ""
	for _, l := range p.Lines() {
		if l.What == "used: oats" {
			v, _ := measure.US.Value(l.Blanks[0].Blank.Should)
			oats = fmt.Sprintf("%.1f", v)
		}
	}
	then, out, kept := say(t, p, oats, "there", "62", "stop")
	text := strings.Join(strings.Fields(string(then.Text)), " ")
	assert.Contains(t, out, "that is far from what used: corn should say, and near what used: oats does, below it")
	assert.Contains(t, text, "corn # 537.2 lb")
	assert.Contains(t, text, "oats "+oats+" lb")
	assert.Contains(t, text, "rye 62 lb")
	assert.Len(t, kept, 2)

	then, _, _ = say(t, p, oats, "there", "back", "541", "stop")
	text = strings.Join(strings.Fields(string(then.Text)), " ")
	assert.Contains(t, text, "corn 541 lb", "the line that was skipped is asked for again")
	assert.NotContains(t, text, "oats "+oats+" lb")

	then, out, _ = say(t, p, oats, "", "stop")
	assert.Contains(t, strings.Join(strings.Fields(string(then.Text)), " "), "corn "+oats+" lb")
	assert.Contains(t, out, "\nKept, and far from the plan:\n  `"+oats+" lb` of corn is little beside the 537.2 lb of the plan\n", "and it is said again at the end")

	then, out, _ = say(t, p, oats, "541", "stop")
	assert.Contains(t, strings.Join(strings.Fields(string(then.Text)), " "), "corn 541 lb")
	assert.NotContains(t, out, "far from the plan:")
}
