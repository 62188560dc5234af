package lang

import (
	"fmt"
	"slices"
	"strings"

	"newmake/lang/diag"
	"newmake/lang/quantity"
)

// pointsForThousands warns of amounts such as `4.400 L`. Where a comma marks
// decimals a point parts thousands, and 4,400 L is meant; here it is 4.4 L. Only
// what has three decimals, the last a 0, is doubted: nobody who means 4.4 needs
// the zeros, and dropping them is the way to say so.
func pointsForThousands(file *File) diag.List {
	var list diag.List
	Walk(file.Stmts, func(s *Stmt, _ int) bool {
		for i := range s.Items {
			it := &s.Items[i]
			if it.Kind != Number || !likeThousands(it.Num) || !bulk(it.Unit) {
				continue
			}
			grouped := strings.Replace(it.Num, ".", ",", 1)
			list.Add(diag.Diagnostic{
				Code: diag.CodeThousands, Severity: diag.Warning, At: it.At,
				Summary: fmt.Sprintf("`%s %s` is read as %g %s", it.Num, it.Unit, it.Value, it.Unit),
				Help: fmt.Sprintf("write `%g %s` if that is meant, and `%s %s` if the point parts thousands",
					it.Value, it.Unit, grouped, it.Unit),
				Reason: "the point is the decimal mark; a comma parts groups of three digits",
			})
		}
		return true
	})
	return list
}

// likeThousands reports whether a number has one to three digits, the first no 0, a
// point, and three more, the last a 0.
func likeThousands(num string) bool {
	whole, frac, _ := strings.Cut(num, ".")
	return len(frac) == 3 && frac[2] == '0' && len(whole) >= 1 && len(whole) <= 3 && whole[0] >= '1' && whole[0] <= '9'
}

// bulk reports whether thousands of a unit are no rare thing: of volumes and weights.
func bulk(unit string) bool {
	u, ok := quantity.Lookup(unit)
	return ok && slices.ContainsFunc(u.Measures, func(m quantity.Measure) bool {
		return m.Kind == quantity.Volume || m.Kind == quantity.Mass || m.Kind == quantity.ProofGallons || m.Kind == quantity.PureAlcohol
	})
}
