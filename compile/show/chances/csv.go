package chances

import (
	stdcsv "encoding/csv"
	"io"
	"strconv"

	"newmake/compile/ask/odds"
	"newmake/compile/show/csv"
)

// CSV writes the spread of every number, a row each (RFC 4180).
func CSV(w io.Writer, a *odds.Answer) error {
	rows := [][]string{{"number", "unit", "planned", "low_5_pct", "middle", "high_95_pct"}}
	for _, n := range a.Numbers {
		row := []string{csv.Cell(n.Name), csv.Cell(n.Unit)}
		for _, x := range []float64{n.Planned, n.Low, n.Middle, n.High} {
			row = append(row, strconv.FormatFloat(x, 'f', -1, 64))
		}
		rows = append(rows, row)
	}
	out := stdcsv.NewWriter(w)
	out.UseCRLF = true
	return out.WriteAll(rows)
}
