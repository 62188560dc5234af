package season

import (
	"newmake/lang/recipe"
	"newmake/lang/record"
	asked "newmake/lang/season"
)

// Problem is what is to be planned: a season as its declaration asks for it, and what it
// needs to know of the house. It knows no text.
type Problem struct {
	Asks    *asked.Season
	Plant   *recipe.Plant
	Batches map[string]*recipe.Batch // by name: all that are asked for and can be read
	Unread  map[string]string        // by name: why one cannot
	Runs    []*record.Run            // of the house: those of its batches that were begun stand as they were
	// On is the day from which on anything can still be decided; zero: the season's first.
	On      record.Date
	Printed *Season // a plan that people work from already: what stays as it is printed is better
	// Effort is the steps of the search, 0 for the usual. The same gives the same plan.
	Effort int
	// Store is what is in store on the first day, in kg by its name; of casks how many. It
	// goes first.
	Store map[string]float64
	Draws int         // of Season.Odds; 0: none
	Doing func(Stage) // told of what is begun, since it may take a while; nil: nobody is
	Quick bool        // without bottlenecks, and without what would meet a line that is not met
}

// Stage is a part of the planning that takes its time.
type Stage uint8

const (
	Placing   Stage = iota // the runs
	Relieving              // what would meet lines that are not met
	Weighing               // what each thing more would bring
	Drawing                // the odds
)

func (p *Problem) doing(s Stage) {
	if p.Doing != nil {
		p.Doing(s)
	}
}

// How long what is made may stand, where no recipe says (common practice).
const (
	washKeepsS = 72 * 3600 // a wash past its hour: as the plan of a batch warns of it
	keepsS     = 72 * 3600 // what a run leaves for the next: pot ale, hot or as backset, and the last water of a mash
)

// usualEffort is the steps of a search if nobody says.
const usualEffort = 600
