// Package csv writes the tables of a plan for a spreadsheet.
package csv

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Tables are what a plan can be written as for a spreadsheet: the steps, the
// grain, and the curve of each stage.
var Tables = []string{"steps", "grain", "mash", "ferment", "strip", "spirit", "cask"}

// Write writes one table of the plan (RFC 4180), in the reader's units. The first
// row names the columns, with their units where a column has one.
func Write(w io.Writer, p *plan.Plan, table string, u measure.Units) error {
	p = p.Strings(func(s string) string { return diag.Safe(s) })
	t := csvTable{u: u}
	switch table {
	case "steps":
		t.steps(p)
	case "grain":
		t.grain(p)
	case "mash":
		t.mash(p)
	case "ferment":
		t.ferment(p)
	case "strip":
		t.run(p.Strip)
	case "spirit":
		t.run(p.Spirit)
	case "cask":
		t.cask(p)
	default:
		return fmt.Errorf("there is no table %q: choose one of %s", table, strings.Join(Tables, ", "))
	}
	return writeAll(w, t.rows)
}

type csvTable struct {
	head []string // the whole header
	u    measure.Units
	rows [][]string
}

// row adds a row. The first is the header; what it calls a count of US gaugers alone is
// left out for other readers.
func (t *csvTable) row(cells ...string) {
	head := cells
	if len(t.rows) > 0 {
		head = t.head
	} else {
		t.head = slices.Clone(cells)
	}
	if t.u != measure.US {
		var kept []string
		for i, c := range cells {
			if !slices.Contains(customary, head[i]) {
				kept = append(kept, c)
			}
		}
		cells = kept
	}
	t.rows = append(t.rows, cells)
}

// customary are the columns that are for US gaugers.
var customary = []string{"spout_proof", "proof", "proof_gallons"}

// cell is a text that a spreadsheet must not take for a formula: an apostrophe
// stands before what would begin one. A spreadsheet that cuts at semicolons begins
// a cell after each.
func cell(s string) string {
	parts := strings.SplitAfter(s, ";")
	for i, part := range parts {
		if beginsFormula(part) {
			parts[i] = "'" + part
		}
	}
	return strings.Join(parts, "")
}

// beginsFormula reports whether a cell's first character that shows is the sign of a
// formula, or one that some spreadsheet reads as the sign: full-width, small,
// raised and lowered ones, which Unicode holds to be compatible with it (UAX 15),
// and the other dashes and minus signs. A tab or a line break at the beginning
// does the same. The quote marks that a cell may be wrapped in show nothing.
func beginsFormula(s string) bool {
	if strings.HasPrefix(s, "\t") || strings.HasPrefix(s, "\r") || strings.HasPrefix(s, "\n") {
		return true
	}
	s = strings.TrimLeftFunc(s, func(r rune) bool {
		return r == '"' || unicode.IsSpace(r) || unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zs, unicode.Mn) || r == utf8.RuneError || r >= '\u2400' && r <= '\u2421'
	})
	for _, r := range norm.NFKC.String(s[:firstRune(s)]) {
		return strings.ContainsRune("=+-@", r) || unicode.In(r, unicode.Pd) || strings.ContainsRune("\u2212\u2795\u2796", r)
	}
	return false
}

// firstRune is the length of the first character.
func firstRune(s string) int {
	_, n := utf8.DecodeRuneInString(s)
	return n
}

// figure writes a number without more decimals than it has.
func figure(x float64, places int) string {
	return strconv.FormatFloat(plan.RoundTo(x, places), 'f', -1, 64)
}

// value is a quantity's number in the reader's units.
func (t *csvTable) value(x float64, unit plan.Unit) string {
	v, _ := t.u.Value(plan.Of(x, unit))
	return figure(v, 3)
}

// spirit is what the header calls a measure of spirit, with the temperature at
// which it is meant: volume_gal_60F. The gauge is at 60 F in US units (27 CFR
// 30.11) and at 20 C in SI (OIML R 22).
func (t *csvTable) spirit(name string) string {
	if t.u == measure.SI {
		return name + "_20C"
	}
	return name + "_60F"
}

// abv is a strength by volume on the reader's basis: half the proof, or at 20 C.
func (t *csvTable) abv(abvPct, proof float64, places int) string {
	if t.u == measure.SI {
		return figure(abvPct, places)
	}
	return figure(proof/2, places)
}

// unit is what the header calls a unit: temp_F.
func (t *csvTable) unit(name string, unit plan.Unit) string {
	_, word := t.u.Value(plan.Of(0, unit))
	return name + "_" + strings.NewReplacer("% abv", "abv_pct", "% vol", "abv_pct", "/", "_per_", " ", "_").Replace(word)
}

// date is the day of a time, in the plant's zone, as a spreadsheet reads it (ISO 8601).
// The clock stands in a column of its own.
func date(rfc3339 string) string { return plan.Moment(rfc3339).Format("2006-01-02") }

