package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"newmake/compile"
	"newmake/compile/measure"
	solve "newmake/compile/size"
	"newmake/lang/check"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
)

const sizeShort = `newmake size finds the batch that gives what is wanted.

  newmake size ferry-landing.batch --proof-gallons 60
  newmake size ferry-landing.batch --cut hearts --proof 142

newmake help size has more of them.
`

// sizeFlags are what a person asks of a size.
type sizeFlags struct {
	casks, proofGallons, wash, grain string
	cut, proof                       string
	write, name, batch, format       string
}

func (a *app) sizeCommand() *cobra.Command {
	var f sizeFlags
	cmd := &cobra.Command{
		Use:   "size FILE|BATCH (--casks N | --proof-gallons N | --wash VOLUME | --GRAIN WEIGHT | --cut hearts --proof N)",
		Short: "The batch that fills so many casks, or the cut that gives a proof",
		Long: "size asks the plan's question the other way round. It finds how large the batch has to be\n" +
			"to fill so many casks, to give so many proof gallons of hearts or so much wash, or to use\n" +
			"up a weight of one grain; or where the hearts have to end to average a proof.\n\n" +
			"The batch is made larger as a whole: grain, liquor, doses, and the foreshots and cuts that\n" +
			"are measured by volume. Vessels, heat and times stay, so that the whole plan is computed\n" +
			"again for each size that is tried; it is no rule of three. If a vessel is too small, or the\n" +
			"law or the plant stands in the way, size says so, and which size goes.\n\n" +
			"It prints the lines that change. -w writes them as a variant: at the end of the batch's own\n" +
			"file, or with -w=FILE into a new file of the house. Nothing is ever written over.",
		Example: "  newmake size ferry-landing.batch --casks 1\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60\n" +
			"  newmake size ferry-landing.batch --wash 350 gal\n" +
			"  newmake size ferry-landing.batch --corn 500 lb\n" +
			"  newmake size ferry-landing.batch --cut hearts --proof 142\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60 -w --name \"Ferry Landing, small\"\n" +
			"  newmake size ferry-landing.batch --proof-gallons 60 --format json",
		RunE: func(_ *cobra.Command, args []string) error {
			switch len(args) {
			case 0:
				fmt.Fprint(a.out, sizeShort)
				return nil
			case 1:
				return a.size(args[0], f)
			}
			return usage("size takes one batch, not %s", quoteAll(args))
		},
	}
	cmd.Flags().StringVar(&f.casks, "casks", "", "as many casks as this, full")
	cmd.Flags().StringVar(&f.proofGallons, "proof-gallons", "", "this many proof gallons of hearts")
	cmd.Flags().StringVar(&f.wash, "wash", "", "this volume of wash: 480 gal")
	cmd.Flags().StringVar(&f.grain, "grain", "", "this weight of a grain: \"corn 700 lb\"; or --corn 700 lb")
	cmd.Flags().StringVar(&f.cut, "cut", "", "the cut to find: hearts, which is where they end")
	cmd.Flags().StringVar(&f.proof, "proof", "", "with --cut: the proof that the hearts average")
	cmd.Flags().StringVarP(&f.write, "write", "w", "", "write a variant: into the batch's file, or -w=FILE into a new one")
	cmd.Flags().Lookup("write").NoOptDefVal = ownFile
	cmd.Flags().StringVar(&f.name, "name", "", "the variant's name")
	cmd.Flags().StringVar(&f.batch, "batch", "", "the batch to size, by name, of a file with several")
	cmd.Flags().StringVar(&f.format, "format", "", "text or json")
	return cmd
}

// ownFile is what -w stands for alone: the file that the batch is in.
const ownFile = "the same file"

func (a *app) size(arg string, f sizeFlags) error {
	if f.format != "" && f.format != "text" && f.format != "json" {
		return usage("there is no format %q: write text or json", f.format)
	}
	path, name := a.find(arg)
	if f.batch != "" {
		name = f.batch
	}
	src, err := a.load(path, "")
	if list, ok := err.(diag.List); ok {
		return a.noAnswer(list, f)
	}
	if err != nil {
		return err
	}
	if name, err = a.choose(src, name); err != nil {
		return err
	}
	b, list := src.house.Batch(name)
	if b == nil {
		return a.noAnswer(list, f)
	}
	s := &sizing{batch: b, house: src.house, memo: &compile.Memo{}, units: measure.US}
	if b.Units == recipe.SI {
		s.units = measure.SI
	}
	if err := s.solve(f); err != nil {
		return a.noSize(s, err, f)
	}
	if err := s.planWritten(src.path); err != nil {
		return a.noAnswer(err, f)
	}
	if err := a.showSize(s, f); err != nil || f.write == "" {
		return err
	}
	return a.writeVariant(s, f)
}

// noAnswer ends a size whose text has errors.
func (a *app) noAnswer(list diag.List, f sizeFlags) error {
	if f.format == "json" {
		if err := a.showJSON(list); err != nil {
			return usage("cannot write: %v", err)
		}
		return errSaid
	}
	a.show(list)
	return errSaid
}

// noSize says that there is no such size, and what stands in the way.
func (a *app) noSize(s *sizing, err error, f sizeFlags) error {
	var none *solve.None
	if !errors.As(err, &none) {
		if list, ok := err.(diag.List); ok {
			return a.noAnswer(list, f)
		}
		return err
	}
	d := diag.Diagnostic{Code: diag.CodeNoSize, Severity: diag.Error, At: s.batch.Where["batch"], Summary: none.Error()}
	if none.Limit != nil {
		d.Code = diag.CodeSizeLimit
		d.Summary = fmt.Sprintf("%s: %s", none.Target, none.Limit.Summary)
		d.Related = append(d.Related, diag.Related{At: none.Limit.At, Text: "this stands in the way first"})
		d.Related = append(d.Related, none.Limit.Related...)
		d.Reason = none.Limit.Reason
		d.Help = none.Limit.Help
		if l := none.Largest; l != nil {
			d.Help = fmt.Sprintf("the largest that goes is %.3f times the batch, which gives %s; or %s", l.Factor, s.gives(l), none.Limit.Help)
		}
	} else if none.Most > 0 {
		d.Help = "what can be had is stated; ask for that, or change the recipe"
	}
	return a.noAnswer(diag.List{d}, f)
}

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
		return solve.Casks(n), nil
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
		return solve.Wash(m3, f.wash), nil
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
	list = compile.Together(list, computed)
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
