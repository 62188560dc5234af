// Package constants is the one table of what is not known for certain of a batch:
// constants of the house (what its vessels, its yeast and its mill do), what scatters
// from run to run (the lot of grain, the vigor of the yeast, people, weather), and
// what an instrument is off by. Each has a prior with a reason, and a way into the
// recipe. What asks how sure a number is, draws from it; what learns from runs begins
// with it.
//
// A constant's figure x is told in one of three forms: it multiplies what the recipe
// has (Times), is put in its place (Value), or is added to it (Plus). AsWritten is the
// figure that leaves the recipe as it is.
//
//	cs := constants.Of(batch)
//	d := constants.Drawn(cs, 400, batch.Learned)
//	n, err := compile.Numbers(constants.Set(batch, cs, d.X[0]), memo, compile.Calculated)
package constants
