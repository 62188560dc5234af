package batches

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
	"newmake/lang/recipe"
	"newmake/lang/schema"
	"newmake/lang/tree"
	"newmake/lang/wording"
)

// billLine is a line of the bill before its weight is known.
type billLine struct {
	node  *tree.Node
	grain *recipe.Grain
	cap   *tree.Capture // nil for `rest`
}

// readBill reads the grain bill. It says whether the bill is whole.
func readBill(b *reader, n *tree.Node) (bill recipe.Bill, whole bool) {
	if n == nil {
		return bill, false
	}
	b.where(recipe.PathBill, n.At())
	if !isFew(b, n, "grains") {
		return bill, false
	}
	whole = !n.Bad && !n.Gaps
	var lines []billLine
	for _, l := range n.Lines {
		if l.Bad {
			whole = false
			continue
		}
		if l.Field.Edit {
			continue
		}
		g := named[recipe.Grain](b, schema.Grain, l.Text("grain"))
		if g == nil {
			b.unknown(schema.Grain, "grain", l.Get("grain"), b.entries(schema.Grain))
			whole = false
			continue
		}
		b.where(recipe.PathBill.Child(g.Name), l.At())
		lines = append(lines, billLine{l, g, l.Quantity()})
	}
	if !whole {
		return bill, false
	}
	if len(lines) == 0 {
		b.add(diag.Diagnostic{
			Code: diag.CodeBillEmpty, Summary: "the bill has no grain in it", At: n.At(),
			Help: "add a line for each grain, for example: " + wording.Example(n.At(), "corn 640 lb"),
		})
		return bill, false
	}
	whole = weighBill(b, n, lines, &bill)
	return bill, whole
}

// weighBill turns the lines of the bill into weights.
func weighBill(b *reader, n *tree.Node, lines []billLine, r *recipe.Bill) bool {
	total := n.Num("mass")
	inherited := len(n.Stmt.Items) == 1 // a variant's bill that keeps its parent's total
	var shares, weights, rests []billLine
	for _, l := range lines {
		switch {
		case l.cap == nil:
			rests = append(rests, l)
		case l.cap.Kind == quantity.Share:
			shares = append(shares, l)
		default:
			weights = append(weights, l)
		}
	}
	if inherited && len(shares) == 0 && len(rests) == 0 {
		total = 0 // every line is a weight now
	}
	switch {
	case len(rests) > 1:
		b.add(diag.Diagnostic{
			Code: diag.CodeBillRest, Summary: "two grains can't both take the rest of the bill", At: rests[1].node.At(),
			Help:    "write how much there is of one of them",
			Related: []diag.Related{{At: rests[0].node.At(), Text: "this one takes the rest"}},
		})
		return false
	case len(rests) == 1 && total == 0 && len(shares) == 0:
		b.add(diag.Diagnostic{
			Code: diag.CodeBillTotal, Summary: "the rest of how much? the bill has no total", At: rests[0].node.At(),
			Help: "write the total after the word: " + wording.Example(n.At(), "bill 940 lb {"),
		})
		return false
	case len(shares) > 0 && len(weights) > 0 && len(rests) == 0:
		b.add(diag.Diagnostic{
			Code: diag.CodeBillMixed, Summary: "shares and weights stand in one bill", At: weights[0].node.At(),
			Help:    "write every line as a share of a total (" + wording.Example(n.At(), "bill 940 lb {") + "), or every line as a weight; one grain may take the `rest`",
			Related: []diag.Related{{At: shares[0].node.At(), Text: "this one is a share"}},
		})
		return false
	case len(shares) > 0 && total == 0 && n.Bad:
		return false // its total may stand on a line in which something is wrong
	case len(shares) > 0 && total == 0:
		b.add(diag.Diagnostic{
			Code: diag.CodeBillTotal, Summary: "the bill is in shares, and has no total", At: n.At(),
			Help: "write the total after the word: " + wording.Example(n.At(), "bill 940 lb {"),
		})
		return false
	}
	var sum float64
	for _, l := range lines {
		kg, ok := lineKg(b, l, total)
		if !ok {
			return false
		}
		sum += kg
		r.Lines = append(r.Lines, recipe.BillLine{Grain: l.grain, MassKg: kg, At: l.node.At()})
	}
	if !billSums(b, n, lines, total, sum, len(shares) > 0, len(rests) == 1) {
		return false
	}
	if total == 0 {
		total = sum
	}
	r.TotalKg = total
	for i := range r.Lines {
		if lines[i].cap == nil {
			r.Lines[i].MassKg = total - sum
		}
		r.Lines[i].Share = r.Lines[i].MassKg / total
	}
	ofLots(b, lines, r)
	r.Lines = slices.DeleteFunc(r.Lines, func(l recipe.BillLine) bool { return noneOf(b, l) })
	return true
}

