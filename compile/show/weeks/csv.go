package weeks

import (
	"encoding/csv"
	"io"
	"strconv"

	"newmake/compile/book/season"
	spreadsheet "newmake/compile/show/csv"
	"newmake/lang/diag"
)

// CSV writes the work of a season for a spreadsheet (RFC 4180): a row for each task of
// each run, in the order of the runs and of their work.
func CSV(w io.Writer, s *season.Season) error {
	out := csv.NewWriter(w)
	out.Write([]string{"run", "batch", "begun", "stage", "task", "vessel", "start", "end", "attend", "people", "kW", "waited_min", "out_of_shift_min"})
	cell := func(s string) string { return spreadsheet.Cell(diag.Safe(s)) }
	for _, r := range s.Runs {
		for _, t := range r.Tasks {
			out.Write([]string{cell(r.Number), cell(r.Batch), strconv.FormatBool(r.Done), t.Stage, cell(t.Key), cell(t.Vessel), t.Start, t.End, t.Attend, strconv.Itoa(t.People), number(t.KW), number(t.WaitMin), number(t.OutOfShift)})
		}
	}
	out.Flush()
	return out.Error()
}

// BuyCSV writes what has to be bought, a row for each thing and week.
func BuyCSV(w io.Writer, s *season.Season) error {
	out := csv.NewWriter(w)
	out.Write([]string{"what", "kind", "by", "needed", "from_store", "to_buy", "unit", "packs", "pack_of", "pallets", "cost", "currency", "runs"})
	b := s.Buy
	if b == nil {
		b = &season.BuyList{}
	}
	for _, l := range b.Lines {
		cost := ""
		if l.Priced {
			cost = number(l.Cost)
		}
		out.Write([]string{spreadsheet.Cell(diag.Safe(l.What)), l.Kind, l.By, number(l.Need), number(l.Store), number(l.Buy), l.Unit, strconv.Itoa(l.Packs), number(l.PackOf), number(l.Pallets), cost, b.Currency, spreadsheet.Cell(diag.Safe(join(l.Runs)))})
	}
	out.Flush()
	return out.Error()
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
