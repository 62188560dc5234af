package main

import (
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"newmake/compile"
	solve "newmake/compile/ask/size"
	"newmake/compile/measure"
	"newmake/compile/notice"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

// sizing is a batch and the size that was found for it.
type sizing struct {
	batch  *recipe.Batch
	house  *check.House
	memo   *compile.Memo
	units  measure.Units
	target solve.Target // Of is nil for a cut
	proof  float64      // of a cut
	answer *solve.Answer
	after  *solve.Answer // the variant as it is written, planned
	text   *edit.Variant
	list   diag.List // said of the variant
}

// solve finds the answer and writes it as a variant.
func (s *sizing) solve(f sizeFlags) error {
	asked := 0
	for _, v := range []string{f.casks, f.proofGallons, f.wash, f.grain, f.cut} {
		if v != "" {
			asked++
		}
	}
	if asked != 1 {
		return usage("say what is wanted, one of --casks, --proof-gallons, --wash, a grain as in --corn 500 lb, or --cut hearts --proof")
	}
	if f.cut != "" || f.proof != "" {
		return s.solveCut(f)
	}
	var err error
	if s.target, err = s.wanted(f); err != nil {
		return err
	}
	if s.answer, err = solve.Solve(s.batch, s.target, s.memo); err != nil {
		return err
	}
	name, err := s.name(f)
	if err != nil {
		return err
	}
	s.text, err = edit.Scaled(s.house, s.batch, s.answer.Factor, name, "Sized for "+s.target.What+".", s.promised())
	return err
}

func (s *sizing) solveCut(f sizeFlags) error {
	if f.cut != "hearts" {
		return usage("--cut is hearts, which is where they end, not %q", f.cut)
	}
	proof, err := amount(f.proof, "proof", quantity.Strength, "proof")
	if err != nil || f.proof == "" {
		return usage("--cut hearts wants --proof, as in --cut hearts --proof 142")
	}
	s.proof = 200 * proof
	if strings.Contains(f.proof, "ab") || strings.Contains(f.proof, "vol") {
		return usage("--proof is a proof, at 60 F: 142 and not %q", f.proof)
	}
	if s.answer, err = solve.Cut(s.batch, s.proof, s.memo); err != nil {
		return err
	}
	s.target.What = measure.Number(s.proof, 1) + " proof hearts"
	name, err := s.name(f)
	if err != nil {
		return err
	}
	s.text, err = edit.Cut(s.house, s.batch, s.answer.Batch.Spirit.HeartsTo, name, fmt.Sprintf("Cut for hearts of %s proof.", measure.Number(s.proof, 1)), s.promised())
	return err
}

// promised says that the batch makes promises that the answer does not keep.
func (s *sizing) promised() bool {
	for _, d := range s.answer.Diags {
		if d.Code == diag.CodePromiseBroken {
			return true
		}
	}
	return false
}

// name is what the variant is called. One that is taken cannot be written.
func (s *sizing) name(f sizeFlags) (string, error) {
	name := f.name
	if name == "" {
		name = s.batch.Name + ", " + strings.TrimSuffix(s.target.What, " of hearts")
	}
	for _, known := range s.house.Batches() {
		if !strings.EqualFold(known, name) {
			continue
		}
		if f.write != "" {
			return "", usage("there is a batch %q already: give another --name", known)
		}
		return name + ", again", nil // it is only shown
	}
	return name, nil
}

// wanted reads the target.
func (s *sizing) wanted(f sizeFlags) (solve.Target, error) {
	switch {
	case f.casks != "":
		n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(f.casks, "casks")), 64)
		if err != nil || n < 1 || n != float64(int(n)) || n > 1000 {
			return solve.Target{}, usage("--casks is a whole number of casks, not %q", f.casks)
		}
		return solve.Casks(n, s.batch.Gauge), nil
	case f.proofGallons != "":
		pg, err := amount(f.proofGallons, "proof-gallons", quantity.ProofGallons, "proof-gal")
		if err != nil {
			return solve.Target{}, err
		}
		return solve.ProofGallons(pg), nil
	case f.wash != "":
		m3, err := amount(f.wash, "wash", quantity.Volume, "")
		if err != nil {
			return solve.Target{}, err
		}
		unit := strings.TrimSpace(strings.TrimLeft(f.wash, "0123456789., "))
		if u, ok := quantity.Lookup(unit); ok && u.System == quantity.US {
			gallon, _ := quantity.ToSI(1, "gal", quantity.Volume)
			return solve.Wash(m3/gallon, true, f.wash), nil
		}
		return solve.Wash(1000*m3, false, f.wash), nil
	}
	name, weight, _ := strings.Cut(f.grain, " ")
	known := false
	var names []string
	for _, l := range s.batch.Bill.Lines {
		known = known || l.Grain.Name == name
		names = append(names, l.Grain.Name)
	}
	if !known {
		return solve.Target{}, usage("there is no flag --%s, and no grain of that name in the bill, which has %s", name, strings.Join(names, ", "))
	}
	kg, err := amount(weight, name, quantity.Mass, "")
	if err != nil {
		return solve.Target{}, err
	}
	return solve.Grain(name, kg, weight), nil
}

// amount reads a number with its unit; bare numbers have the one given.
func amount(text, flag string, kind quantity.Kind, bare string) (float64, error) {
	text = strings.TrimSpace(text)
	end := 0
	for end < len(text) && strings.ContainsRune("0123456789.,", rune(text[end])) {
		end++
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(text[:end], ",", ""), 64)
	unit := strings.TrimSpace(text[end:])
	if unit == "" {
		unit = bare
	}
	if err != nil || !(v > 0) {
		return 0, usage("--%s wants a number with its unit, and %q is none", flag, text)
	}
	si, err := quantity.ToSI(v, unit, kind)
	if err != nil {
		return 0, usage("--%s %s: %v", flag, text, err)
	}
	return si, nil
}

// planWritten plans the variant as it is written: what is printed is what the
// text gives, and not what the search found before it was rounded.
func (s *sizing) planWritten(at string) diag.List {
	file := filepath.Join(s.house.Root, "sized.batch")
	h, err := check.Load(at, check.Options{Overlay: map[string][]byte{file: s.text.Text}})
	if err != nil {
		if list, ok := err.(diag.List); ok {
			return list
		}
		return diag.List{{Code: diag.CodeUnreadable, Severity: diag.Error, Summary: err.Error()}}
	}
	b, list := h.Batch(s.text.Name)
	if b == nil {
		return list
	}
	p, computed := compile.Compile(b)
	list = notice.Together(list, computed)
	if p == nil || broken(list) {
		return list
	}
	s.after = &solve.Answer{Factor: s.answer.Factor, Batch: b, Plan: p, Diags: list}
	s.list = list
	return nil
}

// gives says in words what a size gives.
func (s *sizing) gives(x *solve.Answer) string {
	p := *x.Plan
	h := heartsOf(&p)
	words := fmt.Sprintf("%s of hearts, %s proof gallons", s.units.Volume(h), measure.Number(h.ProofGallons, 1))
	if s.units == measure.SI {
		words = fmt.Sprintf("%s of hearts, %s L of pure alcohol", s.units.Volume(h), measure.Number(h.PureL, 1))
	}
	return words + ", " + caskWords(p.Cask.Casks)
}

func caskWords(n int) string {
	if n == 1 {
		return "1 cask"
	}
	return fmt.Sprintf("%d casks", n)
}
