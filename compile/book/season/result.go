// Package season plans weeks of a house: which batch is mashed on which day, into which
// fermenter, when each still runs, who is wanted when, and what flows from one run into
// the next. It gives numbers and plain words as data; what is printed of them is made
// elsewhere.
//
// Order of what is wanted, each before all that follow: nothing that cannot be (a vessel
// twice, too much heat, too few people, a wash past its limit); the demands by their
// dates; wash that stands past its hour; work out of the shift; backset for what wants it;
// and little moved that is printed already.
package season

import "newmake/compile/plan"

// Format and Version name the shape of a season's plan as JSON. A minor version adds
// names and never takes one away.
const (
	Format  = "newmake.season"
	Version = "1.0"
)

// Season is the plan of the weeks. All times are RFC 3339 in the plant's zone, all dates
// 2026-03-03.
type Season struct {
	Format  string `json:"format"`
	Version string `json:"version"`
	Name    string `json:"name"`
	Plant   string `json:"plant"`
	Zone    string `json:"zone"` // IANA name
	Units   string `json:"units"`
	From    string `json:"from"` // date
	To      string `json:"to"`   // date, within

	Tried []string `json:"tried,omitempty"` // what of the plant is otherwise than its text has it, for this plan alone

	Summary     Summary     `json:"summary"`
	Gap         Gap         `json:"gap"`
	Demands     []Demanded  `json:"demands"` // in the order of the problem, those of batches that are left out last
	LeftOut     []LeftOut   `json:"leftOut,omitempty"`
	Runs        []Run       `json:"runs"`    // by the start of their mash
	Vessels     []Vessel    `json:"vessels"` // in the order of the house
	Days        []Day       `json:"days"`    // of the season, each with who is there
	Weekdays    []Weekdays  `json:"weekdays"`
	Capacity    int         `json:"capacity,omitempty"` // batches of these recipes that the house could fill in the season, as far as was found
	Bottlenecks []Relief    `json:"bottlenecks"`        // what each thing more would bring, the best first
	Tanks       []TankLevel `json:"tanks"`
	Boiler      []Load      `json:"boiler"` // kW, from time to time; it changes only there
	BoilerKW    float64     `json:"boilerKW,omitempty"`
	Crew        []Load      `json:"crew"` // people wanted, likewise
	CrewThere   int         `json:"crewThere,omitempty"`
	Conflicts   []Conflict  `json:"conflicts"` // what could not be avoided: of runs that were made, or fixed days
	Closures    []Closed    `json:"closures"`
	Changes     []Change    `json:"changes,omitempty"` // from what was printed
	Effort      int         `json:"effort"`            // steps of the search: the same give the same plan
	Odds        *Odds       `json:"odds,omitempty"`    // where they are asked for
	Buy         *BuyList    `json:"buy,omitempty"`     // where it is asked for
	Left        []LeftOver  `json:"left,omitempty"`    // what stands in the tanks after the last run
}

// Summary is the season in a few numbers, first to be read.
type Summary struct {
	Batches        int     `json:"batches"`      // mashed, those that were made already among them
	CasksFilled    int     `json:"casksFilled"`  // by the last day
	CasksAfter     int     `json:"casksAfter"`   // full after it, of batches that were mashed in the season
	PureAlcoholL   float64 `json:"pureAlcoholL"` // of all hearts
	ProofGallons   float64 `json:"heartsProofGallons"`
	GrainKg        float64 `json:"grainKg"`
	WashWaitHours  float64 `json:"washWaitHours"`   // past the hour that the batch asks for, of all batches
	OutOfShiftH    float64 `json:"outOfShiftHours"` // of work
	PeopleHours    float64 `json:"peopleHours"`
	MostBoilerKW   float64 `json:"mostBoilerKW"`
	MostPeople     int     `json:"mostPeople"`
	DemandsMissed  int     `json:"demandsMissed"`
	LastCaskFilled string  `json:"lastCaskFilled,omitempty"` // time
}

