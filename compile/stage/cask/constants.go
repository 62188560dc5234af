package cask

import (
	"fmt"
	"math"
	"strings"

	"newmake/lang/recipe"
)

// constants are those of the library entry `model cask`.
type constants struct {
	sizeM3       float64 // cask that the losses are stated for
	sizePower    float64 // loss goes with (size/V)^power
	proof        float64 // strength that the change of proof is stated for
	soakS        float64 // time in which the wood takes up all but 1/e of its soak
	usedSoak     float64 // share of the soak that used wood still takes
	woodWater    float64 // the wood's own water that comes into the spirit, by mass of the fill
	pivot        float64 // relative humidity at which the strength of the reference spirit stands still
	lateS        float64 // age from which the loss is less
	lateShare    float64 // by so much
	defaultKind  float64 // soak of a kind of cask that states none
	leastContent float64 // share of the fill at which a cask is called dry
}

func readConstants(m *recipe.Model) (constants, error) {
	if m == nil {
		return constants{}, fmt.Errorf("the library has no `model cask`")
	}
	var c constants
	var missing []string
	for _, f := range [...]struct {
		name string
		to   *float64
	}{
		{"size", &c.sizeM3}, {"size-power", &c.sizePower}, {"strength", &c.proof}, {"soak-time", &c.soakS},
		{"used-soak", &c.usedSoak}, {"wood-water", &c.woodWater}, {"pivot-humidity", &c.pivot}, {"late-after", &c.lateS}, {"late-share", &c.lateShare},
		{"soak", &c.defaultKind},
	} {
		v, ok := m.Values[f.name]
		switch {
		case !ok:
			missing = append(missing, "`"+f.name+"`")
		case !(v >= 0) || math.IsInf(v, 0):
			return c, fmt.Errorf("`model cask`: `%s` is %g: it must be a number from 0 up", f.name, v)
		}
		*f.to = v
	}
	if len(missing) > 0 {
		return c, fmt.Errorf("`model cask` lacks %s", strings.Join(missing, ", "))
	}
	if c.sizeM3 == 0 || c.soakS == 0 || !(c.proof > 0 && c.proof < 1) || c.pivot > 1 {
		return c, fmt.Errorf("`model cask`: `size`, `soak-time` and `strength` must be above 0, the strength below 200 proof, and `pivot-humidity` at most 100 %%")
	}
	c.proof *= 200
	c.leastContent = 0.02
	return c, nil
}

// climate fills what a climate does not state from the model's figures for
// its name.
func climate(c recipe.Climate, m *recipe.Model) (recipe.Climate, error) {
	if c.LossFirstYear == 0 && c.LossYearly == 0 && c.Named == "" {
		return c, nil // a cask that loses nothing: steel, glass
	}
	for _, f := range [...]struct {
		name string
		to   *float64
	}{{"loss-first-year", &c.LossFirstYear}, {"loss", &c.LossYearly}, {"proof-per-year", &c.ProofPerYear}, {"temperature", &c.MeanTempC}} {
		if *f.to != 0 || c.Named == "" {
			continue
		}
		v, ok := m.Values[c.Named+"-"+f.name]
		if !ok {
			return c, fmt.Errorf("`model cask` has no `%s-%s`: it knows no climate %q", c.Named, f.name, c.Named)
		}
		*f.to = v
	}
	for _, v := range [...]float64{c.LossFirstYear, c.LossYearly} {
		if !(v >= 0 && v < 0.5) {
			return c, fmt.Errorf("a loss of %g %% a year is not that of a cask: 0 to 50 %%", 100*v)
		}
	}
	if !(math.Abs(c.ProofPerYear) <= 20) {
		return c, fmt.Errorf("a change of %g proof a year is not that of a cask: at most 20", c.ProofPerYear)
	}
	return c, nil
}
