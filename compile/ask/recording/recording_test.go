package recording

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"newmake/compile"
	"newmake/compile/blank"
	"newmake/compile/measure"
	"newmake/compile/plan"
	sheet "newmake/compile/show/csv"
	"newmake/lang"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/logbook"
	"newmake/lang/record"
	_ "newmake/lang/testflag"
)

const lantern = "../../../examples/lantern-hollow"

// opened is a run of a batch in which nothing has been read, and the plan of it.
func opened(t testing.TB, batch string) (*Page, *plan.Plan) {
	t.Helper()
	return openedIn(t, batch, measure.US)
}

// openedIn is that in a house that counts in some units.
func openedIn(t testing.TB, batch string, u measure.Units) (*Page, *plan.Plan) {
	t.Helper()
	h, err := check.Load(lantern, check.Options{})
	require.NoError(t, err)
	b, list := h.Batch(batch)
	require.NotNil(t, b, list)
	p, _ := compile.Compile(b)
	require.NotNil(t, p)
	text, err := Skeleton(Head{"26-03", batch, p.Batch.Start[:10], "763d4ec9d066"}, blank.Of(p), u)
	require.NoError(t, err)
	zone := plan.Moment(p.Schedule.Start).Location()
	page, err := Read("26-03.batch", text, "26-03", blank.Of(p), logbook.Around{Zone: zone, Instrument: func(string) *record.Instrument { return nil }}, u)
	require.NoError(t, err)
	require.Empty(t, page.Diags)
	return page, p
}

// line finds the line that has a blank.
func line(t testing.TB, p *Page, id string) Line {
	t.Helper()
	for _, l := range p.Lines() {
		for _, r := range l.Blanks {
			if r.Blank != nil && r.Blank.ID == id {
				return l
			}
		}
	}
	require.Fail(t, "no line has "+id)
	return Line{}
}

// TestSkeletonHasEveryBlank: of every example each blank has its place on a line, and
// none has a clock or a value.
func TestSkeletonHasEveryBlank(t *testing.T) {
	for _, batch := range []string{"Ferry Landing", "Low Bridge", "Toll Road", "Stone Ferry"} {
		t.Run(batch, func(t *testing.T) {
			page, p := opened(t, batch)
			have := map[string]bool{}
			for _, l := range page.Lines() {
				assert.True(t, l.Timed || l.stage == "", l.What)
				for _, r := range l.Blanks {
					if assert.NotNil(t, r.Blank, "%s: %s", l.What, r.Kind) {
						have[r.Blank.ID] = true
					}
				}
			}
			for _, b := range p.Blanks() {
				if b.Step == "fill.cask" || b.Step == "fill.bottle" || b.Step == "fill.soak" { // each cask has a serial: it is asked for by itself; water to soak one is not in the batch
					continue
				}
				assert.True(t, have[b.ID], b.ID)
			}
			assert.Empty(t, blank.Match(page.Planned, page.Run).Answers)
			out, list := lang.Format(diag.NewSource("x", page.Text))
			assert.Empty(t, list)
			assert.Equal(t, string(page.Text), string(out), "it is laid out")
		})
	}
}