// Gap says how much better a plan could be. Text words are for the renderer: Proved and
// More say it as data.
type Gap struct {
	Proved bool `json:"proved"` // no plan meets more of the demands
	// Met is how many wanted batches the plan has, Most how many any plan can have as far
	// as is proved: where they differ, at most Most - Met more are possible.
	Met   int     `json:"met"`
	Most  int     `json:"most"`
	Share float64 `json:"share"` // (Most - Met) / Most; 0 where it is proved
	By    string  `json:"by"`    // what sets Most: a vessel, boiler, crew, shifts, demand
}

// Demanded is a demand and what comes of it.
type Demanded struct {
	Batch  string   `json:"batch"`
	Wanted string   `json:"wanted"` // casks, batches, days
	Amount int      `json:"amount"` // of what is wanted
	By     string   `json:"by,omitempty"`
	For    string   `json:"for,omitempty"` // who has ordered it
	Made   int      `json:"made"`
	Met    bool     `json:"met"`
	When   string   `json:"when,omitempty"` // time at which the last of it was there
	Runs   []string `json:"runs"`           // their numbers
	// Limit and Least are set where it is not met: what stands in the way, and the least
	// change that would do; where none that was tried does, the one that brings most.
	Limit  string  `json:"limit,omitempty"`
	Least  *Relief `json:"least,omitempty"`
	Enough bool    `json:"enough,omitempty"` // Least would do
}

// Run is one batch on its way.
type Run struct {
	Number string `json:"number"` // "26-03" of a run that is recorded, "1", "2" of those to come
	Batch  string `json:"batch"`
	Mash   string `json:"mash"`             // time at which it begins
	Failed string `json:"failed,omitempty"` // it cannot be computed as it would be then, and why
	Done   bool   `json:"done"`             // it was begun: its times are those of the record as far as that goes
	Tasks  []Task `json:"tasks"`

	FermentHours  float64 `json:"fermentHours"`
	WashWaitHours float64 `json:"washWaitHours"` // of that, past what the batch asks for
	Feints        Flow    `json:"feints"`
	Backset       Flow    `json:"backset"`
	NoKept        bool    `json:"noKeptWater,omitempty"` // it takes the last water of the mash before, and there is none that keeps
	NoPotAle      bool    `json:"noHotPotAle,omitempty"` // its still's preheater finds no hot pot ale

	LowWines     plan.Lot `json:"lowWines"`
	Hearts       plan.Lot `json:"hearts"`
	Casks        int      `json:"casks"`
	SpiritIn     plan.Lot `json:"spiritIn"` // what a run before it left over, and is filled with its own
	SpiritFrom   string   `json:"spiritFrom,omitempty"`
	Leftover     plan.Lot `json:"leftover"` // of its spirit, at entry strength: with the next run's of the batch
	Filled       string   `json:"filled,omitempty"`
	OfSteadyPct  float64  `json:"ofSteadyPct"` // its pure alcohol beside that of a house at work
	Fermenter    string   `json:"fermenter"`
	MostFillPct  float64  `json:"spiritStillFillPct"`
	OverFill     bool     `json:"spiritStillOverfull,omitempty"`
	Tanks        []string `json:"tanks,omitempty"` // in which its low wines and its hearts wait
	FeintsTooBig bool     `json:"feintsTankOverfull,omitempty"`
}

// Task is one piece of a run's work.
type Task struct {
	Key        string      `json:"key"`   // as the steps of the batch's plan: mash.4, strip.heat
	Title      plan.Phrase `json:"title"` // in a few words
	Stage      string      `json:"stage"` // mash, ferment, strip, spirit, fill
	Vessel     string      `json:"vessel,omitempty"`
	Start      string      `json:"start"`
	End        string      `json:"end"`
	Attend     string      `json:"attend"` // plan.Stay, plan.Start, plan.Alone
	People     int         `json:"people"`
	KW         float64     `json:"kW"`
	WaitMin    float64     `json:"waitMin,omitempty"` // stood before it
	OutOfShift float64     `json:"outOfShiftMin,omitempty"`
}

