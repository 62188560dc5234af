// Package compare says what changed between two batches, by meaning; what the
// change does, by outcome; and which edit does how much of it.
//
//	c := compare.Batches(old, new, compare.Options{Units: measure.US})
//
// # By meaning
//
// Two checked recipes are compared, not two texts, so that layout, comments,
// units and the order of lines that have none do not count. The steps of the
// mash are aligned as a longest common subsequence is, by a cost that knows what
// a step is: the same step is free, the same verb on the same thing costs little
// (it was retimed, or its temperature changed), and what is left over was added,
// removed or moved.
//
// # Why
//
// An outcome is a function f of the set of edits that are applied: f({}) is the
// old plan and f(all) the new. Each edit is given
//
//   - its part: the Shapley value, which is what the edit adds to f, on the mean
//     over all orders in which the edits could be made. The parts add up to
//     f(all) - f({}). (L. S. Shapley, A value for n-person games, in Contributions
//     to the Theory of Games II, Princeton 1953.)
//   - what it does alone: f({edit}) - f({}).
//
// The interaction of an outcome is the whole change less the sum of what the
// edits do alone: what comes of making them together. It is in the parts
// already, shared out by the same rule; where it is nothing, part and alone are
// the same.
//
// Up to mostExact edits every combination is computed (256 plans of 8 edits).
// Beyond, orders are drawn by a generator with a fixed seed, each with its
// reverse, and every part comes with its standard error; each order's steps add
// up to the whole, so the parts still do.
package compare
