// Package odds asks how sure a plan is: a batch is computed some hundred times, each
// time with the uncertain constants of its house and the scatter of a run drawn anew
// (package constants), and what comes of it is counted.
//
// Readings are no part of it: an instrument moves no batch. The draws are the same for
// every batch, so that two batches are compared with the same luck, and the same
// question has the same answer. A share of draws has the error of a sample: with 400
// draws an odds of a half is known to 5 in 100, one of nine tenths to 3 (binomial,
// 95 %), and no more is said.
package odds