// Flow is what came into a run of the runs before, and what it leaves to those after.
type Flow struct {
	In   plan.Lot `json:"in"`   // none: zero
	From []string `json:"from"` // numbers of the runs that left it; "opening" of the first day
	Out  plan.Lot `json:"out"`
	To   []string `json:"to"`
	// OtherKind says that what went in was left by a run of another batch.
	OtherKind bool `json:"otherKind,omitempty"`
	// Wanted is what the recipe asks for, where that is a fixed amount.
	WantedL float64 `json:"wantedL,omitempty"`
	AgeH    float64 `json:"ageHours,omitempty"` // of what went in, the oldest of it
}

// Vessel is the use of one vessel.
type Vessel struct {
	Name      string  `json:"name"`
	Kind      string  `json:"kind"`
	Uses      []Use   `json:"uses"`
	BusyHours float64 `json:"busyHours"`
	BusyPct   float64 `json:"busyPct"` // of the hours of the season in which it could be used
	Out       []Span  `json:"out,omitempty"`
}

// Use is a run in a vessel, its cleaning apart.
type Use struct {
	Run      string `json:"run"`
	Batch    string `json:"batch"`
	Stage    string `json:"stage"`
	From     string `json:"from"`
	To       string `json:"to"`
	Cleaning bool   `json:"cleaning,omitempty"`
	Conflict bool   `json:"conflict,omitempty"`
}

// Span is from one time to another.
type Span struct {
	From string `json:"from"`
	To   string `json:"to"`
	Why  string `json:"why,omitempty"`
}

// Day is one day of the season.
type Day struct {
	Date   string   `json:"date"`
	Open   string   `json:"open,omitempty"` // time; empty: nobody works
	Close  string   `json:"close,omitempty"`
	People int      `json:"people"` // there
	Wanted int      `json:"wanted"` // most at a moment
	MostKW float64  `json:"mostKW"`
	Closed bool     `json:"closed,omitempty"` // the season says that nobody works
	Why    string   `json:"why,omitempty"`    // why it is closed, where that is said
	Who    []string `json:"who,omitempty"`    // of the crew, where the season names it
	Runs   []string `json:"runs"`             // with attended work on it
}

// Weekdays is on which days of the week a batch can be mashed at all, alone in the house:
// the whole of its mash in the shift, and its wash run within its limit.
type Weekdays struct {
	Batch string    `json:"batch"`
	Days  []Weekday `json:"days"` // all seven, Sunday first
}

// Weekday is one of them.
type Weekday struct {
	Day       string  `json:"day"` // Sunday
	Can       bool    `json:"can"`
	Why       string  `json:"why,omitempty"`       // not
	StripOn   string  `json:"stripOn,omitempty"`   // day of the week
	WaitHours float64 `json:"waitHours,omitempty"` // of the wash past its hour
}

// Relief is what one thing more would bring.
type Relief struct {
	What    string  `json:"what"` // fermenter, cooker, still, tank, boiler, crew, day, by, open, back
	Name    string  `json:"name"` // of a day: Sunday; of a vessel: the one that is doubled
	Amount  float64 `json:"amount"`
	Unit    string  `json:"unit"`          // each, kW, days
	Batches int     `json:"batches"`       // more of those that are wanted
	WaitH   float64 `json:"washWaitHours"` // less
}

// TankLevel is how full the tanks for something are, from time to time.
type TankLevel struct {
	Tank   string  `json:"tank"`  // names, joined by " and " where several share it
	Holds  string  `json:"holds"` // low-wines, feints, ...
	OfL    float64 `json:"ofL"`   // what it takes
	Levels []Level `json:"levels"`
	MostL  float64 `json:"mostL"`
	Over   bool    `json:"over,omitempty"`
}