// TestTyped: what is typed, and the line that comes of it.
func TestTyped(t *testing.T) {
	for _, c := range []struct{ id, typed, want string }{
		{"mash.5.temperature", "10:04 191", "10:04 heat"},
		{"mash.5.temperature", "10:04 191", " 191 F"},
		{"mash.5.temperature", "191", "heat     191 F "},
		{"mash.5.temperature", "10:04, 88 C", " 88 C"},
		{"mash.5.temperature", `10:04 191 by J "read twice"`, `191 F by "J" "read twice"`},
		{"mash.12.pH", "147 5.3", "147 F, 5.3 pH"},
		{"mash.12.pH", "147, -", "147 F, pH "},
		{"mash.12.pH", "none", "temperature none, pH none"},
		{"mash.12.pH", "none, 5.3", "temperature none, 5.3 pH"},
		{"ferment.round.1.gravity", "1.034 at 68, 87, 3.9", "1.034 SG at 68 F, 87 F, 3.9 pH"},
		{"ferment.round.1.gravity", "1.034 at 68 87 3.9", "1.034 SG at 68 F, 87 F, 3.9 pH"},
		{"ferment.round.1.gravity", "09:05 1.034 at 20 C, 87, 3.9", "2026-03-04 09:05 1.034 SG at 20 C, 87 F, 3.9 pH"},
		{"ferment.round.1.gravity", "thu 09:05 1.034, 87, 3.9", "thu 09:05 1.034 SG, 87 F, 3.9 pH"},
		{"strip.charge.volume", "07:50 380, 9.1 % abv, 0.998 at 66", "2026-03-07 07:50 charge 380 gal, 9.1 % abv, 0.998 SG at 66 F"},
		{"strip.collect.spout.1", "11:02 24, 55, about 60, 206", "11:02 24 % abv, 55 gal/h, about 60 gal, 206 F"},
		{"strip.stop.volume", "1,240, 51.4", "1,240 gal, 51.4 proof"},
		{"used.corn", "541", "corn 541 lb"},
		{"used.corn", "245.4 kg", "corn 245.4 kg"},
		{"used.fill.reduce.water to reduce", "9.3", "reduce  9.3 gal"},
	} {
		page, _ := opened(t, "Ferry Landing")
		then, err := page.Fill(line(t, page, c.id), c.typed)
		if assert.NoError(t, err, c.typed) {
			squeezed := strings.Join(strings.Fields(string(then.Text)), " ")
			assert.Contains(t, squeezed, strings.Join(strings.Fields(c.want), " "), c.typed)
		}
	}
}

// TestNotTaken: what cannot be so is said, and nothing is changed.
func TestNotTaken(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	then, err := page.Fill(line(t, page, "mash.5.temperature"), "10:04 191")
	require.NoError(t, err)
	page = then
	for _, c := range []struct{ id, typed, want string }{
		{"mash.6.temperature", "", "type a value"},
		{"mash.6.temperature", "10.49 189", "a clock is written 10:49"},
		{"mash.6.temperature", "10:49 189 191", "2 values were typed for 1 blank: "},
		{"mash.6.temperature", "09:49 189", "earlier than the line above"},
		{"mash.6.temperature", "10:49 warm", ""},
		{"mash.6.temperature", "10:49 1.06 SG", "temperature"},
		{"mash.6.temperature", `10:49 189 "half`, "in quotes"},
		{"used.corn", "10:00 541", "takes no time"},
	} {
		before := string(page.Text)
		_, err := page.Fill(line(t, page, c.id), c.typed)
		if assert.Error(t, err, c.typed) {
			assert.Contains(t, err.Error(), c.want, c.typed)
		}
		assert.Equal(t, before, string(page.Text))
	}
}

