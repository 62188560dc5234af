// Package published reads the published figures of testdata, for the tests that
// hold the models against them and for the accuracy page that says how well.
package published

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
)

// Row is one line of a table, by the names of its columns.
type Row map[string]string

// Num is a column's number.
func (r Row) Num(column string) (float64, error) {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		return 0, fmt.Errorf("column %s: %w", column, err)
	}
	return v, nil
}

// Read reads a table by its path below testdata, such as fluid/water.csv. Lines
// that begin with # name its source; the next names the columns. It works from
// any folder of the module.
func Read(name string) ([]Row, error) {
	top, err := ModuleRoot()
	if err != nil {
		return nil, err
	}
	f, err := os.Open(filepath.Join(top, "testdata", filepath.FromSlash(name)))
	if err != nil {
		return nil, err
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	if len(records) < 2 {
		return nil, fmt.Errorf("%s has no rows", name)
	}
	rows := make([]Row, 0, len(records)-1)
	for _, rec := range records[1:] {
		row := Row{}
		for i, column := range records[0] {
			row[column] = rec[i]
		}
		rows = append(rows, row)
	}
	return rows, nil
}

// Dir is a folder of testdata.
func Dir(name string) (string, error) {
	top, err := ModuleRoot()
	return filepath.Join(top, "testdata", filepath.FromSlash(name)), err
}

// ModuleRoot is the folder that holds go.mod, at or above the working one.
func ModuleRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", fmt.Errorf("no go.mod at or above the working folder")
		}
		dir = up
	}
}

// Deviations gathers how far a model is from a source.
type Deviations struct {
	N        int
	Max, sum float64
	signed   float64
}

// Add takes one more point.
func (d *Deviations) Add(got, want float64) {
	e := got - want
	d.N, d.Max, d.sum, d.signed = d.N+1, math.Max(d.Max, math.Abs(e)), d.sum+e*e, d.signed+e
}

// RMS is the root mean square error, 0 of no points.
func (d Deviations) RMS() float64 {
	if d.N == 0 {
		return 0
	}
	return math.Sqrt(d.sum / float64(d.N))
}

// Mean is the mean of the signed errors: above 0 the model is high.
func (d Deviations) Mean() float64 {
	if d.N == 0 {
		return 0
	}
	return d.signed / float64(d.N)
}

// AsOne counts as one point what holds one published number against the model
// under many conditions. The largest and the mean errors stay.
func (d Deviations) AsOne() Deviations {
	if d.N == 0 {
		return d
	}
	n := float64(d.N)
	return Deviations{N: 1, Max: d.Max, sum: d.sum / n, signed: d.signed / n}
}

// With is the deviations of both.
func (d Deviations) With(e Deviations) Deviations {
	return Deviations{N: d.N + e.N, Max: math.Max(d.Max, e.Max), sum: d.sum + e.sum, signed: d.signed + e.signed}
}
