package stock

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"newmake/lang/quantity"
	"newmake/lang/record"
	_ "newmake/lang/testflag" // these tests write nothing anew, and know the switches
)

// loft states the rule in another way: every kilogram that lies there is a thing of its own, in a
// row, the oldest lot first. Taking is walking along the row.
type loft []string // the code of each kilogram

func (l *loft) put(code string, n int) {
	at := len(*l)
	if i := slices.Index(*l, code); i >= 0 {
		at = i // with those of its lot
	}
	*l = slices.Insert(*l, at, slices.Repeat([]string{code}, n)...)
}

// take takes up to n kilograms from the front, of one lot or of any.
func (l *loft) take(n int, fits func(code string) bool) (codes []string) {
	*l = slices.DeleteFunc(*l, func(code string) bool {
		if n == 0 || !fits(code) {
			return false
		}
		n--
		codes = append(codes, code)
		return true
	})
	return codes
}

// counted says how many kilograms of each lot there are, in the order in which they stand.
func counted(codes []string) string {
	n := map[string]int{}
	for _, c := range codes {
		n[c]++
	}
	return amounts(n)
}

func amounts(of map[string]int) string {
	var out []string
	for _, c := range slices.Sorted(maps.Keys(of)) {
		if of[c] != 0 {
			out = append(out, fmt.Sprintf("%s %d", c, of[c]))
		}
	}
	return strings.Join(out, ", ")
}

// TestFirstInFirstOut holds random stores against that row, line by line and lot by lot.
func TestFirstInFirstOut(t *testing.T) {
	kg := func(n int) record.Value {
		return record.Value{Number: float64(n), Unit: "kg", SI: float64(n), Kind: quantity.Mass}
	}
	all := func(string) bool { return true }
	seen := map[string]int{}
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 5))
		s := &record.Store{}
		var runs []*record.Run
		var row loft
		var want []string // "2026-03-01: C-1 30, C-2 10" of each line that names no lot
		left := map[string]string{}
		day := record.Date{Year: 2026, Month: 3, Day: 1}
		lots := 0
		for range 4 + r.IntN(20) {
			n := 1 + r.IntN(60)
			code := func() string { return row[r.IntN(len(row))] }
			one := func(c string) func(string) bool { return func(o string) bool { return o == c } }
			what := r.IntN(10)
			switch {
			case what < 4 || len(row) == 0:
				lots++
				c := fmt.Sprintf("C-%d", lots)
				if r.IntN(4) == 0 && len(row) > 0 { // more of a lot that is there
					c = code()
				}
				s.Lots = append(s.Lots, record.Lot{On: day, What: "corn", Lot: c, Amount: kg(n)})
				row.put(c, n)
				seen["came"]++
			case what < 8:
				u := record.Used{What: "corn", Amount: record.Reading{Value: kg(n)}}
				if r.IntN(3) == 0 {
					u.Lot = code()
					n = min(n, len(row)-len(slices.DeleteFunc(slices.Clone(row), one(u.Lot))))
					u.Amount.Value = kg(n)
					row.take(n, one(u.Lot))
					seen["named"]++
				} else {
					got := row.take(n, all)
					if len(got) < n {
						seen["more than there was"]++
					}
					want = append(want, fmt.Sprintf("%s: %s", day, counted(got)))
					seen["oldest"]++
				}
				runs = append(runs, &record.Run{Number: fmt.Sprint(len(runs)), Date: day, Used: []record.Used{u}})
			case what == 8:
				c := code()
				got := row.take(n, one(c))
				s.Lots = append(s.Lots, record.Lot{Word: "discarded", On: day, What: "corn", Lot: c, Amount: kg(len(got))})
				seen["discarded"]++
			default:
				c := code()
				at := slices.Index(row, c)
				row.take(len(row), one(c))
				row = slices.Insert(row, at, slices.Repeat([]string{c}, n)...)
				s.Lots = append(s.Lots, record.Lot{Word: "count", On: day, What: "corn", Lot: c, Amount: kg(n)})
				seen["counted"]++
			}
			left[day.String()] = counted(row)
			day = day.After(1)
		}
		records := Records{Stores: []*record.Store{s}, Runs: runs, Known: Forever}
		there := map[string]int{}
		var got []string
		for _, m := range records.Moves() {
			of := map[string]int{}
			for _, p := range m.Parts {
				require.Equal(t, "g", p.Of.Unit)
				there[p.Of.Code] += int(p.Amount / 1000)
				if m.Used != nil && m.Used.Lot == "" && p.Of.Code != "" {
					of[p.Of.Code] = int(-p.Amount / 1000)
				}
			}
			if m.Used != nil && m.Used.Lot == "" {
				got = append(got, fmt.Sprintf("%s: %s", m.On, amounts(of)))
			}
			require.Equal(t, left[m.On.String()], amounts(there), "%d on %s", seed, m.On)
		}
		require.Equal(t, want, got, "%d", seed)
	}
	for _, what := range []string{"came", "named", "oldest", "more than there was", "discarded", "counted"} {
		require.Positive(t, seen[what], what)
	}
}
