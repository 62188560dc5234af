package learn

import (
	"math"
	"slices"

	"newmake/compile"
	"newmake/compile/constants"
)

// predict is what the readings of a run would be, with the instruments as they are, if
// what scatters were in its middle: to the first order about where it is taken to be. NaN
// for what the model does not come to.
func (r *run) predict(m *model, z []float64) ([]float64, error) {
	out, err := r.shaken(m, z, r.had)
	if err != nil {
		return nil, err
	}
	for i := range out {
		for j, e := range r.had {
			out[i] -= r.shake.At(i, j) * e
		}
	}
	return out, nil
}

// shaken is what the readings of a run would be, with what scatters from run to run at
// the places of by; nil is in its middle.
func (r *run) shaken(m *model, z, by []float64) ([]float64, error) {
	of, x := r.figures(z, by)
	out, err := r.says(of, x)
	if err != nil {
		return nil, err
	}
	for i, v := range out {
		if b := r.bias[i]; b >= 0 {
			out[i] = biased(m.of[b], z[b], v)
		}
	}
	return out, nil
}

// figures are those of the house's constants at z, and of what scatters where it is not in its
// middle.
func (r *run) figures(z, by []float64) (of []constants.Constant, x []float64) {
	of = slices.Clone(r.own)
	for i, c := range r.own {
		x = append(x, figure(c, z[r.at[i]]))
	}
	for j, e := range by {
		if e != 0 {
			of, x = append(of, r.of[j]), append(x, figure(r.of[j], e))
		}
	}
	return of, x
}

// constants are those of the recipe.
func (r *run) constants() []constants.Constant {
	if r.Reduced != nil {
		return r.Reduced.Of
	}
	return constants.Of(r.Recipe)
}

// says is what true instruments would say with these figures of these constants; NaN for what the
// model does not come to.
func (r *run) says(of []constants.Constant, x []float64) ([]float64, error) {
	if r.Reduced != nil {
		return r.Reduced.Says(of, x), nil
	}
	n, err := compile.Numbers(constants.Set(r.Recipe, of, x), r.memo, compile.Calculated)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(r.Readings))
	for i, reading := range r.Readings {
		v, ok := reading.Of(n)
		if !ok && r.used != nil && r.used[i] && reading.AtEnd != nil {
			v, ok = reading.AtEnd(n)
		}
		if out[i] = v; !ok {
			out[i] = math.NaN()
		}
	}
	return out, nil
}

// figure is a constant's figure, within its bounds.
func figure(c constants.Constant, z float64) float64 {
	return min(max(c.Prior.At(z), c.Low), c.High)
}

// biased is what an instrument says of a true value.
func biased(c constants.Constant, z, v float64) float64 {
	x := figure(c, z)
	if c.Form == constants.Times {
		return v * x
	}
	return v + x
}
