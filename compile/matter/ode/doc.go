// Package ode integrates ordinary differential equations, some of whose
// quantities answer much faster than the rest: a wash's temperature to its
// cooling, a sugar to the yeast, granules to heat.
//
// # The method
//
// ROS34PW2 of Rang and Angermann, BIT Numer. Math. 45 (2005) 761: a linearly
// implicit Runge-Kutta (Rosenbrock) method of order 3 with an error estimate of
// order 2, L-stable. It is a W-method: its order holds whatever stands for the
// Jacobian. So only the columns of the fast quantities, which the system names,
// are formed, by differences, and the cost of a step is a few evaluations of
// the slopes. What is linear and constant in the slopes (mass, heat) is
// constant in the solution, to rounding: columns by differences keep it.
//
// Between the ends of a step the solution is the cubic that has their values
// and slopes (Step.At), of the method's own order.
//
// # The pattern of steps
//
// A step's length is one of a ladder, base x 2^(k/8), and the rung is chosen by
// the error estimate rounded to an eighth of a power of two. So inputs that
// differ in their last bits take the same steps, and the result is a smooth
// function of the inputs between the places where a rung changes; there it
// moves by less than the tolerance.
//
// # Why not a library
//
// gonum has no integrator of differential equations. The modules that have one
// are explicit, or neither have dense output nor keep a mesh from depending on
// the last bit.
package ode
