package chances

import (
	"io"

	"newmake/compile/ask/odds"
	"newmake/compile/show/csv"
)

var sheetColumns = []csv.Column[odds.Number]{
	{Name: "number", Cell: func(n odds.Number) string { return csv.Text(n.Name) }},
	{Name: "unit", Cell: func(n odds.Number) string { return csv.Text(n.Unit) }},
	{Name: "planned", Cell: func(n odds.Number) string { return csv.Number(n.Planned) }},
	{Name: "low_5_pct", Cell: func(n odds.Number) string { return csv.Number(n.Low) }},
	{Name: "middle", Cell: func(n odds.Number) string { return csv.Number(n.Middle) }},
	{Name: "high_95_pct", Cell: func(n odds.Number) string { return csv.Number(n.High) }},
}

// CSV writes the spread of every number, a row each (RFC 4180).
func CSV(w io.Writer, a *odds.Answer) error { return csv.WriteRows(w, sheetColumns, a.Numbers) }
