package inventory

import (
	"fmt"

	"newmake/lang/diag"
	"newmake/lang/record"
)

// bottled holds a bottling's lot code against its day, and its bottles against one
// another.
func bottled(b *record.Bottling, at diag.Span, diags *diag.List) {
	if want, is := readLotCode(b.Lot, b.On); is && want != "" {
		diags.Add(diag.Diagnostic{Code: diag.CodeLotCode, Severity: diag.Warning, At: at, Summary: fmt.Sprintf("the lot code %q says another day than %s, whose lot is %s", b.Lot, b.On, want),
			Help: "a code of this form is the year, the letter of the month, A to L, the day, and a letter from the second lot of a day on: so 27 CFR 19.485 has casks marked that were filled on a day, and many houses their bottles; look at the code and the date, or take a code of another form"})
	}
	filled, gone := map[float64]int{}, map[float64]int{}
	for i := range b.Bottles {
		w := &b.Bottles[i]
		if w.Word == "bottles" {
			filled[w.EachM3] += w.N
			continue
		}
		if gone[w.EachM3] += w.N; gone[w.EachM3] > filled[w.EachM3] {
			diags.Add(diag.Diagnostic{Code: diag.CodeNoBottles, At: w.At, Summary: fmt.Sprintf("%d bottles of %s are gone by here, and %d were filled", gone[w.EachM3], w.Size, filled[w.EachM3]),
				Help: "look at the numbers and the sizes; each bottle is broken, a sample or withdrawn once"})
		}
	}
}

// readLotCode says that a code is of the form that 27 CFR 19.485 has for casks filled on a day, and
// which a house may give its bottles (common practice); and what the day's is where it says another.
func readLotCode(code string, on record.Date) (want string, is bool) {
	if len(code) < 5 || len(code) > 6 || code[2] < 'A' || code[2] > 'L' {
		return "", false
	}
	for _, i := range []int{0, 1, 3, 4} {
		if code[i] < '0' || code[i] > '9' {
			return "", false
		}
	}
	if len(code) == 6 && (code[5] < 'A' || code[5] > 'Z') {
		return "", false
	}
	day := LotCode(on)
	if code[:5] == day {
		return "", true
	}
	return day, true
}

// LotCode is the code of the first lot of a day, in the form of 27 CFR 19.485: the
// year in two digits, the month as a letter, A to L, and the day in two digits.
func LotCode(on record.Date) string {
	return fmt.Sprintf("%02d%c%02d", on.Year%100, 'A'+rune(on.Month)-1, on.Day)
}
