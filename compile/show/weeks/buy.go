package weeks

import (
	"fmt"
	"io"
	"strings"
	"time"

	"newmake/compile/book/season"
	"newmake/compile/measure"
	"newmake/compile/show/columns"
	"newmake/lang/diag"
	"newmake/lang/words"
)

func join(all []string) string { return strings.Join(all, ", ") }

// BuyText writes what has to be bought: by when, what there is of it, in which packs, and
// what it costs by the week.
func BuyText(w io.Writer, s *season.Season, o Options) error {
	p := &page{columns.Writer{Bold: o.Bold}, of(s), all}
	p.Strong("To buy for " + diag.Safe(s.Name) + ", " + p.span())
	for _, l := range p.leftOut() {
		p.Para(2, 4, "! Nothing is bought for what is left out: "+l+".")
	}
	b := s.Buy
	if b == nil || len(b.Lines) == 0 {
		p.Para(0, 2, "Nothing has to be bought.")
		_, err := io.WriteString(w, p.String())
		return err
	}
	for _, x := range b.Weeks {
		p.Heading(fmt.Sprintf("Week of %s: %s, so far %s", day(x.Monday), p.money(x.Cost), p.money(x.Sum)))
		t := columns.Table{}
		t.Row("what", "by", "in store", "to buy", "in bags", "pallets", "cost")
		for _, l := range b.Lines {
			if monday(moment(l.By)).Format(time.DateOnly) == x.Monday {
				t.Row(columns.Cut(diag.Safe(l.What), 18), moment(l.By).Format("2 Jan"), p.amount(l.Store, l.Unit), p.amount(l.Buy, l.Unit), p.packs(l), pallets(l), costSaid(l.Cost, l.Priced))
			}
		}
		t.Write(&p.Writer)
	}
	p.Gap()
	p.Para(0, 2, "All of it: "+p.money(b.Cost)+".")
	if len(b.Unpriced) > 0 {
		p.Para(0, 2, "Without a price in the house's costs, and not counted: "+diag.Safe(words.And(b.Unpriced))+".")
	}
	p.Para(0, 2, "What is to buy is there on the last day of work before its first use. What the records of the stores say is left is taken off first. Whole bags are paid for, and what they leave over counts as in store for the weeks to come. Bags and pallets are as the house's costs say, of grain else of common sizes; what cleans is not counted.")
	_, err := io.WriteString(w, p.String())
	return err
}

// amount is how much of something, in the units of the house.
func (v say) amount(x float64, unit string) string {
	if x <= 0 {
		return "-"
	}
	switch unit {
	case "kg":
		return v.u.Mass(x)
	case "L":
		return v.u.Litres(x)
	}
	return measure.Number(x, 0)
}

func (v say) packs(l season.Buy) string {
	if l.Packs == 0 {
		return ""
	}
	return fmt.Sprintf("%d x %s", l.Packs, strings.Replace(v.amount(l.PackOf, l.Unit), ".0 ", " ", 1))
}

func pallets(l season.Buy) string {
	if l.Pallets <= 0 {
		return ""
	}
	return measure.Number(l.Pallets, 1)
}

func (v say) money(x float64) string {
	if v.s.Buy.Currency == "" {
		return measure.Number(x, 0)
	}
	return measure.Number(x, 0) + " " + diag.Safe(v.s.Buy.Currency)
}

func costSaid(x float64, priced bool) string {
	if !priced {
		return "no price"
	}
	return measure.Number(x, 0)
}