// TestDecimalComma: a comma between two digits is no decimal mark and parts no values. It is
// refused as in a file, with what to write for each reading; a comma of thousands is read.
func TestDecimalComma(t *testing.T) {
	for _, c := range []struct {
		units                     measure.Units
		id, typed, refused, reads string
	}{
		{measure.SI, "mash.12.pH", "9:30 64,5", "`64,5` can be read in two ways, 64.5 or 64, 5: write `64.5` if the comma is a decimal mark, and `64, 5` if it parts two values", ""},
		{measure.US, "mash.12.pH", "9:30 147,5", "write `147.5` if the comma is a decimal mark, and `147, 5` if", ""},
		{measure.SI, "mash.12.pH", "9:30 64.5", "", "9:30 rest 64.5 C, pH"},
		{measure.SI, "mash.12.pH", "9:30 64, 5", "", "9:30 rest 64 C, 5 pH"},
		{measure.US, "mash.12.pH", "9:30,147, 5", "", "9:30 rest 147 F, 5 pH"},
		{measure.US, "mash.12.pH", "9:30,147,5", "`147,5` can be read in two ways", ""},
		{measure.SI, "mash.12.pH", "64,5 5,6", "`64,5` can be read in two ways", ""},
		{measure.SI, "mash.12.pH", "64.5,5.6", "`64.5,5.6` has a comma and a point: the point is the decimal mark, and a comma that parts two values has a space behind it, as in `64.5, 5.6`", ""},
		{measure.SI, "mash.12.pH", `64.5 5.6 "between 64,5 and 65"`, "", "64.5 C, 5.6 pH \"between 64,5 and 65\""},
		{measure.SI, "strip.stop.volume", "1,250 24", "", "1,250 L, 24 % vol"},
		{measure.US, "strip.stop.volume", "1,250,24", "`1,250,24` can be read in more than one way: the point", ""},
		{measure.US, "strip.stop.volume", "1,250.5, 24", "", "1,250.5 gal, 24 proof"},
		{measure.SI, "strip.stop.volume", "1,25 24", "write `1.25` if", ""},
		{measure.SI, "strip.stop.volume", "0,250 24", "write `0.250` if", ""},
		{measure.SI, "strip.stop.volume", "250 24,5 at 18", "write `24.5` if", ""},
		{measure.SI, "strip.stop.volume", "250 24.5 at 18,5", "write `18.5` if", ""},
	} {
		page, _ := openedIn(t, "Ferry Landing", c.units)
		then, err := page.Fill(line(t, page, c.id), c.typed)
		if c.refused != "" {
			assert.ErrorContains(t, err, c.refused, c.typed)
		} else if assert.NoError(t, err, c.typed) {
			squeezed := strings.Join(strings.Fields(string(then.Text)), " ")
			assert.Contains(t, squeezed, c.reads, c.typed)
		}
	}
	page, _ := openedIn(t, "Ferry Landing", measure.SI)
	_, err := page.AddCask("LH-0012 199,5 44 231")
	assert.ErrorContains(t, err, "write `199.5` if")
}

// TestImprobableIsKept: it is said, and stands there.
func TestImprobableIsKept(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	then, err := page.Fill(line(t, page, "ferment.pitch.gravity"), "78, 1.64, 5.3")
	require.NoError(t, err)
	assert.Contains(t, string(then.Text), "1.64 SG")
	require.Len(t, then.Diags, 1)
	assert.Equal(t, diag.CodeImprobable, then.Diags[0].Code)
	assert.Contains(t, then.Diags[0].Summary, "was it 1.06")
}

func TestCasks(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	require.True(t, page.TakesCasks())
	then, err := page.AddCask("LH-0012 53 98 501")
	require.NoError(t, err)
	assert.Contains(t, string(then.Text), `into "LH-0012" 53 gal, tare 98 lb, gross 501 lb`)
	then, err = then.AddCask(`2026-03-12 15:40 "LH-0013" 1.1`)
	require.NoError(t, err)
	assert.Contains(t, string(then.Text), `2026-03-12 15:40 into "LH-0013" 1.1 gal`)
	_, err = then.AddCask("LH-0014 53 98 501 7")
	assert.Error(t, err)
	_, err = then.AddCask("LH-0014 full")
	assert.Error(t, err)
}

