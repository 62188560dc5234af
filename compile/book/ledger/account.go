package ledger

// Account is where alcohol is in the books, or how it came or went.
type Account string

// The accounts. Those of the premises have something on hand; the others are where it
// comes from and where it goes to.
const (
	Unfinished Account = "unfinished" // low wines and feints
	Tanks      Account = "tanks"      // new make in receivers, and spirit in tanks
	Wood       Account = "wood"       // in casks
	Vats       Account = "vats"       // dumped, blended and reduced, to be bottled
	Bottles    Account = "bottles"

	Distilled Account = "distilled" // out of the wash
	Stills    Account = "stills"    // left in the stills: lees, and what no gauge found
	Losses    Account = "losses"
	Samples   Account = "samples"
	Withdrawn Account = "withdrawn"
	Destroyed Account = "destroyed"
)

// onPremises are the accounts with something on hand, in the order of the work.
var onPremises = []Account{Unfinished, Tanks, Wood, Vats, Bottles}

// titles are the accounts as a reader is told of them.
var titles = map[Account]string{
	Unfinished: "unfinished: low wines, feints", Tanks: "tanks", Wood: "wood", Vats: "vats, for bottling", Bottles: "bottles",
	Distilled: "distilled", Stills: "left in the stills", Losses: "losses", Samples: "samples", Withdrawn: "withdrawn", Destroyed: "destroyed",
}

// way is a pair of accounts.
type way struct{ from, to Account }

// Kind is what a movement is to the books.
type Kind string

// kinds are the ways that alcohol can take, with what each is called and the sections of
// 27 CFR part 19 that want it written down.
var kinds = []struct {
	way
	kind    Kind
	section string
}{
	{way{Distilled, Unfinished}, "distilled", "19.585"},
	{way{Unfinished, Unfinished}, "used again", "19.584"},
	{way{Unfinished, Stills}, "left in the stills", "19.585"},
	{way{Unfinished, Losses}, "lost before the gauge", "19.585"},
	{way{Unfinished, Tanks}, "produced", "19.585, 19.618"},
	{way{Tanks, Wood}, "filled", "19.590, 19.618"},
	{way{Wood, Wood}, "topped from wood", "19.590"},
	{way{Vats, Wood}, "filled from a vat", "19.590"},
	{way{Tanks, Vats}, "dumped from tanks", "19.592, 19.598"},
	{way{Wood, Vats}, "dumped from wood", "19.591, 19.598"},
	{way{Vats, Vats}, "from vat to vat", "19.598"},
	{way{Tanks, Tanks}, "from tank to tank", "19.590"},
	{way{Wood, Tanks}, "to tanks from wood", "19.590, 19.592"},
	{way{Vats, Tanks}, "to tanks from vats", "19.598"},
	{way{Tanks, Losses}, "lost from tanks", "19.590"},
	{way{Wood, Losses}, "lost from wood", "19.590, 19.591"},
	{way{Vats, Losses}, "lost before bottling", "19.598, 19.599"},
	{way{Bottles, Losses}, "bottles broken", "19.601"},
	{way{Losses, Unfinished}, "found in unfinished", "19.585"},
	{way{Losses, Tanks}, "found in tanks", "19.590"},
	{way{Losses, Wood}, "found in wood", "19.591"},
	{way{Losses, Vats}, "found in vats", "19.598"},
	{way{Losses, Bottles}, "found in bottles", "19.601"},
	{way{Tanks, Samples}, "samples from tanks", "19.616"},
	{way{Wood, Samples}, "samples from wood", "19.616"},
	{way{Vats, Samples}, "samples from vats", "19.616"},
	{way{Bottles, Samples}, "samples in bottles", "19.616"},
	{way{Vats, Bottles}, "bottled", "19.599, 19.600"},
	{way{Wood, Bottles}, "bottled from wood", "19.599, 19.600"},
	{way{Tanks, Bottles}, "bottled from tanks", "19.599, 19.600"},
	{way{Bottles, Withdrawn}, "withdrawn", "19.601"},
	{way{Wood, Destroyed}, "destroyed", "19.617"},
}

// kindOf is what a way is called and which sections want it.
func kindOf(w way) (Kind, string) {
	for _, k := range kinds {
		if k.way == w {
			return k.kind, k.section
		}
	}
	return Kind(titles[w.from] + " to " + titles[w.to]), "19.581"
}
