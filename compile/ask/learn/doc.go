// Package learn finds a house's own constants from its runs: how much its mill and
// yeast give, how its vessels heat and cool, what its heads return, what its
// instruments are off by.
//
// All readings of all runs are held against what the model says of each run as it was
// really made, and the most probable constants are searched for, with the priors of
// package constants (package leastsquares has the method). What scatters from run to
// run (the lot of grain, the vigor of the yeast, the hand at the cut) is no constant of the
// house: to the first order in it, it makes the readings of a run err together, and
// so they are weighed (the marginal model of Laird and Ware, Biometrics 38 (1982) 963,
// from memory). It can then be said of each run how it differed.
//
// Gross errors are found first, one after the other, said, and left out
// (Narasimhan and Mah, AIChE Journal 33 (1987) 1514; the statistic is that of package
// reconcile, for a model that is a line about its best constants).
package learn
