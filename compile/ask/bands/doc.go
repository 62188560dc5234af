// Package bands asks how sure the numbers of a plan are, and writes it into the plan: a
// low and a high beside each reading, along each curve and for each number of the
// summary, between which it lies 9 times in 10.
//
// It is made of what package constants has: each uncertain constant of the house and of
// the run is put to the 5 and to the 95 % end of what is known of it, one at a time, and
// the batch computed there. What the ends do is added as squares, upwards and downwards
// apart (JCGM 100:2008, 5.1, at the ends in place of the slope): of a number that goes
// in a straight line with its constants that is its interval, and one that bends or
// jumps has the farther end on the side where it is. Where two constants are known
// together only, their product is counted too. Package odds draws all constants at
// once; a test holds the bands against it.
//
// A reading has besides what no constant moves: the form of the models, and the
// instrument (package work, ReadingError).
//
// A curve that moves sideways tells little at one moment where it is steep. So the spout
// is judged at the volume that has come over, and by the clock a band is what the points
// of the curve cover, each as early, as late, as low and as high as it may come.
package bands
