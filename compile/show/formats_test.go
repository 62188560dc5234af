package show_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/jsonschema-go/jsonschema"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/compile/show"
	"newmake/compile/show/sheet"
)

// Every example as JSON is what the published schema says.
func TestJSONBySchema(t *testing.T) {
	var s jsonschema.Schema
	require.NoError(t, json.Unmarshal(plan.Schema, &s))
	r, err := s.Resolve(nil)
	require.NoError(t, err)
	for _, e := range examples {
		p := planOf(t, "examples/lantern-hollow", e.batch)
		p.Source = &plan.Source{File: "a.batch", Hash: "00"}
		var b bytes.Buffer
		require.NoError(t, show.JSON(&b, p))
		var v any
		require.NoError(t, json.Unmarshal(b.Bytes(), &v))
		assert.NoError(t, r.Validate(v), e.batch)
	}
}

func csvOf(t *testing.T, p *plan.Plan, table string, u measure.Units) [][]string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.CSV(&b, p, table, show.Options{Units: u}))
	assert.NotContains(t, strings.ReplaceAll(b.String(), "\r\n", ""), "\n", "RFC 4180 ends lines with CRLF")
	rows, err := csv.NewReader(&b).ReadAll() // as many cells in each row as in the first
	require.NoError(t, err)
	return rows
}

func TestCSV(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	want := map[string]int{
		"grain": len(p.Bill.Lines), "mash": len(p.Mash.Curve), "ferment": len(p.Ferment.Curve),
		"strip": len(p.Strip.Curve), "spirit": len(p.Spirit.Curve), "cask": len(p.Cask.Forecast),
	}
	for _, s := range p.Schedule.Steps {
		want["steps"] += max(len(s.Read), 1)
	}
	for _, table := range show.Tables {
		assert.Len(t, csvOf(t, p, table, measure.US), want[table]+1, table)
	}
	assert.Equal(t, []string{"years", "volume_gal_60F", "strength_abv_pct_60F", "proof", "proof_gallons", "pure_alcohol_L_20C"}, csvOf(t, p, "cask", measure.US)[0])
	assert.Equal(t, "volume_L_20C", csvOf(t, p, "cask", measure.SI)[0][1])
	mash := csvOf(t, p, "mash", measure.US)
	assert.Equal(t, "temperature_F", mash[0][1])

	var b bytes.Buffer
	err := show.CSV(&b, p, "stills", show.Options{})
	assert.ErrorContains(t, err, "steps, grain, mash")
}

// A table counts as the plan does: gallons and half the proof at 60 F, litres and
// % vol at 20 C; and a reading is what the sheet says, not its conversion.
func TestCSVBasis(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for i, row := range csvOf(t, p, "cask", measure.US)[1:] {
		y := p.Cask.Forecast[i]
		assert.InDelta(t, y.WineGallons, number(row[1]), 0.0051)
		assert.InDelta(t, number(row[3])/2, number(row[2]), 1e-9)
		assert.InDelta(t, y.ProofGallons, number(row[1])*number(row[3])/100, 0.1)
	}
	for i, row := range csvOf(t, p, "cask", measure.SI)[1:] {
		assert.InDelta(t, p.Cask.Forecast[i].VolumeL, number(row[1]), 0.051)
		assert.InDelta(t, p.Cask.Forecast[i].AbvPct, number(row[2]), 0.051)
	}
	for table, r := range map[string]plan.Run{"strip": p.Strip, "spirit": p.Spirit} {
		rows := csvOf(t, p, table, measure.US)
		assert.Equal(t, []string{"spout_abv_pct_60F", "spout_proof", "pot_abv_pct_20C", "over_gal_60F"}, rows[0][3:7])
		gallons := 0.0
		for _, f := range r.Fractions {
			gallons += f.WineGallons
		}
		assert.InDelta(t, gallons/float64(r.Charges), number(rows[len(rows)-1][6]), 0.02, table)
		assert.InDelta(t, number(rows[1][4])/2, number(rows[1][3]), 1e-9, table)
		si := csvOf(t, p, table, measure.SI)
		assert.Equal(t, "over_L_20C", si[0][6])
		assert.InDelta(t, r.Curve[len(r.Curve)-1].OverL, number(si[len(si)-1][6]), 0.001, table)
	}
	said := map[string]bool{}
	for _, row := range csvOf(t, p, "steps", measure.US)[1:] {
		if row[8] == "Heat to 190 F." {
			said[row[12]+" "+row[13]] = true
		}
	}
	assert.Equal(t, map[string]bool{"190 F": true}, said)
}