// Level holds from a time to the next one's.
type Level struct {
	At string  `json:"at"`
	L  float64 `json:"l"`
	By string  `json:"by"` // the run that changes it
}

// Load is an amount from a time on, until the next one's.
type Load struct {
	At     string  `json:"at"`
	Amount float64 `json:"amount"`
}

// Conflict is more wanted than there is.
type Conflict struct {
	Kind   string   `json:"kind"` // vessel, boiler, crew, shift, wait
	Vessel string   `json:"vessel,omitempty"`
	From   string   `json:"from"`
	To     string   `json:"to"`
	Need   float64  `json:"need"`
	Have   float64  `json:"have"`
	Tasks  []Member `json:"tasks"` // all that take part
}

// Member is a task of a run.
type Member struct {
	Run string `json:"run"`
	Key string `json:"key"`
}

// Closed is days on which nobody works, or a vessel or a person is missing.
type Closed struct {
	From   string `json:"from"` // date
	To     string `json:"to"`   // date, within
	Vessel string `json:"vessel,omitempty"`
	Person string `json:"person,omitempty"`
	Why    string `json:"why,omitempty"`
}

// Change is something that is otherwise than printed.
type Change struct {
	Run   string `json:"run"`
	Batch string `json:"batch"`
	What  string `json:"what"` // mash, strip, spirit, fill, dropped, new
	Was   string `json:"was,omitempty"`
	Is    string `json:"is,omitempty"`
}

// LeftOver is what stands in the tanks when all is done.
type LeftOver struct {
	What string   `json:"what"` // feints, spirit
	Of   string   `json:"of"`   // batch
	Lot  plan.Lot `json:"lot"`
}

// Odds is how often the season comes out as it is asked for, of so many draws: the
// house's constants once a draw, what differs from run to run each time anew.
type Odds struct {
	Draws   int          `json:"draws"`
	Demands []DemandOdds `json:"demands"` // as Season.Demands
	AllMet  float64      `json:"allMet"`  // share of the draws
	Casks   []CaskOdds   `json:"casks"`   // at least so many by the last day
	PureL   Between      `json:"pureAlcoholL"`
}

// DemandOdds is how often one is met.
type DemandOdds struct {
	Batch string  `json:"batch"`
	Share float64 `json:"share"`
	Made  Between `json:"made"`
}

// CaskOdds is how often so many casks are filled, or more.
type CaskOdds struct {
	Casks int     `json:"casks"`
	Share float64 `json:"share"`
}

// Between is where 9 of 10 draws lie.
type Between struct {
	Low    float64 `json:"low"`
	Middle float64 `json:"middle"`
	High   float64 `json:"high"`
}

// BuyList is what has to be there, and when.
type BuyList struct {
	Currency string    `json:"currency,omitempty"`
	Lines    []Buy     `json:"lines"` // by name, then by the day
	Weeks    []WeekBuy `json:"weeks"`
	Cost     float64   `json:"cost"`
	Unpriced []string  `json:"unpriced"`
}

// Buy is one thing for one week.
type Buy struct {
	What    string   `json:"what"`
	Kind    string   `json:"kind"` // grain, yeast, enzyme, chemical, cask
	By      string   `json:"by"`   // date on which it has to be there
	Need    float64  `json:"need"`
	Store   float64  `json:"fromStore"`
	Buy     float64  `json:"buy"`
	Unit    string   `json:"unit"` // kg, L, each
	Packs   int      `json:"packs,omitempty"`
	PackOf  float64  `json:"packOf,omitempty"` // in Unit
	Pallets float64  `json:"pallets,omitempty"`
	Cost    float64  `json:"cost,omitempty"`
	Priced  bool     `json:"priced"`
	Runs    []string `json:"runs"`
}

// WeekBuy is the cash of a week.
type WeekBuy struct {
	Monday string  `json:"monday"` // date
	Cost   float64 `json:"cost"`
	Sum    float64 `json:"sum"` // up to its end
}
