// Package chart draws a plan where people would rather look than read: the
// mash, the ferment, a run of a still, the days by vessel, the years in wood.
//
// A chart is an SVG picture made by an html/template, so that one escaper sees
// all text. It carries a title and a description for those who cannot see it,
// takes its fonts and lines from the page's style sheet, and means the same in
// black on white: lines are labelled where they run, and areas are hatched. A
// chart computes nothing. It places the points of the plan on paper.
//
// # Why not a plotting library
//
// gonum.org/v1/plot v0.17 with its vgsvg canvas was tried first. What it writes
// cannot stand on the sheet: every element has a style attribute, which the
// page's content security policy refuses (a hash covers a style element, not
// attributes); text names the font Liberation Serif, whatever the page uses, and
// is placed by that font's widths; there is no title or description; the canvas
// (vg.Canvas) fills with plain colours, so that no area can be hatched; one pair
// of axes stands on a plot, and the runs need litres and clock on one; labels on
// lines and leaders to crowded events would all be drawn by hand on its canvas.
// What would be left of the library is its choice of ticks.
package chart
