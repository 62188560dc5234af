package show_test

import (
	"bytes"
	"encoding/csv"
	"newmake/compile/measure"
	"newmake/compile/plan"
	show "newmake/compile/show/csv"
	"newmake/compile/show/internal/plantest"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rowsOf(t *testing.T, p *plan.Plan, table string, u measure.Units) [][]string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, show.Write(&b, p, table, u))
	assert.NotContains(t, strings.ReplaceAll(b.String(), "\r\n", ""), "\n", "RFC 4180 ends lines with CRLF")
	rows, err := csv.NewReader(&b).ReadAll() // as many cells in each row as in the first
	require.NoError(t, err)
	return rows
}

func TestCSVTables(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	want := map[string]int{
		"grain": len(p.Bill.Lines), "mash": len(p.Mash.Curve), "ferment": len(p.Ferment.Curve),
		"strip": len(p.Strip.Curve), "spirit": len(p.Spirit.Curve), "cask": len(p.Cask.Forecast),
	}
	for _, s := range p.Schedule.Steps {
		want["steps"] += max(len(s.Read), 1)
	}
	for _, table := range show.Tables {
		assert.Len(t, rowsOf(t, p, table, measure.US), want[table]+1, table)
	}
	assert.Equal(t, []string{"years", "volume_gal_60F", "strength_abv_pct_60F", "proof", "proof_gallons", "pure_alcohol_L_20C"}, rowsOf(t, p, "cask", measure.US)[0])
	assert.Equal(t, "volume_L_20C", rowsOf(t, p, "cask", measure.SI)[0][1])
	mash := rowsOf(t, p, "mash", measure.US)
	assert.Equal(t, "temperature_F", mash[0][1])

	var b bytes.Buffer
	err := show.Write(&b, p, "stills", measure.US)
	assert.ErrorContains(t, err, "steps, grain, mash")
}

// A table counts as the plan does: gallons and half the proof at 60 F, litres and
// % vol at 20 C; and a reading is what the sheet says, not its conversion.
func TestCSVBasis(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return v
	}
	for i, row := range rowsOf(t, p, "cask", measure.US)[1:] {
		y := p.Cask.Forecast[i]
		assert.InDelta(t, y.WineGallons, number(row[1]), 0.0051)
		assert.InDelta(t, number(row[3])/2, number(row[2]), 1e-9)
		assert.InDelta(t, y.ProofGallons, number(row[1])*number(row[3])/100, 0.1)
	}
	for i, row := range rowsOf(t, p, "cask", measure.SI)[1:] {
		assert.InDelta(t, p.Cask.Forecast[i].VolumeL, number(row[1]), 0.051)
		assert.InDelta(t, p.Cask.Forecast[i].AbvPct, number(row[2]), 0.051)
	}
	for table, r := range map[string]plan.Run{"strip": p.Strip, "spirit": p.Spirit} {
		rows := rowsOf(t, p, table, measure.US)
		assert.Equal(t, []string{"spout_abv_pct_60F", "spout_proof", "pot_abv_pct_20C", "over_gal_60F"}, rows[0][3:7])
		gallons := 0.0
		for _, f := range r.Fractions {
			gallons += f.WineGallons
		}
		assert.InDelta(t, gallons/float64(r.Charges), number(rows[len(rows)-1][6]), 0.02, table)
		assert.InDelta(t, number(rows[1][4])/2, number(rows[1][3]), 1e-9, table)
		si := rowsOf(t, p, table, measure.SI)
		assert.NotContains(t, si[0], "spout_proof", "proof is for gaugers of gallons")
		assert.Equal(t, "over_L_20C", si[0][5])
		assert.InDelta(t, r.Curve[len(r.Curve)-1].OverL, number(si[len(si)-1][5]), 0.001, table)
	}
	said := map[string]bool{}
	for _, row := range rowsOf(t, p, "steps", measure.US)[1:] {
		if row[10] == "Heat to 190 F." {
			said[row[16]+" "+row[17]] = true
		}
	}
	assert.Equal(t, map[string]bool{"190 F": true}, said)
}

// A spreadsheet takes a cell that begins with one of these for a formula.
// TestCSVDivision: what a reading should say and how far off it may be have as many decimals as
// the sheet gives them.
func TestCSVDivision(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	at, seen := 0, 0
	rows := rowsOf(t, p, "steps", measure.US)[1:]
	for _, s := range p.Schedule.Steps {
		for i, r := range s.Read {
			row := rows[at+i]
			said := strings.ReplaceAll(measure.US.Quantity(r.Should), ",", "")
			if r.Should.Unit != plan.Kilogram {
				assert.Contains(t, said, row[16], r.ID)
				assert.Contains(t, measure.US.Tolerance(r.Tolerance), "+/- "+row[18], r.ID)
				seen++
			}
			off, err := strconv.ParseFloat(row[18], 64)
			require.NoError(t, err)
			v, _ := measure.US.Value(r.Tolerance)
			assert.InDelta(t, v, off, 0.3*v+0.01, r.ID)
		}
		at += max(len(s.Read), 1)
	}
	assert.Greater(t, seen, 50)
}

func TestCSVFormulas(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
	for _, evil := range []string{"=1+1", "+1", "-1", "@SUM(A1)", "=cmd|' /C calc'!A0", "a,\"b\""} {
		p.Bill.Lines[0].Name = evil
		p.Schedule.Steps[0].Do.Text = evil
		p.Schedule.Steps[0].Vessel = evil
		want := evil
		if strings.ContainsAny(evil[:1], "=+-@") {
			want = "'" + evil
		}
		assert.Equal(t, want, rowsOf(t, p, "grain", measure.US)[1][0])
		steps := rowsOf(t, p, "steps", measure.US)
		assert.Equal(t, want, steps[1][2])
		assert.Equal(t, want, steps[1][10])
	}
	for i, row := range rowsOf(t, p, "steps", measure.US) {
		for _, c := range row {
			assert.False(t, c != "" && strings.ContainsAny(c[:1], "=+@\t\r"), "row %d: %q", i, c)
		}
	}
}

// So do their look-alikes, and what stands behind what shows nothing; and in a
// place where semicolons part the cells, what stands behind one.
func TestCSVLookAlikes(t *testing.T) {
	p := plantest.Plan(t, plantest.Lantern, "Ferry Landing")
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
		assert.Equal(t, want, rowsOf(t, p, "grain", measure.US)[1][0], "%q", evil)
	}
}
