package size

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strconv"
	"strings"

	"newmake/compile"
	"newmake/compile/front"
	"newmake/compile/measure"
	"newmake/compile/plan"
	"newmake/lang/diag"
	"newmake/lang/edit"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
	"newmake/lang/words"
)

// Request is what a person asks for, in words with units as they are written: one
// of casks, bottles, proofGallons, pureAlcohol, wash, massOf, or cut with Proof or Abv.
type Request struct {
	Casks        string // a whole number
	Bottles      string // a whole number
	ProofGallons string
	LPA          string // litres of pure alcohol
	Wash         string // 480 gal
	Grain        string // corn 700 lb
	Cut          string // hearts
	Proof        string // that the hearts average
	Abv          string // the same by volume at 20 C, in place of Proof

	Name string // of the variant; "" is made of what is asked for
	Keep bool   // the variant is to be written, so its name must be free
}

// Found is a size or a cut that was found, written as a variant.
type Found struct {
	Source *front.Source
	Batch  *recipe.Batch // that was asked about
	Units  measure.Units
	Target Target // Of is nil for a cut
	Before *plan.Plan
	Answer *Answer // as it was solved
	After  *Answer // the variant as it is written, planned
	// Largest is the largest size that fits the plant; nil for a cut, and where
	// nothing stands in the way of any.
	Largest *Largest
	Text    *edit.Variant // the variant
	Diags   diag.List     // said of the variant
}

// Find finds what is asked for of a batch and writes it as a variant. An error is
// a diag.List where there is no such size, with what stands in the way, or where
// the variant would have errors; and else says what is wrong with the request.
func Find(src *front.Source, b *recipe.Batch, r Request) (*Found, error) {
	f := &Found{Source: src, Batch: b, Units: measure.US}
	if b.Units == recipe.SI {
		f.Units = measure.SI
	}
	memo := &compile.Memo{}
	if err := f.solve(r, memo); err != nil {
		var none *none
		if errors.As(err, &none) {
			return nil, f.noSize(none)
		}
		return nil, err
	}
	if f.Target.Of != nil {
		f.Largest = solver{b, memo}.largestAbove(f.Answer.Factor)
	}
	f.Before, _ = compile.Compile(b)
	return f, nil
}

func (f *Found) solve(r Request, memo *compile.Memo) error {
	asked := 0
	for _, v := range []string{r.Casks, r.Bottles, r.ProofGallons, r.LPA, r.Wash, r.Grain, r.Cut} {
		if v != "" {
			asked++
		}
	}
	if asked != 1 {
		if readerOf(f.Batch) == quantity.SI {
			return diag.Refuse("say what is wanted, one of --casks, --bottles, --lpa, --wash, a grain as in --barley 230 kg, or --cut hearts --abv")
		}
		return diag.Refuse("say what is wanted, one of --casks, --bottles, --proof-gallons, --lpa, --wash, a grain as in --corn 500 lb, or --cut hearts --proof or --abv")
	}
	if r.Cut != "" || r.Proof != "" || r.Abv != "" {
		return f.solveCut(r, memo)
	}
	var err error
	if r.Bottles != "" {
		f.Target, err = bottled(f.Batch, r.Bottles, memo)
	} else {
		f.Target, err = wanted(f.Batch, r)
	}
	if err != nil {
		return err
	}
	if f.Answer, err = Solve(f.Batch, f.Target, memo); err != nil {
		return err
	}
	name, err := f.name(r)
	if err != nil {
		return err
	}
	return f.writeOut(name, r.Grain != "")
}

// fuller is how much larger a batch is tried, as a share of it, where its amounts as
// they are weighed out leave the last cask or bottle short; tries is how often.
const (
	fuller = 5e-4
	tries  = 20
)

