package edit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"newmake/lang"
	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/wording"
)

// billChange is a grain and how much of it there is to be.
type billChange struct {
	grain string
	share float64 // of the bill; -1: a weight
	kg    float64
	text  string
}

// grain reads a change of one line of the bill.
func (e *editor) grain(name string, c Change, value []lang.Item) (billChange, error) {
	out := billChange{grain: name, share: -1, text: c.Value}
	if len(value) != 1 || value[0].Kind != lang.Number {
		return out, fault(diag.CodeChangeValue, fmt.Sprintf("%q is not how much of a grain there is", c.Value), "write a share or a weight: `14 %`, `120 lb`")
	}
	v := value[0]
	switch {
	case sameKind(v.Unit, "%"):
		out.share = v.Value / 100
		if !(out.share >= 0 && out.share <= 1) {
			return out, fault(diag.CodeChangeValue, fmt.Sprintf("%s cannot be %s of the bill", name, c.Value), "a share lies between 0 and 100 %")
		}
	case sameKind(v.Unit, "lb"):
		out.kg, _ = quantity.ToSI(v.Value, v.Unit, quantity.Mass)
	default:
		return out, fault(diag.CodeChangeValue, fmt.Sprintf("%q is neither a share nor a weight", c.Value), "write `14 %` or `120 lb`")
	}
	return out, nil
}

// total changes the weight of the whole bill; the shares stay.
func (e *editor) total(c Change, value []lang.Item) error {
	if len(value) != 1 || !sameKind(value[0].Unit, "lb") {
		return fault(diag.CodeChangeValue, fmt.Sprintf("%q is not the weight of a bill", c.Value), "write `bill=900 lb`")
	}
	kg, _ := quantity.ToSI(value[0].Value, value[0].Unit, quantity.Mass)
	s := e.stmt(e.batch.Where[recipe.PathBill])
	if s == nil {
		return e.unknown(c)
	}
	if item := massOf(s); item != nil {
		e.replace(item.At, c.Value)
	}
	if !e.inShares() {
		for _, l := range e.batch.Bill.Lines {
			e.weigh(l.Grain.Name, l.MassKg*kg/e.batch.Bill.TotalKg)
		}
		e.result.Gave = append(e.result.Gave, "every grain of the bill, in proportion")
	} else if massOf(s) == nil {
		// A variant's bill keeps its parent's total, which stands further up.
		e.replace(diag.Span{Src: s.At.Src, Start: s.At.End, End: s.At.End}, " "+c.Value)
	}
	return nil
}

// massOf is the weight that stands on a line.
func massOf(s *lang.Stmt) *lang.Item {
	for i := range s.Items {
		if it := &s.Items[i]; it.Kind == lang.Number && sameKind(it.Unit, "lb") {
			return it
		}
	}
	return nil
}

// line is the line of a grain, nil if the bill has none.
func (e *editor) line(grain string) *lang.Stmt {
	at, ok := e.batch.Where[recipe.PathBill.Child(grain)]
	if !ok || e.find(grain) == nil {
		return nil
	}
	return e.stmt(at)
}

func (e *editor) find(grain string) *recipe.BillLine {
	for i := range e.batch.Bill.Lines {
		if e.batch.Bill.Lines[i].Grain.Name == grain {
			return &e.batch.Bill.Lines[i]
		}
	}
	return nil
}

// amount is the number on a grain's line, nil for `rest`.
func (e *editor) amount(grain string) *lang.Item {
	s := e.line(grain)
	if s == nil {
		return nil
	}
	for i := range s.Items {
		if s.Items[i].Kind == lang.Number {
			return &s.Items[i]
		}
	}
	return nil
}

// inShares reports whether the bill is written in shares of a total.
func (e *editor) inShares() bool {
	for _, l := range e.batch.Bill.Lines {
		if it := e.amount(l.Grain.Name); it != nil && sameKind(it.Unit, "%") {
			return true
		}
	}
	return false
}

// shares makes the changes of single grains. Of a bill in shares the other grains
// give way in proportion, unless one of them takes the rest or the shares that
// are given come to the whole.
func (e *editor) shares(changes []billChange) error {
	if len(changes) == 0 {
		return nil
	}
	var names []string
	for _, c := range changes {
		if slices.Contains(names, c.grain) {
			return fault(diag.CodeChangeValue, fmt.Sprintf("%s is changed twice", c.grain), "say how much of it there is once")
		}
		names = append(names, c.grain)
	}
	total := e.batch.Bill.TotalKg
	inShares := e.inShares()
	if !inShares && !slices.ContainsFunc(changes, func(c billChange) bool { return c.share >= 0 }) {
		return e.weights(changes)
	}
	given := 0.0
	want := map[string]float64{}
	for _, c := range changes {
		want[c.grain] = c.share
		if c.share < 0 {
			want[c.grain] = c.kg / total
		}
		given += want[c.grain]
	}
	var others []recipe.BillLine
	left, rest := 0.0, false
	for _, l := range e.batch.Bill.Lines {
		if !slices.Contains(names, l.Grain.Name) {
			others = append(others, l)
			left += l.Share
			rest = rest || e.amount(l.Grain.Name) == nil
		}
	}
	if given > 1+1e-9 || left == 0 && math.Abs(given-1) > 5e-4 {
		return fault(diag.CodeChangeValue, fmt.Sprintf("the shares that are tried come to %s %%", wording.Trimmed(100*given, 4)), "they come to no more than 100 % of the bill")
	}
	for _, c := range changes {
		e.put(c, want[c.grain], inShares)
	}
	if rest || math.Abs(given+left-1) <= 1e-9 {
		return nil
	}
	e.giveWay(others, (1-given)/left, inShares)
	return nil
}

