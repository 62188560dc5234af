package trial

import (
	"io"
	"reflect"
	"strings"

	"newmake/compile/plan"
	"newmake/lang/diag"
)

// trialDocument is a trial as JSON.
type trialDocument struct {
	Format  string       `json:"format"`
	Version string       `json:"version"`
	Batch   string       `json:"batch"`
	Batches []trialBatch `json:"batches"` // the batch itself first
}

type trialBatch struct {
	Name    string       `json:"name"`
	Parent  string       `json:"parent,omitempty"`
	Changes []string     `json:"changes"`
	Differs []string     `json:"differs"` // names in summary whose numbers are other than the first's
	Summary plan.Summary `json:"summary"`
	Bill    []trialGrain `json:"bill"`
	Broken  int          `json:"promisesBroken"`
	Warned  int          `json:"warnings"`
	// Unpriced has no price, and counts as nothing in the money.
	Unpriced []string `json:"unpriced,omitempty"`
}

type trialGrain struct {
	Grain    string  `json:"grain"`
	MassKg   float64 `json:"massKg"`
	SharePct float64 `json:"sharePct"`
}

// JSON writes the trial as one document with one final newline.
func (t Trial) JSON(w io.Writer) error {
	d := trialDocument{Format: "newmake.trial", Version: "1.0", Batch: t[0].Batch.Name}
	for _, p := range t {
		b := trialBatch{
			Name: p.Batch.Name, Parent: p.Batch.Parent, Changes: append([]string{}, p.Batch.Changes...),
			Differs: differing(t[0].Summary, p.Summary), Summary: p.Summary, Broken: broken(p), Warned: warned(p),
		}
		if p.Cost != nil {
			b.Unpriced = p.Cost.Unpriced
		}
		for _, l := range p.Bill.Lines {
			b.Bill = append(b.Bill, trialGrain{l.Name, l.MassKg, l.SharePct})
		}
		d.Batches = append(d.Batches, b)
	}
	return diag.EncodeJSON(w, "", d)
}

// differing names the numbers of a summary that are other than another's.
func differing(base, s plan.Summary) []string {
	out := []string{}
	a, b := reflect.ValueOf(base), reflect.ValueOf(s)
	for i := range a.NumField() {
		if a.Field(i).Interface() != b.Field(i).Interface() {
			name, _, _ := strings.Cut(a.Type().Field(i).Tag.Get("json"), ",")
			out = append(out, name)
		}
	}
	return out
}
