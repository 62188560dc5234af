package sized

import (
	"io"

	"newmake/compile/ask/size"
	"newmake/compile/plan"
	"newmake/lang/diag"
)

// Answer is a size as JSON.
type Answer struct {
	Format  string       `json:"format"`
	Version string       `json:"version"`
	Batch   string       `json:"batch"`
	Target  string       `json:"target"`
	Factor  float64      `json:"factor"` // times the batch; 1 for a cut
	Lines   []Line       `json:"lines"`
	Before  plan.Summary `json:"before"`
	After   plan.Summary `json:"after"` // of the variant as it is written
	Largest *Largest     `json:"largest,omitempty"`
	Kept    []string     `json:"kept,omitempty"` // lines of paces and of cuts by the clock, which stay
	Variant string       `json:"variant"`
	Text    string       `json:"text"`
	Notices diag.List    `json:"diagnostics"`
}

// Largest is the largest size that fits the plant.
type Largest struct {
	Factor float64      `json:"factor"` // times the batch
	Plan   plan.Summary `json:"plan"`
	Limit  string       `json:"limit,omitempty"` // what stands in the way of a larger one
	Code   diag.Code    `json:"code,omitempty"`  // of that
}

// Line is one that changes.
type Line struct {
	Old string `json:"old"`
	New string `json:"new"`
}

// JSON writes what was found as one document.
func JSON(w io.Writer, f *size.Found) error {
	out := Answer{
		Format: "newmake.size", Version: "1.0", Batch: f.Batch.Name, Target: f.Target.What, Factor: plan.RoundTo(f.After.Factor, 6),
		Lines: []Line{}, Before: f.Before.Summary, After: f.After.Plan.Summary, Variant: f.Text.Name, Text: string(f.Text.Text),
		Notices: append(diag.List{}, f.Diags...),
	}
	out.Kept = f.Kept()
	if l := f.Largest; l != nil {
		l.Plan.Round()
		out.Largest = &Largest{Factor: plan.RoundTo(l.Factor, 6), Plan: l.Plan.Summary}
		if l.Limit != nil {
			out.Largest.Limit, out.Largest.Code = l.Limit.Summary, l.Limit.Code
		}
	}
	for _, l := range f.Text.Lines {
		out.Lines = append(out.Lines, Line{l.Old, l.New})
	}
	return diag.EncodeJSON(w, "", out)
}
