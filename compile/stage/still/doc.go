// Package still computes batch distillation: the stripping run and the spirit run.
//
// # The model
//
// The pot is a well-mixed boiling liquid of ethanol, water and inert solids at
// the local pressure. Its vapour is in equilibrium with it (fluid.BubblePointC)
// and leaves at once: differential, or Rayleigh, distillation,
//
//	n dx = -(y - x) dD
//
// The head condenses a share of that vapour, the still's reflux, and returns
// it. The condensate runs off the wall as it forms, so it is taken in
// equilibrium with the vapour at that place and not with the vapour that
// leaves: differential condensation,
//
//	ln(V0/V) = integral of dy/(y - x*), x* in equilibrium with y
//
// (Treybal, Mass-Transfer Operations, 3rd ed. 1980, ch. 9, differential
// condensation; from memory.) It lies between the two limits that one could
// also take: an equilibrium flash, in which all condensate would have to
// travel along with the vapour to the outlet, separates less; condensate that
// runs down against the vapour and comes to equilibrium with it all the way
// separates more. Test TestHeadLimits shows by how much: little.
//
// A tenth returned adds 3 points of strength to a charge of 25 %, three tenths
// 9 (7.5 even by a flash). Common practice has 1 to 4 points for one to three
// tenths, from memory; mass and equilibrium leave no room for that unless much
// of the condensate is blown over with the vapour. So a still's `reflux` is best
// set from its own first strength, and comes out at the low end.
//
// Heat is the jacket's or the steam's, held to the boiler's limit. It warms
// charge and metal, makes up the losses, and boils. All is kept in one account
// of enthalpy: liquids by their heat capacities and the heat of mixing, vapour
// by the latent heats on top (see enthalpy.go). Time follows from heat.
//
// # What is left out
//
// No liquid is held in the head, the lyne arm or the condenser, so there is no
// smearing of the cuts, and the heads of the run before do not come with the
// foreshots. No foam, no spray. Solids raise no boiling point: 3 % of
// dissolved matter of the size of glycerol raises it 0.2 C, of the size of
// dextrin less. Volatile acid stays in the pot. Losses of the pot are constant
// while it boils. Pressure in the pot is that of the air.
//
// # Congeners
//
// Congeners follows traces of what else is volatile through the same run, by
// volatilities against ethanol that are predicted, not measured (library entry
// `model congener`). They are relative to the charge, and estimates.
//
// # How it is computed
//
// The independent variable is the logarithm of the pot's mole fraction x,
// because everything that the run shows at a moment (strength, temperatures,
// heat per mole) is a function of x alone. These functions are made once per
// run as Chebyshev series (boil.go). With a jacket, what is left in the pot is
// such a function too (leaving.go): cuts are found and feints settled without a
// walk through the run, and time and duties are sums over it (closed.go). Live
// steam, and charges next to the azeotrope, are integrated over ln x by a
// Runge-Kutta pair of order 5(4) (integrate.go). Both agree to 1e-9. A cut by
// strength or temperature is a value of x and is met exactly; one by volume or
// share is located to rounding (cuts.go).
package still
