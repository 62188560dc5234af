package compile

import (
	"fmt"

	"newmake/compile/stage/still"
	"newmake/lang/diag"
)

// strip runs the wash still: the wash in equal charges.
func (c *compiler) strip() bool {
	s := c.b.Strip
	charges := max(s.Charges, 1)
	r, err := c.memo.strip(still.StripInput{
		Setting: c.setting(s.Still),
		Wash:    c.fermented.Wash.Scale(1 / float64(charges)),
		Stop:    s.StopAt,
	})
	if err != nil {
		return c.fail(diag.CodeStillFailed, "the wash run", err, "strip")
	}
	c.stripped = r
	c.lowWines = r.Fraction(still.LowWines).Stream.Scale(float64(charges))
	c.p.Strip = runPlan(s.Still, r, charges)
	help := "a smaller batch, or `charges 2` to run it in two"
	if charges > 1 {
		help = fmt.Sprintf("a smaller batch, or `charges %d`", charges+1)
	}
	c.vessel(s.Still, "strip", r.MostFill*s.Still.HoldsM3, "the wash, hot,", help,
		"a wash with grain in it rises and boils over into the condenser")
	c.boiler(s.Still, "strip")
	c.runTold("strip", r)
	if left := r.Residue.EthanolKg / r.Charge.EthanolKg; left > 0.02 && len(r.Problems) == 0 {
		c.tell(diag.Diagnostic{
			Code: diag.CodeEarlyStop, At: c.where("strip.stop", "strip"),
			Summary: fmt.Sprintf("%.1f %% of the alcohol stays in the pot ale at this stop", 100*left),
			Help:    "a lower stop gets it, with weaker low wines and more fuel",
		})
	}
	c.runWork("strip", s.Still, r, charges)
	return true
}