// giveWay scales the grains that are not spoken of. What rounding leaves over
// goes to the largest.
func (e *editor) giveWay(others []recipe.BillLine, by float64, inShares bool) {
	var said []string
	were := make([]float64, len(others))
	for i, l := range others {
		were[i] = l.Share
	}
	rounded := InProportion(were, by, 6)
	for i, l := range others {
		share := rounded[i]
		if inShares {
			if it := e.amount(l.Grain.Name); it != nil {
				e.replace(it.At, wording.Trimmed(100*share, 4)+" %")
			}
		} else {
			e.weigh(l.Grain.Name, share*e.batch.Bill.TotalKg)
		}
		said = append(said, fmt.Sprintf("%s %s to %s %%", l.Grain.Name, wording.Trimmed(100*l.Share, 2), wording.Trimmed(100*share, 2)))
	}
	e.result.Gave = append(e.result.Gave, strings.Join(said, ", "))
}

// InProportion scales shares, each rounded to so many decimals. What rounding leaves
// over goes to the largest, so that they come to what they would without it.
func InProportion(shares []float64, by float64, places int) []float64 {
	if len(shares) == 0 {
		return nil
	}
	ten := math.Pow10(places)
	largest, sum, exact := 0, 0.0, 0.0
	out := make([]float64, len(shares))
	for i, share := range shares {
		if share > shares[largest] {
			largest = i
		}
		out[i] = math.Round(share*by*ten) / ten
		sum += out[i]
		exact += share * by
	}
	out[largest] += exact - sum
	return out
}

// put writes the amount of one grain, in the way of the bill.
func (e *editor) put(c billChange, share float64, inShares bool) {
	text := c.text
	switch {
	case inShares && c.share < 0:
		text = wording.Trimmed(100*share, 4) + " %"
	case !inShares && c.share >= 0:
		e.weigh(c.grain, share*e.batch.Bill.TotalKg)
		return
	}
	switch s, it := e.line(c.grain), e.amount(c.grain); {
	case it != nil:
		e.replace(it.At, text)
	case s != nil: // `rest`
		e.replace(diag.Span{Src: s.At.Src, Start: s.Items[len(s.Items)-1].At.Start, End: s.At.End}, text)
	default:
		if bill := e.stmt(e.batch.Where[recipe.PathBill]); bill != nil {
			e.insert(bill, c.grain+" "+text)
		}
	}
}

// weights changes weights alone; a total that is written follows.
func (e *editor) weights(changes []billChange) error {
	total := e.batch.Bill.TotalKg
	for _, c := range changes {
		if l := e.find(c.grain); l != nil {
			total -= l.MassKg
		}
		total += c.kg
		e.put(c, 0, false)
	}
	if s := e.stmt(e.batch.Where[recipe.PathBill]); s != nil {
		if it := massOf(s); it != nil {
			e.replace(it.At, mass(total, it.Unit))
			e.result.Gave = append(e.result.Gave, "the total of the bill, to "+mass(total, it.Unit))
		}
	}
	return nil
}

// weigh writes a grain's weight in the unit that its line has.
func (e *editor) weigh(grain string, kg float64) {
	it := e.amount(grain)
	if it == nil {
		unit := "lb"
		if e.batch.Units == recipe.SI {
			unit = "kg"
		}
		if bill := e.stmt(e.batch.Where[recipe.PathBill]); bill != nil && e.line(grain) == nil {
			e.insert(bill, grain+" "+mass(kg, unit))
		}
		return
	}
	if l := e.find(grain); it.Unit == "bushel" || !sameKind(it.Unit, "lb") {
		e.replace(it.At, wording.Trimmed(it.Value*kg/l.MassKg, 4)+" "+it.Unit)
		return
	}
	e.replace(it.At, mass(kg, it.Unit))
}

func mass(kg float64, unit string) string {
	v, err := quantity.FromSI(kg, unit, quantity.Mass)
	if err != nil {
		v, unit = kg, "kg"
	}
	return wording.Trimmed(v, 4) + " " + unit
}