// A spreadsheet takes a cell that begins with one of these for a formula.
func TestCSVFormulas(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	for _, evil := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "=cmd|' /C calc'!A0", "a,\"b\""} {
		p.Bill.Lines[0].Name = evil
		p.Schedule.Steps[0].Do.Text = evil
		p.Schedule.Steps[0].Vessel = evil
		want := evil
		if strings.ContainsAny(evil[:1], "=+-@") {
			want = "'" + evil
		}
		assert.Equal(t, want, csvOf(t, p, "grain", measure.US)[1][0])
		steps := csvOf(t, p, "steps", measure.US)
		assert.Equal(t, want, steps[1][2])
		assert.Equal(t, want, steps[1][8])
	}
	for i, row := range csvOf(t, p, "steps", measure.US) {
		for _, c := range row {
			assert.False(t, c != "" && strings.ContainsAny(c[:1], "=+@\t\r"), "row %d: %q", i, c)
		}
	}
}

// So do their look-alikes, and what stands behind what shows nothing; and in a
// place where semicolons part the cells, what stands behind one.
func TestCSVLookAlikes(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	for evil, want := range map[string]string{
		"\uff1d1+1": "'\uff1d1+1", "\uff0b1": "'\uff0b1", "\uff0d1": "'\uff0d1", "\uff201": "'\uff201", // full-width
		"\ufe661": "'\ufe661", "\ufe621": "'\ufe621", "\ufe631": "'\ufe631", "\ufe6b1": "'\ufe6b1", // small
		"\u207c1": "'\u207c1", "\u207a1": "'\u207a1", "\u207b1": "'\u207b1", "\u208c1": "'\u208c1", // raised and lowered
		"\u22121": "'\u22121", "\u20101": "'\u20101", "\u20131": "'\u20131", "\u27951": "'\u27951", // minus, dashes
		" =1": "' =1", "\u00a0=1": "'\u00a0=1", "\u3000=1": "'\u3000=1", "\u200b=1": "'\u200b=1", "\"=1\"": "'\"=1\"",
		"\t=1": "'\u2409=1", "\r=1": "'\u240d=1", "\n=1": "'\u240a=1", "\x00=1": "'\u2400=1",
		"a;=1": "a;'=1", "a; \uff1d1;b": "a;' \uff1d1;b",
		"rye": "rye", "rye = 1": "rye = 1", "Ærø 1": "Ærø 1", "rye; corn": "rye; corn", "1-2": "1-2", "": "", "; ": "; ",
	} {
		p.Bill.Lines[0].Name = evil
		assert.Equal(t, want, csvOf(t, p, "grain", measure.US)[1][0], "%q", evil)
	}
}

func calendarOf(t *testing.T, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Calendar(&b, p, show.Options{Units: measure.US}))
	return b.String()
}

// unfold undoes the folding of RFC 5545, section 3.1.
func unfold(s string) []string {
	return strings.Split(strings.TrimSuffix(strings.ReplaceAll(s, "\r\n ", ""), "\r\n"), "\r\n")
}

// What the standard asks of every content line. That the whole can be read by
// somebody else's parser is checked by .ci/sheet.
func TestCalendarLines(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	p.Batch.Name = strings.Repeat("🥃", 20) + `; a, b \ c` + "\nBEGIN:VEVENT\x1b[2J"
	p.Schedule.Steps[0].Do = plan.Say(strings.Repeat("x", 200))
	text := calendarOf(t, p)
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		assert.LessOrEqual(t, len(line), 75, line)
		assert.True(t, utf8.ValidString(line), "%q is cut inside a character", line)
		assert.NotContains(t, line, "\n")
		assert.NotContains(t, line, "\x1b")
	}
	lines := unfold(text)
	events := 0
	for _, l := range lines {
		if l == "BEGIN:VEVENT" {
			events++
		}
	}
	assert.Equal(t, len(p.Schedule.Steps), events)
	assert.Contains(t, strings.Join(lines, "\n"), `\; a\, b \\ c`)
}

func TestCalendar(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	text := calendarOf(t, p)
	assert.Equal(t, text, calendarOf(t, p), "nothing comes from the clock")
	lines := unfold(text)
	assert.Contains(t, lines, "DTSTART;TZID=America/New_York:20260303T070000")
	assert.Contains(t, lines, "TZID:America/New_York")
	// The US turn their clocks on 8 March 2026 at 2:00 (15 U.S.C. 260a).
	assert.Contains(t, lines, "DTSTART:20260308T020000")
	assert.Contains(t, lines, "DTSTART;TZID=America/New_York:20260310T070000")

	alarms, attended := 0, 0
	uids := map[string]bool{}
	for _, l := range lines {
		if l == "BEGIN:VALARM" {
			alarms++
		}
		if uid, ok := strings.CutPrefix(l, "UID:"); ok {
			assert.False(t, uids[uid], "%s comes twice", uid)
			uids[uid] = true
		}
		assert.False(t, strings.HasPrefix(l, "DTSTAMP") && l != "DTSTAMP:20260303T120000Z", l)
	}
	for _, s := range p.Schedule.Steps {
		if s.Attend != plan.Alone {
			attended++
		}
	}
	assert.Equal(t, attended, alarms)

	// A plan computed anew moves its events: same names, other times.
	q := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	q.Schedule.Steps[3].Start = "2026-03-03T08:10:00-05:00"
	for _, l := range unfold(calendarOf(t, q)) {
		if uid, ok := strings.CutPrefix(l, "UID:"); ok {
			assert.True(t, uids[uid])
		}
	}
}

