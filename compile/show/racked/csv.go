package racked

import (
	"io"
	"math"
	"strings"

	"newmake/compile/book/cellar"
	"newmake/compile/show/csv"
)

type cask = cellar.Row

var sheetColumns = []csv.Column[cask]{
	{Name: "cask", Cell: func(r cask) string { return csv.Text(r.Serial) }},
	{Name: "batch", Cell: func(r cask) string { return csv.Text(r.Batch) }},
	{Name: "run", Cell: func(r cask) string { return csv.Text(r.Run) }},
	{Name: "filled", Cell: func(r cask) string { return r.Filled }},
	{Name: "age_years", Cell: func(r cask) string { return csv.Number(r.AgeYears) }},
	{Name: "place", Cell: func(r cask) string { return csv.Text(r.Place) }},
	{Name: "spot", Cell: func(r cask) string { return csv.Text(strings.Join(r.Spot, ", ")) }},
	{Name: "size_L", Cell: func(r cask) string { return csv.Number(r.SizeL) }},
	{Name: "size_gal", Cell: func(r cask) string { return gallons(r.SizeL) }},
	{Name: "fill_L", Cell: func(r cask) string { return csv.Number(r.AtFill.VolumeL) }},
	{Name: "fill_gal", Cell: func(r cask) string { return rounded(r.AtFill.WineGallons) }},
	{Name: "fill_abv_pct", Cell: func(r cask) string { return csv.Number(r.AtFill.AbvPct) }},
	{Name: "now_L", Cell: func(r cask) string { return csv.Number(r.Now.VolumeL) }},
	{Name: "now_gal", Cell: func(r cask) string { return rounded(r.Now.WineGallons) }},
	{Name: "now_abv_pct", Cell: func(r cask) string { return csv.Number(r.Now.AbvPct) }},
	{Name: "now_proof", Cell: func(r cask) string { return csv.Number(r.Now.Proof) }},
	{Name: "now_PG", Cell: func(r cask) string { return csv.Number(r.Now.ProofGallons) }},
	{Name: "now_LPA", Cell: func(r cask) string { return csv.Number(r.Now.PureL) }},
	{Name: "low_LPA", Cell: func(r cask) string { return csv.Number(r.Low.PureL) }},
	{Name: "high_LPA", Cell: func(r cask) string { return csv.Number(r.High.PureL) }},
	{Name: "low_PG", Cell: func(r cask) string { return csv.Number(r.Low.ProofGallons) }},
	{Name: "high_PG", Cell: func(r cask) string { return csv.Number(r.High.ProofGallons) }},
	{Name: "pace", Cell: func(r cask) string { return csv.Number(r.PaceIs) }},
	{Name: "last_read", Cell: where(lastReading, func(l *cellar.Last) string { return l.On })},
	{Name: "next_sample", Cell: func(r cask) string { return r.Sample }},
	{Name: "rest_over", Cell: where(target, func(t *cellar.Target) string { return t.On })},
	{Name: "then_PG", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.Then.ProofGallons) })},
	{Name: "then_LPA", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.Then.PureL) })},
	{Name: "leak_kg", Cell: where(leak, func(l *cellar.Leak) string { return csv.Number(l.Kg) })},
	{Name: "leak_lb", Cell: where(leak, func(l *cellar.Leak) string { return rounded(l.Kg / kgPerPound) })},
	{Name: "verdict", Cell: func(r cask) string { return csv.Text(r.Verdict) }},
	{Name: "standard", Cell: where(standard, func(a *cellar.Aged) string { return csv.Text(a.Of) })},
	{Name: "standard_from", Cell: where(standard, func(a *cellar.Aged) string { return a.From })},
	{Name: "bottle_abv_pct", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.BottleAbvPct) })},
	{Name: "strong_enough", Cell: where(target, func(t *cellar.Target) string { return map[bool]string{true: "yes", false: "no"}[t.Kept] })},
	{Name: "then_low_LPA", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.Low.PureL) })},
	{Name: "then_high_LPA", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.High.PureL) })},
	{Name: "then_low_PG", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.Low.ProofGallons) })},
	{Name: "then_high_PG", Cell: where(target, func(t *cellar.Target) string { return csv.Number(t.High.ProofGallons) })},
	{Name: "drawn_LPA", Cell: func(r cask) string { return csv.Number(r.DrawnL) }},
	{Name: "drawn_PG", Cell: func(r cask) string { return csv.Number(r.DrawnPG) }},
}

// gallons is a volume of wood in gallons, and rounded a number, as the litres and kilograms are: to a
// hundredth.
func gallons(litres float64) string { return rounded(litres / litresPerGallon) }
func rounded(x float64) string      { return csv.Number(math.Round(100*x) / 100) }

func lastReading(r cask) *cellar.Last { return r.Last }
func target(r cask) *cellar.Target    { return r.Target }
func leak(r cask) *cellar.Leak        { return r.Leak }
func standard(r cask) *cellar.Aged    { return r.Standard }

// where is the cell of a part that a cask may be without: nothing then.
func where[P any](part func(cask) *P, cell func(*P) string) func(cask) string {
	return func(r cask) string {
		if p := part(r); p != nil {
			return cell(p)
		}
		return ""
	}
}

// CSV writes the casks for a spreadsheet (RFC 4180), a row each, in litres, which are counted at
// 20 C, and in gallons, of spirit at 60 F.
func CSV(w io.Writer, c *cellar.Cellar) error { return csv.WriteRows(w, sheetColumns, c.Casks) }