// steps writes a row for each reading, and one for a step that has none. The
// last columns are blank: what a run record wants, in its order. The column called
// blank says which of the plan's blanks a row is: newmake record reads the table
// back by it.
func (t *csvTable) steps(p *plan.Plan) {
	t.row("id", "stage", "vessel", "date", "start", "end_date", "end", "duration_min", "attend", "people", "do", "cautions",
		"blank", "read", "due_date", "due", "should", "unit", "tolerance", "actual", "at_temperature", "time", "by")
	for _, s := range p.Schedule.Steps {
		var care []string
		for _, key := range s.Cautions {
			for _, c := range p.Cautions {
				if c.Key == key {
					care = append(care, c.Title)
				}
			}
		}
		step := []string{cell(s.ID), cell(s.Stage), cell(s.Vessel), date(s.Start), measure.Clock(s.Start), date(s.End), measure.Clock(s.End), figure(s.DurationMin, 1), s.Attend,
			strconv.Itoa(s.People), cell(t.u.Phrase(s.Do)), cell(strings.Join(care, "; "))}
		if len(s.Read) == 0 {
			t.row(append(step, make([]string, 11)...)...)
		}
		for _, r := range s.Read {
			due := s.Due(r)
			_, unit := t.u.Value(r.Should)
			tolerance := "" // in the unit of what it should be
			if r.Tolerance.Unit != "" {
				tolerance = t.u.OffFigures(r.Tolerance)
			}
			t.row(append(step[:len(step):len(step)], cell(r.ID), cell(r.What), date(due), measure.Clock(due), t.u.Figures(r.Should), unit, tolerance, "", "", "", "")...)
		}
	}
}

func (t *csvTable) grain(p *plan.Plan) {
	t.row("grain", t.unit("mass", plan.Kilogram), "share_pct", "moisture_pct", t.unit("extract", plan.Kilogram), "goes_in", "lots")
	for _, l := range p.Bill.Lines {
		t.row(cell(l.Name), t.value(l.MassKg, plan.Kilogram), figure(l.SharePct, 2), figure(l.MoisturePct, 1),
			t.value(l.ExtractKg, plan.Kilogram), cell(l.AddedIn), cell(t.u.Lots(l)))
	}
}

func (t *csvTable) mash(p *plan.Plan) {
	t.row("min", t.unit("temperature", plan.Celsius), "gelatinized_pct", "converted_pct", "alpha_left_pct", "beta_left_pct", "added_left_pct")
	for _, c := range p.Mash.Curve {
		t.row(figure(c.Min, 2), t.value(c.TempC, plan.Celsius), figure(c.GelatinizedPct, 1), figure(c.ConvertedPct, 1),
			figure(c.AlphaLeftPct, 1), figure(c.BetaLeftPct, 1), figure(c.AddedLeftPct, 1))
	}
}

func (t *csvTable) ferment(p *plan.Plan) {
	t.row("hour", t.unit("temperature", plan.Celsius), "gravity_SG", "strained_abv_pct_20C", "pH", "yeast_g_per_L", "heat_kW",
		t.unit("co2", plan.Kilogram), "cooling_pct")
	for _, c := range p.Ferment.Curve {
		t.row(figure(c.Hour, 2), t.value(c.TempC, plan.Celsius), figure(c.SG, 4), figure(c.AbvPct, 2), figure(c.PH, 2),
			figure(c.YeastGPerL, 2), figure(c.HeatKW, 2), t.value(c.CO2Kg, plan.Kilogram), figure(c.CoolingPct, 0))
	}
}

func (t *csvTable) run(r plan.Run) {
	t.row("min", t.unit("pot", plan.Celsius), t.unit("vapour", plan.Celsius), t.spirit("spout_abv_pct"), "spout_proof", "pot_abv_pct_20C",
		t.spirit(t.unit("over", plan.Litre)), t.unit("rate", plan.LitrePerH), "fraction")
	for _, c := range r.Curve {
		over, _ := t.u.Value(r.Over(c.OverL))
		t.row(figure(c.Min, 2), t.value(c.PotC, plan.Celsius), t.value(c.VapourC, plan.Celsius), t.abv(c.AbvPct, c.Proof, 2), figure(c.Proof, 1),
			figure(c.PotAbvPct, 2), figure(over, 3), t.value(c.RateLPerH, plan.LitrePerH), cell(c.Fraction))
	}
}

func (t *csvTable) cask(p *plan.Plan) {
	t.row("years", t.spirit(t.unit("volume", plan.Litre)), t.spirit("strength_abv_pct"), "proof", "proof_gallons", "pure_alcohol_L_20C")
	for _, y := range p.Cask.Forecast {
		volume, _ := t.u.Value(y.Volume())
		t.row(figure(y.AgeYears, 2), figure(volume, 2), t.abv(y.AbvPct, y.Proof, 3), figure(y.Proof, 2), figure(y.ProofGallons, 1), figure(y.PureL, 1))
	}
}