// writeOut writes the size that was solved in amounts that can be measured out, and
// plans it so. down is for a weight of grain that there is no more of.
func (f *Found) writeOut(name string, down bool) (err error) {
	for i := range tries {
		factor := f.Answer.Factor * (1 + fuller*float64(i))
		f.Text, err = edit.Scaled(f.Source.House, f.Batch, factor, name, "Sized for "+f.Target.What+".", down, f.unkept())
		if err != nil {
			return err
		}
		if list := f.planWritten(); list != nil {
			return list
		}
		if f.Target.Met == nil || f.Target.Met(f.After.Plan) {
			break
		}
	}
	return nil
}

// bottled is so many bottles. What comes from wood comes from whole casks, so it is
// the least number of them that gives as many.
func bottled(b *recipe.Batch, asked string, memo *compile.Memo) (Target, error) {
	n, err := count("bottles", asked)
	if err != nil {
		return Target{}, err
	}
	p, list := memo.Compile(b)
	if p == nil {
		return Target{}, list
	}
	if p.Cask.Casks > 0 || p.Cask.SizeL > 0 {
		return fromCasks(b, p, n, memo)
	}
	if p.Cask.BottleL == 0 {
		return Target{}, diag.Refuse("%q is kept as it comes, in no bottle: say how it is bottled, as in `%s`", b.Name, wording.Restated("bottle 750 mL at 94 proof", readerOf(b)))
	}
	return bottles(n, b.Gauge), nil
}

func fromCasks(b *recipe.Batch, p *plan.Plan, n float64, memo *compile.Memo) (Target, error) {
	if p.Cask.Casks == 0 || p.Cask.Bottles == 0 {
		a, err := Solve(b, Casks(1, b.Gauge), memo)
		if err != nil {
			return Target{}, err
		}
		p = a.Plan
	}
	if p.Cask.Bottles == 0 {
		return Target{}, diag.Refuse("a cask of %q gives no bottles at the end of its rest", b.Name)
	}
	casks := math.Ceil(n*float64(p.Cask.Casks)/float64(p.Cask.Bottles) - 1e-9)
	t := Casks(casks, b.Gauge)
	t.What = words.Count(int(n), "bottle") + ", from " + t.What
	return t, nil
}

// count reads a whole number.
func count(what, text string) (float64, error) {
	n, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.ReplaceAll(text, ",", ""), what)), 64)
	if err != nil || n < 1 || n != math.Trunc(n) || n > 1e6 {
		return 0, diag.Refuse("--%s is a whole number of %s, not %q", what, what, text)
	}
	return n, nil
}

func (f *Found) solveCut(r Request, memo *compile.Memo) error {
	if r.Cut != "hearts" {
		return diag.Refuse("--cut is hearts, which is where they end, not %q", r.Cut)
	}
	s, err := strengthWanted(r, readerOf(f.Batch))
	if err != nil {
		return err
	}
	if f.Answer, err = cut(f.Batch, s, memo); err != nil {
		return err
	}
	f.Target.What = s.String() + " hearts"
	name, err := f.name(r)
	if err != nil {
		return err
	}
	f.Text, err = edit.Cut(f.Source.House, f.Batch, f.Answer.Batch.Spirit.HeartsTo, name, fmt.Sprintf("Cut for hearts of %s.", s), f.unkept())
	if err != nil {
		return err
	}
	if list := f.planWritten(); list != nil {
		return list
	}
	return nil
}

