// Package show holds the forms in which a plan is shown, each a package of its
// own. A renderer sees a plan and nothing else: it formats and converts units, and
// computes nothing.
package show
