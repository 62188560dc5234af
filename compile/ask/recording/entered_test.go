package recording

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A visit that is typed on a screen stands in the record as it would if it were asked
// for in a terminal.
func TestEnter(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	heat, pitch := line(t, page, "mash.5.temperature"), line(t, page, "ferment.pitch.gravity")
	require.True(t, heat.Timed)
	next, err := page.Enter(Entered{Values: []Value{{"mash.5.temperature", "191", ""}}, Clock: "10:04", By: "M", Remark: "rake \"stuck\""})
	require.NoError(t, err)
	assert.Contains(t, string(next.Text), `10:04 heat     191 F by "M" "rake \"stuck\""`)
	asked, err := page.Fill(heat, `10:04 191 by M`)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(string(next.Text), ` "rake \"stuck\""`, "", 1), string(asked.Text))

	// Of a line with several blanks some are typed, the rest stay open.
	next, err = next.Enter(Entered{Values: []Value{{"ferment.pitch.gravity", "1.066", "68"}, {"ferment.pitch.pH", "none", ""}}, Clock: "13:55"})
	require.NoError(t, err)
	assert.Contains(t, string(next.Text), "1.066 SG at 68 F")
	assert.Contains(t, string(next.Text), "pH none")
	assert.Equal(t, "ferment.pitch.temperature", line(t, next, "ferment.pitch.temperature").Blanks[0].Blank.ID)
	assert.Len(t, pitch.Blanks, 3)
	// The rest is typed later: the line has its time, and keeps it.
	last, err := next.Enter(Entered{Values: []Value{{"ferment.pitch.temperature", "79", ""}}, Clock: "14:10"})
	require.NoError(t, err)
	assert.Contains(t, string(last.Text), "13:55 pitch")
	assert.NotContains(t, string(last.Text), "14:10")
}

// What is not taken says why, and changes nothing; nothing that is typed becomes
// anything but a value.
func TestEnterRefuses(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	was := string(page.Text)
	one := func(read, sample string) []Value { return []Value{{"mash.5.temperature", read, sample}} }
	for name, c := range map[string]struct {
		e   Entered
		why string
	}{
		"nothing":         {Entered{}, "type a value"},
		"an empty value":  {Entered{Values: one(" ", "")}, "type a value"},
		"no such blank":   {Entered{Values: []Value{{"mash.99.temperature", "1", ""}}}, "no open blank"},
		"twice":           {Entered{Values: append(one("191", ""), one("192", "")...)}, "twice"},
		"a word":          {Entered{Values: one("hot", "")}, "a number with its unit"},
		"another unit":    {Entered{Values: one("191 gal", "")}, "temperature"},
		"a block":         {Entered{Values: one("191 F\n}\nplant \"x\" {", "")}, "no value"},
		"a brace":         {Entered{Values: one("191 }", "")}, "no value"},
		"a comment":       {Entered{Values: one("191 # 180", "")}, "no value"},
		"a remark inside": {Entered{Values: one("191 \"x\"", "")}, "no value"},
		"a sample's line": {Entered{Values: one("191", "66\nx")}, "no value"},
		"a dotted clock":  {Entered{Values: one("191", ""), Clock: "10.04"}, "10:04"},
		"no clock":        {Entered{Values: one("191", ""), Clock: "noon"}, "10:04"},
		"a clock and on":  {Entered{Values: one("191", ""), Clock: "10:04 heat"}, "10:04"},
		"hour 25":         {Entered{Values: one("191", ""), Clock: "25:04"}, "25:04"},
		"a name's line":   {Entered{Values: one("191", ""), By: "M\n}"}, "the name of who read it"},
		"an escape":       {Entered{Values: one("191", ""), Remark: "\x1b]8;;"}, "the remark"},
	} {
		next, err := page.Enter(c.e)
		if assert.Error(t, err, name) {
			assert.Contains(t, err.Error(), c.why, name)
		}
		assert.Nil(t, next, name)
		assert.Equal(t, was, string(page.Text), name)
	}
	// Quotes and braces in a remark and a name are text.
	next, err := page.Enter(Entered{Values: one("191", ""), By: `M" } x`, Remark: `} # "quoted" \`})
	require.NoError(t, err)
	assert.Empty(t, next.Diags)
	assert.Equal(t, `} # "quoted" \`, visitNote(next))
	// A remark of several lines becomes one.
	next, err = page.Enter(Entered{Values: one("191", ""), Remark: "foams\r\n } over\n"})
	require.NoError(t, err)
	assert.Empty(t, next.Diags)
	assert.Equal(t, "foams } over", visitNote(next))
}

func visitNote(p *Page) string {
	for _, v := range p.Run.Visits {
		if v.Note != "" {
			return v.Note
		}
	}
	return ""
}