// noneOf takes out of the bill a grain of which there is nothing.
func noneOf(b *reader, l recipe.BillLine) bool {
	if l.MassKg != 0 {
		return false
	}
	b.none = append(b.none, l.Grain.Name)
	b.add(diag.Diagnostic{
		Code: diag.CodeBillNone, Severity: diag.Warning, Summary: fmt.Sprintf("there is no `%s` in the bill", l.Grain.Name), At: l.At,
		Help: "take the line out; in a variant, write `remove " + l.Grain.Name + "`",
	})
	return true
}

// noteRemoved notes the grains that the batches it varies have and it has not: lines
// of theirs that add these are not wrong.
func noteRemoved(b *reader) {
	for _, a := range b.House.Chain(b.entry.Decl)[1:] {
		for _, l := range a.Node().Line("bill").All("") {
			if name := l.Text("grain"); !slices.ContainsFunc(b.batch.Bill.Lines, func(l recipe.BillLine) bool { return l.Grain.Name == name }) {
				b.gone = append(b.gone, name)
			}
		}
	}
}

// lineKg is the weight of one line; nothing for `rest`.
func lineKg(b *reader, l billLine, total float64) (float64, bool) {
	switch {
	case l.cap == nil:
		return 0, true
	case l.cap.Kind == quantity.Share:
		return l.cap.SI * total, true
	case l.cap.Kind == quantity.Bushel:
		if l.grain.TestWeightKg == 0 {
			b.add(diag.Diagnostic{
				Code: diag.CodeNoTestWeight, Summary: fmt.Sprintf("nobody says what a trade bushel of `%s` weighs", l.grain.Name), At: l.cap.At(),
				Help:   wording.Prose("write a weight, or `distillers-bushel` (56 lb of any grain), or give the grain a `bushel` line in the house", l.cap.At().Units()),
				Reason: "a trade bushel is a volume: it weighs what its grain weighs",
			})
			return 0, false
		}
		return l.cap.SI * l.grain.TestWeightKg, true
	}
	return l.cap.SI, true
}

// billSums holds the lines against the total.
func billSums(b *reader, n *tree.Node, lines []billLine, total, sum float64, shares, rest bool) bool {
	d := diag.Diagnostic{Code: diag.CodeBillSum, At: n.At()}
	for _, l := range lines {
		d.Related = append(d.Related, diag.Related{At: l.node.At(), Text: l.node.Stmt.At.Text()})
	}
	switch {
	case sum <= 0 && !rest:
		d.Summary, d.Help = "the bill weighs nothing", "write how much there is of each grain"
	case total == 0:
		return true
	case rest && sum > total*(1+1e-9):
		d.Summary = fmt.Sprintf("nothing is left for the rest: the other grains come to %s", percentOf(sum, total))
		d.Help = "make one of the others less"
	case rest:
		return true
	case math.Abs(sum-total) <= total*5e-4:
		return true
	case shares:
		off := 100 * (sum/total - 1)
		word := "too much"
		if off < 0 {
			word = "short"
		}
		d.Summary = fmt.Sprintf("the shares of the bill come to %s %%, not 100 %%", notHundred(100*sum/total))
		d.Help = fmt.Sprintf("%s %% %s: change one line, or write `rest` for the grain that takes what is left", wording.Decimal(math.Abs(off)), word)
	default:
		c := n.Get("mass")
		d.Summary = fmt.Sprintf("the weights of the bill come to %s, and its total says %s", wording.In(sum, c.Item.Unit, c.Kind), wording.Item(c.Item))
		d.Help = "leave the total out, or mend it"
	}
	b.add(d)
	return false
}

func percentOf(part, total float64) string { return wording.Decimal(100*part/total) + " %" }

// notHundred prints a percentage that is not 100 with as many places as show it.
func notHundred(pct float64) string {
	s := wording.Decimal(pct)
	for places := 1; s == "100" && places < 6; places++ {
		if s = strconv.FormatFloat(pct, 'f', places, 64); strings.TrimRight(s, "0") == "100." {
			s = "100"
		}
	}
	return s
}

// mostLines is more than any bill or mash has.
const mostLines = 1000

// isFew reports whether a block is no longer than mostLines.
func isFew(b *reader, n *tree.Node, what string) bool {
	if len(n.Lines) <= mostLines {
		return true
	}
	b.add(diag.Diagnostic{
		Code: diag.CodeTooMany, Summary: fmt.Sprintf("the %s has more than %d %s", n.Field.Name, mostLines, what), At: n.At(),
		Help: "no batch has so many; is this the right file?",
	})
	return false
}
