package season

import (
	"newmake/lang/recipe"
	"newmake/lang/record"
)

// Problem is what is to be planned. It knows no text: who reads a declaration fills it.
type Problem struct {
	Name     string
	From, To record.Date // the first day and the last, both within
	Plant    *recipe.Plant
	Demands  []Demand // in the order of their weight: the first is met before the second
	Closures []Closure
	Absences []Absence
	Done     []Done    // runs that were begun: they stand as they were, whatever comes of the rest
	Printed  []Printed // of a plan that people work from already: what stays as it is printed is better
	Opening  Opening   // what stands in the tanks on the first day
	Effort   int       // steps of the search, 0 for the usual; the same effort gives the same plan
}

// Demand is something that is wanted of the season. One of Casks, Batches, Every and On
// is set.
type Demand struct {
	Batch *recipe.Batch

	Casks int         // so many filled, by By
	By    record.Date // the last day on which it counts; zero: the season's last

	Batches int // so many mashed, by By

	EveryDays int     // one each so many days from the season's first
	Weekdays  [7]bool // on these days of the week alone, Sunday first; none set: any

	On []record.Date // mashed on these days
}

// Closure is days on which nobody works: what goes on alone goes on.
type Closure struct {
	From, To record.Date // both within
	Why      string
}

// Absence is days on which a vessel cannot be used, or a person is not there.
type Absence struct {
	Vessel   string // "" where it is people
	People   int    // so many of the crew
	Name     string // initials, where it is one person
	From, To record.Date
	Why      string
}

// Done is a run that was begun. What it does not say goes as planned after what it says.
type Done struct {
	Number    string
	Batch     *recipe.Batch
	Mashed    string // RFC 3339: when the mash began
	Fermenter string // where it went; "" while that is not known
	Stripped  string // when the wash still was charged; "" while it was not
	Distilled string // when the spirit still was charged
	Filled    string // when it went into wood
	Feints    *Amount
}

// Amount is spirit as it stands in a tank.
type Amount struct {
	VolumeM3 float64 // as the house gauges
	At       recipe.Strength
}

// Printed is where a plan that people work from has a run.
type Printed struct {
	Number    string
	Batch     string
	Mashed    string // RFC 3339
	Stripped  string
	Distilled string
	Filled    string
}

// Opening is what the season begins with. Feints are told apart by the batch whose run
// left them; where nothing is said of a batch the house is new to it and has none.
type Opening struct {
	Feints []OpeningFeints
	// Backset says that there is backset for the first mash.
	Backset bool
}

// OpeningFeints are those that a batch's last run left.
type OpeningFeints struct {
	Batch  string
	Amount Amount
}
