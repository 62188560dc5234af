// Package size asks the plan's question the other way round: how large is the
// batch that gives what is wanted, or where is the cut that gives the proof.
//
// A batch is made larger or smaller as a whole: grain, liquor, backset, doses,
// yeast by weight, and on the spirit still what is measured by volume, for a cut
// at 4 gal of one run is a cut at 8 of a run twice as large. Vessels, heat,
// times and paces stay what they are, so that the answer is no rule of three: a larger
// mash heats more slowly, and converts and ferments otherwise. The plan itself is
// solved for, by Brent's method between two sizes that enclose the answer.
package size
