package csv

import (
	"encoding/csv"
	"io"
	"strconv"

	"newmake/lang/diag"
)

// Column is one column of a table with a row for each T.
type Column[T any] struct {
	Name string
	Cell func(T) string
}

// WriteRows writes a table (RFC 4180): the names of its columns, and a row for each thing.
func WriteRows[T any](w io.Writer, columns []Column[T], things []T) error {
	rows := make([][]string, 1+len(things))
	for _, c := range columns {
		rows[0] = append(rows[0], c.Name)
		for i, x := range things {
			rows[1+i] = append(rows[1+i], c.Cell(x))
		}
	}
	return writeAll(w, rows)
}

// writeAll writes rows as RFC 4180 has them, with its line ends.
func writeAll(w io.Writer, rows [][]string) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	return out.WriteAll(rows)
}

// Text is a cell of a text that somebody wrote: it is safe to show, and no formula.
func Text(s string) string { return cell(diag.Safe(s)) }

// Number is a cell of a number, with all its digits.
func Number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