// TestTable: the sheet's table, filled in, fills the record as typing would.
func TestTable(t *testing.T) {
	page, p := opened(t, "Ferry Landing")
	var out bytes.Buffer
	require.NoError(t, sheet.Write(&out, p, "steps", measure.US))
	rows, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	at := map[string]int{}
	for i, name := range rows[0] {
		at[name] = i
	}
	n := 0
	for _, row := range rows[1:] {
		if row[at["blank"]] == "" || strings.HasPrefix(row[at["blank"]], "fill.cask") {
			continue
		}
		row[at["actual"]], row[at["time"]], row[at["by"]] = row[at["should"]], row[at["due_date"]]+" "+row[at["due"]], "M"
		if row[at["unit"]] == "proof" {
			row[at["at_temperature"]] = "66"
		}
		n++
	}
	text := func() *bytes.Buffer {
		var b bytes.Buffer
		require.NoError(t, csv.NewWriter(&b).WriteAll(rows))
		return &b
	}
	then, filled, left, err := page.FillTable(text())
	require.NoError(t, err)
	assert.Equal(t, n, filled)
	assert.Empty(t, left)
	assert.Greater(t, n, 80)
	match := blank.Match(then.Planned, then.Run)
	assert.Len(t, match.Answers, n)
	assert.Empty(t, match.Unasked)
	assert.Contains(t, string(then.Text), "proof at 66 F")
	again, filled, left, err := then.FillTable(text())
	require.NoError(t, err)
	assert.Zero(t, filled, "what stands there stays")
	assert.Empty(t, left)
	assert.Equal(t, string(then.Text), string(again.Text))

	for _, c := range []struct {
		column, value, want string
	}{{"actual", "warm", "row"}, {"time", "noon", "is no time"}, {"actual", "1 {", "is no value"}, {"blank", "", "no blank to write it in"},
		{"actual", strings.Repeat("5", 10000), "too large"}, {"actual", strings.Repeat("5", 10001), "row 3: 10001 characters stand under"}} {
		kept := rows[2][at[c.column]]
		rows[2][at[c.column]] = c.value
		_, _, _, err := page.FillTable(text())
		if assert.Error(t, err, c.value) {
			assert.Contains(t, err.Error(), c.want)
		}
		rows[2][at[c.column]] = kept
	}
	_, _, _, err = page.FillTable(strings.NewReader("a,b\n1,2\n"))
	assert.ErrorContains(t, err, "has no column")
	_, _, _, err = page.FillTable(strings.NewReader(""))
	assert.ErrorContains(t, err, "empty")
}