// strengthWanted reads the strength that hearts are to average: a proof at 60 F, or by
// volume at 20 C. Each is asked for by its own name, so that neither is taken for the
// other.
func strengthWanted(r Request, reader quantity.System) (strength, error) {
	switch {
	case r.Proof != "" && r.Abv != "":
		return strength{}, diag.Refuse("--proof and --abv say the same in two ways: give one")
	case r.Abv != "":
		share, err := amount(r.Abv, "abv", quantity.Strength, "% abv", reader)
		unit := strings.TrimSpace(strings.TrimLeft(r.Abv, "0123456789., "))
		if u, ok := quantity.Lookup(unit); err != nil || unit != "" && (!ok || u.Name != "% abv") {
			return strength{}, diag.Refuse("--abv is a strength by volume at 20 C: 69 or \"69 %% vol\", and not %q", r.Abv)
		}
		return strength{100 * share, false}, nil
	}
	if r.Proof == "" && reader == quantity.SI {
		return strength{}, diag.Refuse("--cut hearts wants --abv, as in --cut hearts --abv \"69 %% vol\"")
	}
	share, err := amount(r.Proof, "proof", quantity.Strength, "proof", reader)
	if err != nil {
		return strength{}, diag.Refuse("--cut hearts wants --proof or --abv, as in --cut hearts --proof 142, or --cut hearts --abv \"69 %% vol\"")
	}
	if strings.Contains(r.Proof, "ab") || strings.Contains(r.Proof, "vol") {
		return strength{}, diag.Refuse("--proof is a proof, at 60 F: 142 and not %q; for a strength by volume there is --abv", r.Proof)
	}
	return strength{200 * share, true}, nil
}

// unkept reports whether the batch makes promises that the answer does not keep.
func (f *Found) unkept() bool {
	for _, d := range f.Answer.Diags {
		if d.Code == diag.CodePromiseBroken {
			return true
		}
	}
	return false
}

// name is what the variant is called. One that is taken cannot be written.
func (f *Found) name(r Request) (string, error) {
	name := r.Name
	if name == "" {
		name = f.Batch.Name + ", " + strings.TrimSuffix(f.Target.What, " of hearts")
	}
	for _, known := range f.Source.House.Batches() {
		if !strings.EqualFold(known, name) {
			continue
		}
		if r.Keep {
			return "", diag.Refuse("there is a batch %q already: give another --name", known)
		}
		return name + ", again", nil // it is only shown
	}
	return name, nil
}

// wanted reads the target.
func wanted(b *recipe.Batch, r Request) (Target, error) {
	switch {
	case r.Casks != "":
		n, err := count("casks", r.Casks)
		if err != nil {
			return Target{}, err
		}
		return Casks(n, b.Gauge), nil
	case r.ProofGallons != "":
		pg, err := amount(r.ProofGallons, "proof-gallons", quantity.ProofGallons, "proof-gal", readerOf(b))
		if err != nil {
			return Target{}, err
		}
		return proofGallons(pg), nil
	case r.LPA != "":
		m3, err := amount(r.LPA, "lpa", quantity.PureAlcohol, "LPA", readerOf(b))
		if err != nil {
			return Target{}, err
		}
		return pureAlcohol(litresPerM3 * m3), nil
	case r.Wash != "":
		m3, err := amount(r.Wash, "wash", quantity.Volume, "", readerOf(b))
		if err != nil {
			return Target{}, err
		}
		unit := strings.TrimSpace(strings.TrimLeft(r.Wash, "0123456789., "))
		if u, ok := quantity.Lookup(unit); ok && u.System == quantity.US {
			gallon, _ := quantity.ToSI(1, "gal", quantity.Volume)
			return wash(m3/gallon, true, r.Wash), nil
		}
		return wash(1000*m3, false, r.Wash), nil
	}
	name, weight, _ := strings.Cut(r.Grain, " ")
	known := false
	var names []string
	for _, l := range b.Bill.Lines {
		known = known || l.Grain.Name == name
		names = append(names, l.Grain.Name)
	}
	if !known {
		return Target{}, diag.Refuse("there is no flag --%s, and no grain of that name in the bill, which has %s", name, strings.Join(names, ", "))
	}
	kg, err := amount(weight, name, quantity.Mass, "", readerOf(b))
	if err != nil {
		return Target{}, err
	}
	return massOf(name, kg, weight), nil
}

// readerOf is the system in which a batch counts.
func readerOf(b *recipe.Batch) quantity.System {
	if b.Units == recipe.SI {
		return quantity.SI
	}
	return quantity.US
}

