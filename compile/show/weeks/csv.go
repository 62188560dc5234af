package weeks

import (
	"io"
	"strconv"

	"newmake/compile/book/season"
	"newmake/compile/show/csv"
)

// work is a task of a run.
type work struct {
	of *season.Run
	*season.Task
}

var workColumns = []csv.Column[work]{
	{Name: "run", Cell: func(w work) string { return csv.Text(w.of.Number) }},
	{Name: "batch", Cell: func(w work) string { return csv.Text(w.of.Batch) }},
	{Name: "begun", Cell: func(w work) string { return strconv.FormatBool(w.of.Done) }},
	{Name: "stage", Cell: func(w work) string { return w.Stage }},
	{Name: "task", Cell: func(w work) string { return csv.Text(w.Key) }},
	{Name: "vessel", Cell: func(w work) string { return csv.Text(w.Vessel) }},
	{Name: "start", Cell: func(w work) string { return w.Start }},
	{Name: "end", Cell: func(w work) string { return w.End }},
	{Name: "attend", Cell: func(w work) string { return w.Attend }},
	{Name: "people", Cell: func(w work) string { return strconv.Itoa(w.People) }},
	{Name: "kW", Cell: func(w work) string { return csv.Number(w.KW) }},
	{Name: "waited_min", Cell: func(w work) string { return csv.Number(w.WaitMin) }},
	{Name: "out_of_shift_min", Cell: func(w work) string { return csv.Number(w.OutOfShift) }},
}

// CSV writes the work of a season for a spreadsheet (RFC 4180): a row for each task of
// each run, in the order of the runs and of their work.
func CSV(w io.Writer, s *season.Season) error {
	var all []work
	for i := range s.Runs {
		r := &s.Runs[i]
		for j := range r.Tasks {
			all = append(all, work{r, &r.Tasks[j]})
		}
	}
	return csv.WriteRows(w, workColumns, all)
}

// BuyCSV writes what has to be bought, a row for each thing and week.
func BuyCSV(w io.Writer, s *season.Season) error {
	b := s.Buy
	if b == nil {
		b = &season.BuyList{}
	}
	return csv.WriteRows(w, []csv.Column[season.Buy]{
		{Name: "what", Cell: func(l season.Buy) string { return csv.Text(l.What) }},
		{Name: "kind", Cell: func(l season.Buy) string { return l.Kind }},
		{Name: "by", Cell: func(l season.Buy) string { return l.By }},
		{Name: "needed", Cell: func(l season.Buy) string { return csv.Number(l.Need) }},
		{Name: "from_store", Cell: func(l season.Buy) string { return csv.Number(l.Store) }},
		{Name: "to_buy", Cell: func(l season.Buy) string { return csv.Number(l.Buy) }},
		{Name: "unit", Cell: func(l season.Buy) string { return l.Unit }},
		{Name: "packs", Cell: func(l season.Buy) string { return strconv.Itoa(l.Packs) }},
		{Name: "pack_of", Cell: func(l season.Buy) string { return csv.Number(l.PackOf) }},
		{Name: "pallets", Cell: func(l season.Buy) string { return csv.Number(l.Pallets) }},
		{Name: "cost", Cell: func(l season.Buy) string {
			if !l.Priced {
				return ""
			}
			return csv.Number(l.Cost)
		}},
		{Name: "currency", Cell: func(season.Buy) string { return b.Currency }},
		{Name: "runs", Cell: func(l season.Buy) string { return csv.Text(join(l.Runs)) }},
	}, b.Lines)
}