// Zones with a half hour, with summer in January, and with no change at all.
func TestCalendarZones(t *testing.T) {
	for zone, want := range map[string][]string{
		"Asia/Kolkata":       {"TZOFFSETTO:+0530", "DTSTART;TZID=Asia/Kolkata:20260303T173000"},
		"Australia/Hobart":   {"TZOFFSETTO:+1100", "TZOFFSETTO:+1000", "DTSTART;TZID=Australia/Hobart:20260303T230000"},
		"UTC":                {"TZOFFSETTO:+0000", "DTSTART;TZID=UTC:20260303T120000"},
		"Europe/London":      {"BEGIN:DAYLIGHT", "DTSTART;TZID=Europe/London:20260303T120000"},
		"America/Asuncion":   {"DTSTART;TZID=America/Asuncion:"},
		"Pacific/Kiritimati": {"TZOFFSETTO:+1400", "DTSTART;TZID=Pacific/Kiritimati:20260304T020000"},
	} {
		p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
		p.House.Zone = zone
		text := strings.Join(unfold(calendarOf(t, p)), "\n")
		for _, w := range want {
			assert.Contains(t, text, w, zone)
		}
		_, err := time.LoadLocation(zone)
		require.NoError(t, err)
	}
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	p.House.Zone = "Nowhere/Here"
	var b bytes.Buffer
	assert.Error(t, show.Calendar(&b, p, show.Options{}))
}

func markdownOf(t *testing.T, p *plan.Plan) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Markdown(&b, p, show.Options{Units: measure.US}))
	return b.String()
}

// Read back by a parser of CommonMark with GitHub's tables and links.
func TestMarkdown(t *testing.T) {
	p := planOf(t, "examples/lantern-hollow", "Ferry Landing")
	p.Batch.Name = "a|b <script>alert(1)</script> @someone #1 \x1b[2J `x` https://x.example www.x.example"
	p.Law.Title, p.House.Name = "<img src=x>", "![x](http://x.example/y)"
	p.Notices = append(p.Notices, plan.Notice{Code: "NM0000", Severity: "warning", Summary: "[x](javascript:1)", Line: 3})
	text := markdownOf(t, p)
	var html bytes.Buffer
	require.NoError(t, goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert([]byte(text), &html))
	page := html.String()
	for _, bad := range []string{"<script", "<img", "<a ", "\x1b", "@someone", "{}"} {
		assert.False(t, strings.Contains(page, bad), "%q is in the page", bad)
	}
	assert.Contains(t, page, "a|b &lt;script&gt;alert(1)&lt;/script&gt;")
	assert.Equal(t, 4, strings.Count(page, "<table>"))
	assert.Equal(t, len(p.Bill.Lines)+len(p.Law.Conditions)+len(p.Schedule.Steps)+numbers(text),
		strings.Count(page, "<tr>")-4)
	assert.Contains(t, page, "<td>Heat to 190 F.</td>")
}

// numbers counts the rows of the first table.
func numbers(text string) int {
	_, rest, _ := strings.Cut(text, "|---|---:|\n")
	table, _, _ := strings.Cut(rest, "\n\n")
	return strings.Count(table, "\n") + 1
}

// No rendering shows the plan's own name of a unit to a reader. JSON is the plan
// itself.
func TestUnitsInWords(t *testing.T) {
	raw := regexp.MustCompile(`delta\\?_`)
	for _, e := range examples {
		p := planOf(t, "examples/lantern-hollow", e.batch)
		for _, u := range []measure.Units{measure.US, measure.SI} {
			o := show.Options{Units: u}
			out := map[string]func(io.Writer) error{
				"text": func(w io.Writer) error { return show.Text(w, p, o) },
				"md":   func(w io.Writer) error { return show.Markdown(w, p, o) },
				"ics":  func(w io.Writer) error { return show.Calendar(w, p, o) },
				"html": func(w io.Writer) error { return sheet.HTML(w, p, sheet.Options{Units: u}) },
			}
			for _, table := range show.Tables {
				out["csv "+table] = func(w io.Writer) error { return show.CSV(w, p, table, o) }
			}
			for name, write := range out {
				var b bytes.Buffer
				require.NoError(t, write(&b), name)
				assert.Empty(t, raw.FindString(b.String()), "%s, %s, units %v", e.batch, name, u)
			}
		}
	}
}
