package ledgered

import (
	"io"
	"strconv"

	"newmake/compile/book/ledger"
	"newmake/compile/show/csv"
)

var sheetColumns = []csv.Column[ledger.Line]{
	{Name: "date", Cell: func(l ledger.Line) string { return l.On }},
	{Name: "kind", Cell: func(l ledger.Line) string { return string(l.Kind) }},
	{Name: "of", Cell: func(l ledger.Line) string { return csv.Text(l.Of) }},
	{Name: "from", Cell: func(l ledger.Line) string { return csv.Text(l.From) }},
	{Name: "to", Cell: func(l ledger.Line) string { return csv.Text(l.To) }},
	{Name: "PG", Cell: func(l ledger.Line) string { return csv.Number(l.Amount.ProofGallons) }},
	{Name: "LPA", Cell: func(l ledger.Line) string { return csv.Number(l.Amount.PureL) }},
	{Name: "section", Cell: func(l ledger.Line) string { return l.Section }},
	{Name: "corrects", Cell: func(l ledger.Line) string { return l.Corrects }},
	{Name: "by", Cell: func(l ledger.Line) string { return csv.Text(l.By) }},
	{Name: "file", Cell: func(l ledger.Line) string { return csv.Text(l.File) }},
	{Name: "line", Cell: func(l ledger.Line) string {
		if l.Line == 0 {
			return ""
		}
		return strconv.Itoa(l.Line)
	}},
}

// CSV writes the lines of a ledger for a spreadsheet (RFC 4180), a row each.
func CSV(w io.Writer, l *ledger.Ledger) error { return csv.WriteRows(w, sheetColumns, l.Lines) }