// FuzzTyped: whatever is typed is taken or refused, and what is taken leaves a text
// that can be read and has no error that it had not before.
func FuzzTyped(f *testing.F) {
	for _, s := range []string{"10:04 191", "none", "-", `147, 5.3 by J "x"`, "wed 09:00 1.034 at 68 87", "about 60 gal", "1,034", "64,5", "10.04 3", "{", "# 3", `"\`, "at at at", "24:00 7", "-04:00"} {
		f.Add(s)
	}
	page, _ := opened(f, "Ferry Landing")
	lines := page.Lines()
	f.Fuzz(func(t *testing.T, typed string) {
		for _, i := range []int{0, 12, len(lines) - 1} {
			then, err := page.Fill(lines[i], typed)
			if err == nil {
				require.False(t, then.Diags.HasErrors(), fmt.Sprintf("%q: %v", typed, then.Diags))
				require.Less(t, len(then.Lines()), len(lines)+1)
			}
		}
	})
}

// A table comes back from a spreadsheet in many ways: with semicolons and decimal commas, a mark
// of the order of bytes, other line ends, quotes, columns moved, a clock with am and pm.
func TestTableOfASpreadsheet(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	want, n, _, err := page.FillTable(strings.NewReader("blank,unit,actual,at_temperature,time,by\nmash.5.temperature,F,191,,10:04,M\nferment.pitch.gravity,SG,1.066,78.5,2026-03-03 13:55,\n"))
	require.NoError(t, err)
	require.Equal(t, 2, n)
	require.Contains(t, strings.Join(strings.Fields(string(want.Text)), " "), "2026-03-03 13:55 pitch temperature, 1.066 SG at 78.5 F")
	for name, table := range map[string]string{
		"semicolons":  "blank;unit;actual;at_temperature;time;by\nmash.5.temperature;F;191,0;;10:04;M\nferment.pitch.gravity;SG;1,066;78,5;2026-03-03 13:55;\n",
		"tabs":        "blank\tunit\tactual\tat_temperature\ttime\tby\nmash.5.temperature\tF\t191\t\t10:04\tM\nferment.pitch.gravity\tSG\t1.066\t78.5\t2026-03-03T13:55\t\n",
		"bytes":       "\ufeffsep=;\r\nblank;unit;actual;at_temperature;time;by\r\nmash.5.temperature;F;191;;10:04;M\r\n;;;;;\r\nferment.pitch.gravity;SG;1,066;78,5;2026-03-03 13:55:00;\r\n",
		"quotes":      "\"by\",\"step\",\"actual\",\"at_temperature\",\"time\",\"unit\",\"blank\"\n\"M\",\"heat, then rest\",\"191\",\"\",\"10:04 AM\",\"F\",\"mash.5.temperature\"\n\"\",\"\",\"1.066\",\"78.5\",\"2026-03-03 1:55 p.m.\",\"SG\",\"ferment.pitch.gravity\"\n",
		"units typed": "blank,unit,actual,at_temperature,time,by\nmash.5.temperature,F,191 F,,10:04,M\nferment.pitch.gravity,SG,1.066 SG,78.5 F,2026-03-03 13:55,\n",
	} {
		then, n, _, err := page.FillTable(strings.NewReader(table))
		require.NoError(t, err, name)
		assert.Equal(t, 2, n, name)
		got := strings.NewReplacer("191.0 F", "191 F", "13:55:00", "13:55").Replace(string(then.Text))
		assert.Equal(t, strings.Fields(string(want.Text)), strings.Fields(got), name)
	}
	for table, want := range map[string]string{
		"\xff\xfeb\x00l\x00": "UTF-16",
		"blank,unit,actual,at_temperature,time,by\nmash.5.temperature,F,191,,13:04 PM,M\n":   `"13:04 PM" is no time`,
		"blank,unit,actual,at_temperature,time,by\nmash.5.temperature,F,191,,3/3/2026 9,M\n": "is no time",
		"blank,unit,actual,at_temperature,time,by\nmash.5.temperature,F,\"191,,10:04,M\n":    "this is no table",
	} {
		_, _, _, err := page.FillTable(strings.NewReader(table))
		assert.ErrorContains(t, err, want)
	}

	// Of another plan: no blank of it is known. Where one is, the others are told as left.
	const other = "blank,unit,actual,at_temperature,time,by\nmash.99.temperature,F,,,,\nmash.98.temperature,F,191,,10:04,M\nmash.97.temperature,F,190,,10:05,M\n"
	_, _, _, err = page.FillTable(strings.NewReader(other))
	assert.ErrorContains(t, err, `row 3: the plan of this run has no blank "mash.98.temperature"`)
	_, n, left, err := page.FillTable(strings.NewReader(other + "mash.5.temperature,F,191,,10:04,M\n"))
	require.NoError(t, err)
	assert.Equal(t, 1, n)
	assert.Equal(t, []string{"row 3", "row 4"}, left)
}

// A pH is typed with its word or without.
func TestPHIsTypedEitherWay(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	for _, l := range page.Lines() {
		if len(l.Blanks) == 3 && l.Blanks[0].Kind == record.Gravity && l.Blanks[2].Kind == record.PH {
			for _, typed := range []string{"wed 09:00 1.034 87 pH 3.9", "wed 09:00 1.034, 87, 3.9 pH", "wed 09:00 1.034, 87, 3.9"} {
				then, err := page.Fill(l, typed)
				require.NoError(t, err, typed)
				assert.Contains(t, string(then.Text), "wed 09:00 1.034 SG, 87 F, 3.9 pH ", typed)
			}
			return
		}
	}
	require.Fail(t, "no round asks for a pH")
}

// A strength may be typed in per cent, whatever its blank is in; a per cent of anything else is
// asked about.
func TestPerCentIsAStrength(t *testing.T) {
	page, _ := opened(t, "Ferry Landing")
	for _, l := range page.Lines() {
		switch {
		case strings.HasPrefix(l.What, "fill: hearts"):
			for _, typed := range []string{"14:40 45.9 72 % at 66", "14:40 45.9, 72% at 66"} {
				then, err := page.Fill(l, typed)
				require.NoError(t, err, typed)
				assert.Contains(t, string(then.Text), "hearts 45.9 gal, 72 % abv at 66 F", typed)
			}
		case strings.HasPrefix(l.What, "ferment: pump"):
			_, err := page.Fill(l, "13:30 72 %")
			assert.Error(t, err)
		}
	}
}
