package ledgered

import (
	"encoding/csv"
	"io"
	"strconv"

	"newmake/compile/book/ledger"
	spreadsheet "newmake/compile/show/csv"
	"newmake/lang/diag"
)

// CSV writes the lines of a ledger for a spreadsheet (RFC 4180), a row each.
func CSV(w io.Writer, l *ledger.Ledger) error {
	out := csv.NewWriter(w)
	out.Write([]string{"date", "kind", "of", "from", "to", "PG", "LPA", "section", "corrects", "by", "file", "line"})
	n := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
	for _, x := range l.Lines {
		line := ""
		if x.Line > 0 {
			line = strconv.Itoa(x.Line)
		}
		out.Write([]string{x.On, string(x.Kind), spreadsheet.Cell(diag.Safe(x.Of)), spreadsheet.Cell(diag.Safe(x.From)), spreadsheet.Cell(diag.Safe(x.To)), n(x.Amount.ProofGallons), n(x.Amount.PureL), x.Section, x.Corrects, spreadsheet.Cell(diag.Safe(x.By)), spreadsheet.Cell(diag.Safe(x.File)), line})
	}
	out.Flush()
	return out.Error()
}
