package chart

import (
	"strings"
	"time"

	"newmake/compile/measure"
	"newmake/compile/plan"
)

// Touch is what the curves of a picture say at one place: X is how far right it
// is, in the picture's own pixels.
type Touch struct {
	X    float64 `json:"x"`
	Says string  `json:"says"`
}

// touch adds what the curves say at each of their points.
func (c *Chart) touch(x scale, n int, at func(i int) float64, says func(i int) []string) {
	for i := range n {
		if v := at(i); x.holds(v) {
			c.Touch = append(c.Touch, Touch{tenth(x.at(v)), strings.Join(says(i), ", ")})
		}
	}
}

// tenth rounds to a tenth of a pixel.
func tenth(x float64) float64 { return float64(int(x*10+0.5)) / 10 }

// after is the clock so long after a start, with its day where that is another.
func after(start time.Time, d time.Duration) string {
	t := start.Add(d).Round(time.Minute)
	if t.YearDay() == start.YearDay() {
		return hm(t)
	}
	return t.Format("Mon 15:04")
}

func touchMash(c *Chart, x scale, m plan.Mash, start time.Time, u measure.Units) {
	c.touch(x, len(m.Curve), func(i int) float64 { return m.Curve[i].Min }, func(i int) []string {
		return []string{after(start, minutes(m.Curve[i].Min)), u.Temp(m.Curve[i].TempC)}
	})
}

func touchFerment(c *Chart, x scale, f plan.Ferment, start time.Time, u measure.Units) {
	c.touch(x, len(f.Curve), func(i int) float64 { return f.Curve[i].Hour }, func(i int) []string {
		k := f.Curve[i]
		return []string{after(start, minutes(60*k.Hour)), measure.Gravity(k.SG), u.Abv(k.AbvPct) + " strained", u.Temp(k.TempC)}
	})
}

// touchRun says the clock too where the run has one charge; fire is when its still
// is lit.
func touchRun(c *Chart, x scale, r plan.Run, fire time.Time, u measure.Units) {
	c.touch(x, len(r.Curve), func(i int) float64 { return r.Curve[i].Min }, func(i int) []string {
		k := r.Curve[i]
		says := []string{u.Quantity(r.Over(k.OverL)) + " over", u.Abv(k.AbvPct) + " at the spout", u.Quantity(plan.Of(k.RateLPerH, plan.LitrePerH)), u.Temp(k.VapourC)}
		if r.Charges <= 1 && !fire.IsZero() {
			says = append([]string{after(fire, minutes(k.Min))}, says...)
		}
		return says
	})
}

func touchCask(c *Chart, x scale, years []plan.CaskYear, u measure.Units) {
	c.touch(x, len(years), func(i int) float64 { return years[i].AgeYears }, func(i int) []string {
		y := years[i]
		return []string{measure.Years(y.AgeYears), u.Quantity(y.Volume()), u.Strength(plan.Strength{AbvPct: y.AbvPct, Proof: y.Proof})}
	})
}

func minutes(m float64) time.Duration { return time.Duration(m * float64(time.Minute)) }