// amount reads a number with its unit; bare numbers have the one given. A refusal is for
// a reader who counts in a system.
func amount(text, flag string, kind quantity.Kind, bare string, reader quantity.System) (float64, error) {
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
	if err == nil && !(v > 0) {
		return 0, diag.Refuse("--%s is more than nothing, not %q", flag, text)
	}
	if err != nil {
		return 0, diag.Refuse("--%s wants a number with its unit, and %q is none", flag, text)
	}
	si, err := quantity.ToSI(v, unit, kind)
	if err != nil && unit == "" {
		return 0, diag.Refuse("--%s %s needs a unit: %s is in %s", flag, text, kind, wording.OrList(wording.UnitsOf(kind, reader)))
	}
	if err != nil {
		return 0, diag.Refuse("--%s %s: %v", flag, text, err)
	}
	return si, nil
}

// planWritten plans the variant as it is written: what is printed is what the
// text gives, and not what the search found before it was rounded.
func (f *Found) planWritten() diag.List {
	file := filepath.Join(f.Source.House.Root, "sized"+front.Ending)
	src, err := front.Load(front.Place{Path: f.Source.Path, Overlay: map[string][]byte{file: f.Text.Text}})
	if err != nil {
		if list, ok := err.(diag.List); ok {
			return list
		}
		return diag.List{{Code: diag.CodeUnreadable, Severity: diag.Error, Summary: err.Error()}}
	}
	made, err := src.Plan(f.Text.Name, nil)
	if err != nil {
		return diag.List{{Code: diag.CodeUnreadable, Severity: diag.Error, Summary: err.Error()}}
	}
	if !made.Sound() {
		return made.Diags
	}
	f.After = &Answer{Factor: made.Recipe.Bill.TotalKg / f.Batch.Bill.TotalKg, Batch: made.Recipe, Plan: made.Plan, Diags: made.Diags}
	f.Diags = made.Diags
	return nil
}

// noSize says that there is no such size, and what stands in the way.
func (f *Found) noSize(none *none) diag.List {
	d := diag.Diagnostic{Code: diag.CodeNoSize, Severity: diag.Error, At: f.Batch.Where[recipe.PathBatch], Summary: none.Error()}
	if none.Limit != nil {
		d.Code = diag.CodeSizeLimit
		d.Summary = fmt.Sprintf("%s: %s", none.Target, none.Limit.Summary)
		d.Related = append(d.Related, diag.Related{At: none.Limit.At, Text: "this stands in the way first"})
		d.Related = append(d.Related, none.Limit.Related...)
		d.Reason = none.Limit.Reason
		d.Help = none.Limit.Help
		if l := none.Largest; l != nil {
			d.Help = fmt.Sprintf("the largest that fits this plant is %s of grain, which gives %s; or %s", l.Grain(f.Units), l.Gives(f.Units), none.Limit.Help)
		}
	} else if none.Most > 0 {
		d.Help = "what can be had is stated; ask for that, or change the recipe"
	}
	return diag.List{d}
}

// Gives says in words what a size gives.
func (a *Answer) Gives(u measure.Units) string {
	h := a.Hearts()
	words := fmt.Sprintf("%s of hearts, %s proof gallons", u.Volume(h), measure.Number(h.ProofGallons, 1))
	if u == measure.SI {
		words = fmt.Sprintf("%s of hearts, %s L of pure alcohol", u.Volume(h), measure.Number(h.PureL, 1))
	}
	if a.Plan.Cask.Casks == 1 {
		return words + ", 1 cask"
	}
	return fmt.Sprintf("%s, %d casks", words, a.Plan.Cask.Casks)
}

// Hearts are those of the plan.
func (a *Answer) Hearts() plan.Lot { return HeartsOf(a.Plan) }

// HeartsOf are the hearts of a plan.
func HeartsOf(p *plan.Plan) plan.Lot {
	for _, f := range p.Spirit.Fractions {
		if f.Name == "hearts" {
			return f.Lot
		}
	}
	return plan.Lot{}
}
